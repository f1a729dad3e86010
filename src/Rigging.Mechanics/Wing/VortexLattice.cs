using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Rigging.Mechanics.Wing;

/// <summary>
/// A flat vortex lattice over the whole span, strips spaced by the cosine rule, one to four rows along the chord,
/// factorised once and then solved for any change of incidence along the span. Both wings are built alike, so what is the same on both sides
/// and what is opposite do not mix: two sets of equations of half the size, one for each.
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
    readonly LU<double> alike, opposite;
    readonly int rows;
    readonly Lazy<(SpanLoading BuiltIn, SpanLoading Uniform)> carried;

    public VortexLattice(Planform wing, int strips = 40, int rows = 2)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(strips, 4);
        ArgumentOutOfRangeException.ThrowIfNotEqual(strips % 2, 0, nameof(strips));
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rows, 4);
        (Wing, this.rows) = (wing, rows);
        Strips = [.. Enumerable.Range(0, strips).Select(i => StripAt(wing, i, strips))];
        var (same, contrary) = Equations();
        (alike, opposite) = (same.LU(), contrary.LU());
        carried = new(() => (BuiltIn(), Response(IncidenceShape.Uniform(wing.SpanM))));
    }

    public Planform Wing { get; }

    public int Rows => rows;

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
    /// The loading at a given lift coefficient: the built-in twist, flaps if they are lowered, and whatever uniform incidence the rest takes.
    /// </summary>
    /// <param name="ofFlaps">What the flaps do at one radian of both; null where they are up.</param>
    public SpanLoading AtLift(double liftCoefficient, SpanLoading? ofFlaps = null, double flapRad = 0)
    {
        var (builtIn, uniform) = carried.Value;
        var incidenceRad = (liftCoefficient - builtIn.LiftCoefficient - flapRad * (ofFlaps?.LiftCoefficient ?? 0)) / uniform.LiftCoefficient;
        return new(this, [.. Enumerable.Range(0, Strips.Length).Select(i =>
            builtIn.CirculationM[i] + flapRad * (ofFlaps?.CirculationM[i] ?? 0) + incidenceRad * uniform.CirculationM[i])]);
    }

    SpanLoading Solve(Func<int, double> incidenceRad)
    {
        var half = Strips.Length / 2;
        var (mean, difference) = (new double[half * rows], new double[half * rows]);
        for (var strip = 0; strip < half; strip++)
        {
            var (left, right) = (incidenceRad(strip), incidenceRad(Strips.Length - 1 - strip));
            mean.AsSpan(strip * rows, rows).Fill((left + right) / 2);
            difference.AsSpan(strip * rows, rows).Fill((left - right) / 2);
        }
        var (both, against) = (alike.Solve(Vector<double>.Build.Dense(mean)), opposite.Solve(Vector<double>.Build.Dense(difference)));
        var circulationM = new double[Strips.Length];
        for (var k = 0; k < half * rows; k++)
        {
            circulationM[k / rows] += both[k] + against[k];
            circulationM[Strips.Length - 1 - k / rows] += both[k] - against[k];
        }
        return new(this, circulationM);
    }

    /// <summary>Half the wash far behind the wing at each strip, over airspeed, down positive: what turns lift into drag.</summary>
    internal double[] WashBehind(IReadOnlyList<double> circulationM)
    {
        var wash = new double[Strips.Length];
        for (var at = 0; at < wash.Length; at++)
        {
            var sum = 0.0;
            var left = 1 / (Strips[at].ControlYM - Strips[0].LeftYM);
            for (var from = 0; from < wash.Length; from++)
            {
                var right = 1 / (Strips[at].ControlYM - Strips[from].RightYM);
                sum += circulationM[from] * (left - right);
                left = right;
            }
            wash[at] = sum / (4 * Math.PI);
        }
        return wash;
    }

    /// <summary>
    /// What the horseshoe vortices wash at the control points of the left wing, each with its mirror image: when both turn alike, and when
    /// they turn opposite ways.
    /// </summary>
    internal (Matrix<double> Alike, Matrix<double> Opposite) Equations()
    {
        var half = Strips.Length / 2;
        var size = half * rows;
        var (same, contrary) = (new double[size * size], new double[size * size]);
        double[] edgeYM = [Strips[0].LeftYM, .. Strips.Select(strip => strip.RightYM)];
        double[] edgeChordM = [.. edgeYM.Select(Wing.ChordAt)];

        for (var at = 0; at < size; at++)
        {
            var (yM, chordM) = (Strips[at / rows].ControlYM, Wing.ChordAt(Strips[at / rows].ControlYM));
            var xM = ((at % rows + 0.75) / rows - 0.25) * chordM;
            var slopeLoss = 2 / chordM * (1 / Wing.SectionLiftSlopeAt(yM) - 1 / (2 * Math.PI));
            for (var row = 0; row < rows; row++)
            {
                var quarter = (row + 0.25) / rows - 0.25;
                var left = new Corner(xM - quarter * edgeChordM[0], yM - edgeYM[0]);
                for (var strip = 0; strip < Strips.Length; strip++)
                {
                    var right = new Corner(xM - quarter * edgeChordM[strip + 1], yM - edgeYM[strip + 1]);
                    var wash = Corner.Wash(left, right) + (strip == at / rows ? slopeLoss : 0);
                    var onLeft = strip < half;
                    var from = ((onLeft ? strip : Strips.Length - 1 - strip) * rows + row) * size + at;
                    same[from] += wash;
                    contrary[from] += onLeft ? wash : -wash;
                    left = right;
                }
            }
        }
        return (Matrix<double>.Build.Dense(size, size, same), Matrix<double>.Build.Dense(size, size, contrary));
    }

    /// <summary>A corner of a horseshoe vortex as seen from a control point; the next strip begins where this one ends.</summary>
    readonly struct Corner
    {
        readonly double xM, yM, perM, trailing;

        public Corner(double xM, double yM)
        {
            (this.xM, this.yM) = (xM, yM);
            perM = 1 / Math.Sqrt(xM * xM + yM * yM);
            trailing = (1 + xM * perM) / yM;
        }

        /// <summary>Downwash from a horseshoe vortex of unit strength (Biot and Savart, flat wake straight back).</summary>
        public static double Wash(in Corner left, in Corner right)
        {
            var (dx, dy) = (left.xM - right.xM, left.yM - right.yM);
            var cross = left.xM * right.yM - right.xM * left.yM;
            // In line with the bound vortex it washes nothing.
            var bound = Math.Abs(cross) < 1e-12 ? 0 : ((dx * left.xM + dy * left.yM) * left.perM - (dx * right.xM + dy * right.yM) * right.perM) / cross;
            return (left.trailing - right.trailing - bound) / (4 * Math.PI);
        }
    }

    static Strip StripAt(Planform wing, int index, int count)
    {
        double AtStep(double step) => -wing.SpanM / 2 * Math.Cos(step * Math.PI / count);
        return new(AtStep(index), AtStep(index + 1), AtStep(index + 0.5));
    }
}
