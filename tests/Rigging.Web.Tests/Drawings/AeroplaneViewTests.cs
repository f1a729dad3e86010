using Rigging.Mechanics.Contract;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class AeroplaneViewTests
{
    const double Middle = 170, LevelY = 78;

    static Outline HeavyPanel(Drawing drawing) => Assert.Single(drawing.Marks.OfType<Outline>(), mark => mark.Pen == Pen.AsLeft);

    static IEnumerable<string> Lettered(Drawing drawing) => drawing.Marks.OfType<Lettering>().Select(mark => mark.Text);

    /// <summary>Looking forward, the pilot's left is on the left of the paper.</summary>
    [Theory, InlineData(Side.Left, -1), InlineData(Side.Right, 1)]
    public void The_heavy_wing_drops_on_its_own_side(Side heavy, int side)
    {
        var drawing = AeroplaneView.FromWords(heavy);
        var tip = HeavyPanel(drawing).Points.MaxBy(point => side * point.X);

        Assert.True(side * (tip.X - Middle) > 100);
        Assert.True(tip.Y > LevelY, "y runs down the paper: the dropped tip lies below level");
        Assert.Equal("from behind, looking forward", drawing.Viewpoint);
    }

    /// <summary>Right wing down is positive.</summary>
    [Theory, InlineData(-0.8, "Left wing heavy, 0.80°/s"), InlineData(0.42, "Right wing heavy, 0.42°/s"), InlineData(0, "Not known which wing is heavy")]
    public void A_rate_is_said_in_words_without_a_sign(double rate, string title) =>
        Assert.Equal(title, AeroplaneView.FromRate(rate, rate - 0.3, rate + 0.3).Title);

    [Fact]
    public void The_bank_drawn_is_the_bank_after_ten_seconds()
    {
        var arc = Assert.Single(AeroplaneView.FromRate(-0.8, -1.1, -0.5).Marks.OfType<Arc>(), mark => mark.Pen == Pen.Reach);

        Assert.Equal(-8, arc.SweepDeg, 9);
        Assert.Equal(180, arc.StartDeg);
    }

    [Fact]
    public void The_other_wing_makes_the_mirror_image()
    {
        var left = AeroplaneView.FromRate(-0.8, -1.1, -0.5, 0.3);
        var right = AeroplaneView.FromRate(0.8, 0.5, 1.1, 0.3);

        Assert.Equal(Corners(left, point => 2 * Middle - point.X), Corners(right, point => point.X));

        static IEnumerable<(double, double)> Corners(Drawing drawing, Func<Point, double> x) =>
            drawing.Marks.OfType<Outline>().SelectMany(mark => mark.Points).Select(point => (Math.Round(x(point), 3) + 0.0, Math.Round(point.Y, 3) + 0.0)).Order();
    }

    /// <summary>A picture that had to be capped may not pretend to a scale.</summary>
    [Fact]
    public void A_picture_out_of_scale_says_so_and_shows_no_band_and_no_limit()
    {
        var drawing = AeroplaneView.FromRate(-4, -5, -3, 0.3);

        Assert.Contains("drawn at 15.0°, not to scale", Lettered(drawing));
        Assert.DoesNotContain(drawing.Marks, mark => mark is Outline { Fill.Opacity: < 1 } or Outline { Pen.Role: Role.Caution });
        Assert.Contains("3.00 to 5.00", Lettered(drawing));
    }

    [Fact]
    public void An_interval_across_level_names_both_sides() =>
        Assert.Contains("left 0.10 to right 0.70 °/s, 9 in 10", Lettered(AeroplaneView.FromRate(0.3, -0.1, 0.7)));

    [Fact]
    public void No_wing_drops_where_nobody_knows_which_is_heavy_and_both_carry_the_band()
    {
        var drawing = AeroplaneView.FromRate(-0.4, -1.2, 0.6, 0.5);

        Assert.Equal("Not known which wing is heavy", drawing.Title);
        Assert.DoesNotContain(drawing.Marks.OfType<Arc>(), mark => mark.Pen == Pen.Reach);
        Assert.Equal(2, drawing.Marks.OfType<Outline>().Count(mark => mark.Fill == Fill.Band));
        Assert.Equal("Inside its limit, whichever way", AeroplaneView.FromRate(0.1, -0.2, 0.4, 0.5).Title);
        Assert.Equal("No roll, hands off, ball centred", AeroplaneView.FromRate(0, -0.04, 0.04, 0.5).Title);
    }

    [Fact]
    public void Words_alone_show_no_figure() =>
        Assert.DoesNotContain(Lettered(AeroplaneView.FromWords(Side.Left)), text => text.Any(char.IsDigit));

    public static TheoryData<double, double?> EveryRate =>
        [.. from rate in Enumerable.Range(-32, 65) from limit in (double?[])[null, 0.2, 0.3, 0.5, 1, 1.5] select (rate * 0.05, limit)];

    /// <summary>As wide as the broadest figures of that size, a little higher than its capitals.</summary>
    static (double Left, double Top, double Right, double Bottom) Box(Lettering text)
    {
        var wide = text.Text.Length * text.Size * 0.6;
        var left = text.At.X - (text.Align switch { Align.Start => 0, Align.Middle => wide / 2, _ => wide });
        return (left, text.At.Y - 0.75 * text.Size, left + wide, text.At.Y + 0.2 * text.Size);
    }

    /// <summary>At small banks everything comes close together: the figure, its interval, the limit and the lift.</summary>
    [Theory, MemberData(nameof(EveryRate))]
    public void No_lettering_touches_another_nor_the_mark_of_the_limit(double rate, double? limit)
    {
        var drawing = AeroplaneView.FromRate(rate, rate - 0.2, rate + 0.2, limit);
        var boxes = drawing.Marks.OfType<Lettering>().Select(text => (text.Text, Box: Box(text))).ToList();

        Assert.All(boxes, one => Assert.True(one.Box is { Left: >= 0, Top: >= 0 } && one.Box.Right <= drawing.Width && one.Box.Bottom <= drawing.Height, $"{one.Text} leaves the picture"));
        Assert.Equal([], from one in boxes
                         from other in boxes
                         where one != other && one.Box.Left < other.Box.Right && other.Box.Left < one.Box.Right && one.Box.Top < other.Box.Bottom && other.Box.Top < one.Box.Bottom
                         select $"{one.Text} on {other.Text}");
        Assert.Equal([], from line in drawing.Marks.OfType<Outline>().Where(mark => mark.Pen == Pen.Limit)
                         from step in Enumerable.Range(0, 11)
                         let at = new Point(line.Points[0].X + (line.Points[1].X - line.Points[0].X) * step / 10, line.Points[0].Y + (line.Points[1].Y - line.Points[0].Y) * step / 10)
                         from one in boxes
                         where at.X > one.Box.Left && at.X < one.Box.Right && at.Y > one.Box.Top && at.Y < one.Box.Bottom
                         select $"the limit through {one.Text}");
    }
}
