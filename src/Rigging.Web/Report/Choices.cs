using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>The answers on the report form. The rates behind "barely" and "briskly" are said as what a pilot sees: 15° of bank.</summary>
static class Choices
{
    public const string FlapOther = "other";

    static readonly Choice DoNotKnow = new("", "Not sure", null, false, Pictures.Unknown);

    /// <summary>The fields that stand in the folded part for numbers.</summary>
    public static readonly string[] Numbers = ["casKt", "pressureAltitudeFt", "powerPercent", "flapOtherDeg", "ball", "bankSide", "bankDeg", "bankAfterS", "asSet", "seatLeftKg", "seatRightKg"];

    public static readonly Choice[] RollsTo =
    [
        Of(Side.Left, "Left", Pictures.Rolls(Side.Left)),
        Of(Side.Right, "Right", Pictures.Rolls(Side.Right)),
        Of(Side.None, "It does not roll", Pictures.Rolls(Side.None)),
        Of(Side.NotRecorded, "I cannot say", Pictures.Unknown),
    ];

    // Half a degree and three degrees a second: common practice, no source.
    public static readonly Choice[] Strength =
    [
        Of(RollStrength.Barely, "Barely", Pictures.Strength(RollStrength.Barely), "Half a minute or more."),
        Of(RollStrength.Slowly, "Slowly", Pictures.Strength(RollStrength.Slowly), "Five seconds to half a minute."),
        Of(RollStrength.Briskly, "Briskly", Pictures.Strength(RollStrength.Briskly), "Less than five seconds."),
        DoNotKnow,
    ];

    /// <summary>Hands and feet are one thing a pilot does, so they are one answer.</summary>
    public static readonly IReadOnlyList<(string Value, Hands Hands, Feet Feet, string Label)> Doings =
    [
        ("let-go", Hands.Released, Feet.Off, "Hands off, feet off"),
        ("let-go-ball", Hands.Released, Feet.BallCentred, "Hands off, feet kept the ball centred"),
        ("let-go-pedals", Hands.Released, Feet.OnPedals, "Hands off, feet just resting"),
        ("neutral", Hands.HeldNeutral, Feet.BallCentred, "Wheel held still, straight; ball centred"),
        ("held", Hands.HoldingLevel, Feet.Off, "Held it level, feet off"),
        ("held-ball", Hands.HoldingLevel, Feet.BallCentred, "Held it level, ball centred"),
    ];

    public static readonly Choice[] Doing = [.. Doings.Select(doing => new Choice(doing.Value, doing.Label, null, false, Pictures.Doing(doing.Hands, doing.Feet))), DoNotKnow];

    public static readonly Choice[] Flap =
    [
        .. ((int[])[0, 10, 20, 30, 40]).Select(deg => new Choice(deg.ToString(System.Globalization.CultureInfo.InvariantCulture), deg == 0 ? "Up" : $"{deg}°", null, false, Pictures.Flap(deg))),
        DoNotKnow,
    ];

    public static readonly Choice[] RedFlags =
    [
        new(ReportForm.NoRedFlag, "None of these"),
        .. Enum.GetValues<RedFlag>().Select(flag => Of(flag, Words.Capital(Words.Of(flag)))),
    ];

    public static readonly Choice[] Seats =
    [
        Of(Aboard.AloneLeft, "Alone, left seat", Pictures.Seats(Aboard.AloneLeft)),
        Of(Aboard.TwoUp, "Two in front", Pictures.Seats(Aboard.TwoUp)),
        Of(Aboard.AloneRight, "Alone, right seat", Pictures.Seats(Aboard.AloneRight)),
        Of(Aboard.MoreThanTwo, "More", Pictures.Seats(Aboard.MoreThanTwo)),
    ];

    public static readonly Choice[] FuelMethod =
    [
        Of(Squawks.Entries.FuelMethod.NotKnown, "Not known"),
        Of(Squawks.Entries.FuelMethod.Dip, "Dipped"),
        Of(Squawks.Entries.FuelMethod.Totaliser, "Totaliser"),
        Of(Squawks.Entries.FuelMethod.Gauge, "Off the gauges"),
    ];

    public static readonly Choice[] FuelUnit = [new("gal", "US gallons"), new("l", "Litres"), new(ReportForm.OfATank, "Of a full tank")];

    public static readonly Choice[] SeatUnit = [new("lb", "Pounds"), new("kg", "Kilograms")];

    public static readonly Choice[] SpeedUnit = [new("kt", "Knots"), new("mph", "Miles an hour")];

    public static readonly Choice[] Since =
    [
        new("First noticed on this flight", "This flight"),
        new("A few days", "A few days"),
        new("Some weeks", "Some weeks"),
        new("As long as the pilot knows it", "Always, for me"),
        new("The pilot does not know", "I do not know"),
    ];

    /// <summary>Work that is on record here comes first, so that nobody has to type it.</summary>
    public static IReadOnlyList<Choice> LastWork(Lately? lately) =>
    [
        .. (lately?.Disturbed ?? []).Take(2).Select(work => new Choice($"S-{work.Squawk}: {string.Join(", ", work.Items)} ({work.On:uuuu-MM-dd})", $"Rigging work {work.Day} (S-{work.Squawk})")),
        new("Nothing that the pilot knows of", "Nothing I know of"),
        new("An inspection", "An inspection"),
        new("Rigging or control work", "Rigging or controls"),
        new("A repair, or parts changed", "A repair or new parts"),
        new("Paint", "Paint"),
        new("The pilot does not know", "I do not know"),
    ];

    public static readonly Choice[] StraightBefore = [new("yes", "Yes"), new("no", "No"), new("unknown", "I do not know")];

    public static readonly Choice[] Happened = [.. Enum.GetValues<Happening>().Select(happening => Of(happening, Words.Capital(Words.Of(happening))))];

    /// <summary>Where the ball lay; the value is its place in widths, right positive.</summary>
    public static readonly Choice[] Ball =
    [
        .. ((double[])[-1.5, -1, -0.5, 0, 0.5, 1, 1.5]).Select(widths => new Choice(widths.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), BallWords(widths), null, false, Pictures.Ball(widths))),
        new("", "Not looked at"),
    ];

    public static readonly Choice[] BankSide = [Of(Side.Left, "Left"), Of(Side.Right, "Right"), new("", "Not timed")];

    static string BallWords(double widths) => widths == 0 ? "Centred" : $"{(Math.Abs(widths) switch { 0.5 => "½", 1 => "1", _ => "1½" })} {(widths < 0 ? "left" : "right")}";

    static Choice Of<T>(T value, string label, Drawings.Drawing? picture = null, string? help = null) where T : struct, Enum => new(value.ToString(), label, help, false, picture);
}
