using UnitsNet;

namespace Rigging.Mechanics.Survey;

/// <summary>
/// One place read twice with a level or protractor: as laid down, and turned end for end. What the instrument shows when it
/// lies level, its zero, has the same sign both times and cancels.
/// </summary>
/// <param name="AsLaid">Positive the way the angle counts: leading edge up, trailing edge down.</param>
/// <param name="Reversed">What it shows after being turned end for end; near the negative of the first.</param>
/// <remarks>Shown = angle + zero, then −angle + zero. So angle = (first − second)/2 and zero = (first + second)/2.</remarks>
public sealed record ReversedReading(Angle AsLaid, Angle Reversed)
{
    public Angle True => (AsLaid - Reversed) / 2;

    /// <summary>What the instrument would show on a level place.</summary>
    public Angle Zero => (AsLaid + Reversed) / 2;
}

/// <summary>How well an angle is known.</summary>
/// <param name="Sd">One standard deviation.</param>
public sealed record MeasuredAngle(Angle Value, Angle Sd)
{
    /// <summary>
    /// Mean of several reversed readings of one place. The deviation is the larger of what the instrument's resolution allows
    /// and what the readings scatter, over the root of their number; never better than a tenth of the resolution.
    /// </summary>
    /// <param name="readings">One or more.</param>
    /// <param name="resolution">Smallest step the instrument shows; a reading is off by up to half of it either way.</param>
    public static MeasuredAngle Mean(IReadOnlyList<ReversedReading> readings, Angle resolution)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentOutOfRangeException.ThrowIfZero(readings.Count, nameof(readings));
        var (count, stepDeg) = (readings.Count, resolution.Degrees);
        var meanDeg = readings.Average(reading => reading.True.Degrees);
        // Two readings make one angle: their halves add as squares.
        var byStep = stepDeg / Math.Sqrt(12) / Math.Sqrt(2);
        var byScatter = count < 2 ? 0 : Math.Sqrt(readings.Sum(reading => Math.Pow(reading.True.Degrees - meanDeg, 2)) / (count - 1));
        return new(Angle.FromDegrees(meanDeg), Angle.FromDegrees(Math.Max(Math.Max(byStep, byScatter) / Math.Sqrt(count), stepDeg / 10)));
    }

    /// <summary>The difference of two, each wrong by itself.</summary>
    public MeasuredAngle Less(MeasuredAngle other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new(Value - other.Value, Angle.FromDegrees(Math.Sqrt(Math.Pow(Sd.Degrees, 2) + Math.Pow(other.Sd.Degrees, 2))));
    }
}
