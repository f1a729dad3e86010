using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Motion;

/// <summary>
/// Small lateral motion about straight and level flight: sideslip β, roll rate p, yaw rate r, bank φ, all in radians
/// and seconds. Constant inputs are coefficients of side force, rolling and yawing moment.
/// </summary>
/// <remarks>
/// Level flight, so the flight path is horizontal and bank feeds sideslip by g/V. Side force from roll and yaw rate is
/// left out: neither reference set has it and it is small. Gravity is a parameter because published sets round it.
/// </remarks>
public sealed class LateralModel
{
    /// <summary>Places of the motion in a state vector.</summary>
    public const int Beta = 0, RollRate = 1, YawRate = 2, Bank = 3;

    readonly StabilityDerivatives derivatives;
    readonly AirframeMass airframe;
    readonly double densityKgPerM3;
    readonly double gravityMPerS2;

    public LateralModel(
        StabilityDerivatives derivatives,
        AirframeMass airframe,
        double trueAirspeedMPerS,
        double densityKgPerM3,
        double gravityMPerS2 = StandardGravity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(trueAirspeedMPerS);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(densityKgPerM3);
        (this.derivatives, this.airframe, this.densityKgPerM3, this.gravityMPerS2) = (derivatives, airframe, densityKgPerM3, gravityMPerS2);
        TrueAirspeedMPerS = trueAirspeedMPerS;
        DynamicPressurePa = densityKgPerM3 * trueAirspeedMPerS * trueAirspeedMPerS / 2;
        System = SystemMatrix();
    }

    public const double StandardGravity = 9.80665;

    public double TrueAirspeedMPerS { get; }

    public double DynamicPressurePa { get; }

    /// <summary>d(β, p, r, φ)/dt of the motion left to itself.</summary>
    public Matrix<double> System { get; }

    public StabilityDerivatives Derivatives => derivatives;

    /// <summary>Newton of side force per unit of coefficient.</summary>
    public double ForceN => DynamicPressurePa * airframe.WingAreaM2;

    /// <summary>Newton metres of rolling or yawing moment per unit of coefficient.</summary>
    public double MomentNm => ForceN * airframe.WingSpanM;

    public double MassKg => airframe.MassKg;

    public double WeightN => airframe.MassKg * gravityMPerS2;

    /// <summary>Roll or yaw rate, rad/s, that is one unit of pb/2V.</summary>
    public double RateUnitRadPerS => 2 * TrueAirspeedMPerS / airframe.WingSpanM;

    /// <summary>What constant coefficients of side force, rolling moment and yawing moment do, through both inertias and their product.</summary>
    public LateralAcceleration Accelerations(double sideForce, double rolling, double yawing)
    {
        var (x, z, xz) = (airframe.IxxKgM2, airframe.IzzKgM2, airframe.IxzKgM2);
        var perInertia = MomentNm / (x * z - xz * xz);
        return new(
            ForceN * sideForce / (airframe.MassKg * TrueAirspeedMPerS),
            (z * rolling + xz * yawing) * perInertia,
            (xz * rolling + x * yawing) * perInertia);
    }

    /// <summary>The same flight of an aeroplane of which one figure is so many times itself.</summary>
    internal LateralModel With(EstimableFigure figure, double times) =>
        new(derivatives.With(figure, times), airframe.With(figure, times), TrueAirspeedMPerS, densityKgPerM3, gravityMPerS2);

    public LateralModes Modes() => LateralModes.Of(System);

    Matrix<double> SystemMatrix()
    {
        var d = derivatives;
        var perRate = 1 / RateUnitRadPerS;
        var beta = Accelerations(d.CYBeta, d.ClBeta, d.CnBeta);
        var roll = Accelerations(0, d.ClP * perRate, d.CnP * perRate);
        var yaw = Accelerations(0, d.ClR * perRate, d.CnR * perRate);
        // By columns: what one unit of each of β, p, r and φ does.
        return Matrix<double>.Build.Dense(4, 4,
        [
            beta.BetaRadPerS, beta.RollRadPerS2, beta.YawRadPerS2, 0,
            roll.BetaRadPerS, roll.RollRadPerS2, roll.YawRadPerS2, 1,
            yaw.BetaRadPerS - 1, yaw.RollRadPerS2, yaw.YawRadPerS2, 0,
            gravityMPerS2 / TrueAirspeedMPerS, 0, 0, 0,
        ]);
    }
}

/// <summary>How fast sideslip, roll rate and yaw rate change.</summary>
public readonly record struct LateralAcceleration(double BetaRadPerS, double RollRadPerS2, double YawRadPerS2);
