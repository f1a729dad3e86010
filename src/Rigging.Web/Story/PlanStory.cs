using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;
using static Rigging.Squawks.Rules.ReadingWords;

namespace Rigging.Web.Story;

/// <summary>Assessment and correction in words.</summary>
static class PlanStory
{
    const int CausesSaid = 3;

    public static Told Of(Assessed assessed)
    {
        var response = Parse(assessed.Response) as JsonObject;
        return new(Say.Assessed,
        [
            .. response is null ? [new Line(Say.ResultCannotBeRead, Tone.Missing)] : Result(response),
            new(Gaps.Fill(Say.ComputedEstimateNothingIsDecided, assessed.LibraryVersion, assessed.AirframeId, assessed.AirframeVersion), Tone.Missing),
        ]);
    }

    /// <summary>Degrees per second, right wing down positive; null when the answer, an assessment or a verdict, gave none.</summary>
    public static Estimate? Tendency(string answer) =>
        Parse(answer) is JsonObject response ? Estimate(response["rollTendency"]) : null;

    static IEnumerable<Line> Result(JsonObject response)
    {
        yield return Estimate(response["rollTendency"]) is { } tendency
            ? Gaps.Fill(Say.Tendency, Expected(tendency.Mean, tendency.Low, tendency.High))
            : new Line(Say.TendencyCannotBeToldFrom, Tone.Missing);
        var causes = Objects(response["causes"])
            .Select(cause => (Cause: Text(cause["cause"]), Probability: Number(cause["probability"])))
            .Where(cause => cause is { Cause: not null, Probability: >= 0.05 })
            .OrderByDescending(cause => cause.Probability).Take(CausesSaid).ToList();
        if (causes.Count > 0)
            yield return Gaps.Fill(Say.Likely, string.Join(", ", causes.Select(cause => $"{(Wire.TryRead<Cause>(cause.Cause!, out var known) ? Words.Of(known) : cause.Cause)} {Words.Percent(cause.Probability!.Value)}")));
        foreach (var refusal in Objects(response["refusals"]).Select(refusal => Text(refusal["sentence"])).OfType<string>()) yield return refusal;
    }

    public static Told Of(CorrectionAgreed agreed) => new(Say.CorrectionAgreed,
    [
        .. agreed.Moves.Select(move => (Line)move.Instruction),
        Gaps.Fill(Say.DataSectionRevision, agreed.Data.Manual, agreed.Data.Section, agreed.Data.Revision),
        agreed.OwnPlan ? Say.MechanicsOwnPlan : Say.AsProposedByAssessment,
        .. Line.Quote(agreed.Reason),
        .. agreed.PredictedDegPerS is { } predicted
            ? [Gaps.Fill(Say.ExpectedAfterwards, agreed is { PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high } ? Expected(predicted, low, high) : Gaps.Fill(Say.IntervalNotOnRecord, RollRate(predicted)))]
            : Array.Empty<Line>(),
    ]);

    /// <summary>Null where it is not on record with its interval: then nothing is said that rests on one.</summary>
    public static Estimate? Estimate(double? mean, double? low, double? high) => mean is { } m && low is { } l && high is { } h ? new(m, l, h, "deg/s") : null;

    static Estimate? Estimate(JsonNode? node) => node is JsonObject estimate ? Estimate(Number(estimate["mean"]), Number(estimate["low"]), Number(estimate["high"])) : null;

    static IEnumerable<JsonObject> Objects(JsonNode? node) => node is JsonArray list ? list.OfType<JsonObject>() : [];
}
