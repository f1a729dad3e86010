using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

public enum Side { NotRecorded, Left, Right, None }

public enum RollStrength { NotRecorded, Barely, Slowly, Briskly }

public enum Hands { NotRecorded, Released, HeldNeutral, HoldingLevel }

public enum Feet { NotRecorded, Off, BallCentred, OnPedals }

public enum FuelMethod { NotKnown, Gauge, Dip, Totaliser }

/// <summary>Who sat in the front seats, for a report in which nobody was weighed.</summary>
public enum Aboard { AloneLeft, AloneRight, TwoUp, MoreThanTwo }

/// <summary>A picture kept beside the ledger; its hash stands in the entry, so that it cannot be exchanged.</summary>
/// <param name="Sha256">Lower-case hexadecimal.</param>
public sealed record Photo(string Sha256);

/// <summary>Things a pilot can see that ground an aircraft at once. The grounding questions are these and the happenings that <see cref="GroundingQuestions"/> names.</summary>
public enum RedFlag
{
    SuddenOnset,
    Bang,
    FullOrNearlyFullControl,
    BothHands,
    StuckOrSplitFlap,
    FirstFlightAfterAssembly,
    UnexplainedRecurrence,
    Damage,
    ControlJammed,
}

/// <summary>What was done to the aircraft, or happened to it, since it last flew straight. Often the best clue.</summary>
public enum Happening
{
    HardLanding,
    GroundStrike,
    WingRemoved,
    WingReplaced,
    Repaint,
    ControlReplaced,
    CablesAdjusted,
    FlapOverspeed,
    StormParking,
    Repair,
}

/// <summary>The dangers that are asked first, of whoever reports and of whoever makes the call: each grounds until a damage inspection is recorded clear.</summary>
public static class GroundingQuestions
{
    /// <summary>Where something may be bent, or put together wrong.</summary>
    public static IReadOnlyList<Happening> Happenings { get; } =
    [
        Happening.HardLanding, Happening.GroundStrike, Happening.FlapOverspeed, Happening.Repair, Happening.WingRemoved, Happening.WingReplaced, Happening.ControlReplaced,
    ];

    /// <summary>The rest of what may have happened: history, and no danger by itself.</summary>
    public static IReadOnlyList<Happening> History { get; } = [.. Enum.GetValues<Happening>().Except(Happenings)];

    public static bool Grounds(Reported report) => Raised(report.RedFlags, report.Happened).Any();

    /// <summary>The pilot's words; where there are none, what was ticked.</summary>
    public static string Complaint(Reported report) =>
        string.IsNullOrWhiteSpace(report.Words) ? Rules.Words.Capital(string.Join("; ", Raised(report.RedFlags, report.Happened))) : report.Words;

    /// <summary>What was answered with yes, in the trade's words.</summary>
    public static IEnumerable<string> Raised(IReadOnlyList<RedFlag>? flags, IReadOnlyList<Happening>? happened) =>
        [.. (flags ?? []).Select(Rules.Words.Of), .. (happened ?? []).Intersect(Happenings).Select(Rules.Words.Of)];
}

/// <summary>What was set otherwise because of it already, and changed nothing.</summary>
public enum Tried { Incidence, Flaps, Ailerons, AileronTab, RudderTab }

/// <summary>The pilot's report: the words kept as they are, and whatever numbers there were. Null is "not recorded", never zero.</summary>
/// <param name="Number">The squawk's number at this school.</param>
/// <param name="RollsTo">Which way it rolls, left to itself.</param>
/// <param name="CasKt">Indicated airspeed, knots.</param>
/// <param name="BallWidths">Slip ball, widths, right of centre positive.</param>
/// <param name="Aboard">Null when not recorded.</param>
/// <param name="AsSet">Trims, power and autopilot as the pilot set or read them, in the pilot's own words and units.</param>
/// <param name="Photos">Null when there are none.</param>
/// <param name="WithoutEffect">Null when nothing was tried, or nobody says.</param>
/// <param name="Unread">What was typed and could not be read, as typed: a report that grounds is filed all the same. Null when there is none.</param>
/// <param name="BankDeg">Bank reached after <paramref name="BankAfterS"/> seconds, right wing down positive.</param>
public sealed record Reported(
    int Number,
    AircraftId Aircraft,
    string Words,
    Side RollsTo,
    RollStrength Strength,
    Hands Hands,
    Feet Feet,
    double? CasKt,
    double? PressureAltitudeFt,
    double? PowerPercent,
    double? FlapDeg,
    double? BallWidths,
    double? BankDeg,
    double? BankAfterS,
    double? FuelLeftL,
    double? FuelRightL,
    FuelMethod FuelMethod,
    double? SeatLeftKg,
    double? SeatRightKg,
    string? SinceWhen,
    string? LastWork,
    bool? StraightBefore,
    IReadOnlyList<Happening> Happened,
    IReadOnlyList<RedFlag> RedFlags,
    Aboard? Aboard = null,
    string? AsSet = null,
    IReadOnlyList<Photo>? Photos = null,
    IReadOnlyList<Tried>? WithoutEffect = null,
    IReadOnlyList<string>? Unread = null) : Fact;
