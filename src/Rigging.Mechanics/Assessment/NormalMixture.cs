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
        var (from, to) = (parts.Min(p => p.Mean - 5 * p.Sd), parts.Max(p => p.Mean + 5 * p.Sd));
        // The sharpest part must still be seen by the grid.
        var steps = (int)Math.Clamp((to - from) / (parts.Min(p => p.Sd) / 2), 60, 400);
        var width = (to - from) / steps;
        var mixed = 0.0;
        for (var i = 0; i < steps; i++)
        {
            var at = from + (i + 0.5) * width;
            var density = 0.0;
            foreach (var (weight, mean, sd) in parts)
                if (Math.Abs(at - mean) < 8 * sd)
                    density += weight * Math.Exp(-Square((at - mean) / sd) / 2) / (sd * Math.Sqrt(2 * Math.PI));
            if (density > 0)
                mixed -= density * Math.Log2(density) * width;
        }
        var apart = parts.Sum(p => p.Weight * Math.Log2(p.Sd * Math.Sqrt(2 * Math.PI * Math.E)));
        return Math.Max(0, mixed - apart);
    }

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

    static double Square(double value) => value * value;
}
