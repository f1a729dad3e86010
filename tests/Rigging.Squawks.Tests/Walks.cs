using CsCheck;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Check = Rigging.Squawks.Entries.Check;

namespace Rigging.Squawks.Tests;

/// <summary>Random lives of a squawk: plausible entries, good and bad, by people who may and may not, in an order nobody would plan.</summary>
static class Walks
{
    /// <param name="Follows">Does what the squawk asks for next, by somebody it asks; otherwise anything by anybody.</param>
    public sealed record Step(bool Follows, int Who, int Kind, int Variant, FlightStatus Others);

    /// <summary>Before the step, what was decided, and after it.</summary>
    /// <param name="Again">Decides the same once more.</param>
    public sealed record Moment(Ledger Before, Fact Fact, Decision Decision, Ledger After, Func<Decision> Again);

    public static readonly Person[] Cast =
    [
        School.Pilot, School.Student, School.Office, School.Mechanic, School.Inspector, School.Certifier,
        School.Someone(11, [Authority.Mechanic, Authority.Inspector, Authority.Certifier, Authority.Pilot], "mechanic-airframe", "commercial-pilot"),
        School.Someone(12, [Authority.Office, Authority.Pilot], "mechanic-powerplant"),
    ];

    static readonly string[] Rows = [.. MovesOnPaper.Cells.Select(cell => cell.Entry).Distinct()];

    static readonly Gen<Step> Steps = Gen.Select(
        Gen.Int[0, 9].Select(n => n < 7), Gen.Int[0, Cast.Length - 1], Gen.Int[0, Rows.Length - 1], Gen.Int[0, 19],
        Gen.Frequency((12, Gen.Const(FlightStatus.MayFly)), (1, Gen.Enum<FlightStatus>())),
        (follows, who, kind, variant, others) => new Step(follows, who, kind, variant, others));

    public static readonly Gen<Step[]> All = Steps.Array[1, 70];

    /// <summary>So many lives, the same ones every time: for what has to be met and not only to hold, which new lives might miss by chance.</summary>
    /// <remarks>A seed given to Sample is that of its first life alone; one array out of one seed is whole.</remarks>
    public static Step[][] Same(int lives) => All.Array[lives].Single(_ => true, "0000KOIPJaf0");

    public static IEnumerable<Moment> Walk(Step[] steps)
    {
        var ledger = School.Empty;
        for (var i = 0; i < steps.Length; i++)
        {
            var (fact, who) = Choose(steps[i], ledger.State);
            // Finer than a record keeps, and never the same moment twice.
            var now = School.Noon.Plus(Duration.FromTicks((i * 600_000_000L) + 1234));
            if (fact is WorkDone done) fact = done.Proved(ledger);
            var (before, others) = (ledger, steps[i].Others);
            Decision Decide() => School.Try(before, who, fact, facts => facts with { Now = now, OtherSquawks = [new(School.Other, 7, others)] });
            var decision = Decide();
            var after = decision is Decision.Accepted { Entry: var entry } ? ledger.With(entry) : ledger;
            yield return new(ledger, fact, decision, after, Decide);
            ledger = after;
        }
    }

    public static Ledger End(Step[] steps) => Walk(steps).LastOrDefault()?.After ?? School.Empty;

    static (Fact Fact, Person Who) Choose(Step step, SquawkState state)
    {
        if (!step.Follows) return (Vary(MovesOnPaper.Example(Rows[step.Kind]), step.Variant), Cast[step.Who]);
        if (state.Stage is null) return (Vary(School.Report, step.Variant), Cast[step.Who]);
        if (NextAct.Of(state) is not { } next) return (new Noted("Read again.", null), Cast[step.Who]);
        var able = Cast.Where(person => next.By.Any(person.May)).ToArray();
        return (Wanted(next.Kind, state, step.Variant), able[step.Who % able.Length]);
    }

    static Fact Wanted(Type kind, SquawkState state, int variant)
    {
        if (kind == typeof(GroundChecked))
            return state.RedFlagged || state.DamageClear == false || state.MissingPrerequisites.Count == 0
                ? School.Checks.Single(check => check.Check == Check.DamageInspection)
                : School.Checks.First(check => state.MissingPrerequisites.Contains(CheckUnits.Serves(check.Check)!.Value));
        if (kind == typeof(Called)) return variant < 2 ? new Called(Call.Grounded, "Wing first.", null) : new Called(Call.NoRiggingHold, "Looked at it.", null);
        if (kind == typeof(WorkHandedOver)) return new WorkHandedOver("All tight.", null);
        // The mechanic does first what the signature would be refused without.
        if (kind == typeof(WorkDone) && state.AsFound?.Other is null) return School.Found with { Other = "Tab straight." };
        if (kind == typeof(WorkDone) && (!state.TorqueSinceSigned || state.OutOfLimits.Count > 0)) return variant == 5 ? Overtorque : School.Torque;
        if (kind == typeof(WorkDone) && RecheckRules.Asked(state, School.Airframe).FirstOrDefault(recheck => !recheck.IsDone) is { } again) return School.Again(again);
        return Vary(MovesOnPaper.Example(EntryCodec.Kinds.Single(k => EntryCodec.TypeOf(k) == kind)), variant);
    }

    static readonly TorqueApplied Overtorque = School.Torque with { SettingInLb = 230, ReachedInLb = 230, TorqueStripe = false, OutOfLimitsDone = "Bolt and nut replaced." };

    /// <summary>Mostly as it should be; now and then unlucky, sloppy or impossible.</summary>
    static Fact Vary(Fact fact, int variant) => (fact, variant) switch
    {
        (Reported r, 1) => r with { RedFlags = [RedFlag.Bang, RedFlag.BothHands] },
        (Reported r, 4) => r with { Happened = [Happening.HardLanding], RedFlags = [RedFlag.ControlJammed] },
        (Reported r, 2) => r with { Words = "Ça tire à gauche — «aile lourde» 左", CasKt = null },
        (Reported r, 3) => r with { CasKt = double.NaN },
        (Called c, 9) => c with { Call = Call.Grounded, Happened = [Happening.FlapOverspeed] },
        (Called c, 10) => c with { RedFlags = [RedFlag.Damage] },
        (Called c, < 8) => c with { Call = variant % 2 == 0 ? Call.NoRiggingHold : Call.MayFlyWithLimits, Limits = variant < 6 ? "Day, two up." : null },
        (GroundChecked, < 8) => School.Checks[variant % School.Checks.Length],
        (GroundChecked, 8) => School.Measured(Check.DamageInspection, null) with { Clear = false, Finding = "Cracked skin." },
        (GroundChecked c, 9) => c with { Value = -0.0 },
        (GroundChecked, 10) => School.Measured(Check.FuelAndSeats, null) with { Finding = "Don't know." },
        (GroundChecked, 11) => School.Measured(Check.CableTension, 160) with { Cable = "left aileron" },
        (GroundChecked, 12) => School.Measured(Check.FlapDifference, null) with { Finding = "Looks alike." },
        (GroundChecked, 13) => School.Measured(Check.FlapDifference, 0.1) with { Tool = School.Tensiometer.Id },
        (GroundChecked, 14) => School.Measured(Check.RudderTab, null) with { NotApplicableReason = "It has no rudder tab." },
        (GroundChecked, 15) => School.Travel(Side.Left, 20, 15) with { Tool = School.ProtractorADayOut.Id },
        (CorrectionAgreed c, 1) => c with { Moves = [new(Control.AileronTab, null, null, "2° down.")] },
        (CorrectionAgreed c, 2) => c with { Data = c.Data with { Revision = "" } },
        (CorrectionAgreed c, 3) => c with { Moves = [.. c.Moves, new(Control.RepairOrReplace, null, null, "New thimble.")], OwnPlan = true },
        (AsFound f, 1) => f with { Bushings = new(-15, 20, 0, 0) },
        (TorqueApplied t, 1) => t with { Wrench = School.WrenchADayOut.Id },
        (TorqueApplied, 3) => Overtorque,
        (TorqueApplied, 4) => Overtorque with { OutOfLimitsDone = null },
        (TorqueApplied t, 5) => t with { RunOnInLb = 0, FinalMinInLb = 160, FinalMaxInLb = 190 },
        (TorqueApplied t, 2) => t with { ReachedInLb = double.PositiveInfinity },
        (WorkHandedOver h, < 4) => h with { Loose = "left rear bolt LOOSE, do not move" },
        (WorkDone d, 1) => d with { NoTemporaryHardware = false },
        (WorkDone d, 2) => d with { AsLeft = new(45, 45, 0, 0), DiffersBecause = "It only tightened there." },
        (WorkDone d, _) => d with { OtherAsLeft = "Tab 2° down." },
        (Inspected i, 1) => i with { Passed = false, Observations = [] },
        (Inspected i, 2) => i with { Passed = false, Observations = [.. i.Observations.Select(o => o with { Seen = Seen.Down })] },
        (Inspected i, _) => i with { AcceptsDifference = true },
        (CheckFlown f, 1) => f with { Satisfactory = false },
        (CheckFlown f, 2) => f with { FuelMeasured = false },
        (CheckFlown f, 4) => f with { Trims = new(RollTrim.LeftWingDown, null, FlownAutopilot.Off) },
        (CheckFlown f, 3) => f with { Passengers = 2 },
        (VerdictGiven v, < 6) => v with { Verdict = (VerdictWord)(variant % 3) },
        (Waiting w, 1) => w with { For = (WaitingFor)9 },
        (Noted n, < 6) => n with { Corrects = variant },
        (NoFaultFound n, 1) => n with { EverythingRefitted = false },
        _ => fact,
    };
}
