using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>
/// A wing at its struts, seen from its tip: the rear strut longer or shorter by its fork, and the section that turns about the front strut's fitting.
/// As found dashed, as left in the accent. The movement is drawn larger than it is.
/// </summary>
public static class ForkView
{
    const double Front = 120, Rear = 220, SectionY = 96, FootY = 196, Lift = 14, Height = 312;

    /// <param name="foundTurns">Out from fully in.</param>
    /// <param name="leftTurns">The same; equal to the other when it stays.</param>
    /// <param name="howFar">In words: "1.5 turns in".</param>
    /// <param name="rearSparMm">How far the rear spar goes at the strut, 0 or more; null when not on file.</param>
    public static Drawing Draw(Control fork, double foundTurns, double leftTurns, string howFar, double? rearSparMm)
    {
        var leftWing = fork == Control.LeftStrutFork;
        var (name, viewpoint) = (Words.Capital(Words.Of(fork)), Gaps.Fill(Say.WingAtItsStruts, leftWing ? Say.LeftWing : Say.RightWing));
        var stays = Math.Abs(leftTurns - foundTurns) < 1e-6;
        // Out makes the rear strut longer, and its spar goes up: up the paper is negative.
        var up = stays ? 0 : leftTurns > foundTurns ? -1 : 1;
        // Seen from its own tip a left wing has its nose on the left, a right wing on the right.
        Point Seen(double x, double y) => new(leftWing ? x : Drawing.MostWide - x, y);

        List<Mark> marks =
        [
            Shape.Line(Seen(60, FootY), Seen(280, FootY), Pen.Fine),
            Shape.Line(Seen(Front, FootY), Seen(Front, SectionY), Pen.Outline),
            .. stays ? (IEnumerable<Mark>)[] : [Section(Seen, 0, Pen.AsFound), RearStrut(Seen, 0, Pen.AsFound)],
            Section(Seen, up, Pen.AsLeft),
            RearStrut(Seen, up, Pen.AsLeft),
            Shape.Circle(Seen(Front, SectionY), 4, Pen.Outline),
            Shape.Circle(Seen(Rear, SectionY + up * Lift), 4, Pen.Outline),
            new Lettering(Seen(Front, FootY + 18), Say.FrontStrut, Role.Muted, Align.Middle, Size: Drawing.SmallLetters),
            new Lettering(Seen(Rear, FootY + 18), Say.RearStrut, Role.Ink, Align.Middle, Size: Drawing.SmallLetters),
            new Lettering(Seen(30, 20), Say.Nose, Role.Muted, Align.Middle, Size: Drawing.SmallLetters),
        ];
        if (stays)
        {
            marks.Add(new Lettering(new(8, 246), Words.Stands(fork, leftTurns), Strong: true));
            return new Drawing(Drawing.MostWide, 262, Gaps.Fill(Say.StaysAsFound, name), viewpoint, marks);
        }
        // Beside the rear strut: which way its upper end goes; behind the section: which way the edge goes.
        marks.AddRange([.. Arrow(Seen(Rear + 26, 150), up), .. Arrow(Seen(310, SectionY), up),
            new Lettering(Seen(Rear + 66, 150), up < 0 ? Say.Longer : Say.Shorter, Role.Accent, Align.Middle, Size: Drawing.SmallLetters),
            new Lettering(Seen(250, 20), up < 0 ? Say.TrailingEdgeUp : Say.TrailingEdgeDown, Role.Accent, Align.Middle, Strong: true, Size: 15),
            new Lettering(new(8, 240), Gaps.Fill(Say.AsFoundIs, Words.Stands(fork, foundTurns))),
            new Lettering(new(8, 260), Gaps.Fill(Say.AsLeftIs, Words.Stands(fork, leftTurns)), Strong: true),
            new Lettering(new(8, 282), rearSparMm is { } mm ? Gaps.Fill(up < 0 ? Say.RearSparUpBy : Say.RearSparDownBy, Words.Number(mm, 1)) : up < 0 ? Say.RearSparUp : Say.RearSparDown, Role.Accent),
            new Lettering(new(8, 302), Say.MovementDrawnLarger, Role.Muted, Size: Drawing.SmallLetters)]);
        return new Drawing(Drawing.MostWide, Height, Gaps.Fill(Say.TurnFork, name, howFar, up < 0 ? Say.TrailingEdgeUp : Say.TrailingEdgeDown), viewpoint, marks);
    }

    /// <summary>The wing in section, its chord level as found and turned about the front fitting as left.</summary>
    static Outline Section(Func<double, double, Point> seen, int up, Pen pen)
    {
        (double X, double Y)[] section = [(66, 0), (74, -14), (100, -22), (150, -22), (220, -14), (292, 0), (220, 4), (120, 6), (74, 6)];
        var tilt = Math.Atan(up * Lift / (Rear - Front));
        return new([.. section.Select(point =>
        {
            var (x, y) = (point.X - Front, point.Y);
            return seen(Front + x * Math.Cos(tilt) - y * Math.Sin(tilt), SectionY + x * Math.Sin(tilt) + y * Math.Cos(tilt));
        })], pen, pen.Dashed ? null : Fill.Paper);
    }

    static Outline RearStrut(Func<double, double, Point> seen, int up, Pen pen) => Shape.Line(seen(Rear, FootY), seen(Rear, SectionY + up * Lift), pen);

    static IEnumerable<Mark> Arrow(Point middle, int up)
    {
        var tip = middle.Plus(0, up * 18);
        return [Shape.Line(middle.Plus(0, up * -18), tip, Pen.Reach), Shape.Head(tip, up * 90, Role.Accent)];
    }
}
