using System.Globalization;
using System.Text.RegularExpressions;

namespace Rigging.Web.Look;

/// <summary>A text from a resource file with its gaps filled: {0}, {1}.</summary>
static partial class Gaps
{
    /// <summary>In one go: what is filled in may itself hold braces.</summary>
    public static string Fill(string text, params object?[] what) =>
        Gap().Replace(text, gap => int.Parse(gap.ValueSpan[1..^1], CultureInfo.InvariantCulture) is var index && index < what.Length ? $"{what[index]}" : gap.Value);

    [GeneratedRegex(@"\{\d\}")]
    private static partial Regex Gap();
}
