namespace Rigging.Web.Look;

/// <summary>One answer to choose: the value posted, the words shown, and a line of help. A disabled one says why in its help.</summary>
public sealed record Choice(string Value, string Label, string? Help = null, bool Disabled = false)
{
    public static readonly IReadOnlyList<Choice> YesNo = [new("yes", "Yes"), new("no", "No")];
}
