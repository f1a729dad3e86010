namespace Rigging.Mechanics.Estimates;

/// <summary>One part of an estimated figure, and its standard deviation.</summary>
readonly record struct Share(double Value, double Sd)
{
    public static Share Good(double value, double percent) => new(value, Math.Abs(value) * percent / 100);

    public static Share operator *(double times, Share share) => new(times * share.Value, Math.Abs(times) * share.Sd);

    /// <summary>Of the sum, percent of it: parts err each for itself. No more than a file may state.</summary>
    public static double Percent(ReadOnlySpan<Share> shares)
    {
        const double most = 200;
        var (sum, variance) = (0.0, 0.0);
        foreach (var share in shares)
            (sum, variance) = (sum + share.Value, variance + share.Sd * share.Sd);
        return Math.Min(most, Math.Sqrt(variance) / Math.Abs(sum) * 100);
    }
}
