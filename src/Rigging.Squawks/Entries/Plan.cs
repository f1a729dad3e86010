namespace Rigging.Squawks.Entries;

/// <summary>An assessment as it was made: a later recomputation is shown beside it, never in its place.</summary>
public sealed record Assessed(
    string Request,
    string Response,
    string LibraryVersion,
    string PriorsVersion,
    string AirframeId,
    int AirframeVersion) : Fact;

/// <summary>The manual the work is done to. It overrides anything computed here.</summary>
public sealed record ApprovedData(string Manual, string Section, string Revision);

/// <summary>What can be moved. The incidence controls are the ones behind the prerequisite gate.</summary>
public enum Control
{
    LeftEccentric,
    RightEccentric,
    LeftStrutFork,
    RightStrutFork,
    LeftFlapRod,
    RightFlapRod,
    AileronNeutral,
    AileronTab,
    RudderTab,
    CableTension,
    RepairOrReplace,
}

public static class Controls
{
    public static bool MovesIncidence(this Control control) =>
        control.IsEccentric() || control.IsStrutFork();

    /// <summary>How it stands is one number, which people count or measure: degrees of a tab, turns of a fork or a rod.</summary>
    public static bool StandsAtANumber(this Control control) =>
        control.InTurns() || control.IsTab();

    /// <summary>Counted in turns: a strut fork, a flap rod.</summary>
    public static bool InTurns(this Control control) => control.IsStrutFork() || control.IsFlapRod();

    /// <summary>The mechanics' name for it, which is the same.</summary>
    public static Mechanics.Contract.AdjustableControl OnFile(this Control control) => Enum.Parse<Mechanics.Contract.AdjustableControl>(control.ToString());

    public static bool IsTab(this Control control) => control is Control.AileronTab or Control.RudderTab;

    public static bool IsStrutFork(this Control control) => control is Control.LeftStrutFork or Control.RightStrutFork;

    public static bool IsFlapRod(this Control control) => control is Control.LeftFlapRod or Control.RightFlapRod;

    public static bool IsEccentric(this Control control) => control is Control.LeftEccentric or Control.RightEccentric;
}

/// <summary>One thing to move, from one setting to another.</summary>
/// <param name="FromDeg">
/// Eccentric angle or aileron tab, trailing edge down positive; rudder tab, trailing edge left positive. Null where no angle was planned, and for
/// controls not set by an angle.
/// </param>
/// <param name="Instruction">The move in words, as the mechanic reads it.</param>
/// <param name="FromTurns">Of a strut fork or a flap rod, as in <see cref="AdjusterSetting"/>; null where no number was planned.</param>
public sealed record PlannedMove(Control Control, double? FromDeg, double? ToDeg, string Instruction, double? FromTurns = null, double? ToTurns = null)
{
    /// <summary>In the control's own unit; both null for what does not stand at a number.</summary>
    public (double? From, double? To) Numbers() => Control.InTurns() ? (FromTurns, ToTurns) : Control.IsEccentric() || Control.IsTab() ? (FromDeg, ToDeg) : (null, null);
}

/// <summary>What will be moved, by how much, to which data, and what is expected of it.</summary>
/// <param name="OwnPlan">The mechanic's own plan rather than the proposed one.</param>
/// <param name="PredictedDegPerS">Roll tendency expected afterwards, right wing down positive, with its 90 % interval.</param>
public sealed record CorrectionAgreed(
    IReadOnlyList<PlannedMove> Moves,
    ApprovedData Data,
    bool OwnPlan,
    string Reason,
    double? PredictedDegPerS,
    double? PredictedLowDegPerS,
    double? PredictedHighDegPerS) : Fact;

/// <summary>What was agreed will not be done after all: back to the checks before any work began.</summary>
public sealed record CorrectionWithdrawn(string Reason) : Fact;
