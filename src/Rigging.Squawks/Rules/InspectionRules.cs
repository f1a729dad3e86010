using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

static class InspectionRules
{
    public static IEnumerable<BrokenRule> Of(Inspected inspected, SquawkState state)
    {
        foreach (var rule in Contents.Needed(inspected.Findings, "text-missing", "findings", "what was inspected and what was not")) yield return rule;
        // An inspector who finds a loose bolt fails it there and then; nobody has to move the controls, or make up what they did.
        if (!inspected.Passed) yield break;
        foreach (var blank in inspected.Observations.Where(o => o.Seen == Seen.NotRecorded))
            yield return new("seen-missing", $"{blank.Input}: say which way you saw the {blank.Surface} move.", "observations");
        foreach (var wrong in inspected.Observations.Where(o => o.WrongWay))
            yield return new("mismatch-cannot-pass", $"{wrong.Input}: the {wrong.Surface} was seen to move {Words.Of(wrong.Seen)}; it must move {Words.Of(wrong.Expected)}. Record the inspection as failed: that grounds the aircraft.", "observations");
        if (!inspected.FullTravelAtEveryFlapSetting) yield return new("travel-not-checked", "Full travel at every flap setting must be seen before it passes.", "fullTravelAtEveryFlapSetting");
        if (!inspected.SecuredAndLocked) yield return new("security-not-checked", "Assembly, locking and torque stripes must be seen before it passes.", "securedAndLocked");
        if (!inspected.NothingLeftBehind) yield return new("not-refitted", "Tools counted, panels refitted, nothing temporary left: needed before it passes.", "nothingLeftBehind");
        if (state.WorkDone is { Fact.DiffersBecause: { } reason } && inspected.AcceptsDifference != true)
            yield return new("difference-not-accepted", $"As left differs from the plan ({reason}). Accept it or fail the inspection.", "acceptsDifference");
    }
}
