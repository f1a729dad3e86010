using MudBlazor;

namespace Rigging.Web.Look;

/// <summary>The component library dressed in our tokens. Colours follow the stylesheet (tokens.css sets the library's variables), so every theme works without script.</summary>
public static class Theme
{
    static readonly string[] Sans = ["IBM Plex Sans", "Segoe UI", "Helvetica Neue", "Arial", "sans-serif"];

    public static readonly MudTheme Rigging = new()
    {
        PaletteLight = Dress(new PaletteLight(), Palette.Light),
        PaletteDark = Dress(new PaletteDark(), Palette.Dark),
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "2px" },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Sans, FontSize = "1rem", LineHeight = "1.5", LetterSpacing = "0" },
            H1 = new H1Typography { FontFamily = Sans, FontSize = "2.0736rem", FontWeight = "600", LineHeight = "1.2", LetterSpacing = "-0.01em" },
            H2 = new H2Typography { FontFamily = Sans, FontSize = "1.44rem", FontWeight = "600", LineHeight = "1.2", LetterSpacing = "0" },
            H3 = new H3Typography { FontFamily = Sans, FontSize = "1.2rem", FontWeight = "600", LineHeight = "1.2", LetterSpacing = "0" },
            Body1 = new Body1Typography { FontFamily = Sans, FontSize = "1rem", LineHeight = "1.5", LetterSpacing = "0" },
            Body2 = new Body2Typography { FontFamily = Sans, FontSize = "0.8333rem", LineHeight = "1.4", LetterSpacing = "0" },
            Button = new ButtonTypography { FontFamily = Sans, FontSize = "1rem", FontWeight = "600", TextTransform = "none", LetterSpacing = "0" },
            Caption = new CaptionTypography { FontFamily = Sans, FontSize = "0.8333rem", LetterSpacing = "0" },
        },
    };

    static T Dress<T>(T dress, Palette colours) where T : MudBlazor.Palette
    {
        dress.Primary = colours.Accent;
        dress.PrimaryContrastText = colours.OnAccent;
        dress.Secondary = colours.Muted;
        dress.Tertiary = dress.Info = colours.Note;
        dress.Success = colours.Good;
        dress.Warning = colours.Caution;
        dress.Error = colours.Stop;
        dress.Dark = colours.Ink;
        dress.TextPrimary = colours.Ink;
        dress.TextSecondary = dress.TextDisabled = colours.Muted;
        dress.ActionDefault = colours.Ink;
        dress.Background = colours.Ground;
        dress.Surface = dress.AppbarBackground = dress.DrawerBackground = colours.Surface;
        dress.AppbarText = dress.DrawerText = colours.Ink;
        dress.LinesDefault = dress.Divider = dress.TableLines = colours.Line;
        dress.LinesInputs = colours.Muted;
        return dress;
    }
}
