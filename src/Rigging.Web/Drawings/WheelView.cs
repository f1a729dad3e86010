using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>What "wheel held" means: the wheel turned so far from the mark it stands at on the ground with the ailerons neutral.</summary>
public static class WheelView
{
    const double MarkAt = 56;
    static readonly Point Hub = new(140, 78);

    /// <param name="deg">Degrees from its mark, to the right positive, drawn as it is.</param>
    public static Drawing Draw(double deg)
    {
        Point At(double x, double y) => Hub.Plus(x, y).Turned(deg, Hub);
        var side = Math.Sign(deg);
        List<Mark> marks =
        [
            Shape.Line(Hub, Hub.Plus(0, 56), Pen.Outline with { Width = 4 }),
            Shape.Line(Hub, Hub.Plus(0, -MarkAt - 4), Pen.AsFound),
            new Outline([At(-54, -38), At(-50, 4), At(-20, 16), At(20, 16), At(50, 4), At(54, -38)], Pen.Outline with { Width = 4 }, Closed: false),
            Shape.Line(At(0, 16), At(0, -MarkAt), Pen.AsLeft),
            new Lettering(new(140, 14), Say.ItsMark, Role.Muted, Align.Middle, Size: 13),
            new Lettering(new(140, 150), Say.SoFarToHoldWingsLevel, Role.Muted, Align.Middle, Size: 13),
        ];
        if (side != 0)
        {
            var arc = new Arc(Hub, MarkAt, -90, deg, Pen.Reach);
            marks.AddRange([arc, Shape.Head(arc), new Lettering(arc.At(1).Plus(side * 10, 0), Numerals.Degrees(Math.Abs(deg)), Role.Accent, side < 0 ? Align.End : Align.Start, Figures: true, Strong: true)]);
        }
        return new Drawing(280, 158, Gaps.Fill(Say.WheelFromItsMark, Directions.Wheel(deg)), Say.FromSeatLookingForward, marks);
    }
}
