namespace Rigging.Web.Story;

/// <summary>An entry in plain words, for screen and paper alike.</summary>
/// <param name="Lines">Never empty: an entry that says nothing would be an entry nobody can read.</param>
/// <param name="Photos">Hashes of the pictures that belong to it.</param>
public sealed record Told(string Title, IReadOnlyList<Line> Lines, IReadOnlyList<string>? Photos = null);

/// <summary>One line, and how it is meant.</summary>
public sealed record Line(string Text, Tone Tone = Tone.Plain)
{
    public static implicit operator Line(string text) => new(text);

    /// <summary>A person's own words, kept as they are; no line when there are none.</summary>
    public static IEnumerable<Line> Quote(string? words)
    {
        if (!string.IsNullOrWhiteSpace(words)) yield return new(words, Tone.Quoted);
    }
}

public enum Tone
{
    Plain,

    /// <summary>A person's own words.</summary>
    Quoted,

    /// <summary>What nobody wrote down.</summary>
    Missing,

    Good,
    Caution,
    Stop,

    /// <summary>A long text that stands by itself, such as a maintenance record entry; its line breaks count.</summary>
    Document,
}
