namespace Rigging.Mechanics.Assessment;

/// <summary>Readings that err together: the same wrong derivative stands behind all of a family.</summary>
enum ReadingFamily { Ground, Roll, Yaw, Wheel, Fuel }

/// <summary>A value known only to lie in a range whose ends are soft by <paramref name="Sd"/>; an end may be infinite.</summary>
readonly record struct Band(double From, double To, double Sd);

/// <summary>One thing that was observed, as a straight line in the amplitudes of the causes.</summary>
/// <param name="Source">Which reading or check it came from, for a person.</param>
/// <param name="Observed">In the unit of the prediction; the middle of its range when it is only a range.</param>
/// <param name="Known">What everything known (load, slipstream) predicts.</param>
/// <param name="Gains">What one unit of each amplitude adds to that, in the order of <see cref="ModelledCause.Traces"/>.</param>
/// <param name="Variance">Of reading and rounding, without model error.</param>
/// <param name="FrictionGain">What one newton of friction may move it either way when nobody knows the last input.</param>
/// <param name="ErrorTimes">By how often the usual model error each amplitude's part is uncertain, and last that of what is known; null where it is the usual one of a flight, or none for what is measured on the ground.</param>
/// <param name="Range">Not null when no number was read, only a word.</param>
/// <param name="PerFigure">Of <see cref="FigureErrors"/>; null where nothing was estimated that it rests on.</param>
sealed record Observation(
    ObservationSource Source,
    ReadingFamily Family,
    double Observed,
    double Known,
    double[] Gains,
    double Variance,
    double FrictionGain = 0,
    Band? Range = null,
    double[]? ErrorTimes = null,
    double[][]? PerFigure = null)
{
    /// <summary>By how often the usual model error what an amplitude adds is uncertain.</summary>
    public double ErrorOf(int trace) => ErrorTimes?[trace] ?? UsualError;

    /// <summary>The same for what is known.</summary>
    public double ErrorOfKnown => ErrorTimes?[^1] ?? UsualError;

    double UsualError => IsFlown ? 1 : 0;

    /// <summary>What is left for the causes to explain.</summary>
    public double Unexplained => Observed - Known;

    /// <summary>What it would be, known things included, with these amplitudes.</summary>
    public double Predicted(double[] amplitudes)
    {
        var sum = Known;
        for (var k = 0; k < amplitudes.Length; k++)
            sum += Gains[k] * amplitudes[k];
        return sum;
    }

    public bool IsFlown => Family != ReadingFamily.Ground;
}

/// <param name="Point">Place of the test point in the request; null for a ground check.</param>
/// <param name="Index">Place of the reading in its point, or of the ground check in the request.</param>
readonly record struct ObservationSource(int? Point, int Index);
