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
    ControlTravel,
}

/// <summary>What must be on record before any incidence move.</summary>
public enum Prerequisite { FuelAndSeats, Ball, Damage, Flaps, Ailerons, Cables, Rudder }

/// <summary>Fuel in one tank, measured.</summary>
public sealed record TankFuel(string Tank, double Litres);

/// <summary>How far one control surface goes from its neutral to each stop.</summary>
/// <param name="Side">Null for a surface that has no partner.</param>
/// <param name="UpDeg">Trailing edge up; of a rudder, left.</param>
/// <param name="DownDeg">Trailing edge down; of a rudder, right.</param>
public sealed record TravelMeasured(ControlSurface Surface, Side? Side, double UpDeg, double DownDeg);

/// <summary>One place read twice with a level: as laid down, and turned end for end. Leading edge up, nose up positive.</summary>
/// <param name="OutM">From the centreline along the span; null for the fuselage datum, read while that wing was surveyed.</param>
public sealed record LevelReading(Side Wing, double? OutM, double AsLaidDeg, double ReversedDeg);

/// <summary>A levelled survey of both wings, reading by reading.</summary>
/// <param name="StepDeg">Smallest step that the level shows.</param>
/// <param name="SeatingDeg">How far a template seats otherwise each time, one standard deviation.</param>
public sealed record LevelSurvey(double StepDeg, double SeatingDeg, IReadOnlyList<LevelReading> Readings);

/// <summary>Something measured, against what the airframe file allowed on that day.</summary>
/// <param name="Estimated">Carried from the temperature on file to the measured one.</param>
public sealed record AgainstLimit(string What, double Measured, double Least, double Greatest, string Unit, string Source, bool Estimated)
{
    /// <summary>The last digit of a sum or of a change of unit is no finding.</summary>
    const double Slack = 1e-6;

    public bool IsWithin() => Measured >= Least - Slack && Measured <= Greatest + Slack;
}

/// <summary>One ground check. Signs: right minus left, trailing edge down and incidence up positive, ball right positive.</summary>
/// <param name="Value">In the check's own unit (<see cref="CheckUnits"/>); null for checks that only say clear or not.</param>
/// <param name="Side">Which wing's tab, for the aileron tab; null otherwise.</param>
/// <param name="Clear">For damage inspection and contour survey; null otherwise.</param>
/// <param name="NotApplicableReason">Set when the check does not apply to this aircraft; the entry's author answers for it.</param>
/// <param name="Fuel">Every tank's, for fuel and seats; null otherwise, and where it was told in words only.</param>
/// <param name="Travel">For control travel; null otherwise.</param>
/// <param name="Survey">The readings that <paramref name="Value"/> comes from, for the panel incidence; null where it was not entered by readings.</param>
/// <param name="TipValue">What the same survey says of the tips; null with one pair of stations.</param>
/// <param name="Limits">What the airframe file allows, as it stood; null where the file names none that can be used.</param>
/// <param name="NoLimitsBecause">Why the measurement could not be compared with the file; null where it was, or where no check of this kind has limits.</param>
/// <param name="CablesOnFile">Every cable that the airframe file names, as it stood, for the cable tension; null where it names none.</param>
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
    Instant? HappenedAt = null,
    IReadOnlyList<TankFuel>? Fuel = null,
    TravelMeasured? Travel = null,
    LevelSurvey? Survey = null,
    double? TipValue = null,
    double? TipSd = null,
    IReadOnlyList<AgainstLimit>? Limits = null,
    string? NoLimitsBecause = null,
    IReadOnlyList<string>? CablesOnFile = null) : Fact, IMayComeLate
{
    /// <summary>Whether it says what such a check is made for: without that it is on record and counts for nothing.</summary>
    public bool HasItsValue() => Check switch
    {
        Check.FuelAndSeats => Fuel is { Count: > 0 },
        Check.DamageInspection or Check.ContourSurvey => Clear is not null,
        Check.CableTension => this is { Value: not null, Cable: not null, TemperatureC: not null, Tool: not null },
        Check.AileronTab => this is { Value: not null, Side: not null },
        Check.ControlTravel => Travel is not null,
        _ => Value is not null,
    };

    /// <summary>What it speaks of where a check is made of several things, each by itself: a cable, a wing's tab, a surface.</summary>
    public string? Part() => Check switch
    {
        Check.CableTension => Cable?.Trim(),
        Check.AileronTab => Side?.ToString(),
        Check.ControlTravel => Travel is { } travel ? Ledgers.SquawkState.PartOf(travel.Surface, travel.Side) : null,
        _ => null,
    };

    /// <summary>What is outside its limits.</summary>
    public IEnumerable<AgainstLimit> OutOfLimits() => (Limits ?? []).Where(limit => !limit.IsWithin());
}

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
