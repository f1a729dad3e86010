using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Paper;
using Rigging.Web.Story;

namespace Rigging.Web.SignOff;

/// <summary>The signatures under a record entry: whose, when, over which text; and what was superseded or corrected.</summary>
/// <param name="File">The whole squawk: a correction may come rounds later.</param>
/// <param name="Round">The ledger up to the end of the round that is printed.</param>
sealed record RecordSignatures(SquawkFile File, Ledger Round)
{
    IEnumerable<Entry> Signed => Round.Entries.Where(entry => entry.Signature is not null && entry.Sequence >= Round.FirstOfRound);

    /// <summary>The last of each kind counts; an inspection only if it came after the last work, an approval only after the last inspection.</summary>
    IEnumerable<Entry> Standing => Signed.GroupBy(entry => entry.Fact.GetType()).Select(kind => kind.Last()).Where(entry => entry.Fact switch
    {
        Inspected => Round.State.Inspection is not null,
        Approved => Round.State.Approval is not null,
        _ => true,
    });

    Entry? Last<T>() where T : Fact => Standing.FirstOrDefault(entry => entry.Fact is T);

    /// <summary>After a heading: which entry it rests on, and whether a later one corrects it.</summary>
    public string Mark<T>() where T : Fact => Last<T>() is { } entry ? Gaps.Fill(Say.EntryMark, entry.Sequence, CorrectionsOf(entry) is { Length: > 0 } by ? Gaps.Fill(Say.CorrectedBySeeBelow, by) : "") : "";

    /// <summary>Who signed the act, by the name it was signed with; empty where nobody has.</summary>
    public string Signer<T>() where T : Fact => Last<T>() is { } entry ? File.Register.NameThenAndNow(entry.By, entry.At) : "";

    /// <summary>The signature under an act.</summary>
    /// <param name="statement">What stands above it on paper; the last line of the signed text unless said otherwise.</param>
    public IEnumerable<Block> Of<T>(string what, string? statement = null) where T : Fact
    {
        if (Last<T>() is not { Signature: { } signature } entry) yield break;
        var kind = signature.CertificateKind is { } code ? File.Facts.RuleSet.WordsFor(code) : null;
        yield return new Paper.Signature(what, statement ?? File.Register.Render(signature.Text, entry.At).Split('\n')[^1], File.Register.NameThenAndNow(entry.By, entry.At),
            signature.Certificate is { } certificate ? $"{File.Register.Number(certificate)}, {kind}" : Say.NoneOnFile,
            $"{File.When(entry.At)} {File.School.Zone.Id}{(Round.ClockWentBack(entry) ? Gaps.Fill(Say.ServersClockWentBack, entry.Sequence - 1) : "")}",
            Gaps.Fill(Say.SignedInLedgerEntryGiven, entry.Sequence, SquawkFile.How(signature), File.When(signature.AuthenticatedAt), signature.ShownSha256, Papers.Where(paper => paper.Photo.PaperOf == entry.Sequence).Aggregate("", (said, paper) => Gaps.Fill(Say.SignedOnPaperTooPhotographed, said, paper.Entry.Sequence, Words.Of(paper.Photo.Original!.Value)))));
    }

    IEnumerable<(Entry Entry, Photographed Photo)> Papers => File.Ledger.Entries.Where(entry => entry.Fact is Photographed { PaperOf: not null, Original: not null }).Select(entry => (entry, (Photographed)entry.Fact));

    /// <summary>What was entered after it happened, with both times.</summary>
    public IEnumerable<Block> Late()
    {
        List<IReadOnlyList<string>> rows = [.. from entry in Round.Entries
                                               where entry.Sequence >= Round.FirstOfRound && entry.Fact is IMayComeLate { HappenedAt: not null }
                                               select (IReadOnlyList<string>)[$"{entry.Sequence}", entry.Fact is Noted note ? note.Text : EntryStory.Of(entry.Fact).Title, File.When(((IMayComeLate)entry.Fact).HappenedAt!.Value), File.When(entry.At), File.Register.NameThenAndNow(entry.By, entry.At)]];
        if (rows.Count == 0) yield break;
        yield return new Heading(Say.LateEntries);
        yield return new Table([new(Say.Entry, 0.4), new(Texts.What, 1.8), new(Say.Happened, 1.1), new(Say.Entered, 1.2), new(Texts.By, 1)], rows);
    }

    /// <summary>What no longer stands, and what was corrected.</summary>
    public IEnumerable<Block> Changes()
    {
        List<IReadOnlyList<string>> rows =
        [
            .. Signed.Except(Standing).Select(entry => (IReadOnlyList<string>)[$"{entry.Sequence}", Gaps.Fill(Say.SignedBy, EntryStory.Of(entry.Fact).Title, File.Register.NameThenAndNow(entry.By, entry.At), File.When(entry.At)), SupersededBy(entry)]),
            .. Notes(note => note.Corrects, Say.CorrectedByEntry),
        ];
        if (rows.Count > 0)
        {
            yield return new Heading(Say.SupersededAndCorrectedEntries);
            yield return new Table([new(Say.Entry, 0.4), new(Texts.What, 2.4), new(Say.Superseded, 1.4)], rows);
        }
        List<IReadOnlyList<string>> remarks = [.. Notes(note => note.RemarkOn, Say.RemarkBy)];
        if (remarks.Count == 0) yield break;
        yield return new Heading(Say.Remarks);
        yield return new Paragraph(Say.RemarksCorrectNothing, Small: true);
        yield return new Table([new(Say.Entry, 0.4), new(Texts.What, 2.4), new(Texts.By, 1.4)], remarks);
    }

    IEnumerable<IReadOnlyList<string>> Notes(Func<Noted, int?> about, string said) =>
        from entry in File.Ledger.Entries
        let note = Correcting.AsItCounts(entry, File.Ledger) as Noted
        where note is not null && about(note) is not null
        select (IReadOnlyList<string>)[$"{about(note)}", note.Text, Gaps.Fill(said, entry.Sequence, File.Register.NameThenAndNow(entry.By, entry.At), File.When(entry.At))];

    /// <summary>Every standing signature's text, word for word.</summary>
    public IEnumerable<Block> Annex()
    {
        yield return new Heading(Say.AnnexTextsAsTheyWere);
        foreach (var entry in Standing.OrderBy(entry => entry.Sequence))
        {
            yield return new Paragraph(Gaps.Fill(Say.EntryAndTitle, entry.Sequence, EntryStory.Of(entry.Fact).Title), Small: true, Strong: true);
            yield return new Paragraph(File.Register.Render(entry.Signature!.Text, entry.At), Small: true);
        }
    }

    string SupersededBy(Entry entry) => Signed.FirstOrDefault(later => later.Sequence > entry.Sequence && later.Fact.GetType() == entry.Fact.GetType()) is { } successor
        ? Gaps.Fill(Say.SupersededByEntry, successor.Sequence)
        : Say.SupersededWorkWasOpenedAgain;

    string CorrectionsOf(Entry entry) => string.Join(", ", Correcting.CorrectionsOf(entry, File.Ledger).Select(note => Gaps.Fill(Say.EntryInText, note.Sequence)));
}
