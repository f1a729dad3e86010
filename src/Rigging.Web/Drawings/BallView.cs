using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>The slip ball in its tube, as the pilot sees it.</summary>
public static class BallView
{
    const double MiddleX = 170, Y = 62, BallRadius = 22, TubeHalf = 130, TubeBend = 26, MostWidths = 2;

    /// <param name="widths">In widths of the ball, right of centre positive.</param>
    public static Drawing Draw(double widths)
    {
        var shown = Math.Clamp(widths, -MostWidths, MostWidths);
        var x = MiddleX + shown * 2 * BallRadius;
        Point At(double across, double up) => new(MiddleX + across, Y - up + TubeBend * (across / TubeHalf) * (across / TubeHalf) * -1);
        List<Mark> marks =
        [
            new Outline([.. Along().Select(a => At(a, 28)), .. Along().Reverse().Select(a => At(a, -28))], Pen.Outline, Fill.Paper),
            .. ((double[])[-BallRadius - 2, BallRadius + 2]).Select(line => Shape.Line(At(line, 28), At(line, -28), Pen.Outline)),
            new Outline([.. Enumerable.Range(0, 48).Select(i => At(x - MiddleX, 0).Towards(i * 7.5, BallRadius))], Pen.AsLeft, Fill.Solid),
            new Lettering(new(MiddleX, 128), Words.Capital(Directions.Ball(widths)), Role.Ink, Align.Middle, Strong: true),
        ];
        if (shown != widths) marks.Add(new Lettering(new(MiddleX, 146), Say.DrawnAtEndOfTubeNot, Role.Muted, Align.Middle, Size: Drawing.SmallLetters));
        return new Drawing(Drawing.MostWide, 154, Gaps.Fill(Say.Ball, Directions.Ball(widths)), Say.FromSeatLookingForward, marks);

        static IEnumerable<double> Along() => Enumerable.Range(0, 21).Select(i => -TubeHalf + i * TubeHalf / 10);
    }
}
