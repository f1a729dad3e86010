using Rigging.Squawks.Entries;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Rules;

/// <summary>Which certificate an act is done under.</summary>
static class Certificates
{
    /// <summary>The valid certificate of the right kind that the act needs; for other acts the person's first valid one, or null.</summary>
    public static Certificate? For(Fact fact, Facts facts)
    {
        var valid = facts.Who.Certificates.Where(certificate => certificate.ValidOn(facts.Today)).ToList();
        return fact switch
        {
            Approved => valid.Find(certificate => facts.RuleSet.MayCertify.Contains(certificate.Kind) && facts.RuleSet.RecentEnough(certificate, facts.Today)),
            CheckFlown => valid.Find(certificate => facts.RuleSet.MayFlyCheck.Contains(certificate.Kind)),
            GroundChecked or WorkDone or Inspected or Closed or NoFaultFound or WithinLimits =>
                valid.Find(certificate => facts.RuleSet.MayCertify.Contains(certificate.Kind)) ?? valid.FirstOrDefault(),
            _ => null,
        };
    }

    /// <summary>Why the person may not do an act that needs one of these kinds; null when they may.</summary>
    public static BrokenRule? Missing(IReadOnlyList<string> kinds, string act, string codeForWrongKind, Facts facts)
    {
        var held = facts.Who.Certificates;
        string Wanted() => string.Join(" or ", kinds.Select(facts.RuleSet.WordsFor));
        if (held.Any(certificate => kinds.Contains(certificate.Kind) && certificate.ValidOn(facts.Today) && facts.RuleSet.RecentEnough(certificate, facts.Today))) return null;
        if (held.FirstOrDefault(certificate => kinds.Contains(certificate.Kind) && certificate.ValidOn(facts.Today)) is { } stale)
            return stale.RecentUntil is { } last
                ? new("experience-lapsed", $"{act} needs recent experience ({facts.RuleSet.RecentExperience!.Basis}). Yours is stated up to {last:uuuu-MM-dd}; the maintenance office enters a new statement.")
                : new("experience-not-stated", $"{act} needs recent experience ({facts.RuleSet.RecentExperience!.Basis}). None is stated for your certificate ({facts.RuleSet.WordsFor(stale.Kind)}); the maintenance office can enter the statement.");
        if (held.FirstOrDefault(certificate => kinds.Contains(certificate.Kind)) is { } expired)
            return new("certificate-expired", $"Your certificate ({facts.RuleSet.WordsFor(expired.Kind)}) was valid until {expired.ValidUntil:uuuu-MM-dd}. {act} needs a valid one.");
        if (held.Count > 0)
            return new(codeForWrongKind, $"{act} needs a certificate as {Wanted()}. On file for you: {string.Join(", ", held.Select(c => facts.RuleSet.WordsFor(c.Kind)))}.");
        return new("certificate-missing", $"{act} needs a certificate as {Wanted()}. None is on file for you; the maintenance office can enter it.");
    }
}
