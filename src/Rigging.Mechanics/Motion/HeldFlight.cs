using MathNet.Numerics.LinearAlgebra;

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
        var solution = Solve(
            column1: (d.CYBeta, d.ClBeta, d.CnBeta),
            column2: (-TurningForce, d.ClR / model.RateUnitRadPerS, d.CnR / model.RateUnitRadPerS),
            column3: (0, d.ClAileron, d.CnAileron),
            Steady(asymmetry, rudder));
        return new(solution[0], solution[1], solution[2], rudder);
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
        var solution = Solve(
            column1: (d.CYBeta, d.ClBeta, d.CnBeta),
            column2: (d.CYRudder, d.ClRudder, d.CnRudder),
            column3: (0, d.ClAileron, d.CnAileron),
            (fixedPart.SideForce - sideForce,
                fixedPart.Rolling + d.ClR * yawRate / model.RateUnitRadPerS,
                fixedPart.Yawing + d.CnR * yawRate / model.RateUnitRadPerS));
        return new(solution[0], yawRate, solution[2], solution[1]);
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

    static Vector<double> Solve(
        (double Y, double L, double N) column1,
        (double Y, double L, double N) column2,
        (double Y, double L, double N) column3,
        (double SideForce, double Rolling, double Yawing) given) =>
        Matrix<double>.Build.DenseOfArray(new[,]
        {
            { column1.Y, column2.Y, column3.Y },
            { column1.L, column2.L, column3.L },
            { column1.N, column2.N, column3.N },
        }).Solve(-Vector<double>.Build.Dense([given.SideForce, given.Rolling, given.Yawing]));
}
