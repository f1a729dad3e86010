using System.Text.Json.Nodes;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Verification;
using Rigging.Simulation;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Quality;

/// <summary>One simulated aeroplane and what was answered about it; both sides speak the contract's JSON and nothing else.</summary>
sealed class Judged
{
    static readonly string[] Eccentrics = ["left-eccentric", "right-eccentric"];

    readonly JsonObject answer;

    Judged(Scenario scenario, JsonObject answer)
    {
        (Scenario, this.answer) = (scenario, answer);
        TendencyAfter = Moves is null ? null : scenario.TendencyAfter(Moves);
        if (!TurnsAnEccentric) return;
        var flown = scenario.CheckFlight(Moves);
        var flight = ContractReader.ReadRequest(flown.ToJsonString()).Value!;
        var afterwards = ContractReader.ReadRequest(scenario.Afterwards(Moves, flown).ToJsonString()).Value!;
        AssessedAfter = Interval(Assessor.Assess(afterwards, afterwards.Airframe!, Practice.Usual.WithFuelMeasured()).RollTendency);
        (Verdict, Limit) = (CheckFlight.Judge(flight, flight.Airframe!, fuelMeasured: true), flight.Airframe!.Limits!.AcceptableRollTendencyDegPerS);
    }

    public static Judged Of(Scenario scenario)
    {
        var request = ContractReader.ReadRequest(scenario.Request.ToJsonString()).Value!;
        return new(scenario, JsonNode.Parse(ContractWriter.Write(Assessor.Assess(request, request.Airframe!)))!.AsObject());
    }

    public Scenario Scenario { get; }

    public Truth Truth => Scenario.Truth;

    public JsonArray? Moves => answer["correction"]?["moves"]?.AsArray();

    public IEnumerable<string> Controls => Moves?.Select(move => (string)move!["control"]!) ?? [];

    public bool TurnsAnEccentric => Controls.Any(Eccentrics.Contains);

    public IEnumerable<string> Refusals => answer["refusals"]!.AsArray().Select(refusal => (string)refusal!["code"]!);

    public (double Low, double High)? Tendency => Interval(answer["rollTendency"]);

    public (double Low, double High)? Predicted => Interval(answer["correction"]?["predictedRollTendency"]);

    /// <summary>True tendency once the moves are made; null when none are.</summary>
    public double? TendencyAfter { get; }

    /// <summary>What is said of the check flight after an eccentric was turned; null where none was.</summary>
    public CheckFlightVerdict? Verdict { get; }

    public (double Low, double High)? TendencyByVerdict => Interval(Verdict?.RollTendency);

    /// <summary>What all flights, before and after it, say of the roll tendency then; null where no eccentric was turned.</summary>
    public (double Low, double High)? AssessedAfter { get; }

    /// <summary>Acceptable roll tendency of the airframe, °/s; 0 without a verdict.</summary>
    public double Limit { get; }

    /// <summary>The cause called likeliest.</summary>
    public string TopCause => (string)answer["causes"]!.AsArray().MaxBy(cause => (double?)cause!["probability"] ?? -1)!["cause"]!;

    public double? Probability(string cause) => (double?)Of(cause)["probability"];

    public double HighestProbability => answer["causes"]!.AsArray().Max(cause => (double?)cause!["probability"] ?? 0);

    /// <summary>Whether the interval of a cause that is there holds its true amplitude; null when the cause was not assessed.</summary>
    public bool? Holds(string cause) => Interval(Of(cause)["amplitude"]) is var (low, high) ? low <= Amplitude(cause) && Amplitude(cause) <= high : null;

    /// <summary>
    /// In the answer's unit: skin and damage are so much rolling moment, whatever the generator bent to make it; a slipstream of which nothing is on file
    /// is so much of the usual one.
    /// </summary>
    double Amplitude(string cause) => cause switch
    {
        Faults.Contour or Faults.Damage => Scenario.Aeroplane.With(Faults.Of(cause, Truth.Amplitudes[cause])).WingRoll,
        Faults.Slipstream when Scenario.Aeroplane.File.Accuracies.Count > 0 =>
            Truth.Amplitudes[cause] * Scenario.Aeroplane.D.SlipstreamCn / Scenario.Aeroplane.File.Derivatives.SlipstreamCn,
        _ => Truth.Amplitudes[cause],
    };

    /// <summary>Right wing, right way, within half a flat of ideal.</summary>
    public bool IsIdealMove(IncidenceMove ideal)
    {
        if (!TurnsAnEccentric || Controls.Any(control => !Eccentrics.Contains(control)))
            return false;
        var wing = ideal.Wing is null || Controls.Contains(ideal.Wing + "-eccentric");
        return wing && Math.Abs(Scenario.PanelChangeDeg(Moves) - ideal.PanelChangeDeg) <= ideal.HalfFlatDeg
            && Math.Sign(Scenario.PanelChangeDeg(Moves)) == Math.Sign(ideal.PanelChangeDeg);
    }

    /// <summary>Whether the moves leave less of what they act on: roll for what acts on the wing, the rudder's offset for its tab. Null without a move, and for a reset of the aileron neutral.</summary>
    public bool? Lessens()
    {
        if (Moves is null || Controls.All(control => control == "aileron-neutral"))
            return null;
        if (!Controls.Contains("rudder-tab"))
            return Math.Abs(TendencyAfter!.Value) < Math.Abs(Truth.RollTendencyDegPerS);
        var after = Remedy.Applied(Scenario.Aeroplane, Moves).Faults[Faults.Rudder];
        return Math.Abs(after) < Math.Abs(Scenario.Aeroplane.Faults[Faults.Rudder]);
    }

    JsonNode Of(string cause) => answer["causes"]!.AsArray().Single(one => (string)one!["cause"]! == cause)!;

    static (double Low, double High)? Interval(Estimate? estimate) => estimate is null ? null : (estimate.Low, estimate.High);

    static (double Low, double High)? Interval(JsonNode? estimate) => estimate is null ? null : ((double)estimate["low"]!, (double)estimate["high"]!);
}
