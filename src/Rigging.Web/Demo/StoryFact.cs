using System.Collections;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Web.Demo;

/// <summary>From what a story says to the fact that goes into the ledger: what every page fills in by itself, and what the mechanics compute.</summary>
sealed class StoryFact(SeedFolder seeds, StorySeed story)
{
    /// <exception cref="JsonException">The story's words are no such fact.</exception>
    /// <exception cref="InvalidOperationException">The mechanics come to something else than the story says.</exception>
    public Fact Of(ActSeed act, LocalDate day, Ledger ledger, AirframeOnFile? airframe) => act.Kind switch
    {
        "assessment" => Assessment(act, ledger, airframe!),
        "verdict" => Verdict(act, ledger, airframe!),
        "correction" => Correction((CorrectionAgreed)Read(act, day), ledger, airframe!),
        _ => Read(act, day),
    };

    static Assessed Assessment(ActSeed act, Ledger ledger, AirframeOnFile airframe)
    {
        var made = LedgerAssessment.Of(ledger, airframe);
        string[] comesTo = made.Response.Correction is { } correction
            ? [.. correction.Moves.Select(move => Wire.Word(move.Control))]
            : [.. made.Response.Refusals.Select(refusal => refusal.Code)];
        return comesTo.SequenceEqual(act.ComesTo ?? []) ? made.Fact
            : throw new InvalidOperationException($"The assessment comes to {string.Join(", ", comesTo)}; the story says {string.Join(", ", act.ComesTo ?? [])}.");
    }

    static VerdictGiven Verdict(ActSeed act, Ledger ledger, AirframeOnFile airframe)
    {
        var computed = LedgerVerdict.Of(ledger, airframe) ?? throw new InvalidOperationException("There is no check flight to judge.");
        var (said, words) = ((string?)act.Fact?["verdict"], (string?)act.Fact?["explanation"]);
        return said == Wire.Word(computed.Fact.Verdict) && words is not null ? computed.Fact with { Explanation = words }
            : throw new InvalidOperationException($"The verdict comes out as {Wire.Word(computed.Fact.Verdict)} ({computed.Fact.Explanation}); the story says {said}: {words}.");
    }

    /// <summary>A proposal that is taken over brings its prediction along; a plan of one's own has none.</summary>
    static CorrectionAgreed Correction(CorrectionAgreed agreed, Ledger ledger, AirframeOnFile airframe)
    {
        if (agreed.OwnPlan) return agreed;
        var proposal = LedgerAssessment.Of(ledger, airframe).Response.Correction;
        var same = proposal is not null && proposal.Moves.Select(move => (Wire.Word(move.Control), move.FromDeg, move.ToDeg))
            .SequenceEqual(agreed.Moves.Select(move => (Wire.Word(move.Control), move.FromDeg, move.ToDeg)));
        return same
            ? agreed with { PredictedDegPerS = proposal!.PredictedRollTendency.Mean, PredictedLowDegPerS = proposal.PredictedRollTendency.Low, PredictedHighDegPerS = proposal.PredictedRollTendency.High }
            : throw new InvalidOperationException($"The proposal is {string.Join("; ", proposal?.Moves.Select(move => $"{Wire.Word(move.Control)} {move.FromDeg} to {move.ToDeg}") ?? ["to move nothing"])}; the story takes over another.");
    }

    Fact Read(ActSeed act, LocalDate day)
    {
        if (!EntryCodec.Kinds.Contains(act.Kind)) throw new JsonException($"There is no entry of kind '{act.Kind}'.");
        var fact = act.Fact?.DeepClone().AsObject() ?? throw new JsonException("The act does not say anything.");
        foreach (var parameter in EntryCodec.TypeOf(act.Kind).GetConstructors().MaxBy(made => made.GetParameters().Length)!.GetParameters())
            FillIn(fact, parameter, day);
        return EntryCodec.ReadFact(act.Kind, fact.ToJsonString());
    }

    void FillIn(JsonObject fact, ParameterInfo parameter, LocalDate day)
    {
        var name = JsonNamingPolicy.CamelCase.ConvertName(parameter.Name!);
        var given = fact[name];
        fact[name] = (parameter.Name, parameter.ParameterType) switch
        {
            ("Aircraft", _) => JsonValue.Create(seeds.Aircraft(story.Aircraft)!.Id),
            ("Number", _) => JsonValue.Create(0),
            ("Tool" or "Wrench", _) when given is not null => JsonValue.Create(Tool((string)given!)),
            ("Movements", _) when given is JsonArray movements => Movements(movements),
            ("TestPoints", _) => JsonValue.Create((given ?? throw new JsonException("The flight has no testPoints.")).ToJsonString(Indented)),
            ("Observations", _) => Observations(given),
            ("RecordEntry", _) => JsonValue.Create(""),
            (_, var type) when type == typeof(LocalDate) && given is null => JsonValue.Create(day.ToString("uuuu-MM-dd", null)),
            (_, var type) when given is null && type != typeof(string) && type.IsAssignableTo(typeof(IEnumerable)) => new JsonArray(),
            // Filled in by the rules from the signed work.
            ("TotalTimeH", _) when given is null => JsonValue.Create(0.0),
            _ => given?.DeepClone(),
        };
        if (fact[name] is null) fact.Remove(name);
    }

    Guid Tool(string code) => seeds.Tools.FirstOrDefault(tool => tool.Code == code)?.Id ?? throw new JsonException($"There is no tool '{code}' in tools.json.");

    JsonArray Movements(JsonArray given)
    {
        var movements = given.DeepClone().AsArray();
        foreach (var measured in movements) measured!["tool"] = Tool((string)measured["tool"]!);
        return movements;
    }

    // What must be seen is the rules' to know; a story says what was seen.
    static JsonArray Observations(JsonNode? given) =>
    [
        .. (given as JsonArray ?? []).Select(seen =>
        {
            var observation = seen!.DeepClone().AsObject();
            observation["expected"] = Wire.Word(Seen.NotRecorded);
            return observation;
        }),
    ];

    static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
}
