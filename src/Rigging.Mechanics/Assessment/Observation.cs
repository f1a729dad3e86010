namespace Rigging.Mechanics.Assessment;

/// <summary>Readings that err together: the same wrong derivative stands behind all of a family.</summary>
enum ReadingFamily { Ground, Roll, Yaw, Wheel, Fuel }

/// <summary>One number that was observed, as a straight line in the amplitudes of the causes.</summary>
/// <param name="Observed">In the unit of the prediction.</param>
/// <param name="Known">What everything known (load, slipstream, what was measured) predicts.</param>
/// <param name="Gains">What one unit of each modelled cause adds to that, in the order of <see cref="ModelledCause.All"/>.</param>
/// <param name="Variance">Of reading and rounding, without model error.</param>
sealed record Observation(ReadingFamily Family, double Observed, double Known, double[] Gains, double Variance)
{
    /// <summary>What is left for the causes to explain.</summary>
    public double Unexplained => Observed - Known;
}
