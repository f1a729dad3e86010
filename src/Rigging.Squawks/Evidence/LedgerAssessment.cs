using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>What the mechanics make of the evidence in a ledger, ready to go on record.</summary>
/// <param name="Assumed">In a person's words; shown beside the result.</param>
/// <param name="Practice">Figures of experience that it was made with.</param>
public sealed record LedgerAssessment(Assessed Fact, AssessmentRequest Request, AssessmentResponse Response, IReadOnlyList<string> Assumed, Practice Practice)
{
    readonly Lazy<Outlook?> outlook = new(() => Outlook.Of(Request, Request.Airframe!, Practice));

    /// <summary>What it expects elsewhere, weighed when first asked for; null when nothing was observed.</summary>
    public Outlook? Elsewhere => outlook.Value;

    /// <summary>Version of the mechanics library, as it goes on record with what it computed.</summary>
    public static string LibraryVersion { get; } = typeof(Assessor).Assembly.GetName().Version!.ToString(3);

    /// <param name="lessons">How earlier corrections turned out, on this aircraft and others of its type.</param>
    /// <param name="damageElsewhere">Another squawk of the aircraft asks for a damage inspection.</param>
    public static LedgerAssessment Of(Ledger ledger, AirframeOnFile onFile, IReadOnlyList<EarlierCorrection>? lessons = null, bool damageElsewhere = false)
    {
        var evidence = EvidenceRequest.Of(ledger, onFile, lessons, damageElsewhere);
        var request = evidence.Read();
        var practice = PracticeFor(ledger);
        var response = Assessor.Assess(request, request.Airframe!, practice);
        return new(
            new(evidence.Json, ContractWriter.Write(response), LibraryVersion, practice.Version, onFile.Id, onFile.Version),
            request, response, evidence.Assumed, practice);
    }

    // Once fuel and seats are on record as measured, a load that nobody reported is no longer the first thing to think of.
    internal static Practice PracticeFor(Ledger ledger)
    {
        var practice = FuelIsMeasured(ledger) ? Practice.Usual.WithFuelMeasured() : Practice.Usual;
        return ledger.Entries.Any(entry => entry.Fact is WorkDone) ? practice.AfterAdjusting() : practice;
    }

    /// <summary>After the last work, the fuel that counts is that of the check flight. Fuel told in words only was not measured.</summary>
    static bool FuelIsMeasured(Ledger ledger) => ledger.Entries.LastOrDefault(entry => entry.Fact is CheckFlown or GroundChecked { Check: Check.FuelAndSeats })?.Fact switch
    {
        CheckFlown flown => flown.FuelMeasured,
        GroundChecked check => check.NotApplicableReason is null && check.HasItsValue(),
        _ => false,
    };
}
