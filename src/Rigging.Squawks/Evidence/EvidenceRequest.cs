using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;

namespace Rigging.Squawks.Evidence;

/// <summary>The evidence in a ledger as an assessment request, with what had to be assumed to make it one.</summary>
/// <param name="Json">In the form of the assessment endpoint: what is stored, so that it can be recomputed years later.</param>
/// <param name="Assumed">In a person's words; shown beside the result.</param>
public sealed record EvidenceRequest(string Json, IReadOnlyList<string> Assumed)
{
    static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// Everything of the present round, and of earlier rounds what still holds: the ground checks, but not the flights made
    /// before something was moved, except that a check flight shows the aircraft as it stands now.
    /// </summary>
    public static EvidenceRequest Of(Ledger ledger, AirframeOnFile onFile)
    {
        var airframe = onFile.Read();
        List<string> assumed = [];
        var state = ledger.State;
        var points = new JsonArray();
        var lastWork = ledger.Entries.LastOrDefault(e => e.Fact is WorkDone)?.Sequence ?? 0;
        if (lastWork == 0 && state.Report is { } report && ReportedPoint.Of(report, airframe, assumed) is { } reported) points.Add(reported);
        foreach (var entry in ledger.Entries.Where(e => e.Sequence > lastWork))
            foreach (var point in TestPointsOf(entry.Fact)) points.Add(point);

        var request = new JsonObject
        {
            ["airframe"] = JsonNode.Parse(onFile.Json),
            ["straightBefore"] = state.Report?.StraightBefore,
            ["events"] = Events(ledger),
            ["testPoints"] = points,
            ["groundChecks"] = GroundChecks(ledger, lastWork),
        };
        if (Settings(state.Settings) is { } settings) request["settings"] = settings;
        return new(request.ToJsonString(Indented), assumed);
    }

    static IEnumerable<JsonNode> TestPointsOf(Fact fact) => fact switch
    {
        EvaluationFlown flown => Parse(flown.TestPoints),
        CheckFlown flown => Parse(flown.TestPoints),
        _ => [],
    };

    static IEnumerable<JsonNode> Parse(string testPoints) =>
        JsonNode.Parse(testPoints) is JsonArray array ? array.OfType<JsonNode>().Select(node => node.DeepClone()) : [];

    static JsonArray Events(Ledger ledger)
    {
        var report = ledger.State.Report;
        var words = (report?.Happened ?? []).Select(happening => Wire.Word(happening));
        if (report?.RedFlags.Contains(RedFlag.SuddenOnset) == true) words = words.Append("sudden-onset");
        return [.. words.Distinct().Select(word => JsonValue.Create(word))];
    }

    static JsonObject? Settings(BushingAngles? angles)
    {
        if (angles is null) return null;
        var settings = new JsonObject();
        if (Both(angles.LeftFrontDeg, angles.LeftRearDeg) is { } left) settings["leftEccentricDeg"] = left;
        if (Both(angles.RightFrontDeg, angles.RightRearDeg) is { } right) settings["rightEccentricDeg"] = right;
        return settings.Count > 0 ? settings : null;
    }

    static JsonNode? Both(double? front, double? rear) => (front, rear) switch
    {
        ({ } f, { } r) when f == r => JsonValue.Create(f),
        ({ } f, { } r) => new JsonObject { ["front"] = f, ["rear"] = r },
        _ => null,
    };

    // The latest of each check counts. Incidence measured before the panel was moved no longer says how it stands.
    static JsonArray GroundChecks(Ledger ledger, int lastWork) =>
    [
        .. ledger.Entries
            .Where(e => e.Fact is GroundChecked { NotApplicableReason: null })
            .Select(e => (e.Sequence, Check: (GroundChecked)e.Fact))
            .Where(e => e.Sequence > lastWork || e.Check.Check != Check.PanelIncidenceDifference)
            .GroupBy(e => (e.Check.Check, e.Check.Cable, e.Check.Side))
            .Select(group => GroundCheckOf(group.Last().Check))
            .OfType<JsonObject>(),
    ];

    static JsonObject? GroundCheckOf(GroundChecked check)
    {
        var kind = Wire.Word(check.Check);
        JsonObject? json = check switch
        {
            { Check: Check.DamageInspection or Check.ContourSurvey, Clear: { } clear } => new() { ["kind"] = kind, ["clear"] = clear },
            { Check: Check.FuelAndSeats } or { Value: null } => null,
            { Check: Check.BallOffset } => new() { ["kind"] = kind, ["widths"] = check.Value, ["sd"] = check.Sd },
            { Check: Check.ControlFriction } => new() { ["kind"] = kind, ["n"] = check.Value, ["sd"] = check.Sd },
            { Check: Check.CableTension, Cable: { } cable } => new() { ["kind"] = kind, ["cable"] = cable, ["n"] = check.Value, ["degC"] = check.TemperatureC ?? 15, ["sd"] = check.Sd },
            { Check: Check.AileronTab, Side: { } side } => new() { ["kind"] = kind, ["side"] = Wire.Word(side), ["deg"] = check.Value, ["sdDeg"] = check.Sd },
            { Check: Check.AileronTab or Check.CableTension } => null,
            _ => new() { ["kind"] = kind, ["deg"] = check.Value, ["sdDeg"] = check.Sd },
        };
        foreach (var missing in json?.Where(pair => pair.Value is null).Select(pair => pair.Key).ToList() ?? []) json!.Remove(missing);
        return json;
    }
}
