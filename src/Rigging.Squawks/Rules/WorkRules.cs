using Rigging.Mechanics.Adjusters;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

static class WorkRules
{
    /// <summary>Half a turn either way from neutral is all there is.</summary>
    const double MostDeg = 180;

    /// <summary>More than any thread has, and more than any tab is bent.</summary>
    const double MostTurns = 50, MostTabDeg = 90;

    static readonly Control[] Either = [Control.LeftEccentric, Control.RightEccentric];

    public static IEnumerable<BrokenRule> Of(AsFound found, SquawkState state)
    {
        foreach (var eccentric in Eccentrics(state))
            if (found.Bushings.Of(eccentric) is not ({ }, { }))
                yield return new("bushings-missing", $"Record both bushings of the {Words.Of(eccentric)} as found, front and rear.", "bushings");
        foreach (var rule in (IEnumerable<BrokenRule>)[.. Angles(found.Bushings, "bushings"), .. Adjusters(found.Adjusters, "adjusters")]) yield return rule;
        if (state.Stage == Stage.InWork)
            foreach (var rule in Uncounted(found.Adjusters, state, "found", "as-found-missing", "adjusters")) yield return rule;
        if (string.IsNullOrWhiteSpace(found.Other) && (state.Stage == Stage.InWork && state.MovesInWords || found is { Bushings: var bushings, Adjusters: null or [] } && bushings == BushingAngles.None))
            yield return new("as-found-missing", "Say how it was found, before anything is moved.", "other");
    }

    public static IEnumerable<BrokenRule> Of(WorkDone done, SquawkState state, Facts facts)
    {
        foreach (var rule in (IEnumerable<BrokenRule>)
        [
            .. Contents.Needed(done.Description, "text-missing", "description", "what was done"),
            .. Flags(done),
            .. Dates(done, facts),
            .. Angles(done.AsLeft, "asLeft"),
            .. Adjusters(done.AdjustersAsLeft, "adjustersAsLeft"),
        ]) yield return rule;

        if (done.Disturbed.Count == 0 || done.Disturbed.Any(string.IsNullOrWhiteSpace)) yield return new("disturbed-missing", "List every control that was disconnected or disturbed; the check pilot is given this list.", "disturbed");
        foreach (var rule in Surfaces(done, state)) yield return rule;
        if (!(done.ManHours > 0 && done.ManHours < 1000)) yield return new("value-out-of-range", $"Man hours {Words.Number(done.ManHours)} cannot be: wanted more than 0.", "manHours");

        if (state.AsFound is not { } found || (state.MovesInWords && string.IsNullOrWhiteSpace(found.Other)) || Uncounted(found.Adjusters, state, "found", "", "").Any())
        {
            yield return new("as-found-missing", "Nothing says how it was found before it was moved. A mechanic records as found first; a late entry is welcome, and says that it is late.", "asFound");
            yield break;
        }
        List<BrokenRule> bushings = [.. Bushings(found.Bushings, done, state, facts)];
        foreach (var rule in (IEnumerable<BrokenRule>)[.. AfterTheMove(done, state), .. DirectionRules.Of(done, state, facts), .. RecheckRules.Of(state, facts), .. TorqueRules.StillOut(state), .. Torqued(done, state), .. bushings]) yield return rule;
        if (done.DiffersBecause is not null && bushings.Count == 0 && string.IsNullOrWhiteSpace(done.OtherAsLeft) && !state.MovesInWords && !AsLeft.Differences(state, done).Any())
            yield return new("nothing-differs", "As left is as the plan says, so there is nothing to give a reason for: leave the reason empty, or say what was left otherwise.", "differsBecause");
        foreach (var difference in AsLeft.Differences(state, done).Take(string.IsNullOrWhiteSpace(done.DiffersBecause) ? 4 : 0))
            yield return new("differs-needs-reason", $"{difference} Write why; the inspector must accept it.", "differsBecause");
    }

    static IEnumerable<BrokenRule> Surfaces(WorkDone done, SquawkState state)
    {
        if (done.Surfaces is not { } disturbed)
        {
            yield return new("surfaces-missing", "Say of ailerons, flaps, rudder and elevator which were disturbed: the inspector must see those move.", "surfaces");
            yield break;
        }
        foreach (var move in state.Correction?.Moves ?? [])
            if (ControlSense.MovedBy(move.Control) is { } surface && !disturbed.Contains(surface))
                yield return new("surface-moved-by-the-plan", $"The plan moves the {Words.Of(move.Control)}: the {Words.Of(surface)} cannot be undisturbed. Say that it was disturbed.", "surfaces");
    }

    static IEnumerable<BrokenRule> AfterTheMove(WorkDone done, SquawkState state)
    {
        foreach (var rule in Uncounted(done.AdjustersAsLeft, state, "left", "as-left-missing", "adjustersAsLeft")) yield return rule;
        if (state.MovesInWords)
            foreach (var rule in Contents.Needed(done.OtherAsLeft, "as-left-missing", "otherAsLeft", "how it was left")) yield return rule;
    }

    /// <summary>One joint, one torque; and another one when a joint was turned again after the work had been signed.</summary>
    static IEnumerable<BrokenRule> Torqued(WorkDone done, SquawkState state)
    {
        var loosened = state.Correction?.Moves.Select(m => m.Control).Where(c => c.MovesIncidence()).Distinct().Count() ?? 0;
        if (state.Torques.Count < loosened || (!state.TorqueSinceSigned && state.WorkDone is { } before && AsLeft.Turned(before.Fact.AsLeft, done.AsLeft).Any()))
            yield return new("torque-missing", "A bolt was loosened and no torque application is on record for it since. The mechanic who torqued it records it.", "torques");
    }

    static IEnumerable<BrokenRule> Bushings(BushingAngles found, WorkDone done, SquawkState state, Facts facts)
    {
        var planned = Eccentrics(state).ToList();
        foreach (var eccentric in planned.Where(eccentric => found.Of(eccentric) is not ({ }, { })))
            yield return new("bushings-missing", $"Nothing says how both bushings of the {Words.Of(eccentric)} stood, front and rear. A mechanic records as found again.", "asFound");
        foreach (var eccentric in planned.Where(eccentric => done.AsLeft.Of(eccentric) is not ({ }, { })))
            yield return new("bushings-missing", $"Record both bushings of the {Words.Of(eccentric)} as left, front and rear.", "asLeft");
        // Either wing: what is wrong with the other one stops this work just as well.
        foreach (var rule in Either.SelectMany(eccentric => Eccentric(eccentric, planned.Count > 0 ? found : BushingAngles.None, done.AsLeft, facts))) yield return rule;
    }

    /// <summary>What the plan moves by a number must be counted or measured, before and after.</summary>
    static IEnumerable<BrokenRule> Uncounted(IReadOnlyList<AdjusterSetting>? settings, SquawkState state, string when, string code, string field) =>
        (state.Correction?.Moves ?? [])
            .Where(move => move.Control.StandsAtANumber() && move.Numbers().To is not null && settings.Of(move.Control) is null)
            .Select(move => new BrokenRule(code, $"The plan moves the {Words.Of(move.Control)} by a number: give how it was {when}, {(move.Control.IsTab() ? "in degrees" : "in turns")}.", field));

    static IEnumerable<BrokenRule> Eccentric(Control eccentric, BushingAngles found, BushingAngles left, Facts facts)
    {
        var name = Words.Of(eccentric);
        if (Apart(found.Of(eccentric)))
            yield return new("bushings-disagree", $"Front and rear bushing of the {name} disagree as found: stop. A bent bolt or a damaged hole is likely; repair to data and record as found again.", "asFound");
        var (front, rear) = left.Of(eccentric);
        if (Apart((front, rear)))
            yield return new("bushings-disagree", $"Front and rear bushing of the {name} must be left alike: {Words.Degrees(front)} and {Words.Degrees(rear)} would bend the bolt.", "asLeft");
        if (facts.Airframe?.EccentricMaxAngleDeg is { } stop && (Past(front, stop) || Past(rear, stop)))
            yield return new("past-the-stop", $"The {name} is left past its stop at {Words.Degrees(stop)}.", "asLeft");
    }

    static bool Past(double? angle, double stop) => angle is { } deg && Math.Abs(deg) > stop && Math.Abs(deg) <= MostDeg;

    static IEnumerable<BrokenRule> Flags(WorkDone done)
    {
        if (!done.EverythingRefitted) yield return new("not-refitted", "Everything removed for access must be refitted before the work is signed.", "everythingRefitted");
        if (!done.NoTemporaryHardware) yield return new("temporary-hardware-left", "Temporary bolts, pins and clamps must be out before the work is signed.", "noTemporaryHardware");
        if (!done.NothingLoose) yield return new("left-loose", "Nothing may be left loose when the work is signed. Record a handover instead.", "nothingLoose");
    }

    static IEnumerable<BrokenRule> Dates(WorkDone done, Facts facts)
    {
        if (done.CompletedOn > facts.Today) yield return new("date-in-future", $"Completed on {done.CompletedOn:uuuu-MM-dd} has not come yet.", "completedOn");
        foreach (var rule in TotalTimeRules.Of(done.TotalTimeH, done.TotalTimeAgainH, done.CompletedOn, facts.TotalTime, facts.Today, "totalTimeH", "totalTimeAgainH")) yield return rule;
    }

    static IEnumerable<BrokenRule> Angles(BushingAngles angles, string field)
    {
        foreach (var (value, name) in (IEnumerable<(double?, string)>)
            [(angles.LeftFrontDeg, "left front"), (angles.LeftRearDeg, "left rear"), (angles.RightFrontDeg, "right front"), (angles.RightRearDeg, "right rear")])
            if (value is { } angle && !(Math.Abs(angle) <= MostDeg))
                yield return new("value-out-of-range", $"The {name} bushing cannot stand at {Words.Degrees(angle)}: wanted {Words.Degrees(-MostDeg)} to {Words.Degrees(MostDeg)}.", field);
    }

    /// <summary>How forks, rods and tabs are said to stand: one each, where one can.</summary>
    internal static IEnumerable<BrokenRule> Adjusters(IReadOnlyList<AdjusterSetting>? settings, string field)
    {
        foreach (var (control, value) in settings ?? [])
        {
            var (most, unit) = control.IsTab() ? (MostTabDeg, "°") : (MostTurns, " turns");
            if (!control.StandsAtANumber())
                yield return new("not-a-setting", $"The {Words.Of(control)} does not stand at one number: wanted a strut fork, a flap rod or a tab.", field);
            else if (!(Math.Abs(value) <= most))
                yield return new("value-out-of-range", $"The {Words.Of(control)} cannot stand at {Words.Number(value)}{unit}: wanted {Words.Number(-most)}{unit} to {Words.Number(most)}{unit}.", field);
        }
        foreach (var twice in (settings ?? []).GroupBy(setting => setting.Control).Where(same => same.Count() > 1))
            yield return new("named-twice", $"The {Words.Of(twice.Key)} is named more than once.", field);
    }

    static IEnumerable<Control> Eccentrics(SquawkState state) => state.Correction?.Moves.Select(m => m.Control).Where(c => c.IsEccentric()).Distinct() ?? [];

    /// <summary>Front and rear bushing of one joint too far apart to be one setting.</summary>
    internal static IEnumerable<Control> Disagreeing(BushingAngles bushings) => Either.Where(eccentric => Apart(bushings.Of(eccentric)));

    static bool Apart((double? Front, double? Rear) bushings) => bushings is ({ } front, { } rear) && FoundSetting.AngleOf(new(front, rear)) is null;
}
