using System.Globalization;

namespace Rigging.Quality;

/// <summary>So many of so many.</summary>
readonly record struct Share(int Of, int All)
{
    public static Share Where<T>(IEnumerable<T> all, Func<T, bool> holds)
    {
        var (of, count) = (0, 0);
        foreach (var one in all)
            (of, count) = (of + (holds(one) ? 1 : 0), count + 1);
        return new(of, count);
    }

    public static Share operator +(Share one, Share other) => new(one.Of + other.Of, one.All + other.All);

    /// <summary>Two standard deviations of the draw about this share: what another draw of as many would mostly stay within.</summary>
    public (double From, double To) Draw => (Fraction - TwoSds, Fraction + TwoSds);

    double TwoSds => 2 * Math.Sqrt(Fraction * (1 - Fraction) / All);

    public double Fraction => All == 0 ? double.NaN : (double)Of / All;

    public override string ToString() => All == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100 * Fraction:0.0} % ({Of} of {All})");
}
