namespace Rigging.Web.Look;

/// <summary>A text from a resource file with its gaps filled: {0}, {1}.</summary>
static class Gaps
{
    public static string Fill(string text, params object[] what) =>
        what.Index().Aggregate(text, (filled, gap) => filled.Replace($"{{{gap.Index}}}", $"{gap.Item}", StringComparison.Ordinal));
}
