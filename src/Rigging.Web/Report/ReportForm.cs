using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>The pilot's form, as typed, and how it becomes a report. What was left empty or "not recorded" stays unknown; nothing is guessed.</summary>
static class ReportForm
{
    /// <summary>The red-flag answer that says there was none: without an answer nobody can tell that the question was read.</summary>
    public const string NoRedFlag = "none";

    const double LitresPerUsGallon = 3.785411784;      // by definition
    const double KilogramsPerPound = 0.45359237;       // by definition
    const double MostLitres = 1000, MostKilograms = 300;

    public static (Reported? Report, IReadOnlyList<BrokenRule> Errors) Read(TypedFields fields, IReadOnlyDictionary<string, AircraftId> fleet)
    {
        var typed = new Typed();
        var aircraft = Aircraft(fields, fleet, typed);
        if (fields.Text("words") is null) typed.Wrong("text-missing", "Say what the aeroplane does, in your own words.", "words");
        var rollsTo = typed.Choice<Side>(fields["rollsTo"], "rollsTo", "Which way it rolls");
        var redFlags = RedFlags(fields, typed);
        var bank = Sided(fields, "bankDeg", "bankSide", "Bank", "°", 90, typed);
        var report = new Reported(
            0, aircraft, fields["words"] ?? "", rollsTo,
            Or(fields, "strength", "How briskly", RollStrength.NotRecorded, typed),
            Or(fields, "hands", "Hands", Hands.NotRecorded, typed),
            Or(fields, "feet", "Feet", Feet.NotRecorded, typed),
            typed.Number(fields["casKt"], "casKt", "Indicated airspeed", "kt"),
            typed.Number(fields["pressureAltitudeFt"], "pressureAltitudeFt", "Altitude", "ft"),
            typed.Number(fields["powerPercent"], "powerPercent", "Power", "%"),
            typed.Number(fields["flapDeg"], "flapDeg", "Flap", "degrees"),
            Sided(fields, "ballWidths", "ballSide", "Ball", "widths", 3, typed),
            bank,
            typed.Number(fields["bankAfterS"], "bankAfterS", "Time to that bank", "seconds"),
            Amount(fields, "fuelLeftL", "Fuel left", Fuel(fields), MostLitres, typed),
            Amount(fields, "fuelRightL", "Fuel right", Fuel(fields), MostLitres, typed),
            Or(fields, "fuelMethod", "How the fuel is known", FuelMethod.NotKnown, typed),
            Amount(fields, "seatLeftKg", "Left seat", Seat(fields), MostKilograms, typed),
            Amount(fields, "seatRightKg", "Right seat", Seat(fields), MostKilograms, typed),
            fields.Text("sinceWhen"), fields.Text("lastWork"), StraightBefore(fields, typed),
            [.. fields.All("happened").Select(word => typed.Choice<Happening>(word, "happened", "What happened since")).Distinct()],
            redFlags);
        return typed.Ok ? (report, []) : (null, typed.Errors);
    }

    static AircraftId Aircraft(TypedFields fields, IReadOnlyDictionary<string, AircraftId> fleet, Typed typed)
    {
        if (fields.Text("aircraft") is not { } registration)
            typed.Wrong("value-missing", "Which aircraft: nothing chosen. Choose one of the fleet.", "aircraft");
        else if (fleet.TryGetValue(registration, out var aircraft))
            return aircraft;
        else
            typed.Wrong("aircraft-unknown", $"Which aircraft: “{registration}” is not in the fleet. Choose one that is.", "aircraft");
        return default;
    }

    static IReadOnlyList<RedFlag> RedFlags(TypedFields fields, Typed typed)
    {
        var answers = fields.All("redFlags").Where(answer => answer.Length > 0).ToList();
        if (answers.Count == 0)
            typed.Wrong("value-missing", "Tick what happened, or “none of these”: each of these grounds the aircraft at once.", "redFlags");
        else if (answers.Contains(NoRedFlag) && answers.Count > 1)
            typed.Wrong("contradiction", "“None of these” and something else are both ticked. Leave ticked what is true.", "redFlags");
        return [.. answers.Where(answer => answer != NoRedFlag).Select(answer => typed.Choice<RedFlag>(answer, "redFlags", "Red flags")).Distinct()];
    }

    static T Or<T>(TypedFields fields, string field, string name, T notRecorded, Typed typed) where T : struct, Enum =>
        string.IsNullOrEmpty(fields[field]) ? notRecorded : typed.Choice<T>(fields[field], field, name);

    static bool? StraightBefore(TypedFields fields, Typed typed)
    {
        switch (fields["straightBefore"])
        {
            case "yes": return true;
            case "no": return false;
            case null or "" or "unknown": return null;
            case var other:
                typed.Wrong("not-a-choice", $"Straight before: “{other}” is not one of the choices.", "straightBefore");
                return null;
        }
    }

    /// <summary>A size without a sign and the side beside it; right is positive.</summary>
    static double? Sided(TypedFields fields, string field, string sideField, string name, string unit, double most, Typed typed)
    {
        var size = typed.Number(fields[field], field, name, unit);
        var side = Or(fields, sideField, $"{name}, side", Side.NotRecorded, typed);
        if (size is { } value && !(value >= 0 && value <= most))
        {
            typed.Wrong("value-out-of-range", $"{name} {Words.Number(value)} {unit} cannot be: wanted 0 to {Words.Number(most)} {unit}, and the side beside it.", field);
            return null;
        }
        switch (side, size)
        {
            case (Side.Left or Side.Right, null):
                if (typed.Errors.All(error => error.Field != field)) typed.Wrong("value-missing", $"{name}: you chose the {Words.Of(side)} side. Say how much, in {unit}, or choose “not recorded”.", field);
                return null;
            case (Side.NotRecorded, > 0):
                typed.Wrong("value-missing", $"{name} {Words.Number(size.Value)} {unit}: to which side? Choose left or right.", sideField);
                return null;
            case (Side.None, null): return 0;
            case (Side.None, > 0):
                typed.Wrong("contradiction", $"{name} {Words.Number(size.Value)} {unit}, and also none. Leave what is true.", field);
                return null;
            default: return side == Side.Left ? -size : size;
        }
    }

    sealed record Unit(string Words, double Factor);

    static Unit Fuel(TypedFields fields) => fields["fuelUnit"] == "gal" ? new("US gal", LitresPerUsGallon) : new("L", 1);

    static Unit Seat(TypedFields fields) => fields["seatUnit"] == "lb" ? new("lb", KilogramsPerPound) : new("kg", 1);

    /// <summary>In the unit that was typed, so that a refusal speaks of what the person sees.</summary>
    static double? Amount(TypedFields fields, string field, string name, Unit unit, double most, Typed typed)
    {
        if (typed.Number(fields[field], field, name, unit.Words) is not { } value) return null;
        var converted = Math.Round(value * unit.Factor, 2);
        if (converted >= 0 && converted <= most) return converted;
        typed.Wrong("value-out-of-range", $"{name} {Words.Number(value)} {unit.Words} cannot be: wanted 0 to {Words.Number(most / unit.Factor, 0)} {unit.Words}.", field);
        return null;
    }
}
