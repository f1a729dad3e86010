using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using static Rigging.Squawks.Rules.Directions;
using static Rigging.Web.Desk.ReadingWords;

namespace Rigging.Web.Story;

/// <summary>Flights in words. Stored readings are read leniently: an old or odd one is shown as far as it can be read, and said so.</summary>
static class FlightStory
{
    public static Told Of(EvaluationFlown flown) => new($"Evaluation flight on {flown.FlownOn:uuuu-MM-dd}", [.. Points(flown.TestPoints), .. Line.Quote(flown.Remarks)]);

    public static Told Of(CheckFlown flown) => new($"Check flight on {flown.FlownOn:uuuu-MM-dd}",
    [
        flown.Satisfactory ? new("Satisfactory: safe to carry passengers.", Tone.Good) : new Line("Not satisfactory.", Tone.Stop),
        $"{Words.Number(flown.DurationH, 1)}{Space}h, {(flown.SecondCrewDuty is { } duty ? $"second crew member: {duty}" : "alone")}; no passengers, no students.",
        .. Points(flown.TestPoints),
        flown.FuelMeasured ? "Fuel on each side was measured." : new Line("Fuel on each side was not measured.", Tone.Missing),
        flown.StallsFlown ? "The stall was flown and compared with the baseline." : $"Stall not flown, because: {flown.StallsNotFlownBecause ?? "not needed after this work"}",
        flown.EveryFlapSetting ? "Each flap setting was flown." : $"Not every flap setting was flown, because: {flown.FlapsNotFlownBecause ?? "not needed after this work"}",
        .. Line.Quote(flown.Remarks),
    ]);

    /// <summary>A line for each test point.</summary>
    static IEnumerable<Line> Points(string json)
    {
        if (Parse(json) is not JsonArray points) return [new("The readings cannot be read.", Tone.Missing)];
        return points.Count == 0 ? [new("No readings were taken.", Tone.Missing)] : points.OfType<JsonObject>().Select(point => (Line)PointOf(point));
    }

    static string PointOf(JsonObject point)
    {
        var manoeuvre = Text(point["manoeuvre"]) is { } word && Wire.TryRead<Manoeuvre>(word, out var known) ? Words.Of(known) : "manoeuvre not recorded";
        string?[] conditions =
        [
            Number(point["casKt"]) is { } kt ? $"{Words.Number(kt, 0)}{Space}kt" : null,
            Number(point["pressureAltitudeFt"]) is { } ft ? $"{Words.Number(ft, 0)}{Space}ft" : null,
            Number(point["powerPercent"]) is { } power ? $"power {Words.Number(power, 0)}{Space}%" : null,
            Number(point["flapDeg"]) is { } flap and not 0 ? $"flap {Words.Number(flap, 0)}°" : null,
            point["load"] is JsonObject load ? Load(load) : null,
        ];
        var readings = point["readings"] is JsonArray list ? list.OfType<JsonObject>().Select(ReadingWords.Of).ToList() : [];
        var said = readings.Count == 0 ? "nothing read" : string.Join("; ", readings);
        return $"{Words.Capital(manoeuvre)}, {string.Join(", ", conditions.OfType<string>())}: {said}.";
    }

    static string? Load(JsonObject load) => load["fuelL"] is JsonObject { Count: > 0 } fuel
        ? $"fuel {string.Join(", ", fuel.Select(tank => $"{tank.Key} {(Number(tank.Value) is { } litres ? $"{Words.Number(litres, 0)}{Space}L" : "not known")}"))}"
        : null;

    internal static JsonNode? Parse(string json)
    {
        try
        {
            return JsonNode.Parse(json);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
