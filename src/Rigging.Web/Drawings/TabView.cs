using Rigging.Squawks.Rules;

namespace Rigging.Web.Drawings;

/// <summary>A fixed tab as it is bent: the surface's tail in section, the tab dashed as found and in the accent as left, the angle larger than it is.</summary>
public static class TabView
{
    const double Larger = 2, TabLength = 110, SurfaceLength = 190;
    static readonly Point Hinge = new(230, 84);

    /// <param name="foundDeg">Trailing edge down positive.</param>
    /// <param name="leftDeg">The same way; equal to the other when nothing is bent.</param>
    public static Drawing OfAileron(double foundDeg, double leftDeg) => Draw(foundDeg, leftDeg, "The aileron's tab", Directions.TrailingEdge, "down", "up", "from the tip, trailing edge to the right");

    /// <param name="foundDeg">Trailing edge left positive.</param>
    /// <param name="leftDeg">The same way.</param>
    public static Drawing OfRudder(double foundDeg, double leftDeg) => Draw(foundDeg, leftDeg, "The rudder's tab", Directions.RudderTrailingEdge, "left", "right", "from above, nose to the left: the pilot's left is down the paper");

    /// <summary>Down the paper positive, both for the picture and for what it pushes the surface: the other way.</summary>
    static Drawing Draw(double found, double left, string what, Func<double, string> words, string down, string up, string viewpoint)
    {
        var bends = Math.Abs(left - found) > 1e-6;
        List<Mark> marks =
        [
            new Outline([Hinge.Plus(-SurfaceLength, -30), Hinge.Plus(0, -6), Hinge.Plus(0, 6), Hinge.Plus(-SurfaceLength, 30)], Pen.Outline, Fill.Paper, Closed: false),
            Shape.Line(Hinge, Hinge.Plus(TabLength + 30, 0), Pen.Fine),
            .. bends ? [Tab(found, Pen.AsFound)] : (IEnumerable<Mark>)[],
            Tab(left, Pen.AsLeft),
            new Lettering(new(8, 176), bends ? $"{words(found)} as found, {words(left)} as left" : words(left), Role.Ink, Strong: true),
            new Lettering(new(8, 194), "angle drawn twice as large", Role.Muted, Size: 12),
        ];
        if (bends)
        {
            var arc = new Arc(Hinge, TabLength + 14, found * Larger, (left - found) * Larger, Pen.Reach);
            // The tab goes one way and pushes its surface the other.
            var pushed = left > found ? -1 : 1;
            var (from, to) = (new Point(Hinge.X - 120, Hinge.Y + pushed * 38), new Point(Hinge.X - 120, Hinge.Y + pushed * 70));
            marks.AddRange([arc, Shape.Head(arc), Shape.Line(from, to, Pen.Reach), Shape.Head(to, pushed * 90, Role.Accent),
                new Lettering(new(Hinge.X - 106, Hinge.Y + pushed * 60 + 4), $"pushes the surface {(pushed > 0 ? down : up)}", Role.Accent, Size: 13)]);
        }
        return new Drawing(400, 204, bends ? $"{what}: bend the trailing edge {(left > found ? down : up)}" : $"{what} stays as found", viewpoint, marks);
    }

    static Outline Tab(double deg, Pen pen)
    {
        var tip = Hinge.Towards(deg * Larger, TabLength);
        return new([Hinge.Plus(0, -6), tip, Hinge.Plus(0, 6)], pen, pen.Dashed ? null : Fill.Paper);
    }
}
