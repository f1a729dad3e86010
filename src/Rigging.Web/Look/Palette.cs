namespace Rigging.Web.Look;

/// <summary>The colours of one theme as #RRGGBB; the same numbers as in wwwroot/tokens.css.</summary>
public sealed record Palette(
    string Ground, string Surface, string Line, string Ink, string Muted,
    string Accent, string OnAccent, string Caution, string Stop, string Good, string Note)
{
    public static readonly Palette Light = new(
        Ground: "#F6F4EF", Surface: "#FFFFFF", Line: "#D5D0C4", Ink: "#1B2430", Muted: "#55606E",
        Accent: "#0B5E6B", OnAccent: "#FFFFFF", Caution: "#855600", Stop: "#A3231F", Good: "#1F6B3A", Note: "#2D5A9E");

    public static readonly Palette Dark = new(
        Ground: "#12171D", Surface: "#1A2129", Line: "#33404C", Ink: "#E8E6DF", Muted: "#A5AFBA",
        Accent: "#6CC5CF", OnAccent: "#12171D", Caution: "#F0B95A", Stop: "#FF8E86", Good: "#7FD39A", Note: "#8DB8F2");

    public static readonly Palette Contrast = new(
        Ground: "#FFFFFF", Surface: "#FFFFFF", Line: "#000000", Ink: "#000000", Muted: "#000000",
        Accent: "#00417A", OnAccent: "#FFFFFF", Caution: "#000000", Stop: "#000000", Good: "#000000", Note: "#000000");
}
