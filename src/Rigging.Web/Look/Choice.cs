namespace Rigging.Web.Look;

/// <summary>One answer to choose: the value posted, the words shown, and a line of help. A disabled one says why in its help.</summary>
/// <param name="Picture">Shown above the words; the words say all that it shows.</param>
public sealed record Choice(string Value, string Label, string? Help = null, bool Disabled = false, Drawings.Drawing? Picture = null)
{
    public static IReadOnlyList<Choice> YesNo => [new("yes", Texts.Yes), new("no", Texts.No)];
}
