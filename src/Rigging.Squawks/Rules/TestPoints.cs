using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;

namespace Rigging.Squawks.Rules;

/// <summary>Test points arrive in the form of the assessment endpoint and are read by its reader, loads against the aircraft's own tanks and seats.</summary>
static class TestPoints
{
    public static IEnumerable<BrokenRule> Of(string json, Facts facts)
    {
        if (Parse(json) is not { } points)
        {
            yield return new("test-points-unreadable", "The readings are not a list of test points.", "testPoints");
            yield break;
        }
        if (points.Count == 0) yield break;
        if (facts.Airframe is not { } airframe)
        {
            yield return new("airframe-data-missing", "This aircraft has no airframe data on file, so its tanks and seats are not known. The maintenance office can enter it.", "testPoints");
            yield break;
        }
        var request = new JsonObject { ["airframe"] = JsonNode.Parse(airframe.Json), ["testPoints"] = points };
        var faults = ContractReader.ReadRequest(request.ToJsonString()).Faults.Where(fault => fault.Path.StartsWith("$.testPoints", StringComparison.Ordinal)).ToList();
        foreach (var fault in faults)
            yield return new("test-points-unreadable", $"{fault.Path["$.".Length..]}: {fault.Seen ?? "nothing"} given; wanted {fault.Wanted}.", fault.Path["$.".Length..]);
        // What could not be read is not held against the aircraft as well.
        if (faults.Count > 0) yield break;
        var onFile = airframe.Read();
        for (var i = 0; i < points.Count; i++)
            foreach (var rule in Beyond(points[i]!.AsObject(), $"testPoints[{i}]", onFile)) yield return rule;
    }

    static IEnumerable<BrokenRule> Beyond(JsonObject point, string path, Airframe airframe)
    {
        if (FlyingLimits.Speed(ReadingWords.Number(point["casKt"]), ReadingWords.Number(point["flapDeg"]), airframe) is { } speed) yield return Refused($"{path}.casKt", speed);
        var readings = point["readings"]!.AsArray();
        for (var i = 0; i < readings.Count; i++)
            if (ReadingWords.Text(readings[i]!["kind"]) is "bank-after" or "time-to-bank" && FlyingLimits.Bank(ReadingWords.Number(readings[i]!["deg"])) is { } bank)
                yield return Refused($"{path}.readings[{i}].deg", bank);
    }

    static BrokenRule Refused(string path, FlyingLimits.Beyond beyond) => new("value-out-of-range", $"{path}: {beyond.Seen} given; wanted {beyond.Wanted}.", path);

    /// <summary>For each test point the seats with a weight in them; null where nothing is said of seats.</summary>
    public static IReadOnlyList<IReadOnlyList<string>?> SeatsFilled(string json) =>
        [.. (Parse(json) ?? []).Select(point => (point as JsonObject)?["load"] is JsonObject load && load["seatsKg"] is JsonObject seats
            ? (IReadOnlyList<string>)[.. seats.Where(seat => ReadingWords.Number(seat.Value) is not (null or 0)).Select(seat => seat.Key)]
            : null)];

    static JsonArray? Parse(string json) => ReadingWords.Parse(json) as JsonArray;
}
