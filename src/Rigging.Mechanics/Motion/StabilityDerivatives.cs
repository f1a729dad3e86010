namespace Rigging.Mechanics.Motion;

/// <summary>
/// Lateral-directional derivatives, per radian; rates per unit of pb/2V or rb/2V. Body axes: right wing down, nose
/// right and wind from the right positive. Aileron positive right wing down; rudder as in stability reports, trailing
/// edge left positive, so <see cref="CnRudder"/> is negative and <see cref="CYRudder"/> positive.
/// </summary>
public sealed record StabilityDerivatives(
    double CYBeta,
    double ClBeta,
    double ClP,
    double ClR,
    double CnBeta,
    double CnP,
    double CnR,
    double ClAileron = 0,
    double CnAileron = 0,
    double CYRudder = 0,
    double ClRudder = 0,
    double CnRudder = 0);

/// <summary>The aeroplane as a mass with a wing, SI units. Products of inertia as in the usual Ixz.</summary>
public sealed record AirframeMass(
    double MassKg,
    double IxxKgM2,
    double IzzKgM2,
    double IxzKgM2,
    double WingAreaM2,
    double WingSpanM);
