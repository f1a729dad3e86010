using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

/// <summary>What can be checked on the ground before anything is moved.</summary>
public enum Check
{
    FuelAndSeats,
    BallOffset,
    DamageInspection,
    FlapDifference,
    AileronNeutralOffset,
    AileronFloat,
    AileronTab,
    CableTension,
    ControlFriction,
    RudderTab,
    ContourSurvey,
    PanelIncidenceDifference,
    TipIncidenceDifference,
}

/// <summary>What must be on record before any incidence move.</summary>
public enum Prerequisite { FuelAndSeats, Ball, Damage, Flaps, Ailerons, Cables, Rudder }

/// <summary>One ground check. Signs: right minus left, trailing edge down and incidence up positive, ball right positive.</summary>
/// <param name="Value">In the check's own unit (<see cref="CheckUnits"/>); null for checks that only say clear or not.</param>
/// <param name="Side">Which wing's tab, for the aileron tab; null otherwise.</param>
/// <param name="Clear">For damage inspection and contour survey; null otherwise.</param>
/// <param name="NotApplicableReason">Set when the check does not apply to this aircraft; the entry's author answers for it.</param>
public sealed record GroundChecked(
    Check Check,
    double? Value,
    double? Sd,
    bool? Clear,
    string? Cable,
    double? TemperatureC,
    Side? Side,
    ToolId? Tool,
    string? ToolCode,
    LocalDate? ToolCalibrationDue,
    string? Finding,
    string? NotApplicableReason,
    Instant? HappenedAt = null) : Fact, IMayComeLate;

public static class CheckUnits
{
    /// <summary>The unit of a check's value; null where there is none.</summary>
    public static string? Of(Check check) => check switch
    {
        Check.FuelAndSeats or Check.DamageInspection or Check.ContourSurvey => null,
        Check.BallOffset => "ball widths",
        Check.CableTension or Check.ControlFriction => "N",
        _ => "°",
    };

    public static Prerequisite? Serves(Check check) => check switch
    {
        Check.FuelAndSeats => Prerequisite.FuelAndSeats,
        Check.BallOffset => Prerequisite.Ball,
        Check.DamageInspection => Prerequisite.Damage,
        Check.FlapDifference => Prerequisite.Flaps,
        Check.AileronNeutralOffset => Prerequisite.Ailerons,
        Check.CableTension => Prerequisite.Cables,
        Check.RudderTab => Prerequisite.Rudder,
        _ => null,
    };
}

/// <summary>A flight made to gather readings before anything is moved.</summary>
/// <param name="TestPoints">JSON array of test points in the form of the assessment endpoint.</param>
/// <param name="Trims">Null when not recorded.</param>
public sealed record EvaluationFlown(LocalDate FlownOn, string TestPoints, string? Remarks, TrimsFlown? Trims = null) : Fact, IFlown;
