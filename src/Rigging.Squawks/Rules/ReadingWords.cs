using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Squawks.Rules;

/// <summary>Stored readings in words, for screen, paper and the text above a signature. Read leniently: an old or odd one is said as far as it can be read, and that it cannot.</summary>
public static class ReadingWords
{
    const string Unreadable = "a reading that cannot be shown here";

    /// <summary>A sentence for each test point of a flight, with everything that stands in it.</summary>
    /// <param name="testPoints">JSON array of test points in the form of the assessment endpoint.</param>
    public static IReadOnlyList<string> Points(string testPoints) => Parse(testPoints) switch
    {
        JsonArray { Count: > 0 } points => [.. points.OfType<JsonObject>().Select(Point)],
        JsonArray => ["No readings were taken."],
        _ => ["The readings cannot be read."],
    };

    static string Point(JsonObject point)
    {
        var manoeuvre = Text(point["manoeuvre"]) is { } word && Wire.TryRead<Manoeuvre>(word, out var known) ? Words.Of(known) : "manoeuvre not recorded";
        string?[] conditions =
        [
            Amount(point["casKt"], $"{Space}kt"),
            Amount(point["pressureAltitudeFt"], $"{Space}ft"),
            Amount(point["powerPercent"], $"{Space}%") is { } power ? $"power {power}" : null,
            Number(point["flapDeg"]) is { } flap ? flap == 0 ? "flaps up" : $"flap {Words.Number(flap)}°" : null,
            Amount(point["oatC"], $"{Space}°C") is { } oat ? $"{oat} outside" : null,
            Text(point["air"]) is { } air ? $"{air} air" : null,
            Text(point["lastInput"]) is { } last ? $"wheel last turned {last}" : null,
            Number(point["repeat"]) is { } repeat ? $"repeat {Words.Number(repeat)}" : null,
            .. point["load"] is JsonObject load ? Load(load) : [],
        ];
        var readings = point["readings"] is JsonArray list ? list.OfType<JsonObject>().Select(WithMethod).ToList() : [];
        return $"{Words.Capital(manoeuvre)}, {string.Join(", ", conditions.OfType<string>())}: {(readings.Count == 0 ? "nothing read" : string.Join("; ", readings))}.";
    }

    static IEnumerable<string> Load(JsonObject load)
    {
        if (Carried(load["seatsKg"], "kg") is { } seats) yield return $"seats {seats}";
        if (Carried(load["baggageKg"], "kg") is { } baggage) yield return $"baggage {baggage}";
        if (Carried(load["fuelL"], "L") is { } fuel) yield return $"fuel {fuel}";
        if (Amount(load["fuelKgPerL"], $"{Space}kg/L") is { } density) yield return $"fuel of {density}";
    }

    static string? Carried(JsonNode? amounts, string unit) => amounts is JsonObject { Count: > 0 } named
        ? string.Join(", ", named.Select(place => $"{place.Key} {Amount(place.Value, Space + unit) ?? "not known"}"))
        : null;

    static string WithMethod(JsonObject reading)
    {
        var how = Text(reading["method"]) is { } method && Wire.TryRead<ReadingMethod>(method, out var known) ? Words.Of(known) : null;
        var sd = Number(reading["sd"]) is { } error ? $"±{Words.Number(error)}" : null;
        return (how, sd) switch
        {
            (null, null) => Of(reading),
            _ => $"{Of(reading)} ({string.Join(", ", ((string?[])[how, sd]).OfType<string>())})",
        };
    }

    /// <summary>Such as "7° left wing down after 10 s".</summary>
    public static string Of(JsonObject reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
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
            ReadingKind.BankAfter => $"{Bank(Value("deg"))} after {Words.Number(Value("seconds"))}{Space}s",
            ReadingKind.TimeToBank => $"{Words.Number(Value("seconds"))}{Space}s to {Bank(Value("deg"))}",
            ReadingKind.RollRate => $"rolls {RollRate(Value("degPerS"))}",
            ReadingKind.HeadingRate => $"turns {HeadingRate(Value("degPerS"))}",
            ReadingKind.HeadingChange => $"heading {HeadingChange(Value("deg"))} after {Words.Number(Value("seconds"))}{Space}s",
            ReadingKind.Ball => $"ball {Ball(Value("widths"))}",
            ReadingKind.WheelAngle => $"wheel {Wheel(Value("deg"))}",
            ReadingKind.WheelForce => $"wheel force {Words.Number(Math.Abs(Value("n")))}{Space}N to the {(Value("n") < 0 ? "left" : "right")}",
            ReadingKind.FuelDifference => Value("l") == 0 ? "level with equal fuel" : $"level with {Words.Number(Math.Abs(Value("l")))}{Space}L more {(Value("l") > 0 ? "right" : "left")}",
            ReadingKind.Rolls => Text(reading["side"]) is "left" or "right" ? $"rolls {Text(reading["side"])}{(Text(reading["strength"]) is { } strength ? " " + strength : "")}" : "does not roll",
            _ => Unreadable,
        };
        return whole ? said : Unreadable;
    }

    static string? Amount(JsonNode? node, string unit) => Number(node) is { } number ? Words.Number(number) + unit : null;

    public static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    public static string? Text(JsonNode? node) => node is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;

    /// <summary>Null when the text is no JSON.</summary>
    public static JsonNode? Parse(string json)
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
