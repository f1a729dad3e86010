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
    /// <param name="damageElsewhere">Another squawk of the aircraft asks for a damage inspection.</param>
    public static LedgerVerdict? Of(Ledger ledger, AirframeOnFile onFile, bool damageElsewhere = false)
    {
        if (ledger.State.CheckFlight is not { Fact: var flown }) return null;
        var evidence = EvidenceRequest.OfCheckFlights(ledger, onFile, flown.FuelMeasured);
        var request = evidence.Read();
        var judged = NotAgainstTheRest(CheckFlight.Judge(request, request.Airframe!, flown.FuelMeasured), ledger, onFile, flown.FuelMeasured);
        var computed = ledger.State.DamageSuspected || damageElsewhere ? judged with { Verdict = Verdict.NotEnoughEvidence, Reasons = [InDoubt] } : judged;
        return new(
            new(WordOf(computed.Verdict), computed.RollTendency?.Mean, computed.LoadContribution?.Mean, string.Join(' ', computed.Reasons),
                evidence.Json, JsonSerializer.Serialize(computed, Form), LedgerAssessment.LibraryVersion),
            request, computed);
    }

    const string InDoubt = "Damage is in doubt: nothing is judged until a damage inspection is recorded clear.";

    /// <summary>
    /// A flight is accepted by itself, and not against everything else on record that still speaks of the aircraft: flights before a move by a known
    /// amount, weighed with it. Below even odds they are at odds (judgement, no source).
    /// </summary>
    static CheckFlightVerdict NotAgainstTheRest(CheckFlightVerdict flight, Ledger ledger, AirframeOnFile onFile, bool fuelMeasured)
    {
        if (flight.Verdict != Verdict.Accepted) return flight;
        var all = EvidenceRequest.Of(ledger, onFile).Read();
        return CheckFlight.Judge(all, all.Airframe!, fuelMeasured) is { ProbabilityWithinLimit: < 0.5, RollTendency: { } rolls }
            ? flight with
            {
                Verdict = Verdict.NotEnoughEvidence,
                Reasons = [.. flight.Reasons, $"With the flights before the work, which still speak of it, that is otherwise: {Directions.Expected(rolls.Mean, rolls.Low, rolls.High)}. Fly it again before it is accepted."],
            }
            : flight;
    }

    public static VerdictWord WordOf(Verdict verdict) => verdict switch
    {
        Verdict.Accepted => VerdictWord.Accepted,
        Verdict.AdjustAgain => VerdictWord.AdjustAgain,
        Verdict.NotEnoughEvidence => VerdictWord.NotEnoughEvidence,
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };
}
