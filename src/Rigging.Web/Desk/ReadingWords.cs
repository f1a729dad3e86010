using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Desk;

/// <summary>A stored reading in words, read leniently: an old or odd one is shown as far as it can be read, and said so.</summary>
static class ReadingWords
{
    const string Unreadable = "a reading that cannot be shown here";

    /// <summary>Such as "7° left wing down after 10 s".</summary>
    public static string Of(JsonObject reading)
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

    public static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    public static string? Text(JsonNode? node) => node is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;
}
