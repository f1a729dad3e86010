using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Rigging.Mechanics.Wing;

/// <summary>
/// A flat vortex lattice over the whole span, strips spaced by the cosine rule, one to four rows along the chord,
/// factorised once and then solved for any change of incidence along the span.
/// </summary>
/// <remarks>
/// Each panel carries a horseshoe vortex at its quarter chord and meets the flow at its three-quarter chord; the rows
/// share the chord equally. A flat lattice has the lift slope 2π in two dimensions. A section with another slope a₀
/// loses incidence in proportion to its own lift, c_l·(1/a₀ − 1/2π), alike in all rows of the strip: in two dimensions
/// this gives a₀ exactly, and along a very long span it is the lifting-line equation with a₀.
/// Lift is taken to first order: small angles, no wake roll-up, no fuselage.
/// </remarks>
public sealed class VortexLattice
{
    readonly LU<double> equations;
    readonly int rows;

    public VortexLattice(Planform wing, int strips = 40, int rows = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(strips, 4);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rows, 4);
        (Wing, this.rows) = (wing, rows);
        Strips = [.. Enumerable.Range(0, strips).Select(i => StripAt(wing, i, strips))];
        equations = Equations().LU();
    }

    public Planform Wing { get; }

    internal Strip[] Strips { get; }

    /// <summary>Control point by the half cosine step, which keeps the lattice accurate up to the tips.</summary>
    internal readonly record struct Strip(double LeftYM, double RightYM, double ControlYM)
    {
        internal double WidthM => RightYM - LeftYM;

        internal double MiddleYM => (LeftYM + RightYM) / 2;
    }

    /// <summary>The loading for a change of incidence.</summary>
    public SpanLoading Response(IncidenceShape shape) =>
        Solve(i => shape.MeanBetween(Strips[i].LeftYM, Strips[i].RightYM));

    /// <summary>The loading for the incidence the wing is built with, root to tip.</summary>
    public SpanLoading BuiltIn() => Solve(i => Wing.IncidenceAt(Strips[i].ControlYM));

    /// <summary>
    /// The loading at a given lift coefficient: the built-in twist plus whatever uniform incidence it takes.
    /// </summary>
    public SpanLoading AtLift(double liftCoefficient)
    {
        var (builtIn, uniform) = (BuiltIn(), Response(IncidenceShape.Uniform(Wing.SpanM)));
        var incidenceRad = (liftCoefficient - builtIn.LiftCoefficient) / uniform.LiftCoefficient;
        return new(this, [.. builtIn.CirculationM.Zip(uniform.CirculationM, (b, u) => b + incidenceRad * u)]);
    }

    SpanLoading Solve(Func<int, double> incidenceRad)
    {
        var right = Vector<double>.Build.Dense(Strips.Length * rows, k => incidenceRad(k / rows));
        var circulation = equations.Solve(right);
        return new(this, [.. Strips.Select((_, i) => circulation.SubVector(i * rows, rows).Sum())]);
    }

    /// <summary>Half the wash far behind the wing at each strip, over airspeed, down positive: what turns lift into drag.</summary>
    internal double[] WashBehind(IReadOnlyList<double> circulationM) =>
        [.. Strips.Select(at => Strips
            .Select((from, j) => circulationM[j] * (1 / (at.ControlYM - from.LeftYM) - 1 / (at.ControlYM - from.RightYM)))
            .Sum() / (4 * Math.PI))];

    Matrix<double> Equations()
    {
        var size = Strips.Length * rows;
        var slopeLoss = Strips.Select(strip => 2 / Wing.ChordAt(strip.ControlYM)
            * (1 / Wing.SectionLiftSlopeAt(strip.ControlYM) - 1 / (2 * Math.PI))).ToArray();
        return Matrix<double>.Build.Dense(size, size, (at, from) =>
        {
            var (strip, other) = (at / rows, from / rows);
            var controlYM = Strips[strip].ControlYM;
            var controlXM = LineXM(controlYM, (at % rows + 0.75) / rows);
            var wash = Wash(controlXM, controlYM, Strips[other], (from % rows + 0.25) / rows);
            return strip == other ? wash + slopeLoss[strip] : wash;
        });
    }

    /// <summary>How far behind the straight quarter-chord line a fraction of the local chord lies.</summary>
    double LineXM(double yM, double chordFraction) => (chordFraction - 0.25) * Wing.ChordAt(yM);

    /// <summary>Downwash at a point from a horseshoe vortex of unit strength on a strip (Biot and Savart, flat wake straight back).</summary>
    double Wash(double xM, double yM, Strip strip, double chordFraction)
    {
        var (x1, y1) = (xM - LineXM(strip.LeftYM, chordFraction), yM - strip.LeftYM);
        var (x2, y2) = (xM - LineXM(strip.RightYM, chordFraction), yM - strip.RightYM);
        var (r1, r2) = (Math.Sqrt(x1 * x1 + y1 * y1), Math.Sqrt(x2 * x2 + y2 * y2));
        var (dx, dy) = (x1 - x2, y1 - y2);

        var cross = x1 * y2 - x2 * y1;
        // In line with the bound vortex it washes nothing.
        var bound = Math.Abs(cross) < 1e-12 ? 0 : ((dx * x1 + dy * y1) / r1 - (dx * x2 + dy * y2) / r2) / cross;
        var trailing = -(1 + x1 / r1) / y1 + (1 + x2 / r2) / y2;
        return -(bound + trailing) / (4 * Math.PI);
    }

    static Strip StripAt(Planform wing, int index, int count)
    {
        double AtStep(double step) => -wing.SpanM / 2 * Math.Cos(step * Math.PI / count);
        return new(AtStep(index), AtStep(index + 1), AtStep(index + 0.5));
    }
}
