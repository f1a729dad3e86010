using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>What "heading drift" means: the aeroplane over the compass card, its nose gone so far from where it pointed.</summary>
public static class HeadingView
{
    const double Card = 60, Drift = 70;
    static readonly Point Middle = new(140, 84);

    /// <summary>Half an aeroplane from above, from the nose down the right side; the other half mirrors it.</summary>
    static readonly (double X, double Y)[] Half = [(0, -34), (4, -26), (5, -15), (36, -13), (36, -4), (5, -3), (2.5, 20), (13, 23), (13, 29), (0, 29)];

    /// <param name="deg">Degrees the nose went, to the right positive, drawn as it is.</param>
    public static Drawing Draw(double deg)
    {
        Point At(double x, double y) => Middle.Plus(x, y).Turned(deg, Middle);
        var side = Math.Sign(deg);
        List<Mark> marks =
        [
            Shape.Circle(Middle, Card, Pen.Outline),
            .. Enumerable.Range(0, 12).Where(i => i % 3 != 0).Select(i => Shape.Line(Middle.Towards(i * 30, Card - 6), Middle.Towards(i * 30, Card), Pen.Fine)),
            .. Say.CompassLetters.Split(' ').Select((letter, i) => new Lettering(Middle.Towards(i * 90 - 90, Card - 9).Plus(0, 4), letter, Role.Muted, Align.Middle, Size: Drawing.SmallLetters)),
            Shape.Line(Middle.Plus(0, -Card), Middle.Plus(0, -Drift - 6), Pen.AsFound),
            new Outline([.. Half.Concat(Half.Reverse().Select(p => (-p.X, p.Y))).Select(p => At(p.Item1, p.Item2))], Pen.Outline, Fill.Paper),
            new Lettering(new(140, 166), Say.WingsLevelFeetOff, Role.Muted, Align.Middle, Size: 13),
        ];
        if (side != 0)
        {
            var arc = new Arc(Middle, Drift, -90, deg, Pen.Reach);
            marks.AddRange([Shape.Line(At(0, -34), At(0, -Drift), Pen.AsLeft), arc, Shape.Head(arc),
                new Lettering(arc.At(1).Plus(side * 10, 0), Numerals.Degrees(Math.Abs(deg)), Role.Accent, side < 0 ? Align.End : Align.Start, Figures: true, Strong: true)]);
        }
        return new Drawing(280, 174, Gaps.Fill(Say.HeadingDrift, Directions.HeadingChange(deg)), Say.FromAboveNoseUp, marks);
    }
}
