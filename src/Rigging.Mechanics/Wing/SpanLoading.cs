namespace Rigging.Mechanics.Wing;

/// <summary>
/// Circulation along the span, divided by airspeed, and what it adds up to. Coefficients use the wing's area and span.
/// Rolling moment is positive right wing down, so more lift on the right is negative. Yawing moment is positive nose
/// right, so more drag on the right is positive.
/// </summary>
public sealed class SpanLoading
{
    readonly VortexLattice lattice;
    double[]? washBehind;

    internal SpanLoading(VortexLattice lattice, double[] circulationM)
    {
        (this.lattice, CirculationM) = (lattice, circulationM);
        var (lift, roll) = (0.0, 0.0);
        for (var i = 0; i < circulationM.Length; i++)
        {
            var strip = lattice.Strips[i];
            lift += 2 * circulationM[i] * strip.WidthM;
            roll -= 2 * circulationM[i] * strip.WidthM * strip.MiddleYM;
        }
        LiftCoefficient = lift / lattice.Wing.AreaM2;
        RollingMomentCoefficient = roll / (lattice.Wing.AreaM2 * lattice.Wing.SpanM);
    }

    /// <summary>Circulation over airspeed for each strip, left tip to right tip, metres.</summary>
    public IReadOnlyList<double> CirculationM { get; }

    /// <summary>For plotting: lift along the span, left tip to right tip.</summary>
    public IReadOnlyList<SpanwiseLift> Spanwise => [.. lattice.Strips.Select((strip, i) =>
        new SpanwiseLift(strip.ControlYM, 2 * CirculationM[i], 2 * CirculationM[i] / lattice.Wing.ChordAt(strip.ControlYM)))];

    public double LiftCoefficient { get; }

    public double RollingMomentCoefficient { get; }

    /// <summary>Square of the distance from the centreline, averaged over the lift, square metres; a sixteenth of the span squared for elliptic lift.</summary>
    public double MeanSquareYM2
    {
        get
        {
            var (lift, moment) = (0.0, 0.0);
            for (var i = 0; i < CirculationM.Count; i++)
            {
                var strip = lattice.Strips[i];
                lift += CirculationM[i] * strip.WidthM;
                moment += CirculationM[i] * strip.WidthM * strip.MiddleYM * strip.MiddleYM;
            }
            return moment / lift;
        }
    }

    double[] WashBehind => washBehind ??= lattice.WashBehind(CirculationM);

    /// <summary>Induced drag coefficient of this loading by itself, from the wash far behind.</summary>
    public double InducedDragCoefficient =>
        2 / lattice.Wing.AreaM2 * lattice.Strips.Select((s, i) => CirculationM[i] * WashBehind[i] * s.WidthM).Sum();

    /// <summary>
    /// Yawing moment coefficient that a small change of loading brings by induced drag while the wing carries this
    /// loading: first order in the change.
    /// </summary>
    public double YawingMomentOf(SpanLoading change)
    {
        var (ownWash, changedWash) = (WashBehind, change.WashBehind);
        var yaw = 0.0;
        for (var i = 0; i < CirculationM.Count; i++)
        {
            var drag = 2 * (CirculationM[i] * changedWash[i] + change.CirculationM[i] * ownWash[i]);
            yaw += drag * lattice.Strips[i].WidthM * lattice.Strips[i].MiddleYM;
        }
        return yaw / (lattice.Wing.AreaM2 * lattice.Wing.SpanM);
    }
}

/// <summary>The lift at one place.</summary>
/// <param name="YM">Right of the centreline positive.</param>
/// <param name="LiftM">Section lift coefficient times chord, metres: lift per metre of span over dynamic pressure.</param>
/// <param name="SectionLift">Section lift coefficient.</param>
public sealed record SpanwiseLift(double YM, double LiftM, double SectionLift);
