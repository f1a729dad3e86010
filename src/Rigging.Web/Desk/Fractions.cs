using System.Globalization;

namespace Rigging.Web.Desk;

/// <summary>Numbers as a workshop writes them: 12.5 or 12,5, and fractions of an inch, 3/64 or 1 3/8 or 1⅜.</summary>
public static class Fractions
{
    static readonly (char Sign, string Plain)[] Signs =
        [('½', "1/2"), ('¼', "1/4"), ('¾', "3/4"), ('⅛', "1/8"), ('⅜', "3/8"), ('⅝', "5/8"), ('⅞', "7/8")];

    /// <summary>Null when it is no number.</summary>
    public static double? Read(string text)
    {
        var plain = text.Trim().Replace('−', '-').Replace(',', '.');
        foreach (var (sign, fraction) in Signs) plain = plain.Replace(sign.ToString(), " " + fraction, StringComparison.Ordinal);
        var words = plain.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            [var one] => One(one),
            [var whole, var part] when part.Contains('/') && One(whole) is { } w && w == Math.Floor(w) && One(part) is { } p and >= 0 and < 1 => w < 0 || whole.StartsWith('-') ? w - p : w + p,
            _ => null,
        };
    }

    /// <summary>To the nearest sixty-fourth: <c>3/64</c>, <c>1 3/8</c>, <c>2</c>; a negative one with a real minus.</summary>
    public static string Of(double value)
    {
        var parts = (int)Math.Round(Math.Abs(value) * 64);
        var (whole, rest, under) = (parts / 64, parts % 64, 64);
        while (rest > 0 && rest % 2 == 0) (rest, under) = (rest / 2, under / 2);
        var size = rest == 0 ? whole.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{(whole > 0 ? $"{whole} " : "")}{rest}/{under}");
        return value < 0 && parts > 0 ? "−" + size : size;
    }

    static double? One(string word)
    {
        if (word.Split('/') is [var above, var below])
            return int.TryParse(above, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var a) && int.TryParse(below, NumberStyles.None, CultureInfo.InvariantCulture, out var b) && b > 0 ? (double)a / b : null;
        return double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;
    }
}
