namespace Rigging.Squawks.Ledgers;

/// <summary>Where a squawk stands. Only the table of moves changes it.</summary>
public enum Stage
{
    /// <summary>Held for a call: nobody flies it until someone authorised has looked.</summary>
    Reported,
    Called,
    InChecks,
    CorrectionAgreed,
    InWork,
    AwaitingInspection,
    AwaitingApproval,
    ApprovedPassengersBarred,
    CheckFlightLogged,
    Closed,
    NoFaultFound,
    WithinLimitsMonitored,
    Joined,
    HandedOver,
}

public static class Stages
{
    public static readonly IReadOnlyList<Stage> Open = [.. Enum.GetValues<Stage>().Where(IsOpen)];

    public static bool IsOpen(this Stage stage) => stage < Stage.Closed;
}
