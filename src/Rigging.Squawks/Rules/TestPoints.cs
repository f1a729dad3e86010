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
        foreach (var fault in ContractReader.ReadRequest(request.ToJsonString()).Faults.Where(fault => fault.Path.StartsWith("$.testPoints", StringComparison.Ordinal)))
            yield return new("test-points-unreadable", $"{fault.Path["$.".Length..]}: {fault.Seen ?? "nothing"} given; wanted {fault.Wanted}.", fault.Path["$.".Length..]);
    }

    /// <summary>For each test point the seats with a weight in them; null where nothing is said of seats.</summary>
    public static IReadOnlyList<IReadOnlyList<string>?> SeatsFilled(string json) =>
        [.. (Parse(json) ?? []).Select(point => (point as JsonObject)?["load"] is JsonObject load && load["seatsKg"] is JsonObject seats
            ? (IReadOnlyList<string>)[.. seats.Where(seat => ReadingWords.Number(seat.Value) is not (null or 0)).Select(seat => seat.Key)]
            : null)];

    static JsonArray? Parse(string json) => ReadingWords.Parse(json) as JsonArray;
}
