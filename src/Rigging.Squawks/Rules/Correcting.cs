using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Rules;

/// <summary>
/// Who may correct which entry. An act that was signed is corrected by whoever may do that act, under their own signature; any other entry by its author
/// or by those who answer for it. What anybody else writes is a remark: it stands beside the entry and heads nothing.
/// </summary>
public static class Correcting
{
    /// <summary>What stands in the way of this person correcting that entry; empty when nothing does.</summary>
    public static IReadOnlyList<BrokenRule> WhatBlocks(Entry entry, Ledger ledger, Facts facts)
    {
        ArgumentNullException.ThrowIfNull(entry);
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(facts);
        if (entry.Fact is NewerEntry) return [Gates.NewerEntries];
        if (entry.Signature is null)
            return entry.By == facts.Who.Id || Answering(entry).Any(facts.Who.May) ? [] : [NotYours(entry, $"It is corrected by its author, or by {Words.Any(Answering(entry))}.")];
        var before = ledger.Before(entry.Sequence);
        var by = Answering(entry, ledger);
        return
        [
            .. ledger.State.HasNewerEntries ? [Gates.NewerEntries] : Array.Empty<BrokenRule>(),
            .. by.Any(facts.Who.May) ? [] : new[] { NotYours(entry, $"It was signed, and is corrected by {Words.Any(by)}. You act here as {Words.List(facts.Who.Authorities)}.") },
            .. Gates.OfPerson(Act(entry.Fact, before).GetType(), before.State, facts).Select(rule => NotYours(entry, rule.Sentence)),
        ];
    }

    internal static IEnumerable<BrokenRule> Of(Noted note, Ledger ledger, Facts facts) =>
        Target(note, ledger) is { } entry ? WhatBlocks(entry, ledger, facts) : [];

    static BrokenRule NotYours(Entry entry, string why) =>
        new("not-yours-to-correct", $"Entry {entry.Sequence} is not yours to correct. {why} A remark stands beside it.", "corrects");

    /// <summary>Those who may make this entry here, in order of preference: of a correction, those who may correct.</summary>
    public static IReadOnlyList<Authority> By(Fact fact, Ledger ledger)
    {
        ArgumentNullException.ThrowIfNull(fact);
        ArgumentNullException.ThrowIfNull(ledger);
        var by = MoveTable.By(fact, ledger.State);
        return Target(fact, ledger) is { } entry ? [.. Answering(entry, ledger), .. by] : by;
    }

    /// <summary>The act whose authority an entry needs: of a correction that of what it corrects, of anything else its own.</summary>
    public static Fact Act(Fact fact, Ledger ledger) => Target(fact, ledger) is { } entry ? Act(entry.Fact, ledger.Before(entry.Sequence)) : fact;

    /// <summary>The entry's note as it counts: one that names an entry its author had no authority to correct is a remark on it.</summary>
    public static Fact AsItCounts(Entry entry, Ledger ledger)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry.Fact is Noted { Corrects: { } corrected } note && !Corrects(entry, ledger) ? note with { Corrects = null, RemarkOn = corrected } : entry.Fact;
    }

    /// <summary>Later notes that correct this entry.</summary>
    public static IEnumerable<Entry> CorrectionsOf(Entry entry, Ledger ledger) => ledger.Entries.Where(later => AsItCounts(later, ledger) is Noted { Corrects: { } corrected } && corrected == entry.Sequence);

    /// <summary>Later notes that stand beside it.</summary>
    public static IEnumerable<Entry> RemarksOn(Entry entry, Ledger ledger) => ledger.Entries.Where(later => AsItCounts(later, ledger) is Noted { RemarkOn: { } beside } && beside == entry.Sequence);

    // What the ledger itself says: who wrote it, as what, and whether it was signed.
    static bool Corrects(Entry note, Ledger ledger) => Target(note.Fact, ledger) is not { } entry
        || note.By == entry.By
        || (entry.Signature is null ? Answering(entry).Contains(note.As) : note.Signature is not null);

    static Entry? Target(Fact fact, Ledger ledger) =>
        fact is Noted { Corrects: { } sequence } && sequence >= 1 && sequence <= ledger.Length ? ledger.Entries[sequence - 1] : null;

    static IReadOnlyList<Authority> Answering(Entry entry, Ledger ledger) =>
        entry.Signature is null ? Answering(entry)
        : ledger.Before(entry.Sequence) is var before && Target(entry.Fact, before) is { } corrected ? Answering(corrected, before)
        : MoveTable.By(entry.Fact, before.State);

    /// <summary>Besides its author: of a pilot's own account those who act on it, of anything else also those who do the same (common practice, no source).</summary>
    static IReadOnlyList<Authority> Answering(Entry entry) => entry.As switch
    {
        Authority.Office => [Authority.Office, Authority.Mechanic, Authority.Inspector],
        Authority.Inspector => [Authority.Inspector],
        Authority.Certifier => [Authority.Certifier],
        _ => [Authority.Mechanic, Authority.Inspector],
    };
}
