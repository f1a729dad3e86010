using System.Text.Json.Serialization;

namespace Rigging.Mechanics.Contract;

/// <summary>One thing read off during a test point. Right wing down, heading to the right and ball right are positive.</summary>
/// <param name="Kind">Its word on the wire.</param>
public abstract record Reading([property: JsonPropertyOrder(-1)] ReadingKind Kind)
{
    /// <summary>How it was read, which sets the usual standard deviation; by eye when not reported.</summary>
    [JsonPropertyOrder(1)]
    public ReadingMethod Method { get; init; } = ReadingMethod.Eye;

    /// <summary>Standard deviation in the reading's own unit (degrees, seconds, …), instead of the usual one; null for the usual one.</summary>
    [JsonPropertyOrder(2)]
    public double? Sd { get; init; }
}

public sealed record BankAfter(double Seconds, double Deg) : Reading(ReadingKind.BankAfter);

public sealed record TimeToBank(double Deg, double Seconds) : Reading(ReadingKind.TimeToBank);

public sealed record RollRate(double DegPerS) : Reading(ReadingKind.RollRate);

public sealed record HeadingRate(double DegPerS) : Reading(ReadingKind.HeadingRate);

public sealed record HeadingChange(double Seconds, double Deg) : Reading(ReadingKind.HeadingChange);

/// <summary>Ball widths; positive when the ball lies right of centre.</summary>
public sealed record BallReading(double Widths) : Reading(ReadingKind.Ball);

/// <summary>What the pilot holds to keep the wings level.</summary>
public sealed record WheelAngle(double Deg) : Reading(ReadingKind.WheelAngle);

public sealed record WheelForce(double N) : Reading(ReadingKind.WheelForce);

/// <summary>Litres, right minus left.</summary>
public sealed record FuelDifference(double L) : Reading(ReadingKind.FuelDifference);

/// <summary>A report without numbers.</summary>
/// <param name="Strength">Null exactly when <paramref name="Side"/> is none.</param>
public sealed record Rolls(RollSide Side, RollStrength? Strength) : Reading(ReadingKind.Rolls);

public enum ReadingKind { BankAfter, TimeToBank, RollRate, HeadingRate, HeadingChange, Ball, WheelAngle, WheelForce, FuelDifference, Rolls }

public enum ReadingMethod { StopwatchHorizon, StopwatchCompass, Eye, Instrument, FlightLog }

public enum RollSide { Left, Right, None }

/// <summary>Barely is under 0.5 °/s, slowly 0.5 to 3, briskly over 3 (common practice, no source).</summary>
public enum RollStrength { Barely, Slowly, Briskly }
