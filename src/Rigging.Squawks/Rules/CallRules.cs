using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Rules;

static class CallRules
{
    public static IEnumerable<BrokenRule> Of(Called call, SquawkState state, Facts facts)
    {
        foreach (var rule in Contents.Needed(call.Reason, "text-missing", "reason", "the reason for the call")) yield return rule;
        if (call.Call == Call.MayFlyWithLimits)
            foreach (var rule in Contents.Needed(call.Limits, "limits-missing", "limits", "what the limits are")) yield return rule;
        if (call.Call == Call.Grounded) yield break;
        if (!facts.Who.May(Authority.Mechanic) && !facts.Who.May(Authority.Inspector))
            yield return new("office-may-only-ground", "The maintenance office may ground an aircraft; only a mechanic or inspector may lift that.", "call");
        string[] raised = [.. state.DamageQuestions.Concat(GroundingQuestions.Raised(call.RedFlags, call.Happened)).Distinct()];
        if (raised.Length > 0)
            yield return new("red-flags-not-cleared", $"{Words.Capital(string.Join("; ", raised))}: the aircraft stays grounded until a damage inspection is recorded clear.", "call");
        if (state.DamageClear == false)
            yield return new("damage-found", "The last damage inspection found damage: the aircraft stays grounded until a later one is clear.", "call");
    }
}
