using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>How far a reading may be off: by method and turbulence, or as the reading itself says, and by rounding.</summary>
static class ReadingNoise
{
    /// <summary>A stopwatch is stopped by a thumb (common practice, no source).</summary>
    const double ThumbSeconds = 0.3;

    /// <summary>A pilot's word covers more than the range it stands for (judgement, no source).</summary>
    const double WordsAreWide = 1.5;

    /// <summary>Value and variance as the motion model predicts it; for <see cref="TimeToBank"/> that is degrees of bank.</summary>
    public static (double Value, double Variance) Of(Reading reading, AirState air, Practice practice) => reading switch
    {
        Rolls rolls => InWords(rolls, practice, practice.Turbulence[air]),
        TimeToBank time => (time.Deg, TimedBank(time, air, practice)),
        _ => (Value(reading), Square(Sd(reading, Value(reading), air, practice)) + Rounding(reading.Kind, Value(reading))),
    };

    static double Value(Reading reading) => reading switch
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

    static (double Value, double Variance) InWords(Rolls rolls, Practice practice, double turbulence)
    {
        var range = practice.Strengths.Single(s => s.Strength == (rolls.Strength ?? RollStrength.Barely));
        var wide = WordsAreWide * turbulence;
        if (rolls.Side == RollSide.None)
            return (0, Square(wide * range.ToDegPerS) / 3);
        var middle = (range.FromDegPerS + range.ToDegPerS) / 2;
        return (rolls.Side == RollSide.Right ? middle : -middle, Square(wide * (range.ToDegPerS - range.FromDegPerS)) / 12);
    }

    /// <summary>People say fives and halves: the coarsest usual step that the value is a multiple of, spread evenly.</summary>
    static double Rounding(ReadingKind kind, double value)
    {
        double[] steps = kind switch
        {
            ReadingKind.BankAfter or ReadingKind.HeadingChange or ReadingKind.WheelAngle or ReadingKind.FuelDifference => [5, 1, 0.1],
            ReadingKind.Ball => [0.25, 0.1, 0.01],
            ReadingKind.WheelForce => [5, 1, 0.1],
            _ => [0.5, 0.1, 0.01],
        };
        // Nought is a multiple of everything and says nothing of the step; the middle one is a fair guess.
        var step = value == 0 ? steps[1] : steps.FirstOrDefault(s => Math.Abs(value / s - Math.Round(value / s)) < 1e-6, steps[^1]);
        return Square(step) / 12;
    }

    static double Square(double value) => value * value;
}
