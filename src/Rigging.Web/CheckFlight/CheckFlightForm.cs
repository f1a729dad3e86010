using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.CheckFlight;

/// <summary>The flight log as typed.</summary>
static class CheckFlightForm
{
    public static IReadOnlyList<Choice> Crews => [new("alone", Say.IFlewAlone), new("second", Say.SecondCrewMemberWithDuty)];

    public static IReadOnlyList<Choice> FuelMethods =>
    [
        new(nameof(FuelMethod.Dip), Say.DippedEachTank),
        new(nameof(FuelMethod.Totaliser), Say.MeteredTotaliserOrPumpEach),
        new(nameof(FuelMethod.Gauge), Say.ReadOffGauges, Say.GaugesAreNotQuantitiesThere),
        new(nameof(FuelMethod.NotKnown), Say.NotKnown, Say.ThereWillBeNoVerdict),
    ];

    public static CheckFlown Read(TypedFields fields, Typed typed, Airframe? airframe)
    {
        var method = typed.Choice<FuelMethod>(fields["fuelMethod"], "fuelMethod", Say.HowFuelWasMeasured);
        if (fields["crew"] is not ("alone" or "second")) typed.Wrong("not-a-choice", Say.CrewNothingChosenChooseOne, "crew");
        var stalls = typed.YesNo(fields["stallsFlown"], "stallsFlown", Say.Stalls);
        var flaps = typed.YesNo(fields["everyFlapSetting"], "everyFlapSetting", Say.FlapSettings);
        return new(
            typed.Date(fields["flownOn"], "flownOn", Texts.FlownOn),
            typed.Needed(fields["durationH"], "durationH", Say.Duration, Say.Hours),
            typed.Whole(fields["passengers"], "passengers", Say.Passengers),
            typed.Whole(fields["students"], "students", Say.Students),
            fields["crew"] == "second" ? fields["secondCrewDuty"] ?? "" : null,
            fields.Ticked("readWhatWasDisturbed"),
            fields.Ticked("controlsCheckedBeforeFlight"),
            method is FuelMethod.Dip or FuelMethod.Totaliser,
            airframe is null ? "[]" : new FlightReadings(fields, typed, airframe).ToJson(),
            stalls,
            stalls ? null : fields.Text("stallsNotFlownBecause"),
            flaps,
            flaps ? null : fields.Text("flapsNotFlownBecause"),
            typed.YesNo(fields["satisfactory"], "satisfactory", Say.OperationalCheck),
            fields["remarks"] ?? "",
            TrimForm.Read(fields, typed));
    }

    /// <summary>The refusals at this form's fields, under the form's names for them.</summary>
    public static IReadOnlyList<BrokenRule> AtFields(IReadOnlyList<BrokenRule> broken, TypedFields fields, Airframe? airframe)
    {
        if (airframe is null) return broken;
        var readings = new FlightReadings(fields, new(), airframe);
        return [.. broken.Select(rule => rule.Field is { } path && path.StartsWith("testPoints", StringComparison.Ordinal)
            ? rule with { Field = readings.FieldOf(path), Sentence = FlightReadings.NameOf(path) is { } name && rule.Sentence.StartsWith(path + ": ", StringComparison.Ordinal) ? name + rule.Sentence[path.Length..] : rule.Sentence }
            : rule)];
    }
}
