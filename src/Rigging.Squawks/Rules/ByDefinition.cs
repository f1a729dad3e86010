namespace Rigging.Squawks.Rules;

/// <summary>What the pilots' units are in those of the ledger; exact.</summary>
public static class ByDefinition
{
    public const double LitresPerUsGallon = 3.785411784, KilogramsPerPound = 0.45359237;
}
