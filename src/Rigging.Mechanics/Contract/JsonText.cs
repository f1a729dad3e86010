using System.Text.Json;

namespace Rigging.Mechanics.Contract;

/// <summary>Texts out of JSON that never throw: an escape such as <c>\uD800</c> passes the parser but names no character.</summary>
static class JsonText
{
    const int LongestShown = 60;

    public static string? Of(JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.String)
            return null;
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    public static string? NameOf(JsonProperty field)
    {
        try
        {
            return field.Name;
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    public static string Seen(JsonElement element) => Shorten(element.GetRawText());

    public static string Shorten(string text) => text.Length <= LongestShown ? text : $"{text[..LongestShown]}…";

    public static bool IsPlainName(string name) => name.Length is > 0 and <= LongestShown && !char.IsAsciiDigit(name[0]) && name.All(c => char.IsAsciiLetterOrDigit(c) || c == '_');

    /// <summary>A name between single quotes, as a JSON path wants it.</summary>
    public static string Quoted(string name) => $"'{Shorten(JsonEncodedText.Encode(name).Value).Replace("'", "\\'", StringComparison.Ordinal)}'";
}
