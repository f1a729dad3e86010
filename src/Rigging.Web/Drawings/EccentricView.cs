using Rigging.Mechanics.Contract;

namespace Rigging.Web.Drawings;

/// <summary>Which face of the fitting the mechanic looks at.</summary>
public enum Face { Front, Rear }

/// <summary>
/// What is known of a bushing's place: which way its offset lies at neutral, and which way lowering the trailing edge turns it, as seen at the drawn face.
/// Without it no turning direction may be drawn.
/// </summary>
public sealed record BushingSeen(bool NeutralInboard, bool LoweringIsClockwise);

/// <summary>The eccentric's head as the mechanic sees it: as found dashed, as left in the accent, the turn between them.</summary>
public static class EccentricView
{
    const double HeadRadius = 82, HoleOffset = 17, HoleRadius = 27, DialRadius = 98, TurnRadius = 113, FlatDeg = 60;
    static readonly Point Centre = new(170, 150);

    /// <summary>
    /// Angles in degrees from neutral, positive lowers the trailing edge; the stop is the greatest angle either way.
    /// How far is the turn in words: "½ flat". Without bushing data a scale is drawn instead of a turn.
    /// </summary>
    public static Drawing Draw(Side wing, Face face, double asFoundDeg, double asLeftDeg, double stopDeg, string howFar, BushingSeen? bushing)
    {
        var change = asLeftDeg - asFoundDeg;
        var effect = change == 0 ? "stays" : change > 0 ? "trailing edge down" : "trailing edge up";
        var viewpoint = $"{Numerals.Of(wing)} wing, {(face == Face.Rear ? "rear face, looking forward" : "front face, looking aft")}";
        if (bushing is null) return SparHeight(wing, asFoundDeg, asLeftDeg, stopDeg, howFar, effect);

        var inboardIsRight = (wing == Side.Left) == (face == Face.Rear);
        var neutral = bushing.NeutralInboard == inboardIsRight ? 0.0 : 180.0;
        var sense = bushing.LoweringIsClockwise ? 1 : -1;
        double Screen(double angle) => neutral + sense * angle;

        var turn = change == 0 ? "" : sense * change > 0 ? "clockwise" : "counter-clockwise";
        var turnArc = new Arc(Centre, TurnRadius, Screen(asFoundDeg), sense * change, Pen.Reach);
        List<Mark> marks =
        [
            .. Dial(Screen, stopDeg),
            .. Head(Screen(asFoundDeg), Pen.AsFound),
            .. Head(Screen(asLeftDeg), Pen.AsLeft),
            Shape.Line(Centre.Plus(-7, 0), Centre.Plus(7, 0), Pen.Fine), Shape.Line(Centre.Plus(0, -7), Centre.Plus(0, 7), Pen.Fine),
        ];
        if (change != 0) marks.AddRange([turnArc, Shape.Head(turnArc)]);
        marks.AddRange(Legend(asFoundDeg, asLeftDeg, howFar, turn, effect, change));
        marks.Add(new Lettering(new(8, 20), inboardIsRight ? "outboard" : "inboard", Role.Muted, Size: 13));
        marks.Add(new Lettering(new(332, 20), inboardIsRight ? "inboard" : "outboard", Role.Muted, Align.End, Size: 13));
        return new Drawing(480, 296, change == 0 ? "The eccentric stays as found" : $"Turn the eccentric {howFar} {turn}: {effect}", viewpoint, marks);
    }

    static IEnumerable<Mark> Head(double at, Pen pen)
    {
        var hole = Centre.Towards(at, HoleOffset);
        yield return Shape.Polygon(Centre, HeadRadius, 6, at, pen);
        yield return Shape.Circle(hole, HoleRadius, pen);
        yield return Shape.Line(Centre.Towards(at, HeadRadius + 4), Centre.Towards(at, DialRadius + 4), pen);
    }

    static IEnumerable<Mark> Dial(Func<double, double> screen, double stopDeg)
    {
        yield return new Arc(Centre, DialRadius, screen(-stopDeg), screen(stopDeg) - screen(-stopDeg), Pen.Fine);
        for (var angle = 0.0; angle <= stopDeg; angle += FlatDeg / 2)
            foreach (var side in (double[])[angle, -angle])
                yield return Shape.Line(Centre.Towards(screen(side), DialRadius - 4), Centre.Towards(screen(side), DialRadius + 4), Pen.Fine);
        foreach (var stop in (double[])[stopDeg, -stopDeg])
        {
            yield return Shape.Line(Centre.Towards(screen(stop), DialRadius - 7), Centre.Towards(screen(stop), DialRadius + 12), Pen.Limit);
            var label = Centre.Towards(screen(stop), DialRadius + 24);
            yield return new Lettering(label.Plus(0, 5), "stop", Role.Caution, Align.Middle, Size: 12);
        }
    }

    static IEnumerable<Mark> Legend(double asFoundDeg, double asLeftDeg, string howFar, string turn, string effect, double change)
    {
        const double x = 350;
        yield return Shape.Line(new(x, 36), new(x + 26, 36), Pen.AsFound);
        yield return new Lettering(new(x + 34, 41), "as found", Role.Muted, Size: 13);
        yield return new Lettering(new(x, 60), Place(asFoundDeg), Role.Ink, Figures: true, Size: 15);
        yield return Shape.Line(new(x, 84), new(x + 26, 84), Pen.AsLeft);
        yield return new Lettering(new(x + 34, 89), "as left", Role.Accent, Size: 13);
        yield return new Lettering(new(x, 108), Place(asLeftDeg), Role.Ink, Figures: true, Strong: true, Size: 15);
        if (change == 0) yield break;
        yield return new Lettering(new(x, 150), howFar, Role.Accent, Strong: true, Size: 19);
        yield return new Lettering(new(x, 169), turn, Role.Accent, Size: 13);
        var (from, to) = change > 0 ? (194.0, 226.0) : (226.0, 194.0);
        yield return Shape.Line(new(x + 6, from), new(x + 6, to), Pen.AsLeft);
        yield return Shape.Head(new(x + 6, to + Math.Sign(change) * 5), change > 0 ? 90 : -90, Role.Accent, 13);
        yield return new Lettering(new(x + 22, 206), "trailing edge", Role.Ink, Size: 13);
        yield return new Lettering(new(x + 22, 223), effect[14..], Role.Ink, Strong: true, Size: 15);
    }

    // People read a word, not a sign; up and down are the trailing edge's.
    static string Place(double angle) => angle == 0 ? "neutral" : $"{Numerals.Degrees(Math.Abs(angle), angle % 1 == 0 ? 0 : 1)} {(angle > 0 ? "down" : "up")}";

    /// <summary>Bushing data not on file: only up or down may be shown, on a scale of the rear spar.</summary>
    static Drawing SparHeight(Side wing, double asFoundDeg, double asLeftDeg, double stopDeg, string howFar, string effect)
    {
        const double x = 150, top = 40, length = 216;
        var change = asLeftDeg - asFoundDeg;
        double Y(double angle) => top + length * (angle + stopDeg) / (2 * stopDeg);
        List<Mark> marks = [Shape.Line(new(x, top), new(x, top + length), Pen.Outline)];
        for (var angle = 0.0; angle <= stopDeg; angle += FlatDeg / 2)
            foreach (var tick in (double[])[angle, -angle])
                marks.Add(Shape.Line(new(x - 6, Y(tick)), new(x + 6, Y(tick)), Pen.Fine));
        foreach (var stop in (double[])[stopDeg, -stopDeg])
            marks.AddRange([Shape.Line(new(x - 18, Y(stop)), new(x + 18, Y(stop)), Pen.Limit), new Lettering(new(x - 26, Y(stop) + 4), "stop", Role.Caution, Align.End, Size: 12)]);
        marks.AddRange([
            new Lettering(new(x - 26, Y(0) + 4), "neutral", Role.Muted, Align.End, Size: 12),
            Shape.Line(new(x - 14, Y(asFoundDeg)), new(x + 60, Y(asFoundDeg)), Pen.AsFound),
            Shape.Line(new(x - 14, Y(asLeftDeg)), new(x + 60, Y(asLeftDeg)), Pen.AsLeft),
            new Lettering(new(x, 24), "trailing edge up", Role.Muted, Align.Middle, Size: 13),
            new Lettering(new(x, 280), "trailing edge down", Role.Muted, Align.Middle, Size: 13),
        ]);
        if (change != 0)
            marks.AddRange([Shape.Line(new(x + 44, Y(asFoundDeg)), new(x + 44, Y(asLeftDeg)), Pen.Reach), Shape.Head(new(x + 44, Y(asLeftDeg)), change > 0 ? 90 : -90, Role.Accent)]);
        marks.AddRange(Legend(asFoundDeg, asLeftDeg, howFar, "way to turn not on file", effect, change));
        return new Drawing(480, 296, change == 0 ? "The eccentric stays as found" : $"Move the eccentric {howFar}: {effect}",
            $"{Numerals.Of(wing)} wing, scale of angle from neutral; not a view of the head", marks);
    }
}
