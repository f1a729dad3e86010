using Rigging.Mechanics.Contract;

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
    double CnRudder = 0)
{
    /// <summary>With one of them so many times itself; all as they are where the figure is none of them.</summary>
    internal StabilityDerivatives With(EstimableFigure figure, double times) => figure switch
    {
        EstimableFigure.CYBeta => this with { CYBeta = times * CYBeta },
        EstimableFigure.ClBeta => this with { ClBeta = times * ClBeta },
        EstimableFigure.ClR => this with { ClR = times * ClR },
        EstimableFigure.CnBeta => this with { CnBeta = times * CnBeta },
        EstimableFigure.CnP => this with { CnP = times * CnP },
        EstimableFigure.CnR => this with { CnR = times * CnR },
        EstimableFigure.CYRudder => this with { CYRudder = times * CYRudder },
        EstimableFigure.ClRudder => this with { ClRudder = times * ClRudder },
        EstimableFigure.CnRudder => this with { CnRudder = times * CnRudder },
        EstimableFigure.CnAileron => this with { CnAileron = times * CnAileron },
        _ => this,
    };
}

/// <summary>The aeroplane as a mass with a wing, SI units. Products of inertia as in the usual Ixz.</summary>
public sealed record AirframeMass(
    double MassKg,
    double IxxKgM2,
    double IzzKgM2,
    double IxzKgM2,
    double WingAreaM2,
    double WingSpanM)
{
    /// <summary>With one inertia so many times itself; both as they are where the figure is neither.</summary>
    internal AirframeMass With(EstimableFigure figure, double times) => figure switch
    {
        EstimableFigure.RollInertia => this with { IxxKgM2 = times * IxxKgM2 },
        EstimableFigure.YawInertia => this with { IzzKgM2 = times * IzzKgM2 },
        _ => this,
    };
}
