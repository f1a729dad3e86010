using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Desk;

/// <summary>A stored reading in words, read leniently: an old or odd one is shown as far as it can be read, and said so.</summary>
static class ReadingWords
{
    static string Unreadable => Say.ReadingThatCannotBeShownHere;

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
            ReadingKind.BankAfter => Gaps.Fill(Say.AfterS, Bank(Value("deg")), Words.Number(Value("seconds"), 1)),
            ReadingKind.TimeToBank => Gaps.Fill(Say.STo, Words.Number(Value("seconds"), 1), Bank(Value("deg"))),
            ReadingKind.RollRate => Gaps.Fill(Say.Rolls, RollRate(Value("degPerS"))),
            ReadingKind.HeadingRate => Gaps.Fill(Say.Turns, HeadingRate(Value("degPerS"))),
            ReadingKind.HeadingChange => Gaps.Fill(Say.HeadingAfterS, HeadingChange(Value("deg")), Words.Number(Value("seconds"), 1)),
            ReadingKind.Ball => Gaps.Fill(Say.Ball, Ball(Value("widths"))),
            ReadingKind.WheelAngle => Gaps.Fill(Say.Wheel, Wheel(Value("deg"))),
            ReadingKind.WheelForce => Gaps.Fill(Say.WheelForceNTo, Words.Number(Math.Abs(Value("n")), 1), Value("n") < 0 ? Texts.LeftInText : Texts.RightInText),
            ReadingKind.FuelDifference => Value("l") == 0 ? Say.LevelWithEqualFuel : Gaps.Fill(Say.LevelWithLMore, Words.Number(Math.Abs(Value("l")), 0), Value("l") > 0 ? Texts.RightInText : Texts.LeftInText),
            ReadingKind.Rolls => Text(reading["side"]) is "left" or "right" ? Gaps.Fill(Say.RollsInText, Text(reading["side"]), Text(reading["strength"]) is { } strength ? " " + strength : "") : Say.DoesNotRoll,
            _ => Unreadable,
        };
        return whole ? said : Unreadable;
    }

    public static double? Number(JsonNode? node) =>
        node is JsonValue value && value.GetValueKind() == JsonValueKind.Number && double.TryParse(value.ToJsonString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    public static string? Text(JsonNode? node) => node is JsonValue value && value.GetValueKind() == JsonValueKind.String ? value.GetValue<string>() : null;
}
