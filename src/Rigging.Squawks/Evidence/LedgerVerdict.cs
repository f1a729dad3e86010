using System.Text.Json;
using System.Text.Json.Serialization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Verification;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>What the last check flight shows once the day's fuel and seats are taken out, ready to go on record.</summary>
/// <param name="Fact">Its explanation is what was computed, in words; a person may write their own.</param>
public sealed record LedgerVerdict(VerdictGiven Fact, AssessmentRequest Request, CheckFlightVerdict Computed)
{
    static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    /// <summary>Null when no check flight is on record in this round.</summary>
    public static LedgerVerdict? Of(Ledger ledger, AirframeOnFile onFile)
    {
        if (ledger.State.CheckFlight is not { Fact: var flown }) return null;
        var evidence = EvidenceRequest.OfCheckFlights(ledger, onFile, flown.FuelMeasured);
        var request = evidence.Read();
        var computed = CheckFlight.Judge(request, request.Airframe!, flown.FuelMeasured);
        return new(
            new(WordOf(computed.Verdict), computed.RollTendency?.Mean, computed.LoadContribution?.Mean, string.Join(' ', computed.Reasons),
                evidence.Json, JsonSerializer.Serialize(computed, Form), LedgerAssessment.LibraryVersion),
            request, computed);
    }

    public static VerdictWord WordOf(Verdict verdict) => verdict switch
    {
        Verdict.Accepted => VerdictWord.Accepted,
        Verdict.AdjustAgain => VerdictWord.AdjustAgain,
        Verdict.NotEnoughEvidence => VerdictWord.NotEnoughEvidence,
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };
}
