using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>The evidence in a ledger as an assessment request, with what had to be assumed to make it one.</summary>
/// <param name="Json">In the form of the assessment endpoint: what is stored, so that it can be recomputed years later.</param>
/// <param name="Assumed">In a person's words; shown beside the result.</param>
public sealed record EvidenceRequest(string Json, IReadOnlyList<string> Assumed)
{
    static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>
    /// Everything on record that still holds: the ground checks, and the flights, those before an adjuster was moved by a known amount with the move beside
    /// them; not the flights made before anything else was moved, nor those that a trim or the autopilot held where a later one was flown without.
    /// </summary>
    /// <param name="lessons">How earlier corrections turned out.</param>
    /// <param name="damageElsewhere">Another squawk of the aircraft asks for a damage inspection.</param>
    public static EvidenceRequest Of(Ledger ledger, AirframeOnFile onFile, IReadOnlyList<EarlierCorrection>? lessons = null, bool damageElsewhere = false) =>
        Of(ledger, onFile, _ => true, lessons, damageElsewhere);

    /// <summary>What was flown between two entries, neither included, and the aircraft as it stood then: what was moved later is not brought in.</summary>
    internal static EvidenceRequest Between(Ledger ledger, AirframeOnFile onFile, int after, int before) =>
        Of(ledger.Before(before), onFile, entry => entry.Sequence > after);

    /// <summary>The check flights since the last work and nothing else that was flown: what a verdict rests on.</summary>
    /// <param name="fuelMeasured">Only those on which fuel was, or was not, measured: one kind says nothing about the other's tanks.</param>
    public static EvidenceRequest OfCheckFlights(Ledger ledger, AirframeOnFile onFile, bool fuelMeasured) =>
        Of(ledger, onFile, entry => entry.Fact is CheckFlown flown && flown.FuelMeasured == fuelMeasured && entry.Sequence > LastWork(ledger));

    /// <exception cref="InvalidOperationException">The airframe on file is not one: whoever stored it did not check it.</exception>
    public AssessmentRequest Read() => ContractReader.ReadRequest(Json) is { Value: { } request } ? request
        : throw new InvalidOperationException($"This evidence is no request: {string.Join("; ", ContractReader.ReadRequest(Json).Faults)}");

    static EvidenceRequest Of(Ledger ledger, AirframeOnFile onFile, Func<Entry, bool> counts, IReadOnlyList<EarlierCorrection>? lessons = null, bool damageElsewhere = false)
    {
        var airframe = onFile.Read();
        List<string> assumed = [];
        var state = ledger.State;
        var inDoubt = state.DamageSuspected || damageElsewhere;
        var points = new JsonArray();
        var turned = new TurnedSince(ledger, new Lazy<Aeroplane>(() => new(airframe)));
        var speaking = FlownTrims.WithoutPutRight([.. ledger.Entries.Where(entry => counts(entry) && turned.Since(entry.Sequence) is not null)], assumed);
        foreach (var entry in speaking)
            foreach (var point in TestPointsOf(entry.Fact, airframe, assumed)) points.Add(Moved(point, turned.Since(entry.Sequence)!));

        var request = new JsonObject
        {
            ["airframe"] = JsonNode.Parse(onFile.Json),
            ["straightBefore"] = state.Report?.StraightBefore,
            ["fuelAndSeatsMeasured"] = state.IsOnRecord(Entries.Prerequisite.FuelAndSeats),
            ["events"] = Events(ledger, turned, inDoubt),
            ["testPoints"] = points,
            ["groundChecks"] = GroundChecks(ledger, new(turned), inDoubt),
        };
        FlownTrims.Into(request, speaking);
        // How the trims stood on the reported flight says nothing of a later one.
        if (ledger.Entries.Where(counts).All(entry => entry.Fact is not IFlown) && ledger.Entries.Where(counts).Any(entry => entry.Fact is Reported))
            AsSetWords.Into(request, state.Report?.AsSet, assumed);
        if (lessons is { Count: > 0 }) request["earlierCorrections"] = new JsonArray([.. lessons.Select(Lesson)]);
        if (Settings(state) is { } settings) request["settings"] = settings;
        LeaveAside("testPoints", "A test point", request, assumed);
        LeaveAside("groundChecks", "A ground check", request, assumed);
        return new(request.ToJsonString(Indented), assumed);
    }

    // People may record what no instrument of this aircraft can show; the rest of the evidence still counts.
    static void LeaveAside(string list, string what, JsonObject request, List<string> assumed)
    {
        var items = request[list]!.AsArray();
        var faulty = ContractReader.ReadRequest(request.ToJsonString()).Faults
            .Select(fault => (Index: Enumerable.Range(0, items.Count).FirstOrDefault(i => fault.Path.StartsWith($"$.{list}[{i}]", StringComparison.Ordinal), -1), Fault: fault))
            .Where(found => found.Index >= 0)
            .GroupBy(found => found.Index)
            .OrderByDescending(item => item.Key);
        foreach (var item in faulty)
        {
            items.RemoveAt(item.Key);
            assumed.AddRange(item.Select(found => $"{what} was left aside: {found.Fault.Path.Split('.')[^1]} is {found.Fault.Seen ?? "not given"}; wanted {found.Fault.Wanted}."));
        }
    }

    static JsonObject Lesson(EarlierCorrection lesson) => new()
    {
        ["control"] = Wire.Word(lesson.Control),
        ["modelledDegPerS"] = lesson.ModelledDegPerS,
        ["measuredDegPerS"] = lesson.MeasuredDegPerS,
        ["sdDegPerS"] = lesson.SdDegPerS,
        ["sameAeroplane"] = lesson.SameAeroplane,
    };

    static int LastWork(Ledger ledger) => ledger.Entries.LastOrDefault(entry => entry.Fact is WorkDone)?.Sequence ?? 0;

    static JsonNode Moved(JsonNode point, IReadOnlyList<KnownChange> changes)
    {
        JsonNode[] moved = [.. changes.Where(change => change.Amplitude != 0).Select(change => new JsonObject { ["cause"] = Wire.Word(change.Cause), ["amplitude"] = change.Amplitude })];
        if (moved.Length > 0) point["movedSince"] = new JsonArray(moved);
        return point;
    }

    static IEnumerable<JsonNode> TestPointsOf(Fact fact, Airframe airframe, List<string> assumed) => fact switch
    {
        Reported report => ReportedPoint.Of(report, airframe, assumed) is { } reported ? [reported] : [],
        IFlown flown => Parse(flown.TestPoints),
        _ => [],
    };

    static IEnumerable<JsonNode> Parse(string testPoints) =>
        JsonNode.Parse(testPoints) is JsonArray array ? array.OfType<JsonNode>().Select(node => node.DeepClone()) : [];

    static JsonArray Events(Ledger ledger, TurnedSince turned, bool inDoubt)
    {
        var report = ledger.State.Report;
        var calls = ledger.Entries.Select(entry => entry.Fact).OfType<Called>().ToList();
        var words = (report?.Happened ?? []).Concat(calls.SelectMany(call => call.Happened ?? [])).Select(happening => Wire.Word(happening))
            .Concat((report?.RedFlags ?? []).Concat(calls.SelectMany(call => call.RedFlags ?? [])).Select(flag => Wire.Word(EventOf(flag))));
        if (inDoubt) words = words.Append(Wire.Word(EventKind.DamageSuspected));
        var inVain = (report?.WithoutEffect ?? []).Select(WithoutEffect.MeantFor).Concat(WithoutEffect.Of(ledger, turned))
            .Select(cause => $"{Wire.Word(EventKind.CorrectionWithoutEffect)}:{Wire.Word(cause)}");
        return [.. words.Concat(inVain).Distinct().Select(word => JsonValue.Create(word))];
    }

    static EventKind EventOf(RedFlag flag) => flag switch
    {
        RedFlag.SuddenOnset or RedFlag.Bang or RedFlag.StuckOrSplitFlap => EventKind.SuddenOnset,
        RedFlag.FullOrNearlyFullControl or RedFlag.BothHands => EventKind.FullControl,
        RedFlag.FirstFlightAfterAssembly => EventKind.FirstFlightAfterAssembly,
        RedFlag.UnexplainedRecurrence => EventKind.UnexplainedRecurrence,
        RedFlag.Damage => EventKind.DamageSuspected,
        RedFlag.ControlJammed => EventKind.ControlJammed,
        _ => throw new ArgumentOutOfRangeException(nameof(flag)),
    };

    static JsonObject? Settings(SquawkState state)
    {
        var settings = new JsonObject();
        if (state.Settings is { } angles)
        {
            if (Both(angles.LeftFrontDeg, angles.LeftRearDeg) is { } left) settings["leftEccentricDeg"] = left;
            if (Both(angles.RightFrontDeg, angles.RightRearDeg) is { } right) settings["rightEccentricDeg"] = right;
        }
        foreach (var (control, field) in ((Control, string)[])
            [(Control.LeftStrutFork, "leftStrutForkTurns"), (Control.RightStrutFork, "rightStrutForkTurns"), (Control.LeftFlapRod, "leftFlapRodTurns"), (Control.RightFlapRod, "rightFlapRodTurns")])
            if (state.Adjusters.TryGetValue(control, out var turns)) settings[field] = turns;
        return settings.Count > 0 ? settings : null;
    }

    static JsonNode? Both(double? front, double? rear) => (front, rear) switch
    {
        ({ } f, { } r) when f == r => JsonValue.Create(f),
        ({ } f, { } r) => new JsonObject { ["front"] = f, ["rear"] = r },
        _ => null,
    };

    // The latest of each check counts, as far as no work since overtook it; a clear look for damage only as long as nothing was reported after it.
    static JsonArray GroundChecks(Ledger ledger, CheckedSince since, bool inDoubt) =>
    [
        .. ledger.Entries
            .Where(e => e.Fact is GroundChecked { NotApplicableReason: null } && !(inDoubt && e.Fact is GroundChecked { Check: Check.DamageInspection, Clear: true }))
            .SelectMany(e => ByItself((GroundChecked)e.Fact).Select(check => since.Now(check, e.Sequence)))
            .OfType<GroundChecked>()
            .GroupBy(check => (check.Check, check.Cable, check.Side))
            .Select(group => GroundCheckOf(group.Last()))
            .OfType<JsonObject>(),
    ];

    /// <summary>A survey speaks of the panels and of the tips.</summary>
    static IEnumerable<GroundChecked> ByItself(GroundChecked check) => check.TipValue is not { } tip ? [check]
        : [check, check with { Check = Check.TipIncidenceDifference, Value = tip, Sd = check.TipSd }];

    static JsonObject? GroundCheckOf(GroundChecked check)
    {
        var kind = Wire.Word(check.Check);
        JsonObject? json = check switch
        {
            { Check: Check.DamageInspection or Check.ContourSurvey, Clear: { } clear } => new() { ["kind"] = kind, ["clear"] = clear },
            { Check: Check.FuelAndSeats or Check.ControlTravel } or { Value: null } => null,
            { Check: Check.BallOffset } => new() { ["kind"] = kind, ["widths"] = check.Value, ["sd"] = check.Sd },
            { Check: Check.ControlFriction } => new() { ["kind"] = kind, ["n"] = check.Value, ["sd"] = check.Sd },
            { Check: Check.CableTension, Cable: { } cable, TemperatureC: { } degC } => new() { ["kind"] = kind, ["cable"] = cable, ["n"] = check.Value, ["degC"] = degC, ["sd"] = check.Sd },
            { Check: Check.AileronTab, Side: { } side } => new() { ["kind"] = kind, ["side"] = Wire.Word(side), ["deg"] = check.Value, ["sdDeg"] = check.Sd },
            { Check: Check.AileronTab or Check.CableTension } => null,
            _ => new() { ["kind"] = kind, ["deg"] = check.Value, ["sdDeg"] = check.Sd },
        };
        foreach (var missing in json?.Where(pair => pair.Value is null).Select(pair => pair.Key).ToList() ?? []) json!.Remove(missing);
        return json;
    }
}
