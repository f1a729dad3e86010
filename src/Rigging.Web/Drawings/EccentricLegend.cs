using Rigging.Mechanics.Contract;

namespace Rigging.Web.Drawings;

/// <summary>What stands beside either drawing of an eccentric: as found, as left, how far, which way, and what it does.</summary>
static class EccentricLegend
{
    const double X = 350;

    public static IEnumerable<Mark> For(EccentricTurn turn, string way)
    {
        if (turn.Stays)
        {
            yield return Shape.Line(new(X, 36), new(X + 26, 36), Pen.AsLeft);
            yield return new Lettering(new(X + 34, 41), Say.AsItStands, Role.Accent, Size: 13);
            yield return new Lettering(new(X, 60), Place(turn.AsFoundDeg), Role.Ink, Figures: true, Strong: true, Size: 15);
            yield break;
        }
        yield return Shape.Line(new(X, 36), new(X + 26, 36), Pen.AsFound);
        yield return new Lettering(new(X + 34, 41), Say.AsFound, Role.Muted, Size: 13);
        yield return new Lettering(new(X, 60), Place(turn.AsFoundDeg), Role.Ink, Figures: true, Size: 15);
        yield return Shape.Line(new(X, 84), new(X + 26, 84), Pen.AsLeft);
        yield return new Lettering(new(X + 34, 89), Say.AsLeft, Role.Accent, Size: 13);
        yield return new Lettering(new(X, 108), Place(turn.AsLeftDeg), Role.Ink, Figures: true, Strong: true, Size: 15);
        yield return new Lettering(new(X, 150), turn.HowFar, Role.Accent, Strong: true, Size: 19);
        yield return new Lettering(new(X, 169), way, Role.Accent, Size: 13);
        yield return new Lettering(new(X + 22, 206), Say.TrailingEdge, Role.Ink, Size: 13);
        yield return new Lettering(new(X + 22, 223), turn.Edge switch { TrailingEdge.Down => Say.Down, TrailingEdge.Up => Say.Up, _ => Say.SameHeight }, Role.Ink, Strong: true, Size: 15);
        if (turn.Edge is not { } edge) yield break;
        var (from, to, heading) = edge == TrailingEdge.Down ? (194.0, 226.0, 90.0) : (226.0, 194.0, -90.0);
        yield return Shape.Line(new(X + 6, from), new(X + 6, to), Pen.AsLeft);
        yield return Shape.Head(new(X + 6, to + Math.Sign(to - from) * 5), heading, Role.Accent, 13);
    }

    // People read a word, not a sign; up and down are the trailing edge's.
    static string Place(double angle) => angle == 0 ? Say.Neutral : $"{Numerals.Degrees(Math.Abs(angle), angle % 1 == 0 ? 0 : 1)} {(angle > 0 ? Say.Down : Say.Up)}";
}
