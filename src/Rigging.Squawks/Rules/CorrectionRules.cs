using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

static class CorrectionRules
{
    public static IEnumerable<BrokenRule> Of(CorrectionAgreed correction, SquawkState state, Facts facts)
    {
        if (correction.Moves.Count == 0) yield return new("nothing-to-do", "A correction moves or repairs at least one thing.", "moves");
        foreach (var rule in Data(correction.Data)) yield return rule;
        foreach (var rule in Contents.Needed(correction.Reason, "text-missing", "reason", correction.OwnPlan ? "why you plan this move" : "why this correction")) yield return rule;
        foreach (var move in correction.Moves)
            foreach (var rule in Contents.Needed(move.Instruction, "text-missing", "moves", "what is to be moved, which way and how far")) yield return rule;

        if (correction.Moves.Any(move => move.Control.MovesIncidence()))
        {
            if (state.MissingPrerequisites is { Count: > 0 } missing)
                yield return new("prerequisites-missing", $"No incidence move until each of these is on record as checked, or not applicable with a reason: {string.Join(", ", missing.Select(Words.Of))}.", "moves");
            foreach (var rule in Cables(correction, state, facts)) yield return rule;
            if (facts.DamageInDoubt(state) || state.DamageClear != true)
                yield return new("damage-not-ruled-out", "A damage inspection must clear the aircraft before incidence is moved.", "moves");
        }
        foreach (var twice in correction.Moves.Where(move => move.Control != Control.RepairOrReplace).GroupBy(move => move.Control).Where(same => same.Count() > 1))
            yield return new("same-control-twice", $"The {Words.Of(twice.Key)} stands in the plan twice. One move each, from where it is to where it shall be.", "moves");
        foreach (var move in correction.Moves)
            if (move.Numbers() is ({ } start, { } end) && AsLeft.Same(move.Control, start, end))
                yield return new("moves-nothing", $"The {Words.Of(move.Control)} goes from {Words.Stands(move.Control, start)} to {Words.Stands(move.Control, end)}: that is the same setting. Plan where it shall stand, or no move of it.", "moves");
        foreach (var move in correction.Moves)
            foreach (var rule in move.Control.IsEccentric() ? Eccentric(move, facts) : Counted(move, facts)) yield return rule;
        foreach (var move in correction.Moves)
            if (move.Numbers().From is { } from && AsLeft.StandsAt(state, move.Control) is { } stands && !AsLeft.Same(move.Control, from, stands))
                yield return new("not-from-where-it-stands", $"The plan starts with the {Words.Of(move.Control)} {Words.Stands(move.Control, from)}; on record it stands {Words.Stands(move.Control, stands)}. Plan from there, or record as found again.", "moves");
        if (state.AsFound is { } found && correction.Moves.Any(move => move.Control.IsEccentric()))
            foreach (var eccentric in WorkRules.Disagreeing(found.Bushings))
                yield return new("bushings-disagree", $"Front and rear bushing of the {Words.Of(eccentric)} disagree as found: stop. A bent bolt or a damaged hole is likely; repair to data and record as found again.", "moves");
    }

    /// <summary>Cables come before incidence: each that the file names now, and none out of its limits unless the plan sets them.</summary>
    static IEnumerable<BrokenRule> Cables(CorrectionAgreed correction, SquawkState state, Facts facts)
    {
        if (state.IsOnRecord(Prerequisite.Cables) && state.CablesMissing(FileLimits.Cables(facts.Airframe?.Read())) is { Count: > 0 } missing)
            yield return new("prerequisites-missing", $"No incidence move until the tension of each cable on file is on record. Missing: {string.Join(", ", missing)}.", "moves");
        if (correction.Moves.Any(move => move.Control is Control.CableTension or Control.AileronNeutral or Control.RepairOrReplace)) yield break;
        foreach (var limit in state.Checks.Values.SelectMany(last => last.Fact.OutOfLimits()).DistinctBy(limit => limit.What))
            yield return new("out-of-limits-first", $"{Words.Capital(Words.Against(limit))} Set that right before incidence is moved: plan it as well, or rig it and record it again.", "moves");
    }

    /// <summary>A strut fork, a flap rod or a tab may be planned in words only, “as the manual says”; one number without the other says nothing.</summary>
    static IEnumerable<BrokenRule> Counted(PlannedMove move, Facts facts)
    {
        if (!move.Control.StandsAtANumber()) yield break;
        var name = Words.Of(move.Control);
        var (from, to) = move.Numbers();
        if (from is null != to is null) yield return new("value-missing", $"Give how the {name} goes both from and to, or neither.", "moves");
        if (from is not { } was || to is not { } wanted) yield break;
        foreach (var rule in WorkRules.Adjusters([new(move.Control, was)], "moves").Concat(WorkRules.Adjusters([new(move.Control, wanted)], "moves"))) yield return rule;
        var airframe = facts.Airframe?.Read();
        var bend = move.Control == Control.AileronTab ? airframe?.Ailerons.FixedTab?.Bend?.MaxDeg : airframe?.Rudder?.FixedTabBend?.MaxDeg;
        var (least, greatest) = move.Control switch
        {
            Control.LeftStrutFork or Control.RightStrutFork => (airframe?.StrutFork?.LeastTurns, airframe?.StrutFork?.GreatestTurns),
            Control.LeftFlapRod or Control.RightFlapRod => (airframe?.FlapRod?.LeastTurns, airframe?.FlapRod?.GreatestTurns),
            _ => (-bend, bend),
        };
        if (wanted < least || wanted > greatest)
            yield return new("past-the-stop", $"{Words.Capital(Words.Stands(move.Control, wanted))}: the {name} may stand from {Words.Stands(move.Control, least!.Value)} to {Words.Stands(move.Control, greatest!.Value)}.", "moves");
    }

    static IEnumerable<BrokenRule> Data(ApprovedData data)
    {
        foreach (var rule in (IEnumerable<BrokenRule>)
        [
            .. Contents.Needed(data.Manual, "approved-data-missing", "manual", "the manual the work is done to"),
            .. Contents.Needed(data.Section, "approved-data-missing", "section", "the section of the manual"),
            .. Contents.Needed(data.Revision, "approved-data-missing", "revision", "the revision of the manual"),
        ]) yield return rule;
    }

    static IEnumerable<BrokenRule> Eccentric(PlannedMove move, Facts facts)
    {
        var name = Words.Of(move.Control);
        if (facts.Airframe is not { EccentricMaxAngleDeg: { } stop } airframe)
        {
            yield return new("airframe-data-missing", $"The {name} has no throw, head and stops on file for this aircraft. They come from the aircraft's manual and have no default.", "moves");
            yield break;
        }
        if (!airframe.RigidPanel)
            yield return new("bracing-not-modelled", "With this bracing the panel twists instead of turning as one piece; the eccentric is not the means.", "moves");
        if (move.FromDeg is not { } from || move.ToDeg is not { } to)
            yield return new("value-missing", $"Give the angle the {name} goes from and to.", "moves");
        else
        {
            if (!double.IsFinite(from) || Math.Abs(from) > 180) yield return new("value-out-of-range", $"The {name} cannot stand at {Words.Degrees(from)}: wanted −180° to 180°.", "moves");
            if (!(Math.Abs(to) <= stop)) yield return new("past-the-stop", $"{Words.Degrees(to)} is past the {name}'s stop at {Words.Degrees(stop)}.", "moves");
        }
    }
}
