using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>The height of the rear spar as the eccentric sets it: for bushings whose place is not on file, where only up or down may be shown.</summary>
static class RearSparScale
{
    const double X = 170, Neutral = 148, Reach = 108;

    public static Drawing Draw(EccentricTurn turn)
    {
        // A quarter turn is the end of the throw, whatever the stop says.
        var end = EccentricTurn.Drop(Math.Min(turn.StopDeg, 90));
        var most = Math.Max(end, Math.Max(Math.Abs(EccentricTurn.Drop(turn.AsFoundDeg)), Math.Abs(EccentricTurn.Drop(turn.AsLeftDeg))));
        double Y(double angle) => Neutral + Reach * EccentricTurn.Drop(angle) / most;

        List<Mark> marks = [Shape.Line(new(X, Neutral - Reach), new(X, Neutral + Reach), Pen.Outline)];
        for (var angle = 0.0; angle <= Math.Min(turn.StopDeg, 90); angle += turn.FlatDeg / 2)
            foreach (var tick in (double[])[angle, -angle])
                marks.Add(Shape.Line(new(X - 6, Y(tick)), new(X + 6, Y(tick)), Pen.Fine));
        foreach (var stop in (double[])[1, -1])
        {
            var y = Neutral + stop * Reach * end / most;
            marks.AddRange([Shape.Line(new(X - 18, y), new(X + 18, y), Pen.Limit), new Lettering(new(X - 26, y + 4), Say.Stop, Role.Caution, Align.End, Size: Drawing.SmallLetters)]);
        }
        var (from, to) = (Y(turn.AsFoundDeg), Y(turn.AsLeftDeg));
        marks.AddRange([
            new Lettering(new(X - 26, Neutral + 4), Say.Neutral, Role.Muted, Align.End, Size: Drawing.SmallLetters),
            Shape.Line(new(X - 14, from), new(X + 60, from), Pen.AsFound),
            Shape.Line(new(X - 14, to), new(X + 60, to), Pen.AsLeft),
            new Lettering(new(X, 24), Say.TrailingEdgeUp, Role.Muted, Align.Middle, Size: Drawing.SmallLetters),
            new Lettering(new(X, 280), Say.TrailingEdgeDown, Role.Muted, Align.Middle, Size: Drawing.SmallLetters),
            .. EccentricLegend.For(turn, Say.WayToTurnNotOnFile),
        ]);
        if (turn.Edge is not null)
            marks.AddRange([Shape.Line(new(X + 44, from), new(X + 44, to), Pen.Reach), Shape.Head(new(X + 44, to), to > from ? 90 : -90, Role.Accent)]);
        return new Drawing(Drawing.MostWide, EccentricLegend.Height(turn), turn.Stays ? Say.EccentricStaysAsFound : Gaps.Fill(Say.MoveEccentric, turn.HowFar, turn.Effect),
            Gaps.Fill(Say.WingHeightOfRearSpar, Numerals.Of(turn.Wing)), marks);
    }
}
