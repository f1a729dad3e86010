using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.CheckFlight;

/// <summary>The flight log as typed.</summary>
static class CheckFlightForm
{
    public static readonly IReadOnlyList<Choice> Crews = [new("alone", "I flew alone"), new("second", "A second crew member with a duty of their own")];

    public static readonly IReadOnlyList<Choice> FuelMethods =
    [
        new(nameof(FuelMethod.Dip), "Dipped, each tank"),
        new(nameof(FuelMethod.Totaliser), "Metered: totaliser or pump, each tank"),
        new(nameof(FuelMethod.Gauge), "Read off the gauges", "Gauges are not quantities: there will be no verdict from this flight."),
        new(nameof(FuelMethod.NotKnown), "Not known", "There will be no verdict from this flight."),
    ];

    public static CheckFlown Read(TypedFields fields, Typed typed, Airframe? airframe)
    {
        var method = typed.Choice<FuelMethod>(fields["fuelMethod"], "fuelMethod", "How the fuel was measured");
        if (fields["crew"] is not ("alone" or "second")) typed.Wrong("not-a-choice", "Crew: nothing chosen. Choose one.", "crew");
        var stalls = typed.YesNo(fields["stallsFlown"], "stallsFlown", "Stalls");
        var flaps = typed.YesNo(fields["everyFlapSetting"], "everyFlapSetting", "Flap settings");
        return new(
            typed.Date(fields["flownOn"], "flownOn", "Flown on"),
            typed.Needed(fields["durationH"], "durationH", "Duration", "hours"),
            typed.Whole(fields["passengers"], "passengers", "Passengers"),
            typed.Whole(fields["students"], "students", "Students"),
            fields["crew"] == "second" ? fields["secondCrewDuty"] ?? "" : null,
            fields.Ticked("readWhatWasDisturbed"),
            fields.Ticked("controlsCheckedBeforeFlight"),
            method is FuelMethod.Dip or FuelMethod.Totaliser,
            airframe is null ? "[]" : new FlightReadings(fields, typed, airframe).ToJson(),
            stalls,
            stalls ? null : fields.Text("stallsNotFlownBecause"),
            flaps,
            flaps ? null : fields.Text("flapsNotFlownBecause"),
            typed.YesNo(fields["satisfactory"], "satisfactory", "Operational check"),
            fields["remarks"] ?? "");
    }

    /// <summary>The refusals at this form's fields.</summary>
    public static IReadOnlyList<BrokenRule> AtFields(IReadOnlyList<BrokenRule> broken, TypedFields fields, Airframe? airframe) =>
        airframe is null ? broken
        : [.. broken.Select(rule => rule.Field?.StartsWith("testPoints", StringComparison.Ordinal) == true ? rule with { Field = new FlightReadings(fields, new(), airframe).FieldOf(rule.Field) } : rule)];
}
