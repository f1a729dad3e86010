using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>The aeroplane from behind, dropping its heavy wing: what is wrong, in one picture.</summary>
public static class AeroplaneView
{
    /// <summary>°/s; slower than this nobody feels it.</summary>
    public const double LeastRate = WhatIsKnown.UnfeltDegPerS;

    const double HalfSpan = 133, TipArc = 144, Edge = 8, ShownSeconds = 10, LeastBank = 2.5, MostBank = 15, PictureBank = 8;
    static readonly Point Axis = new(Drawing.MostWide / 2, 78);

    /// <summary>From the pilot's words: drawn out of scale, with the reading in words when there was one.</summary>
    /// <param name="read">Such as "6° left wing down after 10 s"; null when no figure was given.</param>
    public static Drawing FromWords(Side heavy, string? read = null) => Draw(
        heavy == Side.Left ? -PictureBank : PictureBank,
        Gaps.Fill(Say.WingHeavy, Capital(heavy)),
        read is null ? Say.AsReportedNoFigureGiven : Gaps.Fill(Say.NotToScale, read), [], []);

    /// <summary>
    /// From a roll tendency in degrees per second, right wing down positive, with its 90 % interval and the limit if one is set. A wing drops only where the interval
    /// says which; otherwise both carry the band.
    /// </summary>
    public static Drawing FromRate(double rateDegPerS, double lowDegPerS, double highDegPerS, double? limitDegPerS = null)
    {
        var known = WhatIsKnown.Of(lowDegPerS, highDegPerS, LeastRate, limitDegPerS);
        if (!known.HasSide()) return Level(known, lowDegPerS, highDegPerS, limitDegPerS);
        var side = known == Known.Negative ? Side.Left : Side.Right;
        var figure = $"{Numerals.Number(Math.Abs(rateDegPerS), 2)}°/s";
        var true10 = rateDegPerS * ShownSeconds;
        var bank = (side == Side.Left ? -1 : 1) * Math.Clamp(Math.Abs(true10), LeastBank, MostBank);
        var note = bank == true10 ? Gaps.Fill(Say.DrawnAsItIsSAfterLetting, $"{ShownSeconds:0}") : Gaps.Fill(Say.DrawnAtNotToScale, Numerals.Degrees(Math.Abs(bank), 1));
        // A picture out of scale may not carry a band or a limit that is in scale.
        Mark[] behind = bank != true10 ? [] : [Band(side, lowDegPerS * ShownSeconds, highDegPerS * ShownSeconds)];
        Mark[] limits = bank != true10 || limitDegPerS is not { } limit || limit * ShownSeconds > MostBank ? [] : Limit(side, limit);
        return Draw(bank, Gaps.Fill(Say.WingHeavyBy, Capital(side), figure), note, behind, limits, figure, Interval(lowDegPerS, highDegPerS));
    }

    static Drawing Level(Known known, double lowDegPerS, double highDegPerS, double? limitDegPerS)
    {
        var (low, high) = (lowDegPerS * ShownSeconds, highDegPerS * ShownSeconds);
        var inScale = Math.Max(-low, high) <= MostBank;
        Mark[] behind = known == Known.Nothing || !inScale ? [] : [Band(Side.Left, low, high), Band(Side.Right, low, high)];
        Mark[] limits = known == Known.Nothing || !inScale || limitDegPerS is not { } limit || limit * ShownSeconds > MostBank ? [] : [.. Limit(Side.Left, limit), .. Limit(Side.Right, limit)];
        var interval = Gaps.Fill(Say.DegPerSNineTimesInTen, Interval(lowDegPerS, highDegPerS));
        return Draw(0, known switch { Known.Nothing => Say.FliesLevelHandsOff, Known.InsideLimit => Say.InsideLimitEitherWay, _ => Say.NotKnownWhichWay }, known == Known.Nothing ? Say.LevelHandsOff : interval, behind, limits);
    }

    static Drawing Draw(double bank, string title, string note, Mark[] behind, Mark[] limits, string? figure = null, string? interval = null)
    {
        var side = bank < 0 ? Side.Left : Side.Right;
        List<Mark> marks = [.. behind, .. LevelLine(), .. Aeroplane(bank), .. limits];
        if (bank != 0 && figure is not null) marks.AddRange(Lift(bank));
        if (bank != 0)
        {
            var arc = new Arc(Axis, TipArc, side == Side.Left ? 180 : 0, bank, Pen.Reach);
            // Under whatever reaches down on this side, the mark of the limit too.
            var lowest = limits.OfType<Outline>().SelectMany(line => line.Points).Append(arc.At(1)).Append(Axis).Max(point => point.Y);
            var below = new Point(Outboard(side), Math.Max(UnderWheels, lowest + 26));
            var anchor = side == Side.Left ? Align.Start : Align.End;
            marks.AddRange([arc, Shape.Head(arc), new Lettering(below, figure ?? Gaps.Fill(Say.WhichWing, Numerals.Of(side)), Role.Accent, anchor, Figures: figure is not null, Strong: true, Size: 17)]);
            if (interval is not null) marks.Add(new Lettering(below.Plus(0, 18), interval, Role.Muted, anchor, Figures: true, Size: Drawing.SmallLetters));
        }
        marks.Add(new Lettering(new(Axis.X, 186), note, Role.Muted, Align.Middle, Size: Drawing.SmallLetters));
        return new Drawing(Drawing.MostWide, 196, title, Say.FromBehindLookingForward, marks);
    }

    // The figure, and under it the interval: clear of the wheels, which hang between them.
    const double UnderWheels = 140;

    static double Outboard(Side side) => side == Side.Left ? Edge : Drawing.MostWide - Edge;

    static IEnumerable<Mark> LevelLine()
    {
        yield return Shape.Line(Axis.Plus(-TipArc - 12, 0), Axis.Plus(TipArc + 12, 0), Pen.AsFound with { Width = 1 });
    }

    static Outline Band(Side side, double low, double high) =>
        side == Side.Left ? Shape.Wedge(Axis, 0, TipArc - 4, 180 + low, 180 + high, Fill.Band) : Shape.Wedge(Axis, 0, TipArc - 4, low, high, Fill.Band);

    static Mark[] Limit(Side side, double limit)
    {
        var direction = side == Side.Left ? 180 - limit * ShownSeconds : limit * ShownSeconds;
        var end = Axis.Towards(direction, TipArc + 10);
        return
        [
            Shape.Line(Axis.Towards(direction, TipArc - 8), end, Pen.Limit),
            new Lettering(new(Outboard(side), Axis.Y - 38), Gaps.Fill(Say.LimitDegPerS, Numerals.Number(limit, 2)), Role.Caution, side == Side.Left ? Align.Start : Align.End, Size: Drawing.SmallLetters),
        ];
    }

    /// <summary>The heavy wing lifts less. How much less is far too little to see: the arrows say only which.</summary>
    static IEnumerable<Mark> Lift(double bank)
    {
        foreach (var side in (int[])[-1, 1])
        {
            var heavy = Math.Sign(bank) == side;
            var (root, tip) = (Axis.Plus(side * 83, -8).Turned(bank, Axis), Axis.Plus(side * 83, heavy ? -24 : -40).Turned(bank, Axis));
            yield return Shape.Line(root, tip, Pen.Outline);
            yield return Shape.Head(tip, bank - 90, Role.Ink, 9);
            // Inboard of its arrow: outboard stands what the limit is.
            yield return new Lettering(Axis.Plus(side * 75, heavy ? -16 : -34).Turned(bank, Axis), heavy ? Say.LessLift : Say.MoreLift, Role.Muted, side < 0 ? Align.Start : Align.End, Size: Drawing.SmallLetters);
        }
    }

    static IEnumerable<Mark> Aeroplane(double bank)
    {
        // The wing lies on the level line; the numbers below are measured from a line 18 under it, for a half span of 190.
        const double Scale = HalfSpan / 190;
        Point At(double x, double y) => Axis.Plus(Scale * x, Scale * (y + 18)).Turned(bank, Axis);
        Outline Solid(Pen pen, params (double X, double Y)[] corners) => new([.. corners.Select(c => At(c.X, c.Y))], pen, Fill.Paper);
        Outline Round(double x, double y, double halfWidth, double halfHeight, double power) => Turned(Shape.Rounded(Axis.Plus(Scale * x, Scale * (y + 18)), Scale * halfWidth, Scale * halfHeight, power, Pen.Outline, Fill.Paper));
        Outline Turned(Outline outline) => outline with { Points = [.. outline.Points.Select(p => p.Turned(bank, Axis))] };
        Pen Panel(int side) => bank != 0 && Math.Sign(bank) == side ? Pen.AsLeft : Pen.Outline;

        yield return Shape.Circle(At(0, 12), Scale * 44, Pen.Fine);
        yield return Round(0, 54, 3, 9, 4);
        foreach (var side in (int[])[Math.Sign(-bank) is 0 ? 1 : Math.Sign(-bank), Math.Sign(bank) is 0 ? -1 : Math.Sign(bank)])
        {
            yield return Shape.Line(At(side * 15, 36), At(side * 42, 54), Pen.Outline with { Width = 2.5 });
            yield return Round(side * 44, 56, 4, 10, 4);
            yield return Shape.Line(At(side * 18, 30), At(side * 96, -13), Pen.Outline with { Width = 2 });
            yield return Solid(Panel(side), (0, -18), (side * 104.5, -21), (side * 190, -22.5), (side * 192, -20), (side * 190, -17.5), (side * 104.5, -13), (0, -9));
        }
        yield return Round(0, 12, 21, 28, 2.7);
        yield return Round(0, 6, 10, 13, 2.2);
        yield return Solid(Pen.Outline, (-66, 1), (-64, -0.5), (64, -0.5), (66, 1), (64, 3), (0, 4.5), (-64, 3));
        yield return Solid(Pen.Outline, (-2.5, 2), (-1.5, -56), (0, -58), (1.5, -56), (2.5, 2));
    }

    /// <summary>Sides in words where the interval spans level; otherwise the side is plain from the drawing.</summary>
    static string Interval(double low, double high) => low < 0 && high > 0
        ? Gaps.Fill(Say.LeftToRight, Rate(-low), Rate(high))
        : Gaps.Fill(Texts.To, Rate(Math.Min(Math.Abs(low), Math.Abs(high))), Rate(Math.Max(Math.Abs(low), Math.Abs(high))));

    /// <summary>No faster than anybody could read.</summary>
    static string Rate(double degPerS) => degPerS <= ReadingLimits.RollRateDegPerS
        ? Numerals.Number(degPerS, 2)
        : Gaps.Fill(Say.MoreThan, Numerals.Number(ReadingLimits.RollRateDegPerS, 0));

    static string Capital(Side side) => side == Side.Left ? Texts.Left : Texts.Right;
}
