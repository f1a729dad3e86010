using Rigging.Mechanics.Fastening;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using UnitsNet;

namespace Rigging.Squawks.Rules;

static class TorqueRules
{
    public static IEnumerable<BrokenRule> Of(TorqueApplied torque, Facts facts)
    {
        foreach (var rule in Contents.Needed(torque.Fastener, "text-missing", "fastener", "which fastener")) yield return rule;
        foreach (var rule in Contents.Needed(torque.TargetSource, "torque-source-missing", "targetSource", "the approved data the torque comes from")) yield return rule;
        if (!(torque.TargetMinInLb > 0 && torque.TargetMaxInLb >= torque.TargetMinInLb && torque.TargetMaxInLb < 20_000))
        {
            yield return new("value-out-of-range", $"A target of {Words.Number(torque.TargetMinInLb)} to {Words.Number(torque.TargetMaxInLb)} in·lb cannot be: wanted a range above 0.", "targetMinInLb");
            yield break;
        }
        if (!torque.TargetIncludesPrevailing && torque.RunOnInLb is null)
            yield return new("run-on-missing", "The figure does not include prevailing torque: measure the run-on and enter it.", "runOnInLb");
        else if (torque.RunOnInLb is { } runOn && !(runOn >= 0 && runOn < torque.TargetMaxInLb))
            yield return new("value-out-of-range", $"A run-on of {Words.Number(runOn)} in·lb cannot be: wanted 0 to less than the target.", "runOnInLb");
        else
            foreach (var rule in Final(torque)) yield return rule;
        foreach (var rule in Wrench(torque, facts)) yield return rule;
        if (!torque.TorqueStripe) yield return new("stripe-missing", "Mark the fastener with a torque stripe, and say so.", "torqueStripe");
    }

    public static IEnumerable<BrokenRule> Of(TorqueRechecked again, SquawkState state)
    {
        if (state.StripesToSee.All(seen => seen.Sequence != again.TorqueEntry))
            yield return new("no-such-torque", $"Entry {again.TorqueEntry} is no torque application that is still to be looked at: {(state.StripesToSee.Count == 0 ? "there is none" : string.Join(", ", state.StripesToSee.Select(seen => seen.Sequence)))}.", "torqueEntry");
        if (!again.StripeInLine || !again.TorqueHeld)
            yield return new("torque-did-not-hold", "A stripe out of line or a torque that did not hold is not for this record: do not let it fly, and report it as a new squawk with “damage seen”.", again.StripeInLine ? "torqueHeld" : "stripeInLine");
        foreach (var rule in Contents.Needed(again.Findings, "text-missing", "findings", "what was looked at and found")) yield return rule;
    }

    static IEnumerable<BrokenRule> Final(TorqueApplied torque)
    {
        var added = torque.TargetIncludesPrevailing ? 0 : torque.RunOnInLb!.Value;
        var (min, max) = (torque.TargetMinInLb + added, torque.TargetMaxInLb + added);
        if (Math.Abs(torque.FinalMinInLb - min) > 0.5 || Math.Abs(torque.FinalMaxInLb - max) > 0.5)
            yield return new("final-torque-wrong", $"Target plus run-on is {Words.Number(min, 1)} to {Words.Number(max, 1)} in·lb, not {Words.Number(torque.FinalMinInLb, 1)} to {Words.Number(torque.FinalMaxInLb, 1)}.", "finalMinInLb");
        if (!(torque.ReachedInLb >= min - 0.5 && torque.ReachedInLb <= max + 0.5))
            yield return new("torque-outside-target", $"Reached {Words.Number(torque.ReachedInLb, 1)} in·lb; wanted {Words.Number(min, 1)} to {Words.Number(max, 1)}. Do not record it as done: back off and bring it up again.", "reachedInLb");
    }

    static IEnumerable<BrokenRule> Wrench(TorqueApplied torque, Facts facts)
    {
        if (!facts.Tools.TryGetValue(torque.Wrench, out var wrench))
        {
            yield return new("wrench-unknown", "That wrench is not on the school's list.", "wrench");
            yield break;
        }
        if (!wrench.InCalibrationOn(facts.DayOf(torque)))
            yield return new("wrench-out-of-calibration", $"{wrench.Code}: calibration was due {wrench.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? "(never calibrated)"}. Use a wrench in calibration.", "wrench");
        var (low, high) = (wrench.LowInLb, wrench.HighInLb);
        if (low is null || high is null)
            yield return new("not-a-torque-wrench", $"{wrench.Code} has no torque range on file, so it is no torque wrench here. The maintenance office can enter its range.", "wrench");
        else if (!(torque.SettingInLb >= low && torque.SettingInLb <= high))
            yield return new("wrench-out-of-range", $"A setting of {Words.Number(torque.SettingInLb, 1)} in·lb is outside {wrench.Code}'s range of {Words.Number(low.Value)} to {Words.Number(high.Value)} in·lb.", "settingInLb");
        if (!(torque.LeverIn > 0 && torque.LeverIn < 100) || !(torque.ExtensionIn >= 0 && torque.ExtensionIn < torque.LeverIn))
        {
            yield return new("value-out-of-range", "The lever must be longer than nothing, and the extension shorter than the lever.", "leverIn");
            yield break;
        }
        if (torque.ExtensionIn > 0 && wrench.LeverIn is { } lever && Math.Abs(lever - torque.LeverIn) > 0.25)
            yield return new("lever-does-not-match", $"{wrench.Code} has a lever of {Words.Number(lever)} in on file, not {Words.Number(torque.LeverIn)} in: with an extension the setting depends on it.", "leverIn");
        TorqueWrench used = new(wrench.Code, Length.FromInches(torque.LeverIn), InLb(high ?? 0), null, null, null);
        var atFastener = used.AtFastener(InLb(torque.SettingInLb), new(Length.FromInches(torque.ExtensionIn), Angle.FromDegrees(torque.ExtensionAngleDeg)))?.PoundForceInches ?? 0;
        if (!(Math.Abs(atFastener - torque.ReachedInLb) <= 0.02 * torque.ReachedInLb + 0.5))
            yield return new("setting-does-not-match", $"With this extension a setting of {Words.Number(torque.SettingInLb, 1)} puts {Words.Number(atFastener, 1)} in·lb on the fastener, not {Words.Number(torque.ReachedInLb, 1)}.", "settingInLb");
    }

    static Torque InLb(double torque) => Torque.FromPoundForceInches(torque);
}
