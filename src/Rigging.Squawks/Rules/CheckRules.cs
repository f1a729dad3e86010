using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Squawks.Rules;

static class CheckRules
{
    public static IEnumerable<BrokenRule> Of(GroundChecked check, SquawkState state, Facts facts)
    {
        if (MoveTable.LiftsAGrounding(check, state))
        {
            if (!facts.Who.May(Authority.Inspector))
                yield return new("clearing-needs-an-inspector", "Finding the aircraft free of damage lifts its grounding, and only somebody who may inspect signs that. You can record what you found as not clear, or as a note.", "clear");
            if (state.EverWorked.Contains(facts.Who.Id))
                yield return new("inspector-did-the-work", "You took part in the work on this squawk, so you cannot be the one who finds it free of damage. Another inspector must look.", "clear");
            if (state.HasNewerEntries) yield return Gates.NewerEntries;
            if (check.HappenedAt < state.SuspectedAt)
                yield return new("inspected-before-suspected", "This lifts the grounding, so it must have been looked at after what grounded it came on record. Inspect again, or enter this one as a note.", "happenedOn");
        }
        if (check.NotApplicableReason is { } reason)
        {
            foreach (var rule in Contents.Needed(reason, "not-applicable-needs-reason", "notApplicableReason", "why the check does not apply to this aircraft")) yield return rule;
            if (check.Check == Check.DamageInspection)
                yield return new("damage-always-applies", "A damage inspection always applies.", "notApplicableReason");
            yield break;
        }
        var wrong = (check.Check switch
        {
            Check.DamageInspection or Check.ContourSurvey => check.Clear is null ? [new("value-missing", "Say whether it is clear or not.", "clear")] : [],
            Check.FuelAndSeats => Fuel(check, facts),
            Check.ControlTravel => Travel(check),
            _ when check.Survey is { } survey => FileLimits.Faults(survey, facts),
            _ => Value(check),
        }).ToList();
        // A reading that cannot be is no question of the tool's range.
        foreach (var rule in wrong.Concat(ToolRules.Of(check, facts).Where(rule => wrong.Count == 0 || rule.Code != "tool-out-of-range"))) yield return rule;
        if (check.Survey is not null && check.Check != Check.PanelIncidenceDifference)
            yield return new("survey-elsewhere", "A levelled survey is entered with the panel incidence; it says the tips by itself.", "survey");
        if (check.Sd is { } sd && !(sd > 0 && sd < 1000))
            yield return new("value-out-of-range", $"An uncertainty of {Words.Number(sd)} cannot be: wanted more than 0.", "sd");
        foreach (var rule in check.Check == Check.CableTension ? Cable(check, facts) : []) yield return rule;
        if (check.Check == Check.AileronTab && check.Side is not (Side.Left or Side.Right))
            yield return new("side-missing", "Say which wing's tab.", "side");
        if (check.Clear == false || check.Check == Check.DamageInspection)
            foreach (var rule in Contents.Needed(check.Finding, "text-missing", "finding", "what was looked at and found")) yield return rule;
        if (state.Stage == Stage.InWork && check.NoLimitsBecause is { } because)
            foreach (var rule in Contents.Needed(check.Finding, "limit-not-said", "finding", $"what the manual allows, and where it says so: it cannot be compared here. {because}")) yield return rule;
    }

    static IEnumerable<BrokenRule> Value(GroundChecked check)
    {
        if (check.Value is not { } value)
            yield return new("value-missing", $"Give the measured value in {CheckUnits.Of(check.Check)}.", "value");
        else if (Limit(check.Check) is var limit && !(Math.Abs(value) <= limit))
            yield return new("value-out-of-range", $"{Words.Number(value)} {CheckUnits.Of(check.Check)} cannot be: wanted at most {Words.Number(limit)} either way.", "value");
    }

    /// <summary>Litres in every tank that the file names, or in at least one; who sat where, and how it was measured, in words.</summary>
    static IEnumerable<BrokenRule> Fuel(GroundChecked check, Facts facts)
    {
        var tanks = facts.Airframe?.Read().Tanks ?? [];
        var fuel = check.Fuel ?? [];
        if (fuel.Count == 0 || tanks.Any(tank => fuel.All(measured => measured.Tank != tank.Name)))
            yield return new("fuel-not-measured", $"Give the litres measured in each tank{(tanks.Count == 0 ? "" : $": {string.Join(", ", tanks.Select(tank => tank.Name))}")}. What nobody measured is not on record; say that in a note.", "fuel");
        foreach (var (tank, litres) in fuel)
        {
            var onFile = tanks.FirstOrDefault(known => known.Name == tank);
            if (tanks.Count > 0 && onFile is null)
                yield return new("tank-unknown", $"There is no tank “{tank}” on file.", "fuel");
            else if (!(litres >= 0 && litres <= (onFile?.CapacityL ?? 2000)))
                yield return new("value-out-of-range", $"{Words.Number(litres, 1)} L in the {tank} tank cannot be: wanted 0 to {Words.Number(onFile?.CapacityL ?? 2000)}.", "fuel");
        }
        if (fuel.GroupBy(measured => measured.Tank).Any(same => same.Count() > 1))
            yield return new("named-twice", "A tank is named more than once.", "fuel");
        foreach (var rule in Contents.Needed(check.Finding, "text-missing", "finding", "how fuel was measured, and who or what was in each seat")) yield return rule;
    }

    static IEnumerable<BrokenRule> Travel(GroundChecked check)
    {
        if (check.Travel is not { } travel)
        {
            yield return new("value-missing", "Give how far the surface goes each way from its neutral, in degrees.", "upDeg");
            yield break;
        }
        var paired = travel.Surface is ControlSurface.Ailerons or ControlSurface.Flaps;
        if (paired != travel.Side is Side.Left or Side.Right || (!paired && travel.Side is not null))
            yield return new("side-missing", paired ? "Say which wing's surface." : $"The {Words.Surface(travel with { Side = null })} has no left and right.", "surface");
        foreach (var (deg, field) in ((double, string)[])[(travel.UpDeg, "upDeg"), (travel.DownDeg, "downDeg")])
            if (!(deg >= 0 && deg <= MostTravelDeg))
                yield return new("value-out-of-range", $"A travel of {Words.Number(deg)}° cannot be: wanted 0 to {Words.Number(MostTravelDeg)}.", field);
    }

    static IEnumerable<BrokenRule> Cable(GroundChecked check, Facts facts)
    {
        var airframe = facts.Airframe?.Read();
        if (string.IsNullOrWhiteSpace(check.Cable))
            yield return new("cable-missing", "Say which cable.", "cable");
        else if (FileLimits.Cables(airframe) is { Count: > 0 } named && FileLimits.Cable(airframe, check.Cable) is null)
            yield return new("cable-unknown", $"“{check.Cable}” is none of the cables on file: {string.Join(", ", named)}.", "cable");
        if (check.Value < 0)
            yield return new("value-out-of-range", $"A tension of {Words.Number(check.Value.Value)} N cannot be: wanted 0 or more.", "value");
        if (check.TemperatureC is not { } degC)
            yield return new("temperature-missing", "Give the temperature it was measured at: a cable is slacker in the cold.", "temperatureC");
        else if (!(Math.Abs(degC) <= 60))
            yield return new("value-out-of-range", $"{Words.Number(degC)} °C cannot be: wanted −60 to 60.", "temperatureC");
    }

    public static IEnumerable<BrokenRule> Of(EvaluationFlown flown, Facts facts)
    {
        if (flown.FlownOn > facts.Today)
            yield return new("date-in-future", $"The flight is dated {flown.FlownOn:uuuu-MM-dd}, which has not come yet.", "flownOn");
        foreach (var rule in TestPoints.Of(flown.TestPoints, facts)) yield return rule;
    }

    /// <summary>A flap goes further than any other surface; common practice, no source.</summary>
    const double MostTravelDeg = 90;

    static double Limit(Check check) => check switch
    {
        Check.BallOffset => 3,
        Check.CableTension => 5000,
        Check.ControlFriction => 500,
        Check.AileronTab or Check.RudderTab => 90,
        _ => 15,
    };
}
