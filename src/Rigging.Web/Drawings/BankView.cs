using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>What "bank" means: the aeroplane from behind, leaning so far from level, in few lines for a form.</summary>
public static class BankView
{
    const double TipArc = 112;
    static readonly Point Axis = new(140, 48);

    /// <param name="deg">Degrees, right wing down positive, drawn as it is; not beyond 30 either way.</param>
    public static Drawing Draw(double deg)
    {
        Point At(double x, double y) => Axis.Plus(x, y).Turned(deg, Axis);
        Outline Panel(int side) => new([At(0, -4), At(side * 98, -5), At(side * 98, 0), At(0, 4)], Math.Sign(deg) == side ? Pen.AsLeft : Pen.Outline, Fill.Paper);
        var low = deg < 0 ? -1 : 1;
        List<Mark> marks =
        [
            Shape.Line(Axis.Plus(-TipArc - 8, 0), Axis.Plus(TipArc + 8, 0), Pen.AsFound with { Width = 1 }),
            .. ((int[])[-1, 1]).Select(side => Shape.Line(At(side * 8, 18), At(side * 20, 32), Pen.Outline with { Width = 2 })),
            Panel(-low), Panel(low),
            Shape.Polygon(At(0, 10), 14, 24, 0, Pen.Outline, Fill.Paper),
            Shape.Line(At(-32, 6), At(32, 6), Pen.Outline with { Width = 2 }),
            Shape.Line(At(0, 6), At(0, -26), Pen.Outline with { Width = 2 }),
            new Lettering(Axis.Plus(-low * (TipArc + 8), 16), Say.LevelInText, Role.Muted, low < 0 ? Align.End : Align.Start, Size: 13),
            new Lettering(new(140, 116), Say.SecondsAfterLettingGo, Role.Muted, Align.Middle, Size: 13),
        ];
        if (deg != 0)
        {
            var arc = new Arc(Axis, TipArc, low < 0 ? 180 : 0, deg, Pen.Reach);
            marks.AddRange([arc, Shape.Head(arc), new Lettering(arc.At(1).Plus(0, 20), Numerals.Degrees(Math.Abs(deg)), Role.Accent, Align.Middle, Figures: true, Strong: true)]);
        }
        return new Drawing(280, 124, Gaps.Fill(Say.Bank, Directions.Bank(deg)), Say.FromBehindLookingForward, marks);
    }
}
