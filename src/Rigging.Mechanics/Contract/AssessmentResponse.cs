using System.Text.Json.Serialization;

namespace Rigging.Mechanics.Contract;

/// <summary>What the evidence supports, what to look at next, and what to move, if anything.</summary>
/// <param name="RollTendency">At the airframe's reference: ball centred, hands off. Right wing down positive; null when not assessable.</param>
/// <param name="LoadContribution">What the first test point's load adds to that; null when there is no test point.</param>
/// <param name="Causes">Every cause of the catalogue.</param>
/// <param name="Indistinguishable">Groups that this evidence cannot tell apart.</param>
/// <param name="Prerequisites">What must be on record before an incidence move may be made.</param>
/// <param name="Correction">Null when nothing should be moved; <paramref name="Refusals"/> then says why.</param>
public sealed record AssessmentResponse(
    string AirframeId,
    Estimate? RollTendency,
    PointEstimate? LoadContribution,
    IReadOnlyList<CauseEstimate> Causes,
    IReadOnlyList<IReadOnlyList<Cause>> Indistinguishable,
    IReadOnlyList<NextTest> NextTests,
    IReadOnlyList<Prerequisite> Prerequisites,
    CorrectionProposal? Correction,
    IReadOnlyList<Refusal> Refusals,
    IReadOnlyList<string> Cautions)
{
    /// <summary>Nothing is moved and nobody is told to fly.</summary>
    [JsonIgnore]
    public bool DamageInDoubt => Refusals.Any(refusal => refusal.Code == Refusal.DamageNotRuledOut);
}

/// <summary>A mean with its 90 % interval.</summary>
public sealed record Estimate(double Mean, double Low, double High, string Unit);

/// <summary>A value without an interval of its own.</summary>
public sealed record PointEstimate(double Mean, string Unit);

/// <param name="Probability">That the cause is present; null where not modelled or not assessable, never 0 for that.</param>
/// <param name="Amplitude">Given that it is present.</param>
/// <param name="Explains">Fraction of what was seen, 0 to 1.</param>
public sealed record CauseEstimate(Cause Cause, double? Probability, Estimate? Amplitude, double? Explains);

/// <summary>The catalogue of asymmetries.</summary>
public enum Cause
{
    FuelAndLoading, PanelIncidenceDifference, TipIncidenceDifference, FlapDifference, ContourOrFairing, AileronFloat,
    AileronNeutralOffset, RudderOrFinOffset, Slipstream, ControlFriction, InstrumentMisalignment, DamageOrMisassembly,
}

/// <summary>A test point or ground check that would tell more.</summary>
/// <param name="Test">Such as <c>ground-check:contour-survey</c>.</param>
/// <param name="Bits">Expected loss of entropy over the causes.</param>
public sealed record NextTest(string Test, double Bits, double Minutes);

public enum Prerequisite { FuelAndSeats, Ball, Damage, Flaps, Ailerons, Cables, Rudder }

public sealed record CorrectionProposal(IReadOnlyList<Move> Moves, Estimate PredictedRollTendency, double ProbabilityWithinLimit);

/// <summary>One adjuster's move.</summary>
/// <param name="FromDeg">
/// With <paramref name="ToDeg"/> always given for an eccentric: degrees from neutral, positive lowers the trailing edge. Given for a tab as well,
/// and for the aileron neutral as it is estimated to stand; null for what is counted in turns.
/// </param>
/// <param name="Flats">Size of the turn, 0 or more.</param>
/// <param name="Turn">Which way the head goes round, and at which face; null when the bushing's data are not on file.</param>
/// <param name="IncidenceChangeDeg">Of that panel, with a strut fork of the wing at the strut and outboard of it; leading edge up positive.</param>
/// <param name="FromTurns">
/// With <paramref name="ToTurns"/> given for a strut fork, out from fully in, and a flap rod, out from the length of the drawing; written for nothing else.
/// </param>
public sealed record Move(
    AdjustableControl Control,
    double? FromDeg,
    double? ToDeg,
    double? Flats,
    TrailingEdge? TrailingEdge,
    string? Turn,
    double? IncidenceChangeDeg,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? FromTurns = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? ToTurns = null);

public enum AdjustableControl
{
    LeftEccentric, RightEccentric, LeftStrutFork, RightStrutFork, LeftFlapRod, RightFlapRod, AileronNeutral, AileronTab, RudderTab,
}

public enum TrailingEdge { Up, Down }

/// <summary>Why nothing should be moved.</summary>
/// <param name="Code">Stable, hyphenated; never reused for another reason.</param>
/// <param name="Sentence">For a person.</param>
public sealed record Refusal(string Code, string Sentence)
{
    public const string DamageNotRuledOut = "damage-not-ruled-out";
}
