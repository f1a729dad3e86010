using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

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
        if (check.Check is Check.DamageInspection or Check.ContourSurvey)
        {
            if (check.Clear is null) yield return new("value-missing", "Say whether it is clear or not.", "clear");
        }
        else if (check.Check == Check.FuelAndSeats)
        {
            foreach (var rule in Contents.Needed(check.Finding, "text-missing", "finding", "how fuel and seats were measured and what was found")) yield return rule;
        }
        else if (check.Value is not { } value)
            yield return new("value-missing", $"Give the measured value in {CheckUnits.Of(check.Check)}.", "value");
        else if (Limit(check.Check) is var limit && !(Math.Abs(value) <= limit))
            yield return new("value-out-of-range", $"{Words.Number(value)} {CheckUnits.Of(check.Check)} cannot be: wanted at most {Words.Number(limit)} either way.", "value");
        if (check.Sd is { } sd && !(sd > 0 && sd < 1000))
            yield return new("value-out-of-range", $"An uncertainty of {Words.Number(sd)} cannot be: wanted more than 0.", "sd");
        if (check.Check == Check.CableTension && string.IsNullOrWhiteSpace(check.Cable))
            yield return new("cable-missing", "Say which cable.", "cable");
        if (check.Check == Check.AileronTab && check.Side is not (Side.Left or Side.Right))
            yield return new("side-missing", "Say which wing's tab.", "side");
        if (check.Clear == false || check.Check == Check.DamageInspection)
            foreach (var rule in Contents.Needed(check.Finding, "text-missing", "finding", "what was looked at and found")) yield return rule;
        if (check.Tool is { } id)
        {
            if (!facts.Tools.TryGetValue(id, out var tool)) yield return new("tool-unknown", "That tool is not on the school's list.", "tool");
            else if (!tool.InCalibrationOn(facts.DayOf(check)))
                yield return new("tool-out-of-calibration", $"{tool.Code}: calibration was due {tool.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? "(never calibrated)"}. Use a tool in calibration.", "tool");
        }
    }

    public static IEnumerable<BrokenRule> Of(EvaluationFlown flown, Facts facts)
    {
        if (flown.FlownOn > facts.Today)
            yield return new("date-in-future", $"The flight is dated {flown.FlownOn:uuuu-MM-dd}, which has not come yet.", "flownOn");
        foreach (var rule in TestPoints.Of(flown.TestPoints, facts)) yield return rule;
    }

    static double Limit(Check check) => check switch
    {
        Check.BallOffset => 3,
        Check.CableTension => 5000,
        Check.ControlFriction => 500,
        Check.AileronTab or Check.RudderTab => 90,
        _ => 15,
    };
}
