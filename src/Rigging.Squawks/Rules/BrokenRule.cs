namespace Rigging.Squawks.Rules;

/// <summary>Why something is refused: a stable code, a sentence for the person, and the field it is about, if any.</summary>
public sealed record BrokenRule(string Code, string Sentence, string? Field = null);
