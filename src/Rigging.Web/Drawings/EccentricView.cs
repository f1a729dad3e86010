using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>The eccentric's head as the mechanic sees it: as found dashed, as left in the accent, the turn between them. The throw is drawn larger than it is.</summary>
public static class EccentricView
{
    const double HeadRadius = 82, HoleOffset = 17, HoleRadius = 27, DialRadius = 98, TurnRadius = 113;
    static readonly Point Centre = new(170, 150);

    /// <summary>Seen at a face; where fitting or neutral offset is not on file, the height of the rear spar is drawn instead.</summary>
    public static Drawing Draw(EccentricTurn turn, Face face)
    {
        if (turn.Seen(face) is not { } seen) return RearSparScale.Draw(turn);

        var inboardIsRight = Turning.SeenRight(turn.Wing, face, Spanwise.Inboard);
        var sense = seen.Lowers == Rotation.Clockwise ? 1 : -1;
        var way = Wire.Word(seen.Way(turn.ChangeDeg));
        List<Mark> marks =
        [
            .. Dial(turn, seen.HoleAtDeg),
            .. Head(turn, seen.HoleAtDeg(turn.AsFoundDeg), Pen.AsFound),
            .. Head(turn, seen.HoleAtDeg(turn.AsLeftDeg), Pen.AsLeft),
            Shape.Line(Centre.Plus(-7, 0), Centre.Plus(7, 0), Pen.Fine),
            Shape.Line(Centre.Plus(0, -7), Centre.Plus(0, 7), Pen.Fine),
            new Lettering(new(8, 20), inboardIsRight ? Say.Outboard : Say.Inboard, Role.Muted, Size: Drawing.SmallLetters),
            new Lettering(new(332, 20), inboardIsRight ? Say.Inboard : Say.Outboard, Role.Muted, Align.End, Size: Drawing.SmallLetters),
            .. EccentricLegend.For(turn, way),
        ];
        if (!turn.Stays)
        {
            var arc = new Arc(Centre, TurnRadius, seen.HoleAtDeg(turn.AsFoundDeg), sense * turn.ChangeDeg, Pen.Reach);
            marks.AddRange([arc, Shape.Head(arc)]);
        }
        return new Drawing(Drawing.MostWide, EccentricLegend.Height(turn), turn.Stays ? Say.EccentricStaysAsFound : Gaps.Fill(Say.TurnEccentric, turn.HowFar, way, turn.Effect),
            Gaps.Fill(Say.Wing, Numerals.Of(turn.Wing), face == Face.Rear ? Say.RearFaceLookingForward : Say.FrontFaceLookingAft), marks);
    }

    static IEnumerable<Mark> Head(EccentricTurn turn, double at, Pen pen)
    {
        yield return Shape.Polygon(Centre, HeadRadius, turn.HeadFlats, at, pen);
        yield return Shape.Circle(Centre.Towards(at, HoleOffset), HoleRadius, pen);
        yield return Shape.Line(Centre.Towards(at, HeadRadius + 4), Centre.Towards(at, DialRadius + 4), pen);
    }

    static IEnumerable<Mark> Dial(EccentricTurn turn, Func<double, double> screen)
    {
        yield return new Arc(Centre, DialRadius, screen(-turn.StopDeg), screen(turn.StopDeg) - screen(-turn.StopDeg), Pen.Fine);
        for (var angle = 0.0; angle <= turn.StopDeg; angle += turn.FlatDeg / 2)
            foreach (var side in (double[])[angle, -angle])
                yield return Shape.Line(Centre.Towards(screen(side), DialRadius - 4), Centre.Towards(screen(side), DialRadius + 4), Pen.Fine);
        foreach (var stop in (double[])[turn.StopDeg, -turn.StopDeg])
        {
            yield return Shape.Line(Centre.Towards(screen(stop), DialRadius - 7), Centre.Towards(screen(stop), DialRadius + 12), Pen.Limit);
            yield return new Lettering(Centre.Towards(screen(stop), DialRadius + 24).Plus(0, 5), Say.Stop, Role.Caution, Align.Middle, Size: Drawing.SmallLetters);
        }
    }
}
