using Rigging.Squawks.Entries;

namespace Rigging.Squawks.Rules;

static class ApprovalRules
{
    // A rigging complaint is how the aircraft flies: what is done about it is meant to change that, and no ground evidence argues it away.
    public static IEnumerable<BrokenRule> Of(Approved approved)
    {
        if (!approved.MayHaveChangedHandling)
            yield return new("check-flight-needed", "The complaint is how the aircraft flies, and this work was done about it: passengers stay barred until the check flight is logged.", "mayHaveChangedHandling");
        else if (!string.IsNullOrWhiteSpace(approved.ConclusiveBecause))
            yield return new("check-flight-needed", "Ground evidence does not stand in for the check flight: passengers stay barred until it is logged. Leave it out here, or enter it as a note.", "conclusiveBecause");
    }
}
