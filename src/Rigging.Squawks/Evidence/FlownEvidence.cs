using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>What was flown with the aircraft as it stood at one time, and what the mechanics expect of it then: what a plot shows.</summary>
public sealed record FlownEvidence(AssessmentRequest Request, Airframe Airframe, Outlook Outlook)
{
    /// <summary>As it stands now; null when there is nothing to go by.</summary>
    /// <param name="lessons">How earlier corrections turned out.</param>
    public static FlownEvidence? Now(Ledger ledger, AirframeOnFile onFile, IReadOnlyList<EarlierCorrection>? lessons = null)
    {
        var read = ContractReader.ReadRequest(EvidenceRequest.Of(ledger, onFile, lessons).Json);
        return read is { Faults.Count: 0, Value: { Airframe: { } airframe } request } && Outlook.Of(request, airframe, LedgerAssessment.PracticeFor(ledger)) is { } outlook
            ? new(request, airframe, outlook)
            : null;
    }

    /// <summary>As it stood before the work of the last round in which any was signed; null when none was, or when there is nothing to go by.</summary>
    public static FlownEvidence? BeforeWork(Ledger ledger, AirframeOnFile onFile) =>
        FirstOfLastWork(ledger) is { } work ? Now(ledger.Before(work), onFile) : null;

    /// <summary>Work that is signed again, after an inspection that failed, is the same work: what was before it was before its first signature.</summary>
    internal static int? FirstOfLastWork(Ledger ledger)
    {
        if (ledger.Entries.LastOrDefault(entry => entry.Fact is WorkDone) is not { } last) return null;
        var opened = ledger.Entries.LastOrDefault(entry => entry.Fact is RoundOpened && entry.Sequence < last.Sequence)?.Sequence ?? 0;
        return ledger.Entries.First(entry => entry.Fact is WorkDone && entry.Sequence > opened).Sequence;
    }
}
