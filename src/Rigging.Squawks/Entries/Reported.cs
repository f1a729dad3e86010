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

/// <summary>Things a pilot can see that ground an aircraft at once.</summary>
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
    IReadOnlyList<Tried>? WithoutEffect = null) : Fact;
