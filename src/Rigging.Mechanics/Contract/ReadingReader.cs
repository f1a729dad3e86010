namespace Rigging.Mechanics.Contract;

/// <summary>Reads one reading; its kind says which fields it has.</summary>
static class ReadingReader
{
    static readonly Within Seconds = new(0.1, 600, "s");
    static readonly Within BankDeg = new(-ReadingLimits.BankDeg, ReadingLimits.BankDeg, "°");

    public static Reading Read(FieldReader reading)
    {
        Reading? read = reading.Word<ReadingKind>("kind") switch
        {
            ReadingKind.BankAfter => new BankAfter(reading.Number("seconds", Seconds), reading.Number("deg", BankDeg)),
            ReadingKind.TimeToBank => TimeToBankOf(reading),
            ReadingKind.RollRate => new RollRate(reading.Number("degPerS", new(-ReadingLimits.RollRateDegPerS, ReadingLimits.RollRateDegPerS, "°/s"))),
            ReadingKind.HeadingRate => new HeadingRate(reading.Number("degPerS", new(-ReadingLimits.HeadingRateDegPerS, ReadingLimits.HeadingRateDegPerS, "°/s"))),
            ReadingKind.HeadingChange => new HeadingChange(
                reading.Number("seconds", Seconds), reading.Number("deg", new(-ReadingLimits.HeadingChangeDeg, ReadingLimits.HeadingChangeDeg, "°"))),
            ReadingKind.Ball => new BallReading(reading.Number("widths", new(-ReadingLimits.BallWidths, ReadingLimits.BallWidths, "ball widths"))),
            ReadingKind.WheelAngle => new WheelAngle(reading.Number("deg", new(-ReadingLimits.WheelDeg, ReadingLimits.WheelDeg, "°"))),
            ReadingKind.WheelForce => new WheelForce(reading.Number("n", new(-ReadingLimits.WheelForceN, ReadingLimits.WheelForceN, "N"))),
            ReadingKind.FuelDifference => new FuelDifference(reading.Number("l", new(-2000, 2000, "L"))),
            ReadingKind.Rolls => RollsOf(reading),
            _ => null,
        };
        if (read is null)
        {
            reading.AllowTheRest();
            return new RollRate(double.NaN);
        }
        return read with
        {
            Method = reading.WordIfGiven<ReadingMethod>("method") ?? ReadingMethod.Eye,
            Sd = reading.NumberIfGiven("sd", GroundCheckReader.Sd),
        };
    }

    static TimeToBank TimeToBankOf(FieldReader reading)
    {
        var read = new TimeToBank(reading.Number("deg", BankDeg), reading.Number("seconds", Seconds));
        if (read.Deg == 0)
            reading.Refuse("deg", "a bank other than 0");
        return read;
    }

    static Rolls RollsOf(FieldReader reading)
    {
        var read = new Rolls(reading.Word<RollSide>("side") ?? default, reading.WordIfGiven<RollStrength>("strength"));
        if (read.Side != RollSide.None && !reading.Has("strength"))
            reading.Refuse("strength", $"one of {string.Join(", ", Wire.Words<RollStrength>())}");
        return read;
    }
}
