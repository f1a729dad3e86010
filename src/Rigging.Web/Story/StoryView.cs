using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using Heavy = Rigging.Squawks.Entries.Side;
using Side = Rigging.Mechanics.Contract.Side;

namespace Rigging.Web.Story;

/// <summary>One entry as the page tells it.</summary>
/// <param name="Signed">How, when and under which certificate it was signed; null when it was not.</param>
/// <param name="SignedText">The exact text above the signature, names in place.</param>
/// <param name="CorrectedBy">Sequences of the later notes that correct it.</param>
/// <param name="Remarks">Later notes that stand beside it, and whose they are.</param>
public sealed record ToldEntry(
    int Sequence, Told Told, string When, string Who, string ActingAs, string? Signed, string? SignedText, IReadOnlyList<int> CorrectedBy, IReadOnlyList<(int Sequence, string Who)> Remarks);

/// <summary>One round of checks, work and check flight.</summary>
/// <param name="Outcome">What came of it, for when it is folded.</param>
public sealed record ToldRound(int Number, string Outcome, IReadOnlyList<ToldEntry> Entries);

/// <summary>Everything the squawk's page shows, told from the file. Pure.</summary>
/// <param name="Picture">The heavy wing; null when nobody recorded which one.</param>
/// <param name="Feel">The tendency on record in the pilot's currency; empty when none is.</param>
public sealed record StoryView(
    SquawkFile File, string Complaint, Drawing? Picture, IReadOnlyList<string> Feel, IReadOnlyList<ToldRound> Rounds, NextStep? Next, IReadOnlyList<Step> Others, IReadOnlyList<Caution> Cautions)
{
    public static StoryView Of(SquawkFile file)
    {
        var airframe = file.Facts.Airframe is { } onFile ? ContractReader.ReadAirframe(onFile.Json).Value : null;
        var tendency = TendencyOf(file);
        return new(
            file, ReportStory.Sentence(file.State.Report!), PictureOf(file.State.Report!, tendency, airframe),
            tendency is { } known && airframe is not null ? new Equivalents(new Aeroplane(airframe)).Says(known) : [],
            RoundsOf(file), NextStep.Of(file), Step.Beside(file), Caution.Of(file));
    }

    /// <summary>By the last assessment or verdict of the aircraft as it stands; null when there is none.</summary>
    static Estimate? TendencyOf(SquawkFile file) =>
        file.Ledger.Entries.Reverse().TakeWhile(entry => entry.Fact is not WorkDone)
            .Select(entry => entry.Fact switch { Assessed assessed => PlanStory.Tendency(assessed.Response), VerdictGiven verdict => PlanStory.Tendency(verdict.Response), _ => null })
            .FirstOrDefault(tendency => tendency is not null);

    /// <summary>By what is on record, else by the pilot's words.</summary>
    static Drawing? PictureOf(Reported report, Estimate? tendency, Airframe? airframe)
    {
        if (tendency is { } found) return AeroplaneView.FromRate(found.Mean, found.Low, found.High, airframe?.Limits?.AcceptableRollTendencyDegPerS);
        return report.RollsTo switch
        {
            Heavy.Left => AeroplaneView.FromWords(Side.Left, ReportStory.BankRead(report)),
            Heavy.Right => AeroplaneView.FromWords(Side.Right, ReportStory.BankRead(report)),
            _ => null,
        };
    }

    /// <summary>In the order in which things happened.</summary>
    static IReadOnlyList<ToldRound> RoundsOf(SquawkFile file)
    {
        // The wing is solved once, and only for a ledger that has a tendency to price.
        var worth = new Lazy<Equivalents?>(() => file.Facts.Airframe is { } onFile ? new(new Aeroplane(onFile.Read())) : null);
        var rounds = new List<List<Entry>> { new() };
        foreach (var entry in file.Ledger.Entries)
        {
            if (entry.Fact is RoundOpened) rounds.Add([]);
            rounds[^1].Add(entry);
        }
        return
        [
            .. rounds.Select((entries, index) => new ToldRound(index + 1, OutcomeOf(entries), [.. entries.Select(entry => Tell(entry, file, worth))])),
        ];
    }

    static string OutcomeOf(List<Entry> entries) =>
        entries.Select(entry => entry.Fact).OfType<VerdictGiven>().LastOrDefault() is { } verdict ? Gaps.Fill(Say.VerdictInText, Words.Of(verdict.Verdict))
        : entries.Select(entry => entry.Fact).OfType<CheckFlown>().LastOrDefault() is { } flown ? flown.Satisfactory ? Say.CheckFlightLogged : Say.CheckFlightNotSatisfactory
        : $"{entries.Count} {(entries.Count == 1 ? Say.EntryInText : Say.EntriesInText)}";

    static ToldEntry Tell(Entry entry, SquawkFile file, Lazy<Equivalents?> worth) => new(
        entry.Sequence, Told(entry, file, worth), file.When(entry.At), file.Register.NameThenAndNow(entry.By, entry.At), Words.Of(entry.As),
        entry.Signature is { } signature ? SignedAs(signature, file) : null,
        entry.Signature is { } signed ? file.Register.Render(signed.Text, entry.At) : null,
        [.. Correcting.CorrectionsOf(entry, file.Ledger).Select(note => note.Sequence)],
        [.. Correcting.RemarksOn(entry, file.Ledger).Select(note => (note.Sequence, file.Register.NameThenAndNow(note.By, note.At)))]);

    static Told Told(Entry entry, SquawkFile file, Lazy<Equivalents?> worth)
    {
        var told = EntryStory.Of(Correcting.AsItCounts(entry, file.Ledger), text => file.Register.Render(text, entry.At));
        if (entry.Fact is IMayComeLate { HappenedAt: { } happened })
            told = told with { Lines = [.. told.Lines, Gaps.Fill(Say.ItHappenedItWasEntered, file.When(happened), file.When(entry.At))] };
        // After the line that says the tendency: an assessment's first, an agreed correction's last.
        var at = entry.Fact is Assessed ? 1 : told.Lines.Count;
        told = told with { Lines = [.. told.Lines.Take(at), .. Coins(entry, file, worth), .. told.Lines.Skip(at)] };
        return file.Ledger.ClockWentBack(entry)
            ? told with { Lines = [.. told.Lines, new(Gaps.Fill(Say.ServersClockWentBack, entry.Sequence - 1), Tone.Caution)] }
            : told;
    }

    /// <summary>
    /// The assessed tendency in the pilot's currency, or the one that an agreed correction, or work left otherwise, is expected to leave. It says so where it is priced by a
    /// later airframe file than it was computed with, or where nobody recorded by which.
    /// </summary>
    static IEnumerable<Line> Coins(Entry entry, SquawkFile file, Lazy<Equivalents?> worth)
    {
        var tendency = entry.Fact switch
        {
            Assessed one => PlanStory.Tendency(one.Response),
            CorrectionAgreed agreed => PlanStory.Estimate(agreed.PredictedDegPerS, agreed.PredictedLowDegPerS, agreed.PredictedHighDegPerS),
            WorkDone done => PlanStory.Estimate(done.PredictedDegPerS, done.PredictedLowDegPerS, done.PredictedHighDegPerS),
            _ => null,
        };
        if (tendency is null || file.Facts.Airframe is not { } onFile || worth.Value?.Says(tendency) is not { } sentences) return [];
        var assessed = file.Ledger.Entries.Take(entry.Sequence).Select(one => one.Fact).OfType<Assessed>().LastOrDefault();
        return (onFile.Id, onFile.Version) == (assessed?.AirframeId, assessed?.AirframeVersion)
            ? sentences.Select(sentence => (Line)sentence)
            : sentences.Select(sentence => (Line)sentence).Prepend(new(Gaps.Fill(Say.PricedByFileOfToday, onFile.Id, onFile.Version), Tone.Missing));
    }

    static string SignedAs(Signature signature, SquawkFile file)
    {
        var certificate = signature.Certificate is { } id
            ? Gaps.Fill(Say.Certificate, signature.CertificateKind is { } kind ? file.Facts.RuleSet.WordsFor(kind) + ", " : "", file.Register.Number(id))
            : "";
        return Gaps.Fill(Say.SignedBy, file.When(signature.AuthenticatedAt), certificate, SquawkFile.How(signature));
    }
}
