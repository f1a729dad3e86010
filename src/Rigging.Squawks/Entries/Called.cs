namespace Rigging.Squawks.Entries;

public enum Call { Grounded, MayFlyWithLimits, NoRiggingHold }

/// <summary>The airworthiness call: a named person's decision, with the reason.</summary>
/// <param name="RedFlags">What the caller knows of beyond the report; null when not asked.</param>
/// <param name="Happened">The same.</param>
public sealed record Called(Call Call, string Reason, string? Limits, IReadOnlyList<RedFlag>? RedFlags = null, IReadOnlyList<Happening>? Happened = null) : Fact;
