using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>Flights in words. Stored readings are read leniently: an old or odd one is shown as far as it can be read, and said so.</summary>
static class FlightStory
{
    const string Unreadable = "a reading that cannot be shown here";

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
        var readings = point["readings"] is JsonArray list ? list.OfType<JsonObject>().Select(ReadingOf).ToList() : [];
        var said = readings.Count == 0 ? "nothing read" : string.Join("; ", readings);
        return $"{CheckStory.Capital(manoeuvre)}, {string.Join(", ", conditions.OfType<string>())}: {said}.";
    }

    static string? Load(JsonObject load) => load["fuelL"] is JsonObject { Count: > 0 } fuel
        ? $"fuel {string.Join(", ", fuel.Select(tank => $"{tank.Key} {(Number(tank.Value) is { } litres ? $"{Words.Number(litres, 0)}{Space}L" : "not known")}"))}"
        : null;

    static string ReadingOf(JsonObject reading)
    {
        var whole = true;
        double Value(string field)
        {
            if (Number(reading[field]) is { } value) return value;
            whole = false;
            return 0;
        }

        var kind = Text(reading["kind"]) is { } word && Wire.TryRead<ReadingKind>(word, out var known) ? known : (ReadingKind?)null;
        var said = kind switch
        {
            ReadingKind.BankAfter => $"{Bank(Value("deg"))} after {Words.Number(Value("seconds"), 1)}{Space}s",
            ReadingKind.TimeToBank => $"{Words.Number(Value("seconds"), 1)}{Space}s to {Bank(Value("deg"))}",
            ReadingKind.RollRate => $"rolls {RollRate(Value("degPerS"))}",
            ReadingKind.HeadingRate => $"turns {HeadingRate(Value("degPerS"))}",
            ReadingKind.HeadingChange => $"heading {HeadingChange(Value("deg"))} after {Words.Number(Value("seconds"), 1)}{Space}s",
            ReadingKind.Ball => $"ball {Ball(Value("widths"))}",
            ReadingKind.WheelAngle => $"wheel {Wheel(Value("deg"))}",
            ReadingKind.WheelForce => $"wheel force {Words.Number(Math.Abs(Value("n")), 1)}{Space}N to the {(Value("n") < 0 ? "left" : "right")}",
            ReadingKind.FuelDifference => Value("l") == 0 ? "level with equal fuel" : $"level with {Words.Number(Math.Abs(Value("l")), 0)}{Space}L more {(Value("l") > 0 ? "right" : "left")}",
            ReadingKind.Rolls => Text(reading["side"]) is "left" or "right" ? $"rolls {Text(reading["side"])}{(Text(reading["strength"]) is { } strength ? " " + strength : "")}" : "does not roll",
            _ => Unreadable,
        };
        return whole ? said : Unreadable;
    }

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

    internal static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    internal static string? Text(JsonNode? node) => node is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;
}
