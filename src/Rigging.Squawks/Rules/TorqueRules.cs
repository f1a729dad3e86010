using Rigging.Mechanics.Fastening;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
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
        foreach (var rule in Nut(torque)) yield return rule;
        // What was pulled too far is not marked as good.
        if (!torque.TorqueStripe && !torque.IsAboveItsLimits()) yield return new("stripe-missing", "Mark the fastener with a torque stripe, and say so.", "torqueStripe");
    }

    /// <summary>What keeps the work from being signed.</summary>
    public static IEnumerable<BrokenRule> StillOut(SquawkState state) => state.OutOfLimits.Select(torque => new BrokenRule("fastener-out-of-limits",
        $"“{torque.Fastener}” is on record at {Words.Number(torque.ReachedInLb, 1)} in·lb, above {Words.Number(torque.FinalMaxInLb, 1)}. Record it again, under the same name, when it is within its limits.", "torques"));

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
        var reached = $"Reached {Words.Number(torque.ReachedInLb, 1)} in·lb; wanted {Words.Number(min, 1)} to {Words.Number(max, 1)}.";
        if (!(torque.ReachedInLb >= min - 0.5))
            yield return new("torque-outside-target", $"{reached} Do not record it as done: bring it up.", "reachedInLb");
        if (torque.IsAboveItsLimits())
            foreach (var rule in Contents.Needed(torque.OutOfLimitsDone, "torque-above-limits", "outOfLimitsDone", $"what was done about it. {reached} Bolt and nut may have stretched (FAA AC 43.13-1B, chapter 7): replaced, or inspected to which data")) yield return rule;
        else if (torque.OutOfLimitsDone is not null)
            yield return new("not-out-of-limits", $"{reached} It is within its limits, and something is said to have been done about a torque outside them. One of them is not so.", "outOfLimitsDone");
    }

    /// <remarks>
    /// FAA AC 43.13-1B, paragraphs 7-40 and 7-64: a self-locking nut must take torque to turn, which is measured and added; turning the head instead drags the
    /// shank as well (from memory for the paragraph numbers).
    /// </remarks>
    static IEnumerable<BrokenRule> Nut(TorqueApplied torque)
    {
        if (torque.Nut is null)
            yield return new("nut-not-said", "Say whether the nut is self-locking.", "nut");
        if (torque.Nut == NutKind.SelfLocking && torque.RunOnInLb is not > 0)
            foreach (var rule in Contents.Needed(torque.NoRunOnBecause, "no-run-on", "noRunOnBecause", "why this self-locking nut has no run-on torque: one that turns freely no longer locks")) yield return rule;
        if (torque.FigureFor is not { } figure)
            yield return new("figure-part-not-said", "Say whether the figure is for turning the nut or the bolt head.", "figureFor");
        else if (figure != torque.Turned && (torque.TargetIncludesPrevailing || figure == TurnedPart.BoltHead))
            yield return new("turned-part-differs", $"The torque is for turning the {Words.Part(figure)}: turn that, or find data for the {Words.Part(torque.Turned)}.", "turned");
        else if (figure != torque.Turned)
            foreach (var rule in Contents.Needed(torque.OtherPartBecause, "other-part-turned", "otherPartBecause", "why the bolt head was turned where the figure is for the nut, and that the run-on was measured at the head, with the drag of the shank")) yield return rule;
    }

    static IEnumerable<BrokenRule> Wrench(TorqueApplied torque, Facts facts)
    {
        if (!facts.Tools.TryGetValue(torque.Wrench, out var wrench))
        {
            yield return new("wrench-unknown", "That wrench is not on the school's list.", "wrench");
            yield break;
        }
        if (ToolRules.Calibration(wrench, facts.DayOf(torque), "wrench-out-of-calibration", "wrench") is { } rule) yield return rule;
        var (low, high) = (wrench.Low, wrench.High);
        if (wrench.Kind != ToolKind.TorqueWrench)
        {
            yield return new("not-a-torque-wrench", $"{wrench.Code} is a {Words.Of(wrench.Kind)}, no torque wrench.", "wrench");
            yield break;
        }
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
