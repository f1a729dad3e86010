using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Wing;

namespace Rigging.Benchmarks;

/// <summary>The wing at 80 × 2 panels with every loading the motion needs, against factorising and solving the same matrix once.</summary>
public class WingSetUp
{
    const double InboardYM = 0.5, TipYM = 4.82;

    static readonly Planform Wing = Planform.OfStations([new(0, 1.58, 0.035, 6), new(2.4, 1.58, 0.035, 6), new(TipYM, 1.05, -0.009, 6)]);

    static readonly IncidenceShape[] Shapes =
    [
        IncidenceShape.Uniform(2 * TipYM), IncidenceShape.RollRate(2 * TipYM), IncidenceShape.BandDifference(InboardYM, TipYM),
        IncidenceShape.TwistDifference(InboardYM, TipYM), IncidenceShape.BandDifference(0.6, 2.7), IncidenceShape.BandDifference(2.75, 4.65),
        IncidenceShape.OneSided(3, 3.4, onRight: true),
    ];

    readonly Matrix<double> matrix = WholeMatrix();
    readonly Vector<double> incidences = Vector<double>.Build.Dense(160, 1.0);

    [Benchmark(Baseline = true)]
    public double BareFactorAndSolve() => matrix.LU().Solve(incidences)[0];

    /// <summary>Left panels first, then their mirror images.</summary>
    static Matrix<double> WholeMatrix()
    {
        var (alike, opposite) = new VortexLattice(Wing, 80, 2).Equations();
        var (own, others) = ((alike + opposite) / 2, (alike - opposite) / 2);
        return Matrix<double>.Build.DenseOfMatrixArray(new[,] { { own, others }, { others, own } });
    }

    [Benchmark]
    public double SetUpAndAllResponses()
    {
        var lattice = new VortexLattice(Wing, 80, 2);
        var carried = lattice.AtLift(0.4);
        var sum = 0.0;
        foreach (var shape in Shapes)
        {
            var loading = lattice.Response(shape);
            sum += loading.RollingMomentCoefficient + carried.YawingMomentOf(loading);
        }
        return sum;
    }
}
