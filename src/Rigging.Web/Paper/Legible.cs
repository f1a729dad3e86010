using System.Globalization;
using System.Text;

namespace Rigging.Web.Paper;

/// <summary>Text as it can be set: a record may not lose a character in silence, so one that our faces lack is printed as its number.</summary>
static class Legible
{
    /// <summary>Letters with separate accents are joined; tabs and other control characters become spaces; line breaks stay.</summary>
    public static string In(Typeface face, string text)
    {
        var set = new StringBuilder(text.Length);
        foreach (var rune in text.ReplaceLineEndings("\n").Normalize(NormalizationForm.FormC).EnumerateRunes())
        {
            if (rune.Value == '\n') set.Append('\n');
            else if (Rune.IsControl(rune)) set.Append(' ');
            else if (PlexFonts.CanSet(face, rune.Value)) set.Append(rune.ToString());
            else if (Rune.GetUnicodeCategory(rune) is UnicodeCategory.SpaceSeparator) set.Append('\u00A0');
            else set.Append(CultureInfo.InvariantCulture, $"[U+{rune.Value:X4}]");
        }
        return set.ToString();
    }
}
