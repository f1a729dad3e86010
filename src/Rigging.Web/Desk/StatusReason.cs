using Rigging.Squawks.Ledgers;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Why a squawk lets the aircraft do what it does, in a sentence for whoever stands beside it.</summary>
public static class StatusReason
{
    public static string Of(SquawkState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state switch
        {
            { RedFlagged: true } => Gaps.Fill(Say.UntilDamageIsRuledOut, string.Join("; ", state.DamageQuestions)),
            { DamageClear: false, FlightStatus: FlightStatus.Grounded } => Say.DamageWasFound,
            { Stage: Stage.CheckFlightLogged, FlightStatus: FlightStatus.Grounded, CheckFlight.Fact.Satisfactory: false } => Say.CheckFlightWasNotSatisfactory,
            { FlightStatus: FlightStatus.Held, Stage: Stage.Reported } => Say.UntilTheCallIsMade,
            { FlightStatus: FlightStatus.Held, Stage: > Stage.CorrectionAgreed } => Say.UntilTheWorkIsApproved,
            { FlightStatus: FlightStatus.CrewOnly } => Say.UntilTheCheckFlightIsLogged,
            { Call: { } call } => Gaps.Fill(Say.ByTheCall, call.Reason),
            _ => Say.UntilTheCallIsMade,
        };
    }

    /// <summary>Null when none are in force.</summary>
    public static string? Limits(SquawkState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return state is { FlightStatus: FlightStatus.Limits, Call.Limits: { } limits } ? limits : null;
    }
}
