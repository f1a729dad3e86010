using System.Globalization;
using System.Text.RegularExpressions;
using Rigging.Web.Look;

namespace Rigging.Web.Tests.Look;

public sealed partial class PaletteTests
{
    public static TheoryData<string, Palette> Themes => new() { { ":root", Palette.Light }, { ":root[data-theme=\"dark\"]", Palette.Dark }, { ":root:not([data-theme])", Palette.Dark }, { ":root[data-theme=\"contrast\"]", Palette.Contrast } };

    [Theory, MemberData(nameof(Themes))]
    public void The_stylesheet_and_the_palette_name_the_same_colours(string selector, Palette palette)
    {
        var block = Regex.Match(Css, $@"^\s*{Regex.Escape(selector)} \{{(.*?)\}}", RegexOptions.Singleline | RegexOptions.Multiline).Groups[1].Value;
        var named = Token().Matches(block).ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value);

        Assert.Equal(
            [palette.Ground, palette.Surface, palette.Line, palette.Ink, palette.Muted, palette.Accent, palette.OnAccent, palette.Caution, palette.Stop, palette.Good, palette.Note],
            ((string[])["ground", "surface", "line", "ink", "muted", "accent", "on-accent", "caution", "stop", "good", "note"]).Select(token => named[token]));
    }

    /// <summary>Web Content Accessibility Guidelines 2.2, success criterion 1.4.3: 4.5 to 1 for text.</summary>
    [Theory, MemberData(nameof(Themes))]
    public void Every_text_colour_can_be_read_on_ground_and_surface(string selector, Palette palette)
    {
        foreach (var text in (string[])[palette.Ink, palette.Muted, palette.Accent, palette.Caution, palette.Stop, palette.Good, palette.Note])
            foreach (var behind in (string[])[palette.Ground, palette.Surface])
                Assert.True(Contrast(text, behind) >= 4.5, $"{selector}: {text} on {behind} is {Contrast(text, behind):0.00}");
        Assert.True(Contrast(palette.OnAccent, palette.Accent) >= 4.5);
    }

    /// <summary>The two ends of the scale, by the guideline's own definition of relative luminance.</summary>
    [Theory, InlineData("#000000", "#FFFFFF", 21), InlineData("#777777", "#777777", 1)]
    public void Contrast_is_measured_as_the_guideline_says(string one, string other, double ratio) => Assert.Equal(ratio, Contrast(one, other), 6);

    static readonly string Css = File.ReadAllText(Path.Combine(Repository.Web, "wwwroot", "tokens.css"));

    static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    static double Luminance(string colour) => ((double[])[0.2126, 0.7152, 0.0722]).Select((weight, i) =>
    {
        var c = int.Parse(colour.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
        return weight * (c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4));
    }).Sum();

    [GeneratedRegex(@"--([a-z-]+): (#[0-9A-F]{6});")]
    private static partial Regex Token();
}
