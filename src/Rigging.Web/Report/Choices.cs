using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>The answers on the report form. The rates behind "barely" and "briskly" are said as what a pilot sees: 15° of bank.</summary>
static class Choices
{
    static readonly Choice DoNotKnow = new("", "Not recorded");

    /// <summary>The fields that stand in the folded part.</summary>
    public static readonly string[] Numbers = ["casKt", "pressureAltitudeFt", "powerPercent", "flapDeg", "ballSide", "ballWidths", "bankSide", "bankDeg", "bankAfterS"];

    public static readonly Choice[] RollsTo =
        [Of(Side.Left, "Left"), Of(Side.Right, "Right"), Of(Side.None, "It does not roll"), Of(Side.NotRecorded, "I cannot say")];

    // Half a degree and three degrees a second: common practice, no source.
    public static readonly Choice[] Strength =
    [
        Of(RollStrength.Barely, "Barely", "Half a minute or more to 15° of bank."),
        Of(RollStrength.Slowly, "Slowly", "Five seconds to half a minute."),
        Of(RollStrength.Briskly, "Briskly", "Less than five seconds."),
        DoNotKnow,
    ];

    public static readonly Choice[] Hands =
    [
        Of(Squawks.Entries.Hands.Released, "Off the wheel or stick"),
        Of(Squawks.Entries.Hands.HeldNeutral, "Holding the wheel still at its neutral"),
        Of(Squawks.Entries.Hands.HoldingLevel, "Holding it level against the roll"),
        DoNotKnow,
    ];

    public static readonly Choice[] Feet =
    [
        Of(Squawks.Entries.Feet.BallCentred, "Keeping the ball centred"),
        Of(Squawks.Entries.Feet.Off, "Off the pedals"),
        Of(Squawks.Entries.Feet.OnPedals, "On the pedals, the ball not watched"),
        DoNotKnow,
    ];

    public static readonly Choice[] RedFlags =
    [
        .. Enum.GetValues<RedFlag>().Select(flag => Of(flag, Capital(Words.Of(flag)))),
        new(ReportForm.NoRedFlag, "None of these"),
    ];

    public static readonly Choice[] FuelMethod =
    [
        Of(Squawks.Entries.FuelMethod.Dip, "Dipped"),
        Of(Squawks.Entries.FuelMethod.Totaliser, "Totaliser"),
        Of(Squawks.Entries.FuelMethod.Gauge, "Off the gauges"),
        Of(Squawks.Entries.FuelMethod.NotKnown, "Not known"),
    ];

    public static readonly Choice[] FuelUnit = [new("gal", "US gallons"), new("l", "Litres")];

    public static readonly Choice[] SeatUnit = [new("lb", "Pounds"), new("kg", "Kilograms")];

    public static readonly Choice[] StraightBefore = [new("yes", "Yes"), new("no", "No"), new("unknown", "I do not know")];

    public static readonly Choice[] Happened = [.. Enum.GetValues<Happening>().Select(happening => Of(happening, Capital(Words.Of(happening))))];

    public static readonly Choice[] BallSide = [Of(Side.Left, "Left"), Of(Side.None, "Centred"), Of(Side.Right, "Right"), DoNotKnow];

    public static readonly Choice[] BankSide = [Of(Side.Left, "Left"), Of(Side.Right, "Right"), DoNotKnow];

    static Choice Of<T>(T value, string label, string? help = null) where T : struct, Enum => new(value.ToString(), label, help);

    static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
