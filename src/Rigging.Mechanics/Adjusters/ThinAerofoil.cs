using MathNet.Numerics.Integration;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// Hinge moments of a plain flap and of a tab on it by thin-aerofoil theory: no thickness, no gap, no friction of the air. Real
/// ones are smaller, so what follows from it is a bound and never a figure to bend a tab by.
/// </summary>
/// <remarks>
/// Along x = c·(1 − cos θ)/2 a flap hinged at θ_h and deflected by δ adds the pressure jump
/// ΔCp = (4δ/π)·[(π − θ_h)·cot(θ/2) + ln|sin((θ + θ_h)/2) / sin((θ − θ_h)/2)|] (Glauert's series, summed). The hinge moment is on flap
/// chord squared, trailing edge down positive.
/// </remarks>
public static class ThinAerofoil
{
    /// <summary>Per radian of the flap's own deflection; negative. <paramref name="chordShare"/> is the flap's share of the chord.</summary>
    public static double HingeMomentOfFlap(double chordShare) => HingeMoment(chordShare, chordShare);

    /// <summary>Per radian of a tab whose chord is <paramref name="tabShare"/> of the flap's chord, along the whole span of the flap; negative.</summary>
    public static double HingeMomentOfTab(double chordShare, double tabShare) => HingeMoment(chordShare, chordShare * tabShare);

    /// <summary>
    /// Degrees of surface against one degree of tab that no real tab exceeds: tab moment over the flap's own.
    /// </summary>
    /// <param name="chordShare">Surface chord over wing chord.</param>
    /// <param name="tabShare">Tab chord over surface chord.</param>
    /// <param name="spanShare">Tab span over surface span, 0 to 1.</param>
    /// <param name="drivesBoth">Two ailerons on one wheel and a tab on one of them only: it has both to move.</param>
    public static double TabGainAtMost(double chordShare, double tabShare, double spanShare, bool drivesBoth)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(spanShare);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(spanShare, 1);
        return HingeMomentOfTab(chordShare, tabShare) / HingeMomentOfFlap(chordShare) * spanShare / (drivesBoth ? 2 : 1);
    }

    /// <summary>Moment about the hinge of a flap with <paramref name="share"/> of the chord when the part behind <paramref name="bentShare"/> is deflected.</summary>
    static double HingeMoment(double share, double bentShare)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(share);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(share, 1);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(bentShare);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(bentShare, share);
        var (hinge, bend) = (ThetaOf(share), ThetaOf(bentShare));

        double Moment(double theta)
        {
            var x = (1 - Math.Cos(theta)) / 2;
            var jump = 4 / Math.PI * ((Math.PI - bend) / Math.Tan(theta / 2)
                + Math.Log(Math.Abs(Math.Sin((theta + bend) / 2) / Math.Sin((theta - bend) / 2))));
            return -jump * (x - (1 - share)) * Math.Sin(theta) / 2;
        }

        // The jump is endless at the bend, but only as a logarithm: the rule bends itself towards the ends.
        double Between(double from, double to) => to - from < 1e-12 ? 0 : DoubleExponentialTransformation.Integrate(Moment, from, to, 1e-10);
        return (Between(hinge, bend) + Between(bend, Math.PI)) / (share * share);
    }

    static double ThetaOf(double share) => Math.Acos(2 * share - 1);
}
