using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Rigging.Simulation.Wing;

/// <summary>One station of the right wing. Metres; section lift slope per radian.</summary>
public sealed record Station(double Y, double Chord, double Incidence, double LiftSlope);

/// <summary>One chordwise strip of the whole span; y positive to the right, metres.</summary>
public sealed record Strip(double Left, double Right, double At, double Chord, double Incidence, double LiftSlope)
{
    public double Width => Right - Left;

    public double Middle => (Left + Right) / 2;

    /// <summary>How much of this strip lies in a span of the right wing given by |y|, signed: negative on the left wing.</summary>
    public double Within(double inboard, double outboard) =>
        (Overlap(Left, Right, inboard, outboard) - Overlap(-Right, -Left, inboard, outboard)) / Width;

    static double Overlap(double a, double b, double from, double to) => Math.Max(0, Math.Min(b, to) - Math.Max(a, from));
}

/// <summary>
/// A flat lattice of horseshoe vortices over the whole span, quarter-chord line straight, cosine spaced.
/// A section lift slope below 2π takes cl·(1/a0 − 1/2π) from the strip's incidence, which is exact for an infinite wing.
/// Everything is per unit airspeed: circulation in metres, downwash in radians.
/// </summary>
public sealed class Lattice
{
    readonly int rows;
    readonly LU<double> factors;

    public Lattice(IReadOnlyList<Station> stations, double span, int strips = 60, int rows = 2)
    {
        this.rows = rows;
        Span = span;
        Strips = [.. Enumerable.Range(0, strips).Select(i => Cut(stations, span, i, strips))];
        Area = Strips.Sum(strip => strip.Chord * strip.Width);
        factors = Influence(stations).LU();
    }

    public double Span { get; }

    public double Area { get; }

    public IReadOnlyList<Strip> Strips { get; }

    /// <summary>Circulation of each strip for an incidence (rad, leading edge up) that may differ from strip to strip.</summary>
    public double[] Circulation(Func<Strip, double> incidence)
    {
        var right = Vector<double>.Build.Dense(Strips.Count * rows, i => incidence(Strips[i / rows]));
        var all = factors.Solve(right);
        return [.. Enumerable.Range(0, Strips.Count).Select(s => Enumerable.Range(0, rows).Sum(row => all[s * rows + row]))];
    }

    /// <summary>Lift coefficient.</summary>
    public double Lift(double[] circulation) => 2 * Strips.Select((strip, i) => circulation[i] * strip.Width).Sum() / Area;

    /// <summary>Rolling moment coefficient, positive right wing down.</summary>
    public double Roll(double[] circulation) => -2 * Strips.Select((strip, i) => circulation[i] * strip.Width * strip.Middle).Sum() / (Area * Span);

    /// <summary>Yawing moment coefficient (nose right positive) that a small extra circulation adds, by induced drag in the far wake.</summary>
    public double Yaw(double[] carried, double[] extra)
    {
        var (washCarried, washExtra) = (Wash(carried), Wash(extra));
        return Strips.Select((strip, i) => (extra[i] * washCarried[i] + carried[i] * washExtra[i]) * strip.Middle * strip.Width).Sum() / (Area * Span);
    }

    double[] Wash(double[] circulation) =>
        [.. Strips.Select(at => Strips.Select((from, j) => circulation[j] / (2 * Math.PI) * (1 / (at.At - from.Left) + 1 / (from.Right - at.At))).Sum())];

    static Strip Cut(IReadOnlyList<Station> stations, double span, int index, int strips)
    {
        double Edge(double at) => -span / 2 * Math.Cos(Math.PI * at / strips);
        var (left, right, at) = (Edge(index), Edge(index + 1), Edge(index + 0.5));
        return new(left, right, at, Along(stations, at, s => s.Chord), Along(stations, at, s => s.Incidence), Along(stations, at, s => s.LiftSlope));
    }

    static double Along(IReadOnlyList<Station> stations, double y, Func<Station, double> what)
    {
        y = Math.Abs(y);
        var i = 1;
        while (i < stations.Count - 1 && stations[i].Y < y)
            i++;
        var (a, b) = (stations[i - 1], stations[i]);
        return what(a) + (what(b) - what(a)) * (y - a.Y) / (b.Y - a.Y);
    }

    Matrix<double> Influence(IReadOnlyList<Station> stations)
    {
        // x is aft of the quarter-chord line; a row's vortex lies a quarter of the row behind its front, its control point three quarters.
        double Aft(double y, double share) => Along(stations, y, s => s.Chord) * (share - 0.25);
        var influence = Matrix<double>.Build.Dense(Strips.Count * rows, Strips.Count * rows);
        for (var i = 0; i < influence.RowCount; i++)
            for (var j = 0; j < influence.ColumnCount; j++)
            {
                var (at, from) = (Strips[i / rows], Strips[j / rows]);
                var vortex = (j % rows + 0.25) / rows;
                influence[i, j] = Downwash(
                    Aft(at.At, (i % rows + 0.75) / rows), at.At, Aft(from.Left, vortex), from.Left, Aft(from.Right, vortex), from.Right);
                if (i / rows == j / rows)
                    influence[i, j] += 2 / at.Chord * (1 / at.LiftSlope - 1 / (2 * Math.PI));
            }
        return influence;
    }

    /// <summary>Downwash at (x, y) of a flat horseshoe of unit circulation with its bound leg from end 1 (left) to end 2 (right).</summary>
    static double Downwash(double x, double y, double x1, double y1, double x2, double y2)
    {
        var (r1, r2) = (double.Hypot(x - x1, y - y1), double.Hypot(x - x2, y - y2));
        var (dx, dy) = (x2 - x1, y2 - y1);
        var twiceArea = (x - x1) * (y - y2) - (x - x2) * (y - y1);
        var bound = ((dx * (x - x1) + dy * (y - y1)) / r1 - (dx * (x - x2) + dy * (y - y2)) / r2) / twiceArea;
        var left = (1 + (x - x1) / r1) / (y1 - y);
        var right = (1 + (x - x2) / r2) / (y2 - y);
        return -(bound + left - right) / (4 * Math.PI);
    }
}
