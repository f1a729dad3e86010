using Rigging.Mechanics.Contract;

namespace Rigging.Web.Drawings;

/// <summary>What stands under either drawing of an eccentric: on the left as found and as left, on the right how far, which way, and what it does.</summary>
static class EccentricLegend
{
    const double Left = 20, Right = 184, Top = 300;

    /// <summary>Of the drawing with its legend.</summary>
    public static double Height(EccentricTurn turn) => Top + (turn.Stays ? 44 : 92);

    public static IEnumerable<Mark> For(EccentricTurn turn, string way)
    {
        if (turn.Stays)
        {
            yield return Shape.Line(new(Left, Top + 10), new(Left + 26, Top + 10), Pen.AsLeft);
            yield return new Lettering(new(Left + 34, Top + 15), Say.AsItStands, Role.Accent, Size: Drawing.SmallLetters);
            yield return new Lettering(new(Left, Top + 34), Place(turn.AsFoundDeg), Role.Ink, Figures: true, Strong: true, Size: 15);
            yield break;
        }
        yield return Shape.Line(new(Left, Top + 10), new(Left + 26, Top + 10), Pen.AsFound);
        yield return new Lettering(new(Left + 34, Top + 15), Say.AsFound, Role.Muted, Size: Drawing.SmallLetters);
        yield return new Lettering(new(Left, Top + 34), Place(turn.AsFoundDeg), Role.Ink, Figures: true, Size: 15);
        yield return Shape.Line(new(Left, Top + 58), new(Left + 26, Top + 58), Pen.AsLeft);
        yield return new Lettering(new(Left + 34, Top + 63), Say.AsLeft, Role.Accent, Size: Drawing.SmallLetters);
        yield return new Lettering(new(Left, Top + 82), Place(turn.AsLeftDeg), Role.Ink, Figures: true, Strong: true, Size: 15);
        yield return new Lettering(new(Right, Top + 15), turn.HowFar, Role.Accent, Strong: true, Size: 19);
        yield return new Lettering(new(Right, Top + 34), way, Role.Accent, Size: Drawing.SmallLetters);
        yield return new Lettering(new(Right + 22, Top + 63), Say.TrailingEdge, Role.Ink, Size: Drawing.SmallLetters);
        yield return new Lettering(new(Right + 22, Top + 82), turn.Edge switch { TrailingEdge.Down => Say.Down, TrailingEdge.Up => Say.Up, _ => Say.SameHeight }, Role.Ink, Strong: true, Size: 15);
        if (turn.Edge is not { } edge) yield break;
        var (from, to, heading) = edge == TrailingEdge.Down ? (Top + 50, Top + 80, 90.0) : (Top + 80, Top + 54, -90.0);
        yield return Shape.Line(new(Right + 6, from), new(Right + 6, to), Pen.AsLeft);
        yield return Shape.Head(new(Right + 6, to + Math.Sign(to - from) * 5), heading, Role.Accent, 13);
    }

    // People read a word, not a sign; up and down are the trailing edge's.
    static string Place(double angle) => angle == 0 ? Say.Neutral : $"{Numerals.Degrees(Math.Abs(angle), angle % 1 == 0 ? 0 : 1)} {(angle > 0 ? Say.Down : Say.Up)}";
}
