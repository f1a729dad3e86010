namespace Rigging.Mechanics.Motion;

/// <summary>Steady flight with the wings held level, radians and seconds.</summary>
/// <param name="BetaRad">Sideslip, wind from the right positive.</param>
/// <param name="YawRateRadPerS">Heading rate, right positive.</param>
/// <param name="AileronRad">Of each aileron, right wing down positive.</param>
/// <param name="RudderRad">All the rudder there is, offset included, trailing edge left positive.</param>
public readonly record struct HeldState(double BetaRad, double YawRateRadPerS, double AileronRad, double RudderRad);

/// <summary>
/// Solves wings-level steady flight: side force turns the flight path, rolling and yawing moments are nought.
/// Linear in the asymmetry.
/// </summary>
public sealed class HeldFlight(LateralModel model, double ballDegPerWidth)
{
    const double RadPerDeg = Math.PI / 180;

    /// <summary>Wheel holds the wings level, feet off: sideslip, heading rate and aileron follow.</summary>
    public HeldState Level(Asymmetry asymmetry)
    {
        var d = model.Derivatives;
        var rudder = asymmetry.RudderOffsetRad;
        var (betaRad, yawRate, aileronRad) = Solve(
            column1: (d.CYBeta, d.ClBeta, d.CnBeta),
            column2: (-TurningForce, d.ClR / model.RateUnitRadPerS, d.CnR / model.RateUnitRadPerS),
            column3: (0, d.ClAileron, d.CnAileron),
            Steady(asymmetry, rudder));
        return new(betaRad, yawRate, aileronRad, rudder);
    }

    /// <summary>
    /// Wheel holds the wings level and feet hold the shown ball in the middle. The feet override any rudder offset. A ball
    /// that is out of true leaves a small side force, and with it a slow turn.
    /// </summary>
    public HeldState Straight(Asymmetry asymmetry)
    {
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
