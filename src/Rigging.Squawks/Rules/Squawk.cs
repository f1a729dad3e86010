using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Rules;

/// <summary>What comes of asking: an entry to append, or the rules that forbid it.</summary>
public abstract record Decision
{
    public sealed record Accepted(Entry Entry) : Decision;

    public sealed record Refused(IReadOnlyList<BrokenRule> Broken) : Decision;
}

/// <summary>The one place that says what may be added to a squawk's ledger.</summary>
public static class Squawk
{
    /// <summary>What stands in the way of any entry of this kind now, whatever it says; empty when the page may offer it.</summary>
    public static IReadOnlyList<BrokenRule> WhatBlocks<T>(Ledger ledger, Facts facts) where T : Fact => WhatBlocks(typeof(T), ledger, facts);

    public static IReadOnlyList<BrokenRule> WhatBlocks(Type kind, Ledger ledger, Facts facts) =>
        [.. Admission.Of(ledger, facts), .. Gates.Of(kind, ledger.State, facts)];

    /// <summary>Pure: the same ledger, fact and facts always give the same answer, and a refusal leaves the ledger alone.</summary>
    public static Decision Decide(Ledger ledger, Fact fact, Facts facts)
    {
        var stamped = Stamp.With(facts, ledger, fact);
        List<BrokenRule> broken = [.. Admission.Of(ledger, facts), .. Gates.Of(fact.GetType(), ledger.State, facts)];
        // What an entry says is only worth judging where such an entry has a place at all.
        if (broken.Count == 0) broken.AddRange([.. Contents.Of(stamped, ledger.State, facts), .. OrderRules.Of(stamped, ledger, facts)]);
        if (broken.Count == 0 && stamped is Noted note) broken.AddRange(Correcting.Of(note, ledger, facts));
        if (broken.Count == 0) broken.AddRange(SignatureRules.OfText(stamped, ledger, facts));
        if (broken.Count == 0) broken.AddRange(SignatureRules.Of(stamped, ledger, facts));
        if (broken.Count > 0) return new Decision.Refused(broken);

        var actingAs = Correcting.By(stamped, ledger).First(facts.Who.May);
        return new Decision.Accepted(new Entry(ledger.Length + 1, Milliseconds(facts.Now), facts.Who.Id, actingAs, stamped,
            MoveTable.MustBeSigned(stamped, ledger.State) ? SignatureOf(stamped, ledger, facts) : null));
    }

    /// <summary>The text a person would sign for this fact now, after the program has filled in what it knows.</summary>
    public static string TextToSign(Ledger ledger, Fact fact, Facts facts) => SignedText.For(Stamp.With(facts, ledger, fact), ledger, facts);

    static Signature SignatureOf(Fact fact, Ledger ledger, Facts facts)
    {
        var signing = facts.Affirmation!;
        var certificate = Certificates.For(Correcting.Act(fact, ledger), facts);
        return new(SignedText.For(fact, ledger, facts), signing.ShownSha256, signing.Method, Milliseconds(signing.AuthenticatedAt), certificate?.Id, certificate?.Kind);
    }

    static Instant Milliseconds(Instant instant) => Instant.FromUnixTimeMilliseconds(instant.ToUnixTimeMilliseconds());
}
