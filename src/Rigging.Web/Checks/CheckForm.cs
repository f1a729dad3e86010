using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Web.Checks;

/// <summary>One check as typed, to the entry it makes. Fields are named as the entry's are, so that a rule's refusal finds its place.</summary>
static class CheckForm
{
    // Exact by definition.
    const double NewtonPerPoundForce = 4.4482216152605, LitresPerGallon = 3.785411784;

    public const string Minus = "minus", None = "none", Plus = "plus";

    public static GroundChecked Read(TypedFields fields, Typed typed, CheckSheet sheet, Airframe? airframe)
    {
        var survey = sheet.Check == Check.PanelIncidenceDifference ? SurveyForm.Read(fields, typed) : null;
        if (survey is not null && (fields.Text("way") is not null || fields.Text("value") is not null)) typed.Wrong("survey-and-size", Say.SurveyAndSize, "way");
        return new(
            sheet.Check,
            survey is not null ? null : sheet.Wanted switch { Wanted.Sided => Sided(fields, typed, sheet), Wanted.Force => Force(fields, typed, sheet), _ => null },
            survey is not null ? null : Sd(fields, typed, sheet),
            sheet.Wanted == Wanted.Look ? Clear(fields, typed) : null,
            sheet.Check == Check.CableTension ? fields.Text("cable") : null,
            sheet.Check == Check.CableTension ? Celsius(fields, typed) : null,
            sheet.Check == Check.AileronTab ? typed.Choice<Side>(fields["side"], "side", Say.WhichWingsTab) : null,
            Guid.TryParse(fields["tool"], out var tool) ? new ToolId(tool) : null,
            null,
            null,
            fields.Text("finding"),
            null,
            Fuel: sheet.Wanted == Wanted.Fuel ? Fuel(fields, typed, airframe) : null,
            Travel: sheet.Wanted == Wanted.Travel ? Travel(fields, typed) : null,
            Survey: survey);
    }

    /// <summary>Each tank's name and field; of an aircraft whose tanks are not on file, one on each side.</summary>
    public static IReadOnlyList<(string Tank, string Field)> Tanks(Airframe? airframe) =>
        [.. (airframe?.Tanks.Select(tank => tank.Name) ?? [Texts.LeftInText, Texts.RightInText]).Select((tank, i) => (tank, $"fuel{i}"))];

    static List<TankFuel> Fuel(TypedFields fields, Typed typed, Airframe? airframe)
    {
        List<TankFuel> fuel = [];
        foreach (var (tank, field) in Tanks(airframe))
        {
            var amount = typed.Number(fields[field], field, Gaps.Fill(Say.TankFuel, tank), fields["fuelUnit"] == "gal" ? Say.USGallons : Say.Litres);
            if (amount < 0) typed.Wrong("value-out-of-range", Gaps.Fill(Say.TankFuelIsNegative, tank, fields[field]), field);
            if (amount is { } measured) fuel.Add(new(tank, fields["fuelUnit"] == "gal" ? Math.Round(measured * LitresPerGallon, 2) : measured));
        }
        return fuel;
    }

    static TravelMeasured? Travel(TypedFields fields, Typed typed)
    {
        double? Degrees(string field, string name)
        {
            if (string.IsNullOrWhiteSpace(fields[field])) typed.Wrong("value-missing", Gaps.Fill(Say.TravelNothingEntered, name), field);
            return typed.Number(fields[field], field, name, Say.Degrees);
        }
        var (up, down) = (Degrees("upDeg", Say.TravelUp), Degrees("downDeg", Say.TravelDown));
        (ControlSurface, Side?)? surface = fields["surface"] switch
        {
            "aileron-left" => (ControlSurface.Ailerons, Side.Left),
            "aileron-right" => (ControlSurface.Ailerons, Side.Right),
            "flap-left" => (ControlSurface.Flaps, Side.Left),
            "flap-right" => (ControlSurface.Flaps, Side.Right),
            "elevator" => (ControlSurface.Elevator, null),
            "rudder" => (ControlSurface.Rudder, null),
            _ => null,
        };
        if (surface is null) typed.Wrong("not-a-choice", Say.SurfaceNothingChosen, "surface");
        return surface is var (which, side) && up is { } raised && down is { } lowered ? new(which, side, raised, lowered) : null;
    }

    public static GroundChecked NotApplicable(TypedFields fields, CheckSheet sheet) =>
        new(sheet.Check, null, null, null, null, null, null, null, null, null, null, fields["notApplicableReason"] ?? "");

    static double? Sided(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        var size = typed.Number(fields["value"], "value", Say.HowMuch, sheet.Unit);
        if (size < 0)
        {
            typed.Wrong("size-with-sign", Gaps.Fill(Say.HowMuchHasSign, fields["value"]), "value");
            return null;
        }
        switch (fields["way"])
        {
            case None when size is null or 0:
                return 0;
            case None:
                typed.Wrong("size-and-none", Gaps.Fill(Say.HowMuchGivenAndChosen, fields["value"], sheet.None), "value");
                return null;
            case Minus or Plus when size is not null:
                return fields["way"] == Plus ? size : -size;
            case Minus or Plus:
                if (string.IsNullOrWhiteSpace(fields["value"])) typed.Wrong("value-missing", Gaps.Fill(Say.HowMuchNothingEntered, sheet.Unit), "value");
                return null;
            default:
                typed.Wrong("side-missing", Say.WhichWayNothingChosen, "way");
                return null;
        }
    }

    static double? Force(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        var name = sheet.Check == Check.CableTension ? Say.Tension : Say.Force;
        if (string.IsNullOrWhiteSpace(fields["value"]))
        {
            typed.Wrong("value-missing", Gaps.Fill(Say.NothingEnteredWantedNumber, name), "value");
            return null;
        }
        var value = typed.Number(fields["value"], "value", name);
        if (value < 0) typed.Wrong("value-out-of-range", Gaps.Fill(Say.CannotBeWanted0OrMore, name, fields["value"]), "value");
        return NewtonsOf(value, fields);
    }

    static double? Sd(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        if (sheet.Wanted is not (Wanted.Sided or Wanted.Force)) return null;
        var sd = typed.Number(fields["sd"], "sd", Say.GiveOrTake);
        return sheet.Wanted == Wanted.Force ? NewtonsOf(sd, fields) : sd;
    }

    static double? NewtonsOf(double? value, TypedFields fields) => fields["unit"] == "lbf" && value is { } lbf ? Math.Round(lbf * NewtonPerPoundForce, 3) : value;

    static bool? Clear(TypedFields fields, Typed typed)
    {
        if (fields["clear"] is "yes" or "no") return fields["clear"] == "yes";
        typed.Wrong("value-missing", Say.WhatWasFoundNothingChosen, "clear");
        return null;
    }

    static double? Celsius(TypedFields fields, Typed typed)
    {
        var value = typed.Number(fields["temperatureC"], "temperatureC", Say.Temperature);
        var celsius = fields["temperatureUnit"] == "F" && value is { } f ? Math.Round((f - 32) / 1.8, 1) : value;
        if (celsius is < -60 or > 60) typed.Wrong("value-out-of-range", Gaps.Fill(Say.TemperatureCannotBeWanted60, fields["temperatureC"]), "temperatureC");
        return celsius;
    }
}
