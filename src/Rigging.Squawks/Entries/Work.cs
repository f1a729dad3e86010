using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Entries;

/// <summary>Work begins: from here on the aircraft does not fly.</summary>
/// <param name="WingSupport">How the wing is held while its bolt is loose; of what moves no wing, how the surface or the aircraft is held, or that it need not be.</param>
public sealed record WorkStarted(string WingSupport, string? Remarks, Instant? HappenedAt = null) : Fact, IMayComeLate;

/// <summary>Angles of both eccentric bushings of both wings, degrees from neutral, positive lowers the trailing edge; null where the aircraft has none.</summary>
public sealed record BushingAngles(double? LeftFrontDeg, double? LeftRearDeg, double? RightFrontDeg, double? RightRearDeg)
{
    /// <summary>Nothing is recorded of any eccentric.</summary>
    public static BushingAngles None { get; } = new(null, null, null, null);

    public (double? Front, double? Rear) Of(Control eccentric) =>
        eccentric == Control.LeftEccentric ? (LeftFrontDeg, LeftRearDeg) : (RightFrontDeg, RightRearDeg);

    /// <summary>These angles where they were recorded, the earlier ones where they were not.</summary>
    public BushingAngles Over(BushingAngles? earlier) => earlier is null ? this : new(
        LeftFrontDeg ?? earlier.LeftFrontDeg, LeftRearDeg ?? earlier.LeftRearDeg, RightFrontDeg ?? earlier.RightFrontDeg, RightRearDeg ?? earlier.RightRearDeg);
}

/// <summary>
/// How an adjuster that is no eccentric stands: a tab in degrees, trailing edge down (aileron) or left (rudder) positive; a strut fork in turns
/// out from fully in; a flap rod in turns out from the length of the drawing, in negative.
/// </summary>
public sealed record AdjusterSetting(Control Control, double Value);

public static class AdjusterSettings
{
    /// <summary>How one of them stands; null where nobody counted or measured it.</summary>
    public static double? Of(this IReadOnlyList<AdjusterSetting>? settings, Control control) => settings?.LastOrDefault(setting => setting.Control == control)?.Value;
}

/// <summary>Settings before anything turns.</summary>
/// <param name="Adjusters">Null where nobody counted or measured any.</param>
public sealed record AsFound(BushingAngles Bushings, string? Other, Instant? HappenedAt = null, IReadOnlyList<AdjusterSetting>? Adjusters = null) : Fact, IMayComeLate;

public enum TurnedPart { Nut, BoltHead }

public enum Lubrication { Dry, Lubricated }

/// <summary>Whether the nut itself takes torque to turn.</summary>
public enum NutKind { SelfLocking, CastleOrPlain }

/// <summary>One fastener brought to one torque with one wrench. Torques in inch-pounds, lengths in inches.</summary>
/// <param name="TargetSource">The approved data the target came from.</param>
/// <param name="RunOnInLb">Measured prevailing torque; null only when the data's figure includes it.</param>
/// <param name="ReachedInLb">Torque at the fastener when the wrench showed its setting.</param>
/// <param name="CalibrationDue">The wrench's, as it stood on the day.</param>
/// <param name="Nut">Null when not recorded.</param>
/// <param name="NoRunOnBecause">Why a self-locking nut has no run-on; null where it has one, or the nut is none.</param>
/// <param name="FigureFor">The part that the data's figure is for turning; null when not recorded.</param>
/// <param name="OtherPartBecause">Why the other part was turned; null where the same was.</param>
/// <param name="OutOfLimitsDone">What was done about a torque above its limits; null where it is inside.</param>
public sealed record TorqueApplied(
    string Fastener,
    string TargetSource,
    double TargetMinInLb,
    double TargetMaxInLb,
    bool TargetIncludesPrevailing,
    Lubrication Lubrication,
    TurnedPart Turned,
    double? RunOnInLb,
    double FinalMinInLb,
    double FinalMaxInLb,
    ToolId Wrench,
    string? WrenchCode,
    LocalDate? CalibrationDue,
    double LeverIn,
    double ExtensionIn,
    double ExtensionAngleDeg,
    double SettingInLb,
    double ReachedInLb,
    bool TorqueStripe,
    Instant? HappenedAt = null,
    NutKind? Nut = null,
    string? NoRunOnBecause = null,
    TurnedPart? FigureFor = null,
    string? OtherPartBecause = null,
    string? OutOfLimitsDone = null) : Fact, IMayComeLate
{
    /// <summary>Pulled further than the data allow with the run-on: what it did to bolt and nut is for somebody to say. Torques are kept to 0.01 in·lb.</summary>
    public bool IsAboveItsLimits() => ReachedInLb > FinalMaxInLb + 0.02;
}

/// <summary>After the squawk is over, at the next inspection: the torque held and its witness mark is in line. What is not so is another squawk.</summary>
/// <param name="TorqueEntry">Sequence of the torque application looked at again.</param>
public sealed record TorqueRechecked(int TorqueEntry, bool StripeInLine, bool TorqueHeld, string Findings, Instant? HappenedAt = null) : Fact, IMayComeLate;

/// <summary>Work left to somebody else, or to tomorrow.</summary>
/// <param name="Loose">What is loose and must not be moved; null when nothing is.</param>
public sealed record WorkHandedOver(string State, string? Loose, Instant? HappenedAt = null) : Fact, IMayComeLate;

public sealed record PartUsed(string Description, string PartNumber, int Quantity);

/// <summary>Something that had to be set or measured again because of the move, with what was found.</summary>
public sealed record DependentReset(string What, string Result);

/// <summary>In which a movement is read.</summary>
public enum MovementUnit { Millimetre, Inch, Degree }

/// <summary>The measurement that saw an edge go its way: what proves the direction of one move.</summary>
/// <param name="Way">Of the trailing edge; of the rudder tab left or right.</param>
/// <param name="Amount">As read, 0 or more.</param>
/// <param name="Aft">
/// Where it was read, in the same unit: so far behind the front spar, the front strut, the hinge or the bend. Null for an angle, and at the rear spar itself.
/// </param>
/// <param name="ToolStep">Smallest step it shows, in the unit of the amount. Code, step and calibration as they stood.</param>
/// <param name="Expected">Of the move on record, in the same unit; null where nothing on file says how far it goes.</param>
/// <param name="GiveOrTake">How far from that the tool, the setting and the data let a reading lie.</param>
/// <param name="OtherwiseBecause">Why it lies farther; null when it does not.</param>
public sealed record MovementMeasured(
    Control Control,
    Seen Way,
    double Amount,
    MovementUnit Unit,
    double? Aft,
    ToolId Tool,
    string? ToolCode = null,
    LocalDate? CalibrationDue = null,
    double? ToolStep = null,
    double? Expected = null,
    double? GiveOrTake = null,
    string? OtherwiseBecause = null);

/// <summary>The first of the five acts: who did the work says what was done.</summary>
/// <param name="Disturbed">Every control disconnected or disturbed; the check pilot is given this list in writing.</param>
/// <param name="DirectionProof">What there is to say of it in words; before <paramref name="Movements"/> were measured in numbers, the measurement itself.</param>
/// <param name="DiffersBecause">Why as left differs from the plan; null when it does not.</param>
/// <param name="TotalTimeH">Airframe time in service, hours and tenths.</param>
/// <param name="TotalTimeAgainH">The same read a second time, where it is more than the days since the last one hold; null elsewhere.</param>
/// <param name="AdjustersAsLeft">Null where nobody counted or measured any.</param>
/// <param name="PredictedDegPerS">
/// Where as left differs from the plan: roll tendency expected with it, right wing down positive, with its 90 % interval; null where nothing could be said.
/// </param>
/// <param name="Movements">One for each adjuster that was moved; null where only words say it.</param>
/// <param name="Surfaces">Which surfaces were disturbed, each asked about by name: these decide what the inspector must see move. Null where only words say so.</param>
public sealed record WorkDone(
    string Description,
    BushingAngles AsLeft,
    string? OtherAsLeft,
    string DirectionProof,
    IReadOnlyList<string> Disturbed,
    IReadOnlyList<PartUsed> Parts,
    IReadOnlyList<DependentReset> Resets,
    bool EverythingRefitted,
    bool NoTemporaryHardware,
    bool NothingLoose,
    string? DiffersBecause,
    double ManHours,
    double TotalTimeH,
    LocalDate CompletedOn,
    IReadOnlyList<AdjusterSetting>? AdjustersAsLeft = null,
    double? PredictedDegPerS = null,
    double? PredictedLowDegPerS = null,
    double? PredictedHighDegPerS = null,
    IReadOnlyList<ControlSurface>? Surfaces = null,
    double? TotalTimeAgainH = null,
    IReadOnlyList<MovementMeasured>? Movements = null) : Fact;
