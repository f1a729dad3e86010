using MathNet.Numerics.Distributions;

namespace Rigging.Mechanics.Assessment;

/// <summary>A weighted sum of normal distributions; what averaging over explanations leaves of a number.</summary>
sealed class NormalMixture
{
    readonly (double Weight, double Mean, double Sd)[] parts;

    public NormalMixture(IEnumerable<(double Weight, double Mean, double Variance)> parts)
    {
        var all = parts.ToArray();
        var kept = all.Where(part => part.Weight > 1e-9 * all.Max(p => p.Weight)).ToArray();
        var total = kept.Sum(part => part.Weight);
        this.parts = [.. kept.Select(part => (part.Weight / total, part.Mean, Math.Sqrt(Math.Max(part.Variance, 1e-18))))];
    }

    /// <summary>False when an airframe's figures led to no number at all.</summary>
    public bool IsFinite => parts.All(part => double.IsFinite(part.Mean) && double.IsFinite(part.Sd));

    public double Mean => parts.Sum(part => part.Weight * part.Mean);

    /// <summary>Probability of lying below a value.</summary>
    public double Below(double value) => parts.Sum(part => part.Weight * Normal.CDF(part.Mean, part.Sd, value));

    public double Within(double limit) => Below(limit) - Below(-limit);

    /// <summary>The mean with its 90 % interval.</summary>
    public Contract.Estimate Estimate(string unit) => new(Mean, Quantile(0.05), Quantile(0.95), unit);

    /// <summary>Entropy of the mixture less the mean entropy of its parts, bits: what one look tells about which part it is.</summary>
    public double InformationBits()
    {
        const int steps = 400;
        var (from, to) = (parts.Min(p => p.Mean - 5 * p.Sd), parts.Max(p => p.Mean + 5 * p.Sd));
        // The sharpest part that matters must still be seen by the grid; the parts are alike enough for that in practice.
        var width = (to - from) / steps;
        var mixed = 0.0;
        for (var i = 0; i < steps; i++)
        {
            var at = from + (i + 0.5) * width;
            var density = parts.Sum(p => p.Weight * Math.Exp(-Square((at - p.Mean) / p.Sd) / 2) / (p.Sd * Math.Sqrt(2 * Math.PI)));
            if (density > 0)
                mixed -= density * Math.Log2(density) * width;
        }
        var apart = parts.Sum(p => p.Weight * Math.Log2(p.Sd * Math.Sqrt(2 * Math.PI * Math.E)));
        return Math.Max(0, mixed - apart);
    }

    double Quantile(double probability)
    {
        var (low, high) = (parts.Min(p => p.Mean - 8 * p.Sd), parts.Max(p => p.Mean + 8 * p.Sd));
        for (var i = 0; i < 80; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle) < probability ? (middle, high) : (low, middle);
        }
        return (low + high) / 2;
    }

    static double Square(double value) => value * value;
}
