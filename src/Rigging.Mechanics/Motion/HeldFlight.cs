namespace Rigging.Mechanics.Motion;

/// <summary>Steady flight with the wings held level, radians and seconds.</summary>
/// <param name="BetaRad">Sideslip, wind from the right positive.</param>
/// <param name="YawRateRadPerS">Heading rate, right positive.</param>
/// <param name="AileronRad">Of each aileron, right wing down positive.</param>
/// <param name="RudderRad">All the rudder there is, offset included, trailing edge left positive.</param>
public readonly record struct HeldState(double BetaRad, double YawRateRadPerS, double AileronRad, double RudderRad)
{
    /// <summary>Of a flight that the aeroplane's figures do not determine.</summary>
    public static HeldState Undetermined { get; } = new(double.NaN, double.NaN, double.NaN, double.NaN);
}

/// <summary>
/// Solves wings-level steady flight: side force turns the flight path, rolling and yawing moments are nought.
/// Linear in the asymmetry.
/// </summary>
/// <remarks>
/// A flight that is near singular is <see cref="HeldState.Undetermined"/>, never a number: <see cref="Aeroplane.Refusals"/> says why.
/// </remarks>
public sealed class HeldFlight
{
    const double RadPerDeg = Math.PI / 180;

    /// <summary>
    /// Least <see cref="RudderApart"/> that is answered: a tenth. Derivatives are known to a tenth at best, for published sets of one type differ by
    /// 12 % in roll damping; below it, two of the four figures a tenth off turn the sign of what does not cancel, and with it every answer.
    /// Published and estimated aeroplanes have 0.15 to 1.
    /// </summary>
    public const double LeastRudderApart = 0.1;

    /// <summary>
    /// Most <see cref="SlipPerRudder"/> that is answered: five degrees of rudder would slip it by more than 25°, where a fin has stalled. Published
    /// aeroplanes have about one.
    /// </summary>
    public const double MostSlipPerRudder = 5;

    /// <summary>Least of it: a rudder that slips the aeroplane by less than a twentieth of its own angle steers nothing.</summary>
    public const double LeastSlipPerRudder = 0.05;

    readonly LateralModel model;
    readonly double ballDegPerWidth;
    readonly bool straight, level;

    public HeldFlight(LateralModel model, double ballDegPerWidth)
    {
        (this.model, this.ballDegPerWidth) = (model, ballDegPerWidth);
        var d = model.Derivatives;
        var perAileron = d.CnAileron / d.ClAileron;
        var (ofSlip, ofRudder) = (d.CnBeta - perAileron * d.ClBeta, d.CnRudder - perAileron * d.ClRudder);
        var (one, other) = (d.CYBeta * ofRudder, d.CYRudder * ofSlip);
        RudderApart = Math.Abs(one - other) / (Math.Abs(one) + Math.Abs(other)) is var apart && double.IsFinite(apart) ? apart : 0;
        straight = RudderApart >= LeastRudderApart;
        var slip = SolveLevel(Steady(default, 1)).BetaRad;
        SlipPerRudder = double.IsFinite(slip) ? slip : double.PositiveInfinity;
        level = SlipPerRudder is >= LeastSlipPerRudder and <= MostSlipPerRudder;
    }

    /// <summary>
    /// How far sideslip and rudder are from doing the same thing, ailerons keeping the wings level: of the two products cYβ·cnδr and cYδr·cnβ the part
    /// that does not cancel, over both sizes. 0 where one is the other over again, so that no rudder centres the ball, to 1. No scale of
    /// force, moment, sideslip or rudder changes it.
    /// </summary>
    public double RudderApart { get; }

    /// <summary>
    /// Degrees of sideslip that a degree of rudder brings with the feet off and the wings level. It grows without end as the fin's hold on
    /// the nose vanishes, and is negative past that.
    /// </summary>
    public double SlipPerRudder { get; }

    /// <summary>Wheel holds the wings level, feet off: sideslip, heading rate and aileron follow.</summary>
    public HeldState Level(Asymmetry asymmetry)
    {
        if (!level)
            return HeldState.Undetermined;
        var rudder = asymmetry.RudderOffsetRad;
        return SolveLevel(Steady(asymmetry, rudder)) with { RudderRad = rudder };
    }

    /// <summary>
    /// Wheel holds the wings level and feet hold the shown ball in the middle. The feet override any rudder offset. A ball
    /// that is out of true leaves a small side force, and with it a slow turn.
    /// </summary>
    public HeldState Straight(Asymmetry asymmetry)
    {
        if (!straight)
            return HeldState.Undetermined;
        var d = model.Derivatives;
        var sideForce = asymmetry.BallOffsetWidths * ballDegPerWidth * RadPerDeg * model.WeightN / model.ForceN;
        var yawRate = sideForce / TurningForce;
        var fixedPart = Steady(asymmetry, 0);
        var (betaRad, rudderRad, aileronRad) = Solve(
            column1: (d.CYBeta, d.ClBeta, d.CnBeta),
            column2: (d.CYRudder, d.ClRudder, d.CnRudder),
            column3: (0, d.ClAileron, d.CnAileron),
            (fixedPart.SideForce - sideForce,
                fixedPart.Rolling + d.ClR * yawRate / model.RateUnitRadPerS,
                fixedPart.Yawing + d.CnR * yawRate / model.RateUnitRadPerS));
        return new(betaRad, yawRate, aileronRad, rudderRad);
    }

    /// <summary>What the ball shows, widths, right positive: it falls away from the side force, plus its own offset.</summary>
    public double BallWidths(HeldState state, Asymmetry asymmetry)
    {
        var d = model.Derivatives;
        var sideForce = d.CYBeta * state.BetaRad + d.CYRudder * state.RudderRad + asymmetry.SideForce;
        return -sideForce * model.ForceN / model.WeightN / RadPerDeg / ballDegPerWidth + asymmetry.BallOffsetWidths;
    }

    /// <summary>Side force coefficient that turns the flight path at one radian a second.</summary>
    double TurningForce => model.MassKg * model.TrueAirspeedMPerS / model.ForceN;

    (double SideForce, double Rolling, double Yawing) Steady(Asymmetry asymmetry, double rudderRad)
    {
        var d = model.Derivatives;
        return (asymmetry.SideForce + d.CYRudder * rudderRad,
            asymmetry.Rolling + asymmetry.WeightNm / model.MomentNm + d.ClRudder * rudderRad,
            asymmetry.Yawing + d.CnRudder * rudderRad);
    }

    HeldState SolveLevel((double SideForce, double Rolling, double Yawing) given)
    {
        var d = model.Derivatives;
        var (betaRad, yawRate, aileronRad) = Solve(
            column1: (d.CYBeta, d.ClBeta, d.CnBeta),
            column2: (-TurningForce, d.ClR / model.RateUnitRadPerS, d.CnR / model.RateUnitRadPerS),
            column3: (0, d.ClAileron, d.CnAileron),
            given);
        return new(betaRad, yawRate, aileronRad, 0);
    }

    /// <summary>How much of each column cancels what is given, by Cramer's rule.</summary>
    static (double First, double Second, double Third) Solve(
        (double Y, double L, double N) column1,
        (double Y, double L, double N) column2,
        (double Y, double L, double N) column3,
        (double Y, double L, double N) given)
    {
        var whole = -Determinant(column1, column2, column3);
        return (
            Determinant(given, column2, column3) / whole,
            Determinant(column1, given, column3) / whole,
            Determinant(column1, column2, given) / whole);
    }

    static double Determinant((double Y, double L, double N) a, (double Y, double L, double N) b, (double Y, double L, double N) c) =>
        a.Y * (b.L * c.N - c.L * b.N) - b.Y * (a.L * c.N - c.L * a.N) + c.Y * (a.L * b.N - b.L * a.N);
}
