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

    public double Fraction => All == 0 ? double.NaN : (double)Of / All;

    public override string ToString() => All == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{100 * Fraction:0.0} % ({Of} of {All})");
}
