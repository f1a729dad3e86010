using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <summary>The answers on the report form. The rates behind "barely" and "briskly" are said as what a pilot sees: 15° of bank.</summary>
static class Choices
{
    public const string FlapOther = "other";

    /// <summary>For a report that cannot leave the phone yet.</summary>
    public static string ScriptWords => Look.ScriptWords.Of(("kept", Say.UnsentKept), ("notKept", Say.UnsentNotKept), ("wantsPin", Say.UnsentWantsPin), ("goesNow", Say.UnsentGoesNow));

    static Choice DoNotKnow => new("", Say.NotSure, null, false, Pictures.Unknown);

    /// <summary>The fields that stand in the folded part for numbers.</summary>
    public static readonly string[] Numbers = ["casKt", "pressureAltitudeFt", "powerPercent", "flapOtherDeg", "ball", "bankSide", "bankDeg", "bankAfterS", "asSet", "seatLeftKg", "seatRightKg"];

    public static Choice[] RollsTo =>
    [
        Of(Side.Left, Say.Left, Pictures.Rolls(Side.Left)),
        Of(Side.Right, Say.Right, Pictures.Rolls(Side.Right)),
        Of(Side.None, Say.DoesNotRoll, Pictures.Rolls(Side.None)),
        Of(Side.NotRecorded, Say.CannotSay, Pictures.Unknown),
    ];

    // Half a degree and three degrees a second: common practice, no source.
    public static Choice[] Strength =>
    [
        Of(RollStrength.Barely, Say.Barely, Pictures.Strength(RollStrength.Barely), Say.BarelyHelp),
        Of(RollStrength.Slowly, Say.Slowly, Pictures.Strength(RollStrength.Slowly), Say.SlowlyHelp),
        Of(RollStrength.Briskly, Say.Briskly, Pictures.Strength(RollStrength.Briskly), Say.BrisklyHelp),
        DoNotKnow,
    ];

    /// <summary>Hands and feet are one thing a pilot does, so they are one answer.</summary>
    public static IReadOnlyList<(string Value, Hands Hands, Feet Feet, string Label)> Doings =>
    [
        ("let-go", Hands.Released, Feet.Off, Say.LetGo),
        ("let-go-ball", Hands.Released, Feet.BallCentred, Say.LetGoBall),
        ("let-go-pedals", Hands.Released, Feet.OnPedals, Say.LetGoPedals),
        ("neutral", Hands.HeldNeutral, Feet.BallCentred, Say.HeldNeutral),
        ("held", Hands.HoldingLevel, Feet.Off, Say.HeldLevel),
        ("held-ball", Hands.HoldingLevel, Feet.BallCentred, Say.HeldLevelBall),
    ];

    public static Choice[] Doing => [.. Doings.Select(doing => new Choice(doing.Value, doing.Label, null, false, Pictures.Doing(doing.Hands, doing.Feet))), DoNotKnow];

    public static Choice[] Flap =>
    [
        .. ((int[])[0, 10, 20, 30, 40]).Select(deg => new Choice(deg.ToString(System.Globalization.CultureInfo.InvariantCulture), deg == 0 ? Say.FlapsUp : $"{deg}°", null, false, Pictures.Flap(deg))),
        DoNotKnow,
    ];

    public static IReadOnlyList<Choice> Grounding => [.. Dangers.Choices, new(ReportForm.NoRedFlag, Say.NoneOfThese)];

    public static Choice[] Seats =>
    [
        Of(Aboard.AloneLeft, Say.AloneLeft, Pictures.Seats(Aboard.AloneLeft)),
        Of(Aboard.TwoUp, Say.TwoUp, Pictures.Seats(Aboard.TwoUp)),
        Of(Aboard.AloneRight, Say.AloneRight, Pictures.Seats(Aboard.AloneRight)),
        Of(Aboard.MoreThanTwo, Say.MorePeople, Pictures.Seats(Aboard.MoreThanTwo)),
    ];

    public static Choice[] FuelMethod =>
    [
        Of(Squawks.Entries.FuelMethod.NotKnown, Say.NotKnown),
        Of(Squawks.Entries.FuelMethod.Dip, Say.Dipped),
        Of(Squawks.Entries.FuelMethod.Totaliser, Say.Totaliser),
        Of(Squawks.Entries.FuelMethod.Gauge, Say.OffTheGauges),
    ];

    public static Choice[] FuelUnit => [new("gal", Say.UsGallons), new("l", Say.Litres), new(ReportForm.OfATank, Say.OfATank)];

    public static Choice[] SeatUnit => [new("lb", Say.Pounds), new("kg", Say.Kilograms)];

    public static Choice[] SpeedUnit => [new("kt", Say.Knots), new("mph", Say.MilesAnHour)];

    public static Choice[] Since =>
    [
        new("First noticed on this flight", Say.ThisFlight),
        new("A few days", Say.FewDays),
        new("Some weeks", Say.SomeWeeks),
        new("As long as the pilot knows it", Say.AlwaysForMe),
        new("The pilot does not know", Say.DoNotKnow),
    ];

    /// <summary>Work that is on record here comes first, so that nobody has to type it.</summary>
    public static IReadOnlyList<Choice> LastWork(Lately? lately) =>
    [
        .. (lately?.Disturbed ?? []).Take(2).Select(work => new Choice($"S-{work.Squawk}: {string.Join(", ", work.Items)} ({work.On:uuuu-MM-dd})", Gaps.Fill(Say.RiggingWork, work.Day, work.Squawk))),
        new("Nothing that the pilot knows of", Say.NothingIKnow),
        new("An inspection", Say.AnInspection),
        new("Rigging or control work", Say.RiggingOrControls),
        new("A repair, or parts changed", Say.RepairOrParts),
        new("Paint", Say.Paint),
        new("The pilot does not know", Say.DoNotKnow),
    ];

    public static Choice[] StraightBefore => [new("yes", Say.Yes), new("no", Say.No), new("unknown", Say.DoNotKnow)];

    public static Choice[] Happened => [.. GroundingQuestions.History.Select(happening => Of(happening, Words.Capital(Words.Of(happening))))];

    public static Choice[] WithoutEffect => [.. Enum.GetValues<Tried>().Select(tried => Of(tried, Words.Capital(Words.Of(tried))))];

    /// <summary>Where the ball lay; the value is its place in widths, right positive.</summary>
    public static Choice[] Ball =>
    [
        .. ((double[])[-1.5, -1, -0.5, 0, 0.5, 1, 1.5]).Select(widths => new Choice(widths.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture), BallWords(widths), null, false, Pictures.Ball(widths))),
        new("", Say.NotLookedAt),
    ];

    public static Choice[] BankSide => [Of(Side.Left, Say.Left), Of(Side.Right, Say.Right), new("", Say.NotTimed)];

    static string BallWords(double widths) => widths == 0 ? Say.Centred : $"{(Math.Abs(widths) switch { 0.5 => "½", 1 => "1", _ => "1½" })} {(widths < 0 ? Say.ToTheLeft : Say.ToTheRight)}";

    static Choice Of<T>(T value, string label, Drawings.Drawing? picture = null, string? help = null) where T : struct, Enum => new(value.ToString(), label, help, false, picture);
}
