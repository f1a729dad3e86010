using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Rigging.Web.Plots;

namespace Rigging.Web.Tests.Plots;

public sealed partial class ChartInkTests
{
    static Chart Sample(string title = "Bank after letting go", string says = "After 10 s 6° left wing down.") => new(title, "seconds", "bank, °", says,
        [new(Telling.Earlier, "before the work", [(0, 0, 0, 0), (10, -8, -6, -4)]), new(Telling.Now, "after the work", [(0, 0, 0, 0), (10, -1, 0.5, 2)])],
        [new(Telling.Now, "read after the work", [Dot.GiveOrTake(10, 0.4, 1.5)])], [new(0.5, "limit 0.50")], [new(4, "work, S-7")]);

    static XElement Drawn(Chart chart, Canvas? on = null) => XElement.Parse(ChartInk.Svg(chart, on));

    [Fact]
    public void A_plot_is_read_out_as_its_sentence()
    {
        var svg = Drawn(Sample());

        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Equal("Bank after letting go. After 10 s 6° left wing down.", svg.Attribute("aria-label")!.Value);
    }

    /// <summary>Dark and high contrast are the page's business: a plot that brings colours of its own would be lost in one of them.</summary>
    [Fact]
    public void Every_colour_is_the_page_s_own()
    {
        var colours = Drawn(Sample()).DescendantsAndSelf().SelectMany(e => e.Attributes()).Where(a => a.Name.LocalName is "fill" or "stroke").Select(a => a.Value).Where(value => value != "none").Distinct().ToList();

        Assert.NotEmpty(colours);
        Assert.All(colours, colour => Assert.Matches(@"^var\(--(ink|muted|grid|accent|caution|surface)\)$", colour));
    }

    [Fact]
    public void Names_stand_beside_what_they_name()
    {
        var words = string.Join('|', Drawn(Sample()).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value));

        Assert.All((string[])["before the work", "after the work", "limit 0.50", "work, S-7", "seconds", "bank, °"], name => Assert.Contains(name, words, StringComparison.Ordinal));
    }

    /// <summary>A reading in the evening has its day's name at the left, and so has the last one's end.</summary>
    [Theory]
    [InlineData(0.7, 0.9, "2026-03-02", "2026-03-03")]
    [InlineData(0.7, 1.2, "2026-03-02", "2026-03-04")]
    [InlineData(0.7, 30.5, "2026-03-02", "2026-04-02")]
    public void A_phone_s_plot_over_days_dates_both_its_ends(double first, double last, string from, string to)
    {
        var start = new DateTime(2026, 3, 2, 0, 0, 0, DateTimeKind.Unspecified).ToOADate();
        var drawn = Drawn(new("How it flew", "day", "roll", "", [], [new(Telling.Earlier, "assessed", [Dot.GiveOrTake(start + first, 1, 0.2), Dot.GiveOrTake(start + last, 0.4, 0.2)])], [], [], Dates: true), Canvas.Narrow);

        var dates = drawn.Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value.Trim()).Where(text => Regex.IsMatch(text, @"^\d{4}-\d\d-\d\d$")).Order(StringComparer.Ordinal);

        Assert.Equal([from, to], dates);
    }

    static Curve Straight(Telling telling, string name, double from, double to) =>
        new(telling, name, [.. Enumerable.Range(0, 21).Select(i => from + (to - from) * i / 20).Select((mean, i) => (i * 0.6, mean - 1, mean, mean + 1))]);

    /// <summary>Flat, steep, crossing and lying on each other, with readings at their ends and a limit close by.</summary>
    public static TheoryData<double, double, double, double, double, bool> Slopes =>
        [.. from phone in (bool[])[false, true] from before in (double[])[-8, -2.2, -0.3, 0, 5] from after in (double[])[-0.4, 0, 0.6, 3.6] from start in (double[])[0, 2] select (start, before, start / 2, after, 0.5, phone)];

    /// <summary>A line that runs through its own name is read as a word struck out.</summary>
    [Theory, MemberData(nameof(Slopes))]
    public void No_name_lies_on_a_line_a_reading_or_another_name(double beforeFrom, double beforeTo, double afterFrom, double afterTo, double limit, bool phone)
    {
        var drawn = Drawn(new("Roll", "knots", "roll", "", [Straight(Telling.Earlier, "before the work", beforeFrom, beforeTo), Straight(Telling.Now, "after the work", afterFrom, afterTo)],
            [new(Telling.Earlier, "", [Dot.GiveOrTake(10, beforeTo * 0.8, 2), Dot.GiveOrTake(12, beforeTo, 1)]), new(Telling.Now, "", [Dot.GiveOrTake(10, afterTo, 2)])], [new(limit, "limit 0.50"), new(-limit, "limit −0.50")], []), phone ? Canvas.Narrow : Canvas.Broad);
        var names = ((string[])["before the work", "after the work", "limit 0.50", "limit −0.50"]).Select(name => (Name: name, Box: BoxOf(Assert.Single(drawn.Descendants(), e => e.Name.LocalName == "text" && e.Value.Trim() == name)))).ToList();
        // A dashed line is drawn dash by dash; a band lies behind the names and may.
        var lines = drawn.Descendants().Where(e => e.Name.LocalName == "path" && e.Attribute("fill-opacity") is null)
            .Where(e => ((string?[])[e.Attribute("fill")?.Value, e.Attribute("stroke")?.Value]).Any(colour => colour is "var(--accent)" or "var(--muted)" or "var(--caution)"))
            .Select(e => e.Attribute("d")!.Value.Split('M', StringSplitOptions.RemoveEmptyEntries).Select(Numbers).ToList()).ToList();

        Assert.True(lines.Count >= 7, $"{lines.Count} lines of two curves, three readings and two limits");
        Assert.Equal([], from dash in lines.SelectMany(line => line)
                         from end in Enumerable.Range(1, dash.Count / 2 - 1)
                         from step in Enumerable.Range(0, 21)
                         let x = dash[2 * end - 2] + (dash[2 * end] - dash[2 * end - 2]) * step / 20
                         let y = dash[2 * end - 1] + (dash[2 * end + 1] - dash[2 * end - 1]) * step / 20
                         from name in names
                         where x > name.Box.Left && x < name.Box.Right && y > name.Box.Top && y < name.Box.Bottom
                         select $"a line through {name.Name} at {x:0}, {y:0}");
        Assert.Equal([], from one in names
                         from other in names
                         where one != other && one.Box.Left < other.Box.Right && other.Box.Left < one.Box.Right && one.Box.Top < other.Box.Bottom && other.Box.Top < one.Box.Bottom
                         select $"{one.Name} on {other.Name}");
    }

    /// <summary>From the first letter to the end of the last; as high as its capitals and as low as its tails.</summary>
    static (double Left, double Top, double Right, double Bottom) BoxOf(XElement text)
    {
        var (at, xs, y) = (Numbers(text.Attribute("transform")!.Value), Numbers(text.Attribute("x")!.Value), Numbers(text.Attribute("y")!.Value)[0]);
        return (at[0] + xs[0], at[1] + y - 9, at[0] + xs[^1] + 6, at[1] + y + 3);
    }

    static List<double> Numbers(string text) => [.. Number().Matches(text).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"-?\d+(\.\d+)?(e-?\d+)?")]
    private static partial Regex Number();

    /// <summary>Measured in Chromium: a frame is 324 pixels wide inside on a phone of 390.</summary>
    [Fact]
    public void Its_letters_are_read_on_a_phone() =>
        Assert.All(Drawn(Sample(), Canvas.Narrow).Descendants().Where(e => e.Name.LocalName == "text"), text => Assert.True(Numbers(text.Attribute("font-size")!.Value)[0] * 324 / Canvas.Narrow.Width >= 12, text.Value));

    [Fact]
    public void The_two_sizes_of_one_plot_share_no_names()
    {
        IEnumerable<string> Ids(Canvas on) => Drawn(Sample(), on).Descendants().Select(e => e.Attribute("id")?.Value).OfType<string>();

        Assert.Empty(Ids(Canvas.Broad).Intersect(Ids(Canvas.Narrow)));
    }

    [Fact]
    public void Two_plots_on_one_page_share_no_names()
    {
        IEnumerable<string> Ids(Chart chart) => Drawn(chart).Descendants().Select(e => e.Attribute("id")?.Value).OfType<string>();

        Assert.Empty(Ids(Sample()).Intersect(Ids(Sample(says: "Another sentence."))));
    }

    [Fact]
    public void On_paper_it_is_a_sharp_picture()
    {
        var png = ChartInk.Png(Sample());

        // A PNG's width and height stand after its signature and the head's name.
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], png[..4]);
        Assert.Equal(1920, System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
    }
}
