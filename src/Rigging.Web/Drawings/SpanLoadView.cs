using Rigging.Mechanics.Wing;
using Rigging.Web.Look;

namespace Rigging.Web.Drawings;

/// <summary>Lift along the span: level flight dashed, and what a difference between the wings makes of it.</summary>
public static class SpanLoadView
{
    const double MiddleX = 170, WingY = 176, HalfSpan = 158, Height = 118, ShownShare = 0.22;

    /// <param name="level">In level flight, left tip to right tip.</param>
    /// <param name="change">What is added to it, at the same places.</param>
    /// <param name="of">The difference in words: "right panel 0.11° more incidence".</param>
    public static Drawing Draw(IReadOnlyList<SpanwiseLift> level, IReadOnlyList<SpanwiseLift> change, string of)
    {
        var most = level.Max(lift => lift.LiftM);
        var largest = change.Max(lift => Math.Abs(lift.LiftM));
        // A tenth of a degree would not be seen: it is drawn as so many times itself, and says so.
        var larger = largest > 0 ? Math.Max(1, Math.Round(ShownShare * most / largest)) : 1;
        var half = level.Max(lift => Math.Abs(lift.YM));
        Point At(double y, double lift) => new(MiddleX + y / half * HalfSpan, WingY - lift / most * Height);
        Point[] even = [.. level.Select(lift => At(lift.YM, lift.LiftM))];
        Point[] uneven = [.. level.Zip(change, (lift, more) => At(lift.YM, lift.LiftM + larger * more.LiftM))];
        var right = change.Where(lift => lift.YM > 0).Sum(lift => lift.LiftM);
        List<Mark> marks =
        [
            new Outline([.. even, .. uneven.Reverse()], null, Fill.Band),
            new Outline(even, Pen.AsFound, null, Closed: false),
            new Outline(uneven, Pen.AsLeft, null, Closed: false),
            Shape.Line(At(-half, 0), At(half, 0), Pen.Outline),
            Shape.Line(new(MiddleX, WingY - 6), new(MiddleX, WingY + 6), Pen.Outline),
            new Lettering(At(-half, 0).Plus(0, 20), Say.LeftWing, Role.Muted, Size: Drawing.SmallLetters),
            new Lettering(At(half, 0).Plus(0, 20), Say.RightWing, Role.Muted, Align.End, Size: Drawing.SmallLetters),
            new Lettering(new(MiddleX, WingY + 40), right == 0 ? Say.BothLiftAlike : Gaps.Fill(Say.WingLiftsMore, right > 0 ? Texts.RightInText : Texts.LeftInText), Role.Accent, Align.Middle, Strong: true),
            new Lettering(new(MiddleX, WingY + 59), larger > 1 ? Gaps.Fill(Say.DifferenceDrawnTimesAsLarge, Numerals.Short(larger)) : Say.ToScale, Role.Muted, Align.Middle, Size: Drawing.SmallLetters),
        ];
        return new Drawing(Drawing.MostWide, 244, Gaps.Fill(Say.LiftAlongSpan, of), Say.FromBehindLookingForward, marks);
    }
}
