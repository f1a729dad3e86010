using System.Globalization;
using System.Xml.Linq;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class SvgTests
{
    static readonly Drawing[] All =
    [
        AeroplaneView.FromWords(Side.Left), AeroplaneView.FromRate(0.8, 0.5, 1.1, 0.3),
        EccentricView.Draw(new(Side.Left, -15, 15, 75, 6, BushingIn.FuselageFitting, Spanwise.Inboard), Face.Rear),
        EccentricView.Draw(new(Side.Left, 110, 15, 75, 6, null, null), Face.Rear),
        new Drawing(10, 10, "a < b & \"c\"", "here", [new Lettering(new(1, 1), "1 < 2 & 3")]),
    ];

    [Fact]
    public void Every_drawing_is_well_formed_and_says_what_it_shows() => Assert.All(All, drawing =>
    {
        var svg = XElement.Parse(Svg.Of(drawing));

        Assert.Equal($"{drawing.Title}. Seen {drawing.Viewpoint}.", (string?)svg.Attribute("aria-label"));
        Assert.Equal(drawing.Marks.Count, svg.Elements().Count());
        Assert.Equal(drawing.Marks.OfType<Lettering>().Select(mark => mark.Text), svg.Elements().Where(e => e.Name.LocalName == "text").Select(e => e.Value));
    });

    [Fact]
    public void A_decimal_comma_country_draws_the_same_lines()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            var german = All.Select(Svg.Of).ToList();
            CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
            Assert.Equal(All.Select(Svg.Of), german);
        }
        finally { CultureInfo.CurrentCulture = before; }
    }

    /// <summary>Ink on screen follows the theme, so no mark may bring a colour of its own.</summary>
    [Fact]
    public void No_mark_names_a_colour() => Assert.All(All, drawing => Assert.DoesNotMatch("#[0-9A-Fa-f]{3,6}|rgb", Svg.Of(drawing)));
}
