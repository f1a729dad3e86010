namespace Rigging.Mechanics.Assessment;

/// <summary>A probability for a person to read.</summary>
public static class Sureness
{
    /// <summary>Whole per cent from 1 to 99: nothing that is inferred is certain, and nothing is ruled out.</summary>
    public static double Percent(double probability) => Math.Clamp(Math.Round(100 * probability), 1, 99);
}
