using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

/// <summary>Whether this person may act on this squawk at all, whatever their part in the school.</summary>
static class Admission
{
    public static IEnumerable<BrokenRule> Of(Ledger ledger, Facts facts)
    {
        if (facts.Who.Left)
            yield return new("person-left", "Your account is closed: nothing more is entered under your name. The maintenance office can open it again.");
        if (facts.Who.Visit is not { } visit) yield break;
        if (visit.Squawk != ledger.Id)
            yield return new("guest-of-another-squawk", "You are a guest here for one other squawk only. The maintenance office can ask you in for this one.");
        if (visit.Until <= facts.Now)
            yield return new("guest-expired", "Your visit has ended. The maintenance office can ask you in again.");
    }
}
