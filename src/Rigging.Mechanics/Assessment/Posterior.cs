using MathNet.Numerics.LinearAlgebra;

namespace Rigging.Mechanics.Assessment;

/// <summary>One explanation: which causes are present, how credible that is, and how large each is then.</summary>
/// <param name="Present">Places in <see cref="ModelledCause.All"/>, ascending; empty when nothing is wrong.</param>
/// <param name="Amplitudes">Mean of every modelled cause; zero for those not present.</param>
/// <param name="Covariance">Of the present ones, in their order.</param>
sealed record Explanation(int[] Present, double Weight, double[] Amplitudes, Matrix<double> Covariance)
{
    public double Variance(IReadOnlyList<double> gains)
    {
        var sum = 0.0;
        for (var i = 0; i < Present.Length; i++)
            for (var j = 0; j < Present.Length; j++)
                sum += gains[Present[i]] * Covariance[i, j] * gains[Present[j]];
        return sum;
    }

    public double Mean(IReadOnlyList<double> gains) => Present.Sum(cause => gains[cause] * Amplitudes[cause]);
}

/// <summary>
/// What the observations make of the causes: linear, Gaussian, every set of up to three causes weighed by its evidence in
/// closed form. The model error depends on what a set predicts, so each set is solved three times over.
/// </summary>
sealed class Posterior
{
    const int MostCauses = 3;
    const int Passes = 3;

    public Posterior(IReadOnlyList<Observation> observations, IReadOnlyList<(double Probability, double Spread)> priors, double modelError)
    {
        var scored = Subsets(priors.Count).Select(present => Explain(present, observations, priors, modelError)).ToArray();
        var best = scored.Max(s => s.LogWeight);
        var total = scored.Sum(s => Math.Exp(s.LogWeight - best));
        // Not impossible, only incredible: a weight that underflows to nothing would claim more than anybody knows.
        Explanations = [.. scored.Select(s => s.Explanation with { Weight = Math.Max(Math.Exp(s.LogWeight - best) / total, 1e-12) })];
    }

    public IReadOnlyList<Explanation> Explanations { get; }

    public Explanation MostCredible => Explanations.MaxBy(explanation => explanation.Weight)!;

    public double Probability(int cause) => Explanations.Where(e => e.Present.Contains(cause)).Sum(e => e.Weight);

    /// <summary>How large a cause is, given that it is present.</summary>
    public NormalMixture Amplitude(int cause) => new(Explanations
        .Where(e => e.Present.Contains(cause))
        .Select(e => (e.Weight, e.Amplitudes[cause], e.Covariance[Array.IndexOf(e.Present, cause), Array.IndexOf(e.Present, cause)])));

    /// <summary>Any number that is a straight line in the amplitudes; the extra variance may depend on its mean.</summary>
    public NormalMixture Predict(double known, IReadOnlyList<double> gains, Func<double, double> extraVariance) =>
        new(Explanations.Select(e =>
        {
            var mean = known + e.Mean(gains);
            return (e.Weight, mean, e.Variance(gains) + extraVariance(mean));
        }));

    static (double LogWeight, Explanation Explanation) Explain(
        int[] present,
        IReadOnlyList<Observation> observations,
        IReadOnlyList<(double Probability, double Spread)> priors,
        double modelError)
    {
        double Left(int i) => observations[i].Unexplained;
        Func<int, double> Gain(int cause) => i => observations[i].Gains[cause];

        var amplitudes = new double[priors.Count];
        var (logWeight, covariance) = (0.0, Matrix<double>.Build.Dense(1, 1));
        for (var pass = 0; pass < (present.Length == 0 ? 1 : Passes); pass++)
        {
            var noise = new ObservationNoise(observations, amplitudes, modelError);
            logWeight = -(noise.LogDeterminant + noise.Product(Left, Left)) / 2;
            if (present.Length == 0)
                break;

            var pull = Vector<double>.Build.Dense(present.Length, i => noise.Product(Gain(present[i]), Left));
            var precision = Matrix<double>.Build.Dense(present.Length, present.Length, (i, j) =>
                noise.Product(Gain(present[i]), Gain(present[j])) + (i == j ? 1 / Square(priors[present[i]].Spread) : 0));
            var factor = precision.Cholesky();
            var mean = factor.Solve(pull);
            logWeight += pull * mean / 2 - factor.DeterminantLn / 2 - present.Sum(cause => Math.Log(priors[cause].Spread));
            covariance = factor.Solve(Matrix<double>.Build.DenseIdentity(present.Length));
            for (var i = 0; i < present.Length; i++)
                amplitudes[present[i]] = mean[i];
        }
        for (var cause = 0; cause < priors.Count; cause++)
            logWeight += Math.Log(present.Contains(cause) ? priors[cause].Probability : 1 - priors[cause].Probability);
        return (logWeight, new(present, 0, amplitudes, covariance));
    }

    static IEnumerable<int[]> Subsets(int count)
    {
        for (var bits = 0; bits < 1 << count; bits++)
            if (System.Numerics.BitOperations.PopCount((uint)bits) <= MostCauses)
                yield return [.. Enumerable.Range(0, count).Where(cause => (bits >> cause & 1) == 1)];
    }

    static double Square(double value) => value * value;
}
