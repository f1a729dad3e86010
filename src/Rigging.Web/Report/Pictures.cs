using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Web.Report;

/// <summary>The small pictures beside the answers of the report, and the one of the control check. All in a frame of 120 by 72.</summary>
static class Pictures
{
    const double Wide = 120, Tall = 72;

    static readonly Pen Thin = Pen.Fine with { Width = 1.25 };
    static readonly Pen Ink = Pen.Outline with { Width = 2 };
    static readonly Pen Moves = Pen.AsLeft with { Width = 2.5 };
    static readonly Fill Body = new(Role.Ink);
    static readonly Fill Moving = new(Role.Accent);

    static Drawing Framed(string title, params IEnumerable<Mark>[] parts) => new(Wide, Tall, title, Say.FromBehindLookingForward, [.. parts.SelectMany(part => part)]);

    /// <summary>The aeroplane from behind, going down on one side; or level.</summary>
    public static Drawing Rolls(Side side) => side == Side.None ? Framed(Say.FliesLevel, Aeroplane(0)) : Framed(Gaps.Fill(Say.Rolls, side == Side.Left ? Texts.LeftInText : Texts.RightInText), Aeroplane(side == Side.Left ? -16 : 16), Turning(side == Side.Left ? -1 : 1, 22));

    public static Drawing Unknown => Framed(Say.NotKnownInText, [new Lettering(new(60, 50), "?", Role.Muted, Align.Middle, Strong: true, Size: 44)]);

    /// <summary>How far it has gone down after a count of five.</summary>
    public static Drawing Strength(RollStrength strength) => Framed($"{strength}", Aeroplane(strength switch { RollStrength.Barely => 3, RollStrength.Slowly => 14, _ => 34 }),
        Turning(1, strength switch { RollStrength.Barely => 6, RollStrength.Slowly => 18, _ => 40 }));

    static IEnumerable<Mark> Aeroplane(double bank)
    {
        Point At(double x, double y) => new Point(60 + x, 40 + y).Turned(bank, new(60, 40));
        yield return Shape.Line(new(6, 40), new(114, 40), Thin with { Dashed = true });
        yield return new Outline([At(-46, -4), At(46, -4), At(46, -1), At(0, 2), At(-46, -1)], null, Body);
        yield return new Outline([At(-1.5, -4), At(0, -20), At(1.5, -4)], null, Body);
        yield return new Outline([At(-16, -8), At(16, -8), At(16, -6), At(-16, -6)], null, Body);
        yield return new Outline([.. Enumerable.Range(0, 24).Select(i => At(8 * Math.Cos(i * Math.PI / 12), 4 + 9 * Math.Sin(i * Math.PI / 12)))], null, Body);
    }

    static IEnumerable<Mark> Turning(int way, double sweep)
    {
        var arc = new Arc(new(60, 40), 51, way > 0 ? -6 : 186, way * sweep, Moves with { Width = 2 });
        yield return arc;
        yield return Shape.Head(arc.At(1).Towards(arc.StartDeg + arc.SweepDeg + (way * 90), 7), arc.StartDeg + arc.SweepDeg + (way * 90), Role.Accent, 10);
    }

    /// <summary>Wheel with or without hands, pedals with or without feet, and the ball where the feet watch it.</summary>
    public static Drawing Doing(Hands hands, Feet feet) => Framed($"{hands} {feet}", Wheel(hands == Hands.HoldingLevel ? -18 : 0, hands), Pedals(feet));

    static IEnumerable<Mark> Wheel(double turn, Hands hands)
    {
        Point At(double x, double y) => new Point(42 + x, 34 + y).Turned(turn, new(42, 34));
        yield return new Outline([At(-26, -18), At(-24, 4), At(-10, 10), At(10, 10), At(24, 4), At(26, -18)], Ink with { Width = 4 }, null, Closed: false);
        yield return Shape.Line(new(42, 42), new(42, 66), Ink with { Width = 4 });
        if (hands == Hands.HeldNeutral) yield return Shape.Line(new(42, 2), new(42, 14), Moves);
        foreach (var side in (int[])[-1, 1])
        {
            var hand = hands == Hands.Released ? new Point(42 + (side * 36), 12) : At(side * 25.5, -9);
            yield return Shape.Polygon(hand, 6.5, 12, 0, hands == Hands.Released ? Thin with { Dashed = true } : Moves, hands == Hands.Released ? null : Moving);
        }
        if (hands == Hands.HoldingLevel)
        {
            var arc = new Arc(new(42, 34), 36, -60, -50, Moves);
            yield return arc;
            yield return Shape.Head(arc, 8);
        }
    }

    static IEnumerable<Mark> Pedals(Feet feet)
    {
        foreach (var x in (double[])[88, 104])
        {
            yield return new Outline([new(x, 44), new(x + 10, 44), new(x + 10, 60), new(x, 60)], Ink, null);
            if (feet != Feet.Off) yield return new Outline([new(x + 1.5, 40), new(x + 8.5, 40), new(x + 8.5, 68), new(x + 1.5, 68)], null, Moving);
        }
        if (feet == Feet.Off) yield break;
        if (feet == Feet.BallCentred)
            foreach (var mark in Slip(new(103, 30), 30, 0)) yield return mark;
    }

    /// <summary>The ball in its glass, so many of its own widths out, right positive.</summary>
    public static Drawing Ball(double widths) => new(64, 30, Gaps.Fill(Say.Ball, $"{widths:0.0}"), Say.AsInPanel, [.. Slip(new(32, 15), 60, widths)]);

    static IEnumerable<Mark> Slip(Point centre, double wide, double widths)
    {
        var (ball, half) = (wide / 7.5, wide / 2);
        yield return Shape.Rounded(centre, half, ball * 0.8, 6, Thin, Fill.Paper);
        foreach (var side in (int[])[-1, 1]) yield return Shape.Line(centre.Plus(side * ball * 0.62, -ball * 0.8), centre.Plus(side * ball * 0.62, ball * 0.8), Thin);
        yield return Shape.Polygon(centre.Plus(widths * ball, 0), ball / 2, 20, 0, Thin, widths == 0 ? Body : Moving);
    }

    /// <summary>A wing's section with its flap down so many degrees.</summary>
    public static Drawing Flap(double deg)
    {
        var hinge = new Point(48, 17);
        return new(72, 44, Gaps.Fill(Say.FlapInText, $"{deg:0}"), Say.FromLeft, [
            new Outline([new(6, 15), new(10, 10), new(20, 7), new(34, 8), new(50, 14), new(50, 18), new(20, 18), new(9, 17)], null, Body),
            new Outline([hinge.Plus(3, -2), hinge.Plus(20, 2).Turned(deg, hinge), hinge.Plus(3, 2)], null, Moving),
        ]);
    }

    /// <summary>The front seats from above, nose up; who sat there is filled.</summary>
    public static Drawing Seats(Aboard aboard)
    {
        Mark[] Seat(double x, double y, bool taken) =>
            [new Outline([new(x - 9, y - 8), new(x + 9, y - 8), new(x + 9, y + 9), new(x - 9, y + 9)], Thin, null), .. taken ? [Shape.Polygon(new(x, y), 6.5, 16, 0, Moves, Moving)] : Array.Empty<Mark>()];
        return new(72, 60, Words.Of(aboard), Say.FromAboveNoseUp, [
            new Outline([new(36, 2), new(52, 10), new(58, 26), new(58, 58), new(14, 58), new(14, 26), new(20, 10)], Ink, null),
            .. Seat(26, 28, aboard != Aboard.AloneRight), .. Seat(46, 28, aboard != Aboard.AloneLeft),
            .. aboard == Aboard.MoreThanTwo ? [.. Seat(26, 48, true), .. Seat(46, 48, true)] : Array.Empty<Mark>(),
        ]);
    }

    /// <summary>The check before flight: wheel to the left, left aileron up, right aileron down.</summary>
    public static Drawing WheelLeft => new(320, 150, Say.WheelLeftLeftAileron, Say.FromBehindLookingForward, [.. CheckMarks()]);

    static IEnumerable<Mark> CheckMarks()
    {
        yield return new Outline([new(20, 46), new(300, 46), new(300, 52), new(160, 58), new(20, 52)], Pen.Outline, Fill.Paper);
        yield return Shape.Rounded(new(160, 66), 16, 20, 2.6, Pen.Outline, Fill.Paper);
        yield return new Outline([new(30, 30), new(86, 30), new(86, 47), new(30, 47)], Pen.AsLeft, Fill.Band);
        yield return new Outline([new(234, 51), new(290, 51), new(290, 68), new(234, 68)], Pen.AsLeft, Fill.Band);
        foreach (var (x, from, to) in ((double, double, double)[])[(58, 26, 6), (262, 72, 92)])
        {
            yield return Shape.Line(new(x, from), new(x, to), Pen.AsLeft);
            yield return Shape.Head(new(x, to + Math.Sign(to - from) * 4), to < from ? -90 : 90, Role.Accent);
        }
        yield return new Lettering(new(72, 18), Say.LeftAileronUp, Role.Accent, Strong: true, Size: 13);
        yield return new Lettering(new(304, 112), Say.RightAileronDown, Role.Accent, Align.End, Strong: true, Size: 13);
        var pivot = new Point(160, 122);
        Point At(double x, double y) => new Point(160 + x, 118 + y).Turned(-28, pivot);
        yield return new Outline([At(-24, -14), At(-22, 4), At(-8, 10), At(8, 10), At(22, 4), At(24, -14)], Pen.Outline with { Width = 4 }, null, Closed: false);
        var arc = new Arc(pivot, 34, -70, -50, Pen.AsLeft);
        yield return arc;
        yield return Shape.Head(arc);
        yield return new Lettering(new(118, 134), Say.WheelLeft, Role.Accent, Align.End, Strong: true, Size: 13);
    }
}
