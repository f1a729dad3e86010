using Rigging.Squawks.Entries;

namespace Rigging.Squawks.Rules;

/// <summary>A report may know little; what it says must be possible. Ranges are what an instrument or a person can show, not limits of an aircraft.</summary>
static class ReportRules
{
    public static IEnumerable<BrokenRule> Of(Reported report)
    {
        // What grounds is filed at once, with or without words.
        if (!GroundingQuestions.Grounds(report))
            foreach (var rule in Contents.Needed(report.Words, "text-missing", "words", "what the aeroplane does, in your own words")) yield return rule;
        foreach (var rule in (IEnumerable<BrokenRule?>)
        [
            Range(report.CasKt, 20, 400, "casKt", "Indicated airspeed", "kt"),
            Range(report.PressureAltitudeFt, -2000, 30000, "pressureAltitudeFt", "Altitude", "ft"),
            Range(report.PowerPercent, 0, 110, "powerPercent", "Power", "%"),
            Range(report.FlapDeg, -10, 60, "flapDeg", "Flap", "°"),
            Range(report.BallWidths, -3, 3, "ballWidths", "Ball", "widths"),
            Range(report.BankDeg, -90, 90, "bankDeg", "Bank", "°"),
            Range(report.BankAfterS, 0.5, 300, "bankAfterS", "Time to that bank", "s"),
            Range(report.FuelLeftL, 0, 1000, "fuelLeftL", "Fuel left", "L"),
            Range(report.FuelRightL, 0, 1000, "fuelRightL", "Fuel right", "L"),
            Range(report.SeatLeftKg, 0, 300, "seatLeftKg", "Left seat", "kg"),
            Range(report.SeatRightKg, 0, 300, "seatRightKg", "Right seat", "kg"),
        ])
            if (rule is not null) yield return rule;
        if (report.BankDeg.HasValue != report.BankAfterS.HasValue)
            yield return new("bank-without-time", "A bank needs the seconds it took, and the seconds need the bank reached.", report.BankDeg is null ? "bankDeg" : "bankAfterS");
        if (report.FuelMethod != FuelMethod.NotKnown && (report.FuelLeftL is null || report.FuelRightL is null))
            yield return new("fuel-missing", "You say the fuel is known: give the litres on each side, or choose “not known”.", report.FuelLeftL is null ? "fuelLeftL" : "fuelRightL");
    }

    public static BrokenRule? Range(double? value, double low, double high, string field, string name, string unit) =>
        value is { } number && !(number >= low && number <= high)
            ? new("value-out-of-range", $"{name} {Words.Number(number)} {unit} cannot be: wanted {Words.Number(low)} to {Words.Number(high)} {unit}.", field)
            : null;
}
