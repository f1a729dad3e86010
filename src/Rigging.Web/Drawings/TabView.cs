using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>A fixed tab as it is bent: the surface's tail in section, the tab dashed as found and in the accent as left, the angle larger than it is.</summary>
public static class TabView
{
    const double Larger = 2, TabLength = 100, SurfaceLength = 170;
    static readonly Point Hinge = new(190, 84);

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
            Shape.Line(Hinge, Hinge.Plus(TabLength + 34, 0), Pen.Fine),
            .. bends ? [Tab(found, Pen.AsFound)] : (IEnumerable<Mark>)[],
            Tab(left, Pen.AsLeft),
            .. bends
                ? [new Lettering(new(8, 176), Gaps.Fill(Say.AsFoundIs, words(found))), new Lettering(new(8, 196), Gaps.Fill(Say.AsLeftIs, words(left)), Strong: true)]
                : (IEnumerable<Mark>)[new Lettering(new(8, 196), words(left), Strong: true)],
            new Lettering(new(8, 216), Say.AngleDrawnTwiceAsLarge, Role.Muted, Size: Drawing.SmallLetters),
        ];
        if (bends)
        {
            var arc = new Arc(Hinge, TabLength + 14, found * Larger, (left - found) * Larger, Pen.Reach);
            // The tab goes one way and pushes its surface the other.
            var pushed = left > found ? -1 : 1;
            var (from, to) = (new Point(Hinge.X - 110, Hinge.Y + pushed * 38), new Point(Hinge.X - 110, Hinge.Y + pushed * 70));
            marks.AddRange([arc, Shape.Head(arc), Shape.Line(from, to, Pen.Reach), Shape.Head(to, pushed * 90, Role.Accent),
                new Lettering(new(Hinge.X - 96, Hinge.Y + pushed * 60 + 4), Gaps.Fill(Say.PushesSurface, pushed > 0 ? down : up), Role.Accent, Size: Drawing.SmallLetters)]);
        }
        return new Drawing(Drawing.MostWide, 226, bends ? Gaps.Fill(Say.BendTrailingEdge, what, left > found ? down : up) : Gaps.Fill(Say.StaysAsFound, what), viewpoint, marks);
    }

    static Outline Tab(double deg, Pen pen)
    {
        var tip = Hinge.Towards(deg * Larger, TabLength);
        return new([Hinge.Plus(0, -6), tip, Hinge.Plus(0, 6)], pen, pen.Dashed ? null : Fill.Paper);
    }
}
