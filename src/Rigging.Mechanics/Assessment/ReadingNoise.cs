using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>How far a reading may be off: by method and turbulence, or as the reading itself says, and by rounding.</summary>
static class ReadingNoise
{
    /// <summary>A stopwatch is stopped by a thumb (common practice, no source).</summary>
    const double ThumbSeconds = 0.3;

    /// <summary>An open end of a word's range is put here when a single number must stand for it, °/s (judgement, no source).</summary>
    const double OpenEndDegPerS = 9;

    /// <summary>Value and variance as the motion model predicts it; for <see cref="TimeToBank"/> that is degrees of bank.</summary>
    /// <returns>With a range when no more than that is known: a word, or a bank so large that the motion no longer is what is computed.</returns>
    public static (double Value, double Variance, Band? Range) Of(Reading reading, AirState air, Practice practice, RoundingHabit habit)
    {
        if (reading is Rolls rolls)
            return InWords(rolls, practice.Words.Sd * practice.Turbulence[air], practice);
        var (value, variance) = reading is TimeToBank time
            ? (time.Deg, TimedBank(time, air, practice))
            : (Value(reading), Square(Sd(reading, Value(reading), air, practice)) + habit.Variance(reading.Kind));
        return reading is BankAfter or TimeToBank && Math.Abs(value) > ReleasedMotion.HonestBankDeg
            ? (value, variance, Beyond(value, Math.Sqrt(variance)))
            : (value, variance, null);
    }

    /// <summary>It rolled that far at least.</summary>
    static Band Beyond(double value, double sd) => value > 0
        ? new(ReleasedMotion.HonestBankDeg, double.PositiveInfinity, sd)
        : new(double.NegativeInfinity, -ReleasedMotion.HonestBankDeg, sd);

    internal static double Value(Reading reading) => reading switch
    {
        BankAfter bank => bank.Deg,
        RollRate rate => rate.DegPerS,
        HeadingRate rate => rate.DegPerS,
        HeadingChange change => change.Deg,
        BallReading ball => ball.Widths,
        WheelAngle angle => angle.Deg,
        WheelForce force => force.N,
        FuelDifference fuel => fuel.L,
        _ => throw new ArgumentOutOfRangeException(nameof(reading)),
    };

    static double Sd(Reading reading, double value, AirState air, Practice practice)
    {
        if (reading.Sd is { } stated)
            return stated;
        var usual = practice.Sd(reading.Kind, reading.Method);
        return (usual.Sd + usual.Share * Math.Abs(value)) * practice.Turbulence[air];
    }

    /// <summary>A time that is off by so much is a bank that is off by so much times the rate of the roll.</summary>
    static double TimedBank(TimeToBank time, AirState air, Practice practice)
    {
        var rate = Math.Abs(time.Deg) / Math.Max(time.Seconds, ThumbSeconds);
        return time.Sd is { } stated
            ? Square(stated * rate)
            : Square(Sd(time, time.Deg, air, practice)) + Square(ThumbSeconds * rate);
    }

    static (double Value, double Variance, Band? Range) InWords(Rolls rolls, double sd, Practice practice)
    {
        var range = practice.Strengths.Single(s => s.Strength == (rolls.Strength ?? RollStrength.Barely));
        var (from, to) = (range.FromDegPerS, range.ToDegPerS ?? double.PositiveInfinity);
        var band = rolls.Side switch
        {
            RollSide.None => new Band(-to, to, sd),
            RollSide.Right => new Band(from, to, sd),
            _ => new Band(-to, -from, sd),
        };
        var (low, high) = (Math.Max(band.From, -OpenEndDegPerS), Math.Min(band.To, OpenEndDegPerS));
        return ((low + high) / 2, Square(sd) + Square(high - low) / 12, band);
    }

    static double Square(double value) => value * value;
}
