using System.Xml.Linq;
using Rigging.Web.Plots;

namespace Rigging.Web.Tests.Plots;

public sealed class ChartInkTests
{
    static Chart Sample(string title = "Bank after letting go", string says = "After 10 s 6° left wing down.") => new(title, "seconds", "bank, °", says,
        [new(Telling.Earlier, "before the work", [(0, 0, 0, 0), (10, -8, -6, -4)]), new(Telling.Now, "after the work", [(0, 0, 0, 0), (10, -1, 0.5, 2)])],
        [new(Telling.Now, "read after the work", [(10, 0.4, 1.5)])], [new(0.5, "limit 0.50")], [new(4, "work, S-7")]);

    static XElement Drawn(Chart chart) => XElement.Parse(ChartInk.Svg(chart));

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
