namespace Rigging.Web.Drawings;

/// <summary>Shapes built from the three marks.</summary>
static class Shape
{
    public static Outline Line(Point from, Point to, Pen pen) => new([from, to], pen, null, Closed: false);

    public static Outline Polygon(Point centre, double radius, int corners, double firstDeg, Pen pen, Fill? fill = null) =>
        new([.. Enumerable.Range(0, corners).Select(i => centre.Towards(firstDeg + i * 360.0 / corners, radius))], pen, fill);

    public static Arc Circle(Point centre, double radius, Pen pen) => new(centre, radius, 0, 360, pen);

    /// <summary>Between an ellipse (power 2) and a box: the section of a cabin.</summary>
    public static Outline Rounded(Point centre, double halfWidth, double halfHeight, double power, Pen pen, Fill? fill) =>
        new([.. Enumerable.Range(0, 72).Select(i =>
        {
            var (sin, cos) = Math.SinCos(i * Math.PI / 36);
            return centre.Plus(Squared(cos, power) * halfWidth, Squared(sin, power) * halfHeight);
        })], pen, fill);

    /// <summary>The part of a ring between two directions.</summary>
    public static Outline Wedge(Point centre, double inner, double outer, double fromDeg, double toDeg, Fill fill) =>
        new([.. Steps(fromDeg, toDeg).Select(a => centre.Towards(a, outer)), .. Steps(toDeg, fromDeg).Select(a => centre.Towards(a, inner))], null, fill);

    /// <summary>A filled arrow head with its point at the end of an arc, flying along it.</summary>
    public static Outline Head(Arc arc, double length = 11) => Head(arc.At(1), arc.StartDeg + arc.SweepDeg + (arc.SweepDeg < 0 ? -90 : 90), arc.Pen.Role, length);

    public static Outline Head(Point tip, double heading, Role role, double length = 11)
    {
        var tail = tip.Towards(heading + 180, length);
        return new([tip, tail.Towards(heading + 90, length * 0.36), tail.Towards(heading - 90, length * 0.36)], null, new Fill(role));
    }

    static double Squared(double x, double power) => Math.Sign(x) * Math.Pow(Math.Abs(x), 2 / power);

    static IEnumerable<double> Steps(double from, double to) => Enumerable.Range(0, 13).Select(i => from + (to - from) * i / 12);
}
