using MathNet.Numerics.Distributions;

namespace Rigging.Mechanics.Assessment;

/// <summary>A weighted sum of normal distributions; what averaging over explanations leaves of a number.</summary>
sealed class NormalMixture
{
    readonly (double Weight, double Mean, double Sd)[] parts;

    public NormalMixture(IEnumerable<(double Weight, double Mean, double Variance)> parts)
    {
        var all = parts.ToArray();
        // What weighs a hundred-thousandth of the heaviest moves no figure that anybody reads.
        var heaviest = all.Max(p => p.Weight);
        var kept = all.Where(part => part.Weight > 1e-5 * heaviest).ToArray();
        var total = kept.Sum(part => part.Weight);
        this.parts = [.. kept.Select(part => (part.Weight / total, part.Mean, Math.Sqrt(Math.Max(part.Variance, 1e-18))))];
    }

    public double Mean => parts.Sum(part => part.Weight * part.Mean);

    /// <summary>Probability of lying below a value.</summary>
    public double Below(double value) => parts.Sum(part => part.Weight * Normal.CDF(part.Mean, part.Sd, value));

    public double Within(double limit) => Below(limit) - Below(-limit);

    /// <summary>The mean with its 90 % interval.</summary>
    public Contract.Estimate Estimate(string unit) => new(Mean, Quantile(0.05), Quantile(0.95), unit);

    double Quantile(double probability)
    {
        var (low, high) = (parts.Min(p => p.Mean - 8 * p.Sd), parts.Max(p => p.Mean + 8 * p.Sd));
        for (var i = 0; i < 48; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle) < probability ? (middle, high) : (low, middle);
        }
        return (low + high) / 2;
    }
}
