using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Ledgers;

/// <summary>The one thing to do next, and who may do it.</summary>
/// <param name="Kind">The entry it leads to, so that the page can link to the right step.</param>
public sealed record NextAct(Type Kind, string Sentence, IReadOnlyList<Authority> By)
{
    /// <summary>As the aircraft stands by all its squawks: what another one keeps on the ground for damage is not flown for this one.</summary>
    public static NextAct? Of(SquawkState state, Facts facts) => Of(state) is { } next && next.Kind == typeof(CheckFlown) && facts.DamageElsewhere
        ? next with { Sentence = $"S-{facts.OtherSquawks.First(other => other.DamageSuspected).Number} keeps the aircraft on the ground: the damage inspection there comes first.", By = [Authority.Inspector] }
        : Of(state);

    /// <summary>Null when the squawk is over.</summary>
    public static NextAct? Of(SquawkState state) => state.Stage switch
    {
        null => null,
        _ when state.Waiting is { } waiting => new(typeof(Resumed), $"Waiting: {waiting.Reason}", [Authority.Office, Authority.Mechanic]),
        _ when state.DamageSuspected => new(typeof(GroundChecked), "Inspect for damage; grounded until an inspector signs that it is clear.", [Authority.Inspector]),
        >= Stage.InWork and < Stage.Closed when state.CalledSinceWork == Call.Grounded => new(typeof(Called), "Grounded since the work began: decide what lifts it, and make the call.", [Authority.Mechanic, Authority.Inspector]),
        Stage.Reported => new(typeof(Called), "Make the airworthiness call.", [Authority.Mechanic, Authority.Inspector, Authority.Office]),
        Stage.Called => new(typeof(GroundChecked), "Start the checks.", [Authority.Mechanic]),
        Stage.InChecks => state.MissingPrerequisites.Count > 0
            ? new(typeof(GroundChecked), "Finish the checks.", [Authority.Mechanic])
            : new(typeof(CorrectionAgreed), "Assess and agree the correction.", [Authority.Mechanic, Authority.Inspector]),
        Stage.CorrectionAgreed => new(typeof(WorkStarted), "Start the work.", [Authority.Mechanic]),
        Stage.InWork when state.Loose is { } loose => new(typeof(WorkHandedOver), $"{loose} Tighten it, and record that nothing is loose.", [Authority.Mechanic]),
        Stage.InWork => new(typeof(WorkDone), "Finish and sign the work.", [Authority.Mechanic]),
        Stage.AwaitingInspection => new(typeof(Inspected), "Inspect the disturbed controls.", [Authority.Inspector]),
        Stage.AwaitingApproval => new(typeof(Approved), "Approve for return to service.", [Authority.Certifier]),
        Stage.ApprovedPassengersBarred => new(typeof(CheckFlown), "Fly the check flight and log it.", [Authority.Pilot]),
        Stage.CheckFlightLogged when state.CheckFlight is { Fact.Satisfactory: false } => new(typeof(RoundOpened), "The check flight was not satisfactory: open another round.", [Authority.Mechanic, Authority.Inspector]),
        Stage.CheckFlightLogged => state.Verdict?.Verdict switch
        {
            null => new(typeof(VerdictGiven), "Judge the check flight.", [Authority.Mechanic, Authority.Inspector]),
            VerdictWord.Accepted => new(typeof(Closed), "Close the complaint.", [Authority.Inspector]),
            VerdictWord.NotEnoughEvidence => new(typeof(CheckFlown), "Fly it again, with the fuel on each side measured, and log it; or open another round.", [Authority.Pilot]),
            _ => new(typeof(RoundOpened), "Open another round.", [Authority.Mechanic, Authority.Inspector]),
        },
        _ => null,
    };
}
