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

    /// <summary>By false position, halving the weight of an end that stays (Illinois).</summary>
    double Quantile(double probability)
    {
        var (low, high) = (parts.Min(p => p.Mean - 8 * p.Sd), parts.Max(p => p.Mean + 8 * p.Sd));
        var (under, over, side) = (-probability, 1 - probability, 0);
        for (var i = 0; i < 60; i++)
        {
            // Every third step halves, so that one far part does not hold it up.
            var at = i % 3 == 2 ? (low + high) / 2 : (low * over - high * under) / (over - under);
            var miss = Below(at) - probability;
            if (Math.Abs(miss) < 1e-14 || high - low < 1e-12 * (Math.Abs(low) + Math.Abs(high)))
                return at;
            if (miss < 0)
            {
                (low, under) = (at, miss);
                over = side < 0 ? over / 2 : over;
                side = -1;
            }
            else
            {
                (high, over) = (at, miss);
                under = side > 0 ? under / 2 : under;
                side = 1;
            }
        }
        return (low + high) / 2;
    }
}
