using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>A fixed tab as it is bent: the surface's tail in section, the tab dashed as found and in the accent as left, the angle larger than it is.</summary>
public static class TabView
{
    const double Larger = 2, TabLength = 110, SurfaceLength = 190;
    static readonly Point Hinge = new(230, 84);

    /// <param name="foundDeg">Trailing edge down positive.</param>
    /// <param name="leftDeg">The same way; equal to the other when nothing is bent.</param>
    public static Drawing OfAileron(double foundDeg, double leftDeg) => Draw(foundDeg, leftDeg, Say.AileronsTab, Directions.TrailingEdge, Say.Down, Say.Up, Say.FromTipTrailingEdge);

    /// <param name="foundDeg">Trailing edge left positive.</param>
    /// <param name="leftDeg">The same way.</param>
    public static Drawing OfRudder(double foundDeg, double leftDeg) => Draw(foundDeg, leftDeg, Say.RuddersTab, Directions.RudderTrailingEdge, Texts.LeftInText, Texts.RightInText, Say.FromAboveNoseToLeft);

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
            new Lettering(new(8, 176), bends ? Gaps.Fill(Say.AsFoundAsLeft, words(found), words(left)) : words(left), Role.Ink, Strong: true),
            new Lettering(new(8, 194), Say.AngleDrawnTwiceAsLarge, Role.Muted, Size: 12),
        ];
        if (bends)
        {
            var arc = new Arc(Hinge, TabLength + 14, found * Larger, (left - found) * Larger, Pen.Reach);
            // The tab goes one way and pushes its surface the other.
            var pushed = left > found ? -1 : 1;
            var (from, to) = (new Point(Hinge.X - 120, Hinge.Y + pushed * 38), new Point(Hinge.X - 120, Hinge.Y + pushed * 70));
            marks.AddRange([arc, Shape.Head(arc), Shape.Line(from, to, Pen.Reach), Shape.Head(to, pushed * 90, Role.Accent),
                new Lettering(new(Hinge.X - 106, Hinge.Y + pushed * 60 + 4), Gaps.Fill(Say.PushesSurface, pushed > 0 ? down : up), Role.Accent, Size: 13)]);
        }
        return new Drawing(400, 204, bends ? Gaps.Fill(Say.BendTrailingEdge, what, left > found ? down : up) : Gaps.Fill(Say.StaysAsFound, what), viewpoint, marks);
    }

    static Outline Tab(double deg, Pen pen)
    {
        var tip = Hinge.Towards(deg * Larger, TabLength);
        return new([Hinge.Plus(0, -6), tip, Hinge.Plus(0, 6)], pen, pen.Dashed ? null : Fill.Paper);
    }
}
