using System.Text.Json.Serialization;

namespace Rigging.Mechanics.Contract;

/// <summary>One measurement or look on the ground before anything is moved. Differences are right minus left.</summary>
public abstract record GroundCheck([property: JsonPropertyOrder(-1)] GroundCheckKind Kind);

/// <summary>
/// A check whose value is an angle: panel, tip or flap difference (trailing edge down and incidence up positive), aileron
/// float or neutral offset (right wing down positive), rudder tab (trailing edge left positive).
/// </summary>
/// <param name="SdDeg">Standard deviation; null for the usual one of its kind.</param>
public sealed record AngleCheck(GroundCheckKind Kind, double Deg, double? SdDeg = null) : GroundCheck(Kind);

/// <param name="Deg">Of the tab, trailing edge down positive.</param>
public sealed record AileronTabCheck(Side Side, double Deg, double? SdDeg = null) : GroundCheck(GroundCheckKind.AileronTab);

/// <param name="DegC">Temperature at which it was measured.</param>
/// <param name="Sd">Newtons; null for the usual one.</param>
public sealed record CableTensionCheck(string Cable, double N, double DegC, double? Sd = null) : GroundCheck(GroundCheckKind.CableTension);

/// <param name="Widths">Positive when the ball shows right with the aeroplane truly level.</param>
public sealed record BallOffsetCheck(double Widths, double? Sd = null) : GroundCheck(GroundCheckKind.BallOffset);

/// <param name="N">Force at the wheel rim to move it through neutral.</param>
public sealed record ControlFrictionCheck(double N, double? Sd = null) : GroundCheck(GroundCheckKind.ControlFriction);

/// <summary>A look that found nothing (clear) or something: <see cref="GroundCheckKind.DamageInspection"/>, <see cref="GroundCheckKind.ContourSurvey"/>.</summary>
public sealed record ClearanceCheck(GroundCheckKind Kind, bool Clear) : GroundCheck(Kind);

public enum GroundCheckKind
{
    PanelIncidenceDifference, TipIncidenceDifference, FlapDifference, AileronFloat, AileronNeutralOffset, AileronTab,
    RudderTab, CableTension, BallOffset, ControlFriction, DamageInspection, ContourSurvey,
}
