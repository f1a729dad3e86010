using Rigging.Mechanics.Wing;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class SmallViewsTests
{
    static IEnumerable<string> Lettered(Drawing drawing) => drawing.Marks.OfType<Lettering>().Select(mark => mark.Text);

    static Outline Bent(Drawing drawing) => Assert.Single(drawing.Marks.OfType<Outline>(), mark => mark.Pen == Pen.AsLeft);

    /// <summary>The tube's middle is at 180: ball right of centre is positive, and right on the paper.</summary>
    [Theory, InlineData(0.5, 1, "The ball: 0.5\u202Fwidth right of centre"), InlineData(-1, -1, "The ball: 1\u202Fwidth left of centre"), InlineData(0, 0, "The ball: centred")]
    public void The_ball_lies_where_the_words_say(double widths, int side, string title)
    {
        var drawing = BallView.Draw(widths);

        Assert.Equal(side, Math.Sign(Math.Round(Bent(drawing).Points.Average(point => point.X) - 180, 6)));
        Assert.Equal(title, drawing.Title);
    }

    /// <summary>A tab drives its surface the other way.</summary>
    [Theory, InlineData(0, 10, "down", "up"), InlineData(5, -5, "up", "down")]
    public void A_tab_bent_one_way_pushes_the_aileron_the_other(double found, double left, string bent, string pushed)
    {
        var drawing = TabView.OfAileron(found, left);

        Assert.Equal($"The aileron's tab: bend the trailing edge {bent}", drawing.Title);
        Assert.Contains($"pushes the surface {pushed}", Lettered(drawing));
        Assert.Equal(left > found, Bent(drawing).Points.Max(point => point.Y) - 84 > 84 - Bent(drawing).Points.Min(point => point.Y));
    }

    [Fact]
    public void A_rudder_tab_bent_to_the_left_pushes_the_rudder_to_the_right() => Assert.Contains("pushes the surface right", Lettered(TabView.OfRudder(0, 8)));

    [Theory, InlineData(1, "the right wing lifts more"), InlineData(-1, "the left wing lifts more")]
    public void The_wing_with_more_incidence_lifts_more(int sign, string said)
    {
        SpanwiseLift[] level = [.. Enumerable.Range(-4, 9).Select(i => new SpanwiseLift(i, 1 - i * i / 32.0, 0))];
        SpanwiseLift[] change = [.. level.Select(lift => lift with { LiftM = sign * 0.01 * Math.Sign(lift.YM) })];

        var drawing = SpanLoadView.Draw(level, change, "right panel 0.1° more incidence");

        Assert.Contains(said, Lettered(drawing));
        Assert.Contains("the difference drawn 22 times as large", Lettered(drawing));
    }
}
