using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

static class ApprovalRules
{
    public static IEnumerable<BrokenRule> Of(Approved approved, SquawkState state)
    {
        if (approved.MayHaveChangedHandling) yield break;
        // Incidence, strut, flap and aileron work changes handling by design: no ground evidence argues that away here.
        if (state.Correction?.Moves.Any(move => move.Control is not (Control.CableTension or Control.RepairOrReplace)) == true)
            yield return new("check-flight-needed", "This work set out to change how the aircraft flies: passengers stay barred until the check flight is logged.", "mayHaveChangedHandling");
        else
            foreach (var rule in Contents.Needed(approved.ConclusiveBecause, "text-missing", "conclusiveBecause", "the ground evidence that handling cannot have changed")) yield return rule;
    }
}
