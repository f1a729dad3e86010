using Rigging.Mechanics.Wing;
using Rigging.Squawks.Entries;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class SmallViewsTests
{
    static IEnumerable<string> Lettered(Drawing drawing) => drawing.Marks.OfType<Lettering>().Select(mark => mark.Text);

    static Outline Bent(Drawing drawing) => Assert.Single(drawing.Marks.OfType<Outline>(), mark => mark.Pen == Pen.AsLeft);

    /// <summary>The tube's middle is at 170: ball right of centre is positive, and right on the paper.</summary>
    [Theory, InlineData(0.5, 1, "The ball: 0.5\u202Fwidth right of centre"), InlineData(-1, -1, "The ball: 1\u202Fwidth left of centre"), InlineData(0, 0, "The ball: centred")]
    public void The_ball_lies_where_the_words_say(double widths, int side, string title)
    {
        var drawing = BallView.Draw(widths);

        Assert.Equal(side, Math.Sign(Math.Round(Bent(drawing).Points.Average(point => point.X) - 170, 6)));
        Assert.Equal(title, drawing.Title);
    }

    /// <summary>From behind: the left wing is left on the paper.</summary>
    [Theory, InlineData(-10, -1, "Bank: 10° left wing down"), InlineData(25, 1, "Bank: 25° right wing down")]
    public void The_bank_is_on_the_side_and_as_large_as_the_words_say(double deg, int side, string title)
    {
        var drawing = BankView.Draw(deg);

        var (root, tip) = (Bent(drawing).Points.MinBy(point => Math.Abs(point.X - 140)), Bent(drawing).Points.MaxBy(point => Math.Abs(point.X - 140)));
        Assert.Equal(side, Math.Sign(tip.X - 140));
        Assert.True(tip.Y > root.Y, "the low wing is lower");
        Assert.Equal(deg, Assert.Single(drawing.Marks.OfType<Arc>()).SweepDeg);
        Assert.Contains($"{Math.Abs(deg)}°", Lettered(drawing));
        Assert.Equal((title, "from behind, looking forward"), (drawing.Title, drawing.Viewpoint));
    }

    [Theory]
    [InlineData(-20, -1, "Heading drift: 20° to the left", "The wheel, from its mark: 20° to the left")]
    [InlineData(12, 1, "Heading drift: 12° to the right", "The wheel, from its mark: 12° to the right")]
    public void The_nose_and_the_wheel_have_gone_to_the_side_that_the_words_say(double deg, int side, string heading, string wheel)
    {
        foreach (var (drawing, title) in ((Drawing, string)[])[(HeadingView.Draw(deg), heading), (WheelView.Draw(deg), wheel)])
        {
            var nose = Bent(drawing).Points.MinBy(point => point.Y);

            Assert.Equal(side, Math.Sign(nose.X - 140));
            Assert.Equal(deg, Assert.Single(drawing.Marks.OfType<Arc>(), arc => Math.Abs(arc.SweepDeg) < 360).SweepDeg);
            Assert.Contains($"{Math.Abs(deg)}°", Lettered(drawing));
            Assert.Equal(title, drawing.Title);
        }
    }

    [Fact]
    public void What_has_not_moved_has_neither_arrow_nor_number()
    {
        foreach (var drawing in (Drawing[])[BankView.Draw(0), HeadingView.Draw(0), WheelView.Draw(0)])
        {
            Assert.DoesNotContain(drawing.Marks.OfType<Arc>(), arc => Math.Abs(arc.SweepDeg) < 360);
            Assert.DoesNotContain(Lettered(drawing), text => text.EndsWith('°'));
        }
        Assert.Equal("Bank: wings level", BankView.Draw(0).Title);
    }

    /// <summary>They go over a weak signal with the report.</summary>
    [Fact]
    public void What_explains_a_field_is_light_and_says_where_the_eye_is()
    {
        foreach (var drawing in (Drawing[])[BankView.Draw(-10), HeadingView.Draw(-20), WheelView.Draw(20)])
        {
            Assert.InRange(Svg.Of(drawing).Length, 1, 4096);
            Assert.Contains($"role=\"img\" aria-label=\"{drawing.Title}. Seen {drawing.Viewpoint}.\"", Svg.Of(drawing), StringComparison.Ordinal);
        }
    }

    public static TheoryData<string, Drawing> Everything()
    {
        SpanwiseLift[] level = [.. Enumerable.Range(-4, 9).Select(i => new SpanwiseLift(i, 1 - i * i / 32.0, 0))];
        return new()
        {
            { "level", AeroplaneView.FromRate(0, -0.1, 0.1) }, { "heavy", AeroplaneView.FromRate(-0.8, -1.1, -0.5, 0.3) }, { "in words", AeroplaneView.FromWords(Rigging.Mechanics.Contract.Side.Left) },
            { "eccentric", EccentricView.Draw(Turn(-15, 30), Rigging.Mechanics.Adjusters.Face.Rear) }, { "rear spar", EccentricView.Draw(Turn(-15, 30) with { BushingIn = null }, Rigging.Mechanics.Adjusters.Face.Rear) },
            { "eccentric left alone", EccentricView.Draw(Turn(0, 0), Rigging.Mechanics.Adjusters.Face.Rear) },
            { "span load", SpanLoadView.Draw(level, [.. level.Select(lift => lift with { LiftM = 0.01 * Math.Sign(lift.YM) })], "right panel 0.1° more incidence") },
            { "aileron tab", TabView.OfAileron(-12, 15) }, { "rudder tab", TabView.OfRudder(-12, 15) }, { "rudder tab left alone", TabView.OfRudder(-12, -12) },
            { "fork out", ForkView.Draw(Control.LeftStrutFork, 8, 9.5, "1.5 turns out", 2.77) }, { "fork in", ForkView.Draw(Control.RightStrutFork, 10.25, 8.75, "1.5 turns in", 2.77) },
            { "fork left alone", ForkView.Draw(Control.RightStrutFork, 10, 10, "", null) },
            { "ball", BallView.Draw(0.5) }, { "ball at the end", BallView.Draw(3) }, { "bank", BankView.Draw(-10) }, { "heading", HeadingView.Draw(-20) }, { "wheel", WheelView.Draw(20) },
            { "controls", Rigging.Web.Report.Pictures.WheelLeft },
        };
    }

    static EccentricTurn Turn(double found, double left) =>
        new(Rigging.Mechanics.Contract.Side.Right, found, left, 90, 6, Rigging.Mechanics.Contract.BushingIn.FuselageFitting, Rigging.Mechanics.Contract.Spanwise.Inboard);

    /// <summary>Measured in Chromium: on a phone of 390 pixels a drawing in its frame stands 324 pixels wide. Letters of 12 pixels are the smallest that anybody reads there.</summary>
    [Theory, MemberData(nameof(Everything))]
    public void Every_letter_of_a_drawing_is_read_on_a_phone_and_none_is_cut_off(string name, Drawing drawing)
    {
        Assert.All(drawing.Marks.OfType<Lettering>(), text =>
        {
            Assert.True(text.Size * Math.Min(1, 324 / drawing.Width) >= 12, $"{name}: {text.Text} of {text.Size} on {drawing.Width}");
            // Letters of this face are 0.52 of their size wide on average, figures 0.6.
            var wide = text.Text.Length * text.Size * (text.Figures ? 0.6 : 0.52);
            var left = text.At.X - (text.Align switch { Align.Start => 0, Align.Middle => wide / 2, _ => wide });
            Assert.True(left >= 0 && left + wide <= drawing.Width && text.At.Y >= text.Size * 0.7 && text.At.Y <= drawing.Height - 2, $"{name}: {text.Text} leaves the picture");
        });
        Assert.All(drawing.Marks.OfType<Outline>().SelectMany(mark => mark.Points), point => Assert.True(point is { X: >= 0, Y: >= 0 } && point.X <= drawing.Width && point.Y <= drawing.Height, $"{name}: {point} leaves the picture"));
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
