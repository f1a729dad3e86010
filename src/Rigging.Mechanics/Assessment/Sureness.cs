namespace Rigging.Mechanics.Assessment;

/// <summary>A probability for a person to read.</summary>
public static class Sureness
{
    /// <summary>Whole per cent, never more than 99: nothing that is inferred is certain.</summary>
    public static double Percent(double probability) => Math.Min(Math.Round(100 * probability), 99);
}
