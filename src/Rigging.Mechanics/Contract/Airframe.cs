namespace Rigging.Mechanics.Contract;

/// <summary>
/// What is on file about one aeroplane type as rigged, in the form that files and the API carry; units are in the names.
/// </summary>
/// <remarks>
/// Lateral positions are metres from the centreline, right positive. Angles of incidence are leading edge up positive.
/// <see cref="Eccentric"/>, <see cref="SpeedsKt"/> and <see cref="Limits"/> are null until somebody enters them from the
/// aeroplane's own data: they have no built-in default, and nothing may be moved without them.
/// </remarks>
/// <param name="ApprovedData">Manual, section and revision that governs; null when none is on file.</param>
/// <param name="Rudder">Null when the rudder has no tab on file.</param>
/// <param name="FuelSelector">Null when not on file.</param>
/// <param name="BallDegPerWidth">Degrees of apparent tilt that move the ball by one of its own widths; positive.</param>
/// <param name="Baggage">Null when there is no compartment on file.</param>
/// <param name="Fin">Null when not on file; with it, derivatives and inertias that are not on file are estimated.</param>
/// <param name="StrutFork">Null when not on file; only for a strut at each spar.</param>
/// <param name="FlapRod">Null when not on file.</param>
/// <param name="Estimated">Which figures here are estimates, and how good; null when all are the file's own.</param>
/// <param name="Cables">By name, each with the tension it is rigged to where the file says so; null when none is named.</param>
/// <param name="Travel">What each control surface is allowed to do; null when not on file.</param>
/// <param name="Priors">Where experience with this type differs from what is usual, each cause once at most; null when it does not.</param>
/// <param name="Fuselage">For estimating what is not on file; null when not on file, then it is taken from the span.</param>
/// <param name="Propeller">For the same; null when not on file, then it is left out.</param>
public sealed record Airframe(
    string Id,
    string Name,
    string? ApprovedData,
    WingGeometry Wing,
    EccentricOnFile? Eccentric,
    AileronGeometry Ailerons,
    FlapGeometry Flaps,
    RudderGeometry? Rudder,
    MassProperties Mass,
    LateralDerivatives Derivatives,
    IReadOnlyList<Tank> Tanks,
    FuelSelector? FuelSelector,
    IReadOnlyList<Seat> Seats,
    double BallDegPerWidth,
    SpeedLimits? SpeedsKt,
    ReferencePoint Reference,
    RiggingLimits? Limits,
    IReadOnlyList<BaggageCompartment>? Baggage = null,
    Fin? Fin = null,
    IReadOnlyList<EstimatedFigure>? Estimated = null,
    StrutForkOnFile? StrutFork = null,
    FlapRodOnFile? FlapRod = null,
    IReadOnlyList<PriorOnFile>? Priors = null,
    Fuselage? Fuselage = null,
    Propeller? Propeller = null,
    IReadOnlyList<CableOnFile>? Cables = null,
    IReadOnlyList<TravelOnFile>? Travel = null)
{
    /// <summary>What the tanks of a side hold together, litres; 0 where none lies there.</summary>
    public double TanksHoldL(Side side) => Tanks.Where(tank => side == Side.Right ? tank.ArmM > 0 : tank.ArmM < 0).Sum(tank => tank.CapacityL);
}

/// <summary>What a school knows better of one cause on one type than the usual figures of experience say.</summary>
/// <param name="Probability">That it is behind a complaint, before any evidence; null for the usual one.</param>
/// <param name="Spread">Standard deviation of its amplitude when it is, in the cause's own unit; null for the usual one.</param>
/// <param name="Reason">What that rests on.</param>
public sealed record PriorOnFile(Cause Cause, double? Probability, double? Spread, string Reason);

/// <summary>The wing, symmetric as designed, by stations from the centreline to the tip.</summary>
/// <param name="SpanM">Whole span, tip to tip.</param>
/// <param name="Stations">Of one half, in order of <see cref="WingStation.YM"/> from 0 to half the span; straight lines between.</param>
/// <param name="SparSpacingM">Front to rear spar attachment at the root, along the chord.</param>
/// <param name="PanelInboardYM">Where the adjustable panel begins; everything outboard of it turns with the eccentric.</param>
/// <param name="Position">Where the wing meets the fuselage; null when not on file.</param>
public sealed record WingGeometry(
    double SpanM,
    double DihedralDeg,
    Bracing Bracing,
    IReadOnlyList<WingStation> Stations,
    double SparSpacingM,
    double PanelInboardYM,
    WingPosition? Position = null);

/// <summary>Where the wing meets the fuselage: it changes what the fuselage does to a sideslip.</summary>
public enum WingPosition { High, Mid, Low }

/// <param name="YM">Distance from the centreline, 0 or more.</param>
/// <param name="SectionLiftSlopePerRad">Of the aerofoil alone; thin-aerofoil theory gives 2π.</param>
public sealed record WingStation(double YM, double ChordM, double IncidenceDeg, double SectionLiftSlopePerRad);

/// <summary>How a wing panel is held. Only the first two let the panel turn as one rigid piece about the front spar.</summary>
public enum Bracing { SingleStrutAtFrontSpar, Cantilever, SingleStrutAtRearSpar, StrutAtEachSpar, Wires }

/// <summary>The eccentric bushings at the rear-spar attachments, as the aeroplane's own data or a measurement gives them.</summary>
/// <param name="ThrowMm">Distance between the two axes of the bushing.</param>
/// <param name="HeadFlats">Number of flats on the head that is turned; a hexagon has 6, so 60° each.</param>
/// <param name="MaxAngleDeg">Largest angle either way from neutral that a planned move may end at.</param>
/// <param name="BushingIn">Null when nobody has looked; then no turning direction can be given.</param>
/// <param name="NeutralOffset">Null when nobody has looked; then no turning direction can be given.</param>
/// <param name="Fastener">Null when not on file.</param>
/// <param name="Source">Where these figures are from.</param>
public sealed record EccentricOnFile(
    double ThrowMm,
    int HeadFlats,
    double MaxAngleDeg,
    BushingIn? BushingIn,
    NeutralOffset? NeutralOffset,
    FastenerOnFile? Fastener,
    string Source);

/// <summary>The fitting in which the eccentric bushing sits.</summary>
public enum BushingIn { FuselageFitting, WingFitting }

/// <summary>Which way the bushing's bolt hole lies from the bushing's own centre at neutral, for each wing.</summary>
public sealed record NeutralOffset(Spanwise Left, Spanwise Right);

public enum Spanwise { Inboard, Outboard }

/// <summary>The bolt and nut through the eccentric, and the torque its manual gives.</summary>
/// <param name="Thread">Diameter and threads per inch, such as <c>3/8-24</c>.</param>
/// <param name="Nut">In the manual's words, such as <c>self-locking, tension</c>.</param>
/// <param name="TorqueInLb">From the manual; null when the manual gives no value.</param>
/// <param name="IncludesPrevailing">Whether that torque already contains what the locking nut takes to turn; null when the manual does not say.</param>
/// <param name="Lubrication">The thread condition that the torque is meant for; null when the manual does not say.</param>
/// <param name="Turned">The part that is turned for that torque; null when the manual does not say.</param>
public sealed record FastenerOnFile(
    string Thread,
    string Nut,
    TorqueRange? TorqueInLb,
    bool? IncludesPrevailing,
    Lubrication? Lubrication,
    TurnedPart? Turned);

/// <summary>Least and greatest torque; on the wire a pair, <c>[160, 190]</c>.</summary>
public sealed record TorqueRange(double Least, double Greatest);

public enum Lubrication { Dry, Lubricated }

public enum TurnedPart { Nut, Head }

/// <param name="ChordFraction">Aileron chord over wing chord, hinge to trailing edge.</param>
/// <param name="FixedTab">Null when there is none.</param>
/// <param name="WheelDegPerAileronDeg">Wheel or stick degrees for one degree of each aileron, opposite ways.</param>
/// <param name="WheelForceNPerAileronDegAtReference">At the rim, at the reference airspeed.</param>
public sealed record AileronGeometry(
    double InboardYM,
    double OutboardYM,
    double ChordFraction,
    FixedTab? FixedTab,
    double WheelDegPerAileronDeg,
    double WheelForceNPerAileronDegAtReference);

/// <param name="Gain">Surface angle = −gain × tab angle, trailing edge down positive.</param>
/// <param name="Bend">Null when not on file; then the file does not say how far it may be bent.</param>
public sealed record FixedTab(Side Side, double Gain, TabBendOnFile? Bend = null);

public enum Side { Left, Right }

public sealed record FlapGeometry(double InboardYM, double OutboardYM, double ChordFraction);

/// <param name="FixedTabGain">Rudder angle = −gain × tab angle.</param>
/// <param name="AreaM2">Behind the hinge; null when not on file.</param>
/// <param name="FixedTabBend">Null when not on file; then the file does not say how far it may be bent.</param>
public sealed record RudderGeometry(double FixedTabGain, double? AreaM2 = null, TabBendOnFile? FixedTabBend = null);

/// <summary>The fin with its rudder, for estimating what is not on file.</summary>
/// <param name="AreaM2">Fin and rudder together, in the open air.</param>
/// <param name="ArmM">Its quarter chord behind the centre of mass.</param>
/// <param name="HeightM">Its centre of area above the centre of mass.</param>
/// <param name="LiftSlopePerRad">Of the fin as it stands, on its own area.</param>
public sealed record Fin(double AreaM2, double ArmM, double HeightM, double LiftSlopePerRad);

/// <summary>The fuselage from outside; what is null is taken from the span.</summary>
/// <param name="LengthM">From the front of the cowling to the end of the tail cone, without the propeller.</param>
/// <param name="DepthM">Greatest, without the wing and the undercarriage.</param>
/// <param name="WidthM">Greatest.</param>
public sealed record Fuselage(double? LengthM = null, double? DepthM = null, double? WidthM = null);

/// <param name="ArmM">Its disc ahead of the centre of mass; negative for a pusher.</param>
public sealed record Propeller(double DiameterM, int Blades, double ArmM);

/// <summary>A figure that nobody measured.</summary>
/// <param name="AccuracyPercent">One standard deviation that may be expected of the method.</param>
public sealed record EstimatedFigure(EstimableFigure Figure, double Value, string Method, string Source, double AccuracyPercent);

/// <summary>Everything that can be estimated where it is not on file: derivatives, the inertias in roll and yaw, the moments of the slipstream.</summary>
public enum EstimableFigure
{
    CYBeta, ClBeta, ClR, CnBeta, CnP, CnR, CYRudder, ClRudder, CnRudder, CnAileron, RollInertia, YawInertia,
    SlipstreamClAtFullPower, SlipstreamCnAtFullPower,
}

public sealed record MassProperties(double ReferenceKg, double IxxKgM2, double IzzKgM2, double IxzKgM2);

/// <summary>
/// Lateral stability derivatives about body axes, per radian or per unit of pb/2V or rb/2V, on wing area and span.
/// </summary>
/// <remarks>Rudder angles as in stability reports, trailing edge left positive: <see cref="CnRudder"/> is negative.</remarks>
/// <param name="ClP">Damping in roll, overriding the wing model; null to take it from there.</param>
/// <param name="ClAileron">Rolling moment of one radian of each aileron, right wing down positive, overriding the wing model; null to take it from there.</param>
/// <param name="SlipstreamClAtFullPower">At full power and the reference airspeed.</param>
/// <param name="SlipstreamCnAtFullPower">At full power and the reference airspeed.</param>
public sealed record LateralDerivatives(
    double CYBeta,
    double ClBeta,
    double ClR,
    double CnBeta,
    double CnP,
    double CnR,
    double CYRudder,
    double ClRudder,
    double CnRudder,
    double CnAileron,
    double SlipstreamClAtFullPower,
    double SlipstreamCnAtFullPower,
    double? ClP = null,
    double? ClAileron = null);

/// <param name="ArmM">Right of the centreline positive.</param>
public sealed record Tank(string Name, double ArmM, double CapacityL);

/// <param name="ArmM">Right of the centreline positive.</param>
public sealed record Seat(string Name, double ArmM);

/// <param name="ArmM">Of its middle, right of the centreline positive.</param>
public sealed record BaggageCompartment(string Name, double ArmM);

public enum FuelSelector { LeftRightBoth, LeftRight, OnOff }

/// <summary>Calibrated airspeeds in knots.</summary>
public sealed record SpeedLimits(double StallClean, double FlapLimit, double Manoeuvring, double MaxStructuralCruise, double NeverExceed);

/// <summary>Where the roll tendency is quoted and judged: speed, altitude, power and the load the aeroplane is rigged for.</summary>
public sealed record ReferencePoint(double CasKt, double PressureAltitudeFt, double PowerPercent, Load Load);

/// <param name="AcceptableRollTendencyDegPerS">Either way.</param>
/// <param name="MaxPanelIncidenceDifferenceDeg">Beyond it, damage is looked for instead of turning the eccentric.</param>
/// <param name="IncidenceStepFlats">Smallest move that is asked of a wrench.</param>
public sealed record RiggingLimits(double AcceptableRollTendencyDegPerS, double MaxPanelIncidenceDifferenceDeg, double IncidenceStepFlats);

/// <summary>Who sat where, what lay where and how much fuel was in which tank.</summary>
/// <param name="SeatsKg">By seat name; a seat not named was empty.</param>
/// <param name="FuelL">By tank name; every tank is named.</param>
/// <param name="FuelKgPerL">0.72 unless stated.</param>
/// <param name="BaggageKg">By compartment name; null or not named is empty.</param>
public sealed record Load(
    IReadOnlyDictionary<string, double> SeatsKg,
    IReadOnlyDictionary<string, double> FuelL,
    double FuelKgPerL = Load.UsualFuelKgPerL,
    IReadOnlyDictionary<string, double>? BaggageKg = null)
{
    /// <summary>Aviation gasoline; the convention of this contract.</summary>
    public const double UsualFuelKgPerL = 0.72;

    /// <summary>Of a person whom nobody weighed, kilograms, 170 lb. Common practice, no source.</summary>
    public const double UsualPersonKg = 77;
}
