using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Rigging.Mechanics.Wing;

/// <summary>
/// The lifting-line wing as a sine series, collocated at evenly spaced angles: Γ = 2bV·ΣAₙ sin nθ, y = −(b/2)·cos θ.
/// An independent check beside the lattice; at the aspect ratio of a light aeroplane it gives 10 to 20 % too much
/// damping in roll, so nothing else is computed from it.
/// </summary>
public sealed class LiftingLine
{
    readonly Planform wing;
    readonly double[] theta;
    readonly LU<double> equations;

    /// <param name="wing">The same wing that the lattice takes.</param>
    /// <param name="nodes">Collocation points, tips not counted; odd puts one on the centreline.</param>
    public LiftingLine(Planform wing, int nodes)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(nodes, 2);
        this.wing = wing;
        theta = [.. Enumerable.Range(1, nodes).Select(j => j * Math.PI / (nodes + 1))];
        equations = Matrix<double>.Build.Dense(nodes, nodes, (j, k) =>
            Math.Sin((k + 1) * theta[j]) * ((k + 1) * Mu(theta[j]) + Math.Sin(theta[j]))).LU();
    }

    /// <summary>The series A₁, A₂, … for a change of incidence.</summary>
    public LiftingLineSeries Response(IncidenceShape shape) => Solve(shape.At);

    /// <summary>The series for the incidence the wing is built with.</summary>
    public LiftingLineSeries BuiltIn() => Solve(wing.IncidenceAt);

    LiftingLineSeries Solve(Func<double, double> incidenceRad) =>
        new(wing.AspectRatio, [.. equations.Solve(Vector<double>.Build.Dense(
            [.. theta.Select(t => Mu(t) * incidenceRad(YM(t)) * Math.Sin(t))]))]);

    double YM(double t) => -wing.SpanM / 2 * Math.Cos(t);

    double Mu(double t) => wing.SectionLiftSlopeAt(YM(t)) * wing.ChordAt(YM(t)) / (4 * wing.SpanM);
}

/// <summary>A sine series and its sums. <c>Terms[0]</c> is A₁.</summary>
public sealed record LiftingLineSeries(double AspectRatio, IReadOnlyList<double> Terms)
{
    public double LiftCoefficient => Math.PI * AspectRatio * Terms[0];

    /// <summary>Positive right wing down.</summary>
    public double RollingMomentCoefficient => Math.PI * AspectRatio * Terms[1] / 4;

    public double InducedDragCoefficient =>
        Math.PI * AspectRatio * Terms.Select((term, k) => (k + 1) * term * term).Sum();
}
