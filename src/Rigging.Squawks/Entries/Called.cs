namespace Rigging.Squawks.Entries;

public enum Call { Grounded, MayFlyWithLimits, NoRiggingHold }

/// <summary>The airworthiness call: a named person's decision, with the reason.</summary>
public sealed record Called(Call Call, string Reason, string? Limits) : Fact;
