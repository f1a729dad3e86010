using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Benchmarks;

/// <summary>
/// The contract's example, from the request to the answer, against the linear algebra it cannot do without, by the library and nothing else:
/// the wing factorised and solved for its loadings; and for each set of up to three of the twelve causes, in each of the three passes that
/// settle the model error, the covariance of the observations factorised, solved for every amplitude of the set and for what was observed,
/// and the amplitudes' own matrix factorised and inverted.
/// </summary>
public class FullAssessment
{
    const int Panels = 80, Loadings = 7, Causes = 12, Passes = 3;

    static readonly int Observed = Example.Request.TestPoints.Sum(point => point.Readings.Count) + Example.Request.GroundChecks.Count;

    /// <summary>How many amplitudes each cause has.</summary>
    static readonly int[] Amplitudes = [1, 1, 1, 2, 2, 1, 1, 1, 1, 1, 1, 3];

    static readonly int[][] Sets = [.. Enumerable.Range(0, 1 << Causes)
        .Where(set => int.PopCount(set) <= 3)
        .Select(set => Enumerable.Range(0, Causes).Where(cause => (set >> cause & 1) == 1).SelectMany(cause => Enumerable.Range(Amplitudes[..cause].Sum(), Amplitudes[cause])).ToArray())];

    readonly Matrix<double> wing = Matrix<double>.Build.Dense(Panels, Panels, (i, j) => (i == j ? 1 : 0) + 1.0 / (1 + Math.Abs(i - j)));
    readonly Vector<double> incidences = Vector<double>.Build.Dense(Panels, 1.0);
    readonly Matrix<double> noise = Matrix<double>.Build.Dense(Observed, Observed, (i, j) => (i == j ? 1 : 0) + 0.1 / (1 + Math.Abs(i - j)));
    readonly Matrix<double>[] signatures = [.. Sets.Select(set => Matrix<double>.Build.Dense(Observed, Math.Max(1, set.Length), (i, j) => Math.Sin(1 + i + 16 * (set.Length == 0 ? 0 : set[j]))))];
    readonly Vector<double> observed = Vector<double>.Build.Dense(Observed, 1.0);

    [Benchmark(Baseline = true)]
    public double BareLinearAlgebra()
    {
        var factors = wing.LU();
        var sum = 0.0;
        for (var i = 0; i < Loadings; i++)
            sum += factors.Solve(incidences)[0];
        foreach (var signature in signatures)
            for (var pass = 0; pass < Passes; pass++)
            {
                var factor = noise.Cholesky();
                var weighed = factor.Solve(signature);
                var normal = signature.TransposeThisAndMultiply(weighed) + Matrix<double>.Build.DenseIdentity(signature.ColumnCount);
                var pull = weighed.TransposeThisAndMultiply(observed);
                var amplitudes = normal.Cholesky();
                sum += factor.DeterminantLn + observed.DotProduct(factor.Solve(observed)) + amplitudes.DeterminantLn + pull * amplitudes.Solve(pull)
                    + amplitudes.Solve(Matrix<double>.Build.DenseIdentity(signature.ColumnCount))[0, 0];
            }
        return sum;
    }

    [Benchmark]
    public AssessmentResponse Assessment() => Assessor.Assess(Example.Request, Example.Airframe);
}
