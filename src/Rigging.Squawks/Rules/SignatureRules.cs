using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Rules;

static class SignatureRules
{
    /// <summary>How old a re-authentication may be when the entry is made.</summary>
    static readonly Duration Fresh = Duration.FromMinutes(2);

    /// <summary>Nobody is asked to sign a text that says two things of one.</summary>
    public static IEnumerable<BrokenRule> OfText(Fact fact, Ledger ledger, Facts facts) =>
        MoveTable.MustBeSigned(fact, ledger.State) ? Statement.Contradictions(SignedText.Statements(fact, ledger, facts)) : [];

    public static IEnumerable<BrokenRule> Of(Fact fact, Ledger ledger, Facts facts)
    {
        if (!MoveTable.MustBeSigned(fact, ledger.State)) yield break;
        if (facts.Affirmation is not { } signing || facts.Now - signing.AuthenticatedAt > Fresh || signing.AuthenticatedAt > facts.Now)
            yield return new("not-reauthenticated", "A signature needs your password at the moment of signing.", "password");
        else if (signing.TextSha256 != SignedText.Sha256(SignedText.For(fact, ledger, facts)))
            yield return new("text-changed", "The text above the signature has changed since the page was shown. Read it again, then sign.", "text");
    }
}
