using Rigging.Squawks.Entries;
using Airframe = Rigging.Mechanics.Contract.Airframe;

namespace Rigging.Squawks.Rules;

/// <summary>A report may know little; what it says must be possible. What an instrument or a person can show, and what the aircraft can fly and hold.</summary>
static class ReportRules
{
    public static IEnumerable<BrokenRule> Of(Reported report, Airframe? airframe)
    {
        // What grounds is filed at once, with or without words.
        if (!GroundingQuestions.Grounds(report))
            foreach (var rule in Contents.Needed(report.Words, "text-missing", "words", "what the aeroplane does, in your own words")) yield return rule;
        List<BrokenRule> impossible = [.. ((IEnumerable<BrokenRule?>)
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
        ]).OfType<BrokenRule>()];
        foreach (var rule in impossible.Count > 0 ? impossible : Beyond(report, airframe)) yield return rule;
        if (report.BankDeg.HasValue != report.BankAfterS.HasValue)
            yield return new("bank-without-time", "A bank needs the seconds it took, and the seconds need the bank reached.", report.BankDeg is null ? "bankDeg" : "bankAfterS");
        if (report.FuelMethod != FuelMethod.NotKnown && (report.FuelLeftL is null || report.FuelRightL is null))
            yield return new("fuel-missing", "You say the fuel is known: give the litres on each side, or choose “not known”.", report.FuelLeftL is null ? "fuelLeftL" : "fuelRightL");
    }

    /// <summary>Whoever reports a danger reports it with whatever was on the dials: that a limit was passed may be the very thing.</summary>
    static IEnumerable<BrokenRule> Beyond(Reported report, Airframe? airframe)
    {
        if (GroundingQuestions.Grounds(report)) yield break;
        foreach (var (beyond, name, field) in ((FlyingLimits.Beyond?, string, string)[])
        [
            (FlyingLimits.Speed(report.CasKt, report.FlapDeg, airframe), "Indicated airspeed", "casKt"),
            (FlyingLimits.Bank(report.BankDeg), "Bank", "bankDeg"),
            (FlyingLimits.Fuel(report.FuelLeftL, left: true, airframe), "Fuel left", "fuelLeftL"),
            (FlyingLimits.Fuel(report.FuelRightL, left: false, airframe), "Fuel right", "fuelRightL"),
        ])
            if (beyond is not null) yield return new("value-out-of-range", $"{name}: {beyond.Seen} given; wanted {beyond.Wanted}.", field);
    }

    public static BrokenRule? Range(double? value, double low, double high, string field, string name, string unit) =>
        value is { } number && !(number >= low && number <= high)
            ? new("value-out-of-range", $"{name} {Words.Number(number)} {unit} cannot be: wanted {Words.Number(low)} to {Words.Number(high)} {unit}.", field)
            : null;
}
