using System.Text;
using Rigging.Squawks.Entries;

namespace Rigging.Squawks.Rules;

/// <summary>A report that grounds is filed at once: what cannot be stands beside it as it was given, and holds nothing up.</summary>
public static class AtOnce
{
    public static Reported Of(Reported report, IEnumerable<string> unread)
    {
        ArgumentNullException.ThrowIfNull(report);
        var wrong = ReportRules.Of(report, airframe: null).ToLookup(rule => rule.Field!, rule => rule.Sentence);
        double? Possible(double? value, params string[] fields) => fields.Any(wrong.Contains) ? null : value;
        var (first, rest) = Cut(Printable(report.Words));
        List<string> beside = [.. unread, .. wrong.SelectMany(sentences => sentences), .. rest];
        return report with
        {
            Words = first,
            CasKt = Possible(report.CasKt, "casKt"),
            PressureAltitudeFt = Possible(report.PressureAltitudeFt, "pressureAltitudeFt"),
            PowerPercent = Possible(report.PowerPercent, "powerPercent"),
            FlapDeg = Possible(report.FlapDeg, "flapDeg"),
            BallWidths = Possible(report.BallWidths, "ballWidths"),
            BankDeg = Possible(report.BankDeg, "bankDeg", "bankAfterS"),
            BankAfterS = Possible(report.BankAfterS, "bankDeg", "bankAfterS"),
            FuelLeftL = Possible(report.FuelLeftL, "fuelLeftL"),
            FuelRightL = Possible(report.FuelRightL, "fuelRightL"),
            FuelMethod = wrong.Contains("fuelLeftL") || wrong.Contains("fuelRightL") ? FuelMethod.NotKnown : report.FuelMethod,
            SeatLeftKg = Possible(report.SeatLeftKg, "seatLeftKg"),
            SeatRightKg = Possible(report.SeatRightKg, "seatRightKg"),
            SinceWhen = report.SinceWhen is { } since ? Printable(since) : null,
            LastWork = report.LastWork is { } last ? Printable(last) : null,
            AsSet = report.AsSet is { } set ? Printable(set) : null,
            Unread = beside.Count > 0 ? [.. beside.Select(Printable).Distinct()] : null,
        };
    }

    static string Printable(string text) => string.Concat(text.EnumerateRunes().Where(rune => Storable.Prints(rune)).Select(rune => rune.ToString()));

    static (string First, IEnumerable<string> Others) Cut(string words)
    {
        List<string> parts = [];
        var part = new StringBuilder();
        foreach (var rune in words.EnumerateRunes())
        {
            if (part.Length + rune.Utf16SequenceLength > Storable.LongestText) parts.Add(Take(part));
            part.Append(rune.ToString());
        }
        parts.Add(part.ToString());
        return (parts[0], parts.Skip(1));
    }

    static string Take(StringBuilder part)
    {
        var text = part.ToString();
        part.Clear();
        return text;
    }
}
