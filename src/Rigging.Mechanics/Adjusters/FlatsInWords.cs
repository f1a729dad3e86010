using System.Globalization;

namespace Rigging.Mechanics.Adjusters;

/// <summary>Turns in flats as people say them: <c>½ flat</c>, <c>1¼ flats</c>; whatever is no eighth stays a decimal.</summary>
public static class FlatsInWords
{
    static readonly string[] Eighths = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];

    /// <param name="flats">0 or more.</param>
    public static string Of(double flats)
    {
        if (!double.IsFinite(flats) || flats < 0 || flats > 1000)
            throw new ArgumentOutOfRangeException(nameof(flats), flats, "A turn is 0 flats or more.");
        var eighths = (int)Math.Round(flats * 8);
        // A hundredth of a flat is 0.6° on a hexagon: nobody sets a head closer.
        var number = Math.Abs(flats - eighths / 8.0) > 0.005
            ? flats.ToString("0.##", CultureInfo.InvariantCulture)
            : eighths < 8 && eighths > 0 ? Eighths[eighths] : $"{(eighths / 8).ToString(CultureInfo.InvariantCulture)}{Eighths[eighths % 8]}";
        return $"{number} {(flats is > 0 and < 1.005 ? "flat" : "flats")}";
    }
}
