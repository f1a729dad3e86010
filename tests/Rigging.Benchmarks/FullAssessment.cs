using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Benchmarks;

/// <summary>
/// The contract's example, from the request to the answer, against the linear algebra it cannot do without: the wing factorised and solved
/// for its loadings, and for each set of up to three of the twelve causes a covariance of the observations factorised and solved.
/// </summary>
public class FullAssessment
{
    const int Panels = 80, Loadings = 7, Causes = 12;

    static readonly int Observed = Example.Request.TestPoints.Sum(point => point.Readings.Count) + Example.Request.GroundChecks.Count;

    static readonly int[][] Sets = [.. Enumerable.Range(0, 1 << Causes)
        .Where(set => int.PopCount(set) <= 3)
        .Select(set => Enumerable.Range(0, Causes).Where(cause => (set >> cause & 1) == 1).ToArray())];

    readonly Matrix<double> wing = Matrix<double>.Build.Dense(Panels, Panels, (i, j) => (i == j ? 1 : 0) + 1.0 / (1 + Math.Abs(i - j)));
    readonly Vector<double> incidences = Vector<double>.Build.Dense(Panels, 1.0);
    readonly Matrix<double> signatures = Matrix<double>.Build.Dense(Observed, Causes, (i, j) => Math.Sin(1 + i + Causes * j));
    readonly Vector<double> observed = Vector<double>.Build.Dense(Observed, 1.0);

    [Benchmark(Baseline = true)]
    public double BareLinearAlgebra()
    {
        var factors = wing.LU();
        var sum = 0.0;
        for (var i = 0; i < Loadings; i++)
            sum += factors.Solve(incidences)[0];
        foreach (var causes in Sets)
        {
            var covariance = Matrix<double>.Build.DenseIdentity(Observed);
            foreach (var cause in causes)
                covariance += signatures.Column(cause).OuterProduct(signatures.Column(cause));
            var factor = covariance.Cholesky();
            sum += factor.DeterminantLn + observed.DotProduct(factor.Solve(observed));
        }
        return sum;
    }

    [Benchmark]
    public AssessmentResponse Assessment() => Assessor.Assess(Example.Request, Example.Airframe);
}
