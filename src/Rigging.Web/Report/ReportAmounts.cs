using System.Globalization;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>Fuel and weights in the unit the pilot thinks in, to litres and kilograms.</summary>
static class ReportAmounts
{
    const double MostLitres = 1000, MostKilograms = 300;

    sealed record Unit(string Words, double Factor);

    public static (double? LeftL, double? RightL) Fuel(TypedFields fields, ReportableAircraft? aircraft, Typed typed) =>
        fields["fuelUnit"] == ReportForm.OfATank
            ? (Part(fields, "fuelLeftL", Say.FuelLeft, aircraft?.TankLeftL, typed), Part(fields, "fuelRightL", Say.FuelRight, aircraft?.TankRightL, typed))
            : (Amount(fields, "fuelLeftL", Say.FuelLeft, FuelUnit(fields), MostLitres, typed), Amount(fields, "fuelRightL", Say.FuelRight, FuelUnit(fields), MostLitres, typed));

    public static (double? LeftKg, double? RightKg) Seats(TypedFields fields, Typed typed) =>
        (Amount(fields, "seatLeftKg", Say.SeatLeftKgLabel, SeatUnit(fields), MostKilograms, typed), Amount(fields, "seatRightKg", Say.SeatRightKgLabel, SeatUnit(fields), MostKilograms, typed));

    static Unit FuelUnit(TypedFields fields) => fields["fuelUnit"] == "gal" ? new("US gal", ByDefinition.LitresPerUsGallon) : new("L", 1);

    static Unit SeatUnit(TypedFields fields) => fields["seatUnit"] == "lb" ? new("lb", ByDefinition.KilogramsPerPound) : new("kg", 1);

    /// <summary>Read and range in the unit typed, so that what is refused is named as it was typed.</summary>
    static double? Amount(TypedFields fields, string field, string name, Unit unit, double most, Typed typed)
    {
        if (typed.Number(fields[field], field, name, unit.Words) is not { } value) return null;
        var converted = Math.Round(value * unit.Factor, 2);
        if (converted >= 0 && converted <= most) return converted;
        typed.Wrong("value-out-of-range", Gaps.Fill(Say.CannotBeWanted0To, name, Words.Number(value), unit.Words, Words.Number(most / unit.Factor, 0), unit.Words), field);
        return null;
    }

    static double? Part(TypedFields fields, string field, string name, double? tankL, Typed typed)
    {
        if (fields.Text(field) is not { } text) return null;
        if (tankL is not { } full)
            typed.Wrong("tank-unknown", Gaps.Fill(Say.HowMuchItsTankHolds, name), field);
        else if (Fraction(text) is { } part)
            return Math.Round(part * full, 1);
        else
            typed.Wrong("not-a-part", Gaps.Fill(Say.IsNotPartOfTankWanted, name, text), field);
        return null;
    }

    /// <summary>"½", "3/4", "0.5", "full", "empty"; null when it is none, or not between empty and full.</summary>
    internal static double? Fraction(string text)
    {
        var plain = text.Trim().Replace(',', '.').ToLowerInvariant();
        double? value = plain switch
        {
            "full" => 1,
            "empty" => 0,
            [var sign] when char.GetNumericValue(sign) is var number and >= 0 => number,
            _ when plain.Split('/') is [var top, var bottom] => Number(top) / Number(bottom),
            _ => Number(plain),
        };
        return value is >= 0 and <= 1 ? value : null;
    }

    static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number) ? number : null;
}
