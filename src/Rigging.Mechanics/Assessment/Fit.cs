using MathNet.Numerics.Distributions;

namespace Rigging.Mechanics.Assessment;

/// <summary>How well the most credible explanation agrees with everything that was read as a number.</summary>
/// <param name="SquaredMisfit">Sum of squared misfits, each in its own standard deviation, the prior's pull included.</param>
/// <param name="Readings">How many.</param>
readonly record struct Fit(double SquaredMisfit, int Readings)
{
    /// <summary>So bad a misfit comes by chance in one of a thousand (judgement, no source).</summary>
    const double ByChance = 0.001;

    public bool IsPoor => Readings > 0 && 1 - new ChiSquared(Readings).CumulativeDistribution(SquaredMisfit) < ByChance;

    public static Fit OfBest(Evidence evidence)
    {
        var best = evidence.Posterior.MostCredible;
        var read = evidence.Observations.Where(observation => observation.Range is null).ToArray();
        var noise = new ObservationNoise(read);
        noise.Suppose(read, best.Amplitudes, evidence.Posterior.Friction(best), evidence.Practice.ModelError);
        double[] misfit = [.. read.Select(observation => observation.Observed - observation.Predicted(best.Amplitudes))];
        return new(noise.Product(misfit, misfit), read.Length);
    }
}
