using System.Text.Json.Serialization;
using Rigging.Mechanics.Adjusters;

namespace Rigging.Mechanics.Contract;

/// <summary>Everything known about one complaint: how it flew, what was measured on the ground, what was done before.</summary>
/// <remarks>Exactly one of <paramref name="AirframeId"/> and <paramref name="Airframe"/> is given.</remarks>
/// <param name="Settings">How the eccentrics stand; null when nobody has looked.</param>
/// <param name="StraightBefore">Whether it flew straight before; null when nobody knows.</param>
/// <param name="Events">What was done or happened since it last flew straight.</param>
/// <param name="Trims">Null when not reported.</param>
/// <param name="FuelAndSeatsMeasured">Whether fuel in each tank and who sat where were measured and not taken for granted; null: as the test points give them.</param>
/// <param name="EarlierCorrections">How earlier corrections turned out, on this aeroplane and on others of its type; null or empty when there were none.</param>
public sealed record AssessmentRequest(
    string? AirframeId,
    Airframe? Airframe,
    EccentricSettings? Settings,
    bool? StraightBefore,
    IReadOnlyList<PastEvent> Events,
    Trims? Trims,
    Autopilot Autopilot,
    IReadOnlyList<TestPoint> TestPoints,
    IReadOnlyList<GroundCheck> GroundChecks,
    IReadOnlyList<EarlierCorrection>? EarlierCorrections = null,
    bool? FuelAndSeatsMeasured = null)
{
    /// <summary>What held it, or rolled it, as a hand would, so that nothing was let go; empty when nothing on record did.</summary>
    [JsonIgnore]
    public IEnumerable<string> NotLetGo => [.. Trims?.OffNeutral ?? [], .. Autopilot == Autopilot.Engaged ? (string[])["the autopilot engaged"] : []];

    /// <summary>
    /// How an adjuster stands, as far as that is one number on record: an eccentric in degrees, null when its bushings disagree; a fork or
    /// a rod in turns; a tab in degrees as it was last measured. Null for the aileron neutral, which is a check's business.
    /// </summary>
    public double? StandsAt(AdjustableControl control) => control switch
    {
        AdjustableControl.LeftEccentric => Eccentric(Settings?.LeftEccentricDeg),
        AdjustableControl.RightEccentric => Eccentric(Settings?.RightEccentricDeg),
        AdjustableControl.LeftStrutFork => Settings?.LeftStrutForkTurns,
        AdjustableControl.RightStrutFork => Settings?.RightStrutForkTurns,
        AdjustableControl.LeftFlapRod => Settings?.LeftFlapRodTurns,
        AdjustableControl.RightFlapRod => Settings?.RightFlapRodTurns,
        AdjustableControl.AileronTab => GroundChecks.OfType<AileronTabCheck>().LastOrDefault()?.Deg,
        AdjustableControl.RudderTab => GroundChecks.OfType<AngleCheck>().LastOrDefault(check => check.Kind == GroundCheckKind.RudderTab)?.Deg,
        _ => null,
    };

    static double? Eccentric(BushingAngles? bushings) => bushings is null ? null : FoundSetting.AngleOf(bushings);
}

/// <summary>One correction as it turned out: what the model had said of the roll tendency, and what flights before and after it showed.</summary>
/// <param name="ModelledDegPerS">Change of the tendency that the model gives for the move as left; not 0.</param>
/// <param name="MeasuredDegPerS">Change between the flights before and after.</param>
/// <param name="SdDegPerS">Standard deviation of that; more than 0.</param>
/// <param name="SameAeroplane">This aeroplane with the wings it has now; false for another of its type.</param>
public sealed record EarlierCorrection(AdjustableControl Control, double ModelledDegPerS, double MeasuredDegPerS, double SdDegPerS, bool SameAeroplane);

/// <summary>
/// How the adjusters of both wings stand: the eccentrics' angles; strut forks in turns out from fully in, flap rods in turns out from the
/// length of the drawing. Null for what nobody has looked at.
/// </summary>
public sealed record EccentricSettings(
    BushingAngles? LeftEccentricDeg,
    BushingAngles? RightEccentricDeg,
    double? LeftStrutForkTurns = null,
    double? RightStrutForkTurns = null,
    double? LeftFlapRodTurns = null,
    double? RightFlapRodTurns = null);

/// <summary>
/// Front and rear bushing of one wing, degrees from neutral; positive lowers that panel's trailing edge.
/// On the wire one number when they are alike, else <c>{ "front": …, "rear": … }</c>.
/// </summary>
public sealed record BushingAngles(double Front, double Rear)
{
    public BushingAngles(double both) : this(both, both)
    {
    }
}

/// <summary>
/// Something done to or suffered by the aeroplane; on the wire its word, and for a correction that changed nothing
/// <c>correction-without-effect:</c> and the cause it was meant for.
/// </summary>
/// <param name="Cause">Only, and always, with <see cref="EventKind.CorrectionWithoutEffect"/>.</param>
public sealed record PastEvent(EventKind Kind, Cause? Cause = null);

public enum EventKind
{
    HardLanding, GroundStrike, WingRemoved, WingReplaced, Repaint, ControlReplaced, CablesAdjusted, FlapOverspeed,
    StormParking, Repair, SuddenOnset, FullControl, ControlJammed, FirstFlightAfterAssembly, UnexplainedRecurrence, DamageSuspected,
    CorrectionWithoutEffect,
}

/// <summary>Positions of the roll and yaw trim as the pilot read them, or <c>none</c> where there is no such trim.</summary>
public sealed record Trims(string Roll, string Yaw)
{
    public const string None = "none";

    static readonly string[] Neutral = [None, "neutral", "centred", "centered", "centre", "center", "middle", "zero"];

    /// <summary>Those that stood elsewhere than at neutral, each as it was read: what no word for neutral says is taken to be off it.</summary>
    [JsonIgnore]
    public IEnumerable<string> OffNeutral
    {
        get
        {
            if (!IsNeutral(Roll)) yield return $"roll trim at “{Roll}”";
            if (!IsNeutral(Yaw)) yield return $"yaw trim at “{Yaw}”";
        }
    }

    static bool IsNeutral(string at) => Neutral.Contains(at.Trim(), StringComparer.OrdinalIgnoreCase)
        || double.TryParse(at, System.Globalization.CultureInfo.InvariantCulture, out var number) && number == 0;
}

/// <summary><see cref="Engaged"/>: it flew the aeroplane, so nothing was let go.</summary>
public enum Autopilot { Unknown, None, Off, Disconnected, Engaged }

/// <summary>One manoeuvre at one speed, power, flap and load, with what was read.</summary>
/// <param name="OatC">Outside air temperature; 15 °C less 1.98 °C per 1000 ft of pressure altitude when not reported.</param>
/// <param name="PowerPercent">Null: the airframe's reference power.</param>
/// <param name="LastInput">The side the wheel was last moved to before the release; null when not reported.</param>
/// <param name="Repeat">Which repetition of the same point this is, from 1; null when not reported.</param>
/// <param name="MovedSince">
/// What was moved after this was flown, so that a flight before and one after a correction are one body of evidence; null or empty when
/// the aeroplane stands now as it did then.
/// </param>
public sealed record TestPoint(
    Manoeuvre Manoeuvre,
    double CasKt,
    double PressureAltitudeFt,
    double OatC,
    double? PowerPercent,
    double FlapDeg,
    Load Load,
    AirState Air,
    Side? LastInput,
    int? Repeat,
    IReadOnlyList<Reading> Readings,
    IReadOnlyList<KnownChange>? MovedSince = null)
{
    public static double StandardOatC(double pressureAltitudeFt) => 15 - 1.98 * pressureAltitudeFt / 1000;
}

/// <summary>So much was added to a cause's amplitude by an adjuster, in the cause's own unit and sign.</summary>
public sealed record KnownChange(Cause Cause, double Amplitude);

/// <summary>What the controls do while it is read; the test manoeuvres.</summary>
public enum Manoeuvre { ReleaseAll, ReleaseWheel, HoldNeutral, HoldLevel, HoldStraight, BalanceFuel }

/// <summary>Turbulence.</summary>
public enum AirState { Smooth, Light, Moderate }
