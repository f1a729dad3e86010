using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation.Wing;

/// <summary>
/// What the lattice says about one airframe: moments per radian of each way a wing can differ. Differences are right minus left,
/// each wing half of it, so a positive one rolls left (negative). The aileron's is per radian of each aileron, right wing down.
/// </summary>
public sealed class WingNumbers
{
    readonly Line panelYaw;
    readonly Line tipYaw;
    readonly Line flapYaw;

    public WingNumbers(AirframeFile file)
    {
        var lattice = new Lattice(file.Stations, file.Span);
        var half = file.Span / 2;
        var aileronShare = FlapShare(file.AileronChordFraction);
        var flapShare = FlapShare(file.FlapChordFraction);
        var uniform = lattice.Circulation(_ => 1);
        var twist = lattice.Circulation(strip => strip.Incidence);
        var panel = lattice.Circulation(strip => strip.Within(file.PanelInboard, half) / 2);
        var tip = lattice.Circulation(strip => Math.Sign(strip.At) * Math.Max(0, Math.Abs(strip.At) - file.PanelInboard) / (half - file.PanelInboard) / 2);
        var flap = lattice.Circulation(strip => flapShare * strip.Within(file.FlapInboard, file.FlapOutboard) / 2);
        Damping = lattice.Roll(lattice.Circulation(strip => strip.At / half));
        Aileron = -aileronShare * lattice.Roll(lattice.Circulation(strip => strip.Within(file.AileronInboard, file.AileronOutboard)));
        (Panel, Tip, Flap) = (lattice.Roll(panel), lattice.Roll(tip), lattice.Roll(flap));
        panelYaw = InducedBy(lattice, panel, twist, uniform);
        tipYaw = InducedBy(lattice, tip, twist, uniform);
        flapYaw = InducedBy(lattice, flap, twist, uniform);
        Area = lattice.Area;
    }

    public double Area { get; }

    /// <summary>Per pb/2V; negative.</summary>
    public double Damping { get; }

    public double Aileron { get; }

    public double Panel { get; }

    public double Tip { get; }

    public double Flap { get; }

    /// <summary>Induced yaw per radian at a lift coefficient, nose right positive: (panel, tip, flap). It grows in a straight line with lift.</summary>
    public (double Panel, double Tip, double Flap) Yaw(double lift) => (panelYaw.At(lift), tipYaw.At(lift), flapYaw.At(lift));

    static Line InducedBy(Lattice lattice, double[] extra, double[] twist, double[] uniform)
    {
        double At(double lift)
        {
            var attitude = (lift - lattice.Lift(twist)) / lattice.Lift(uniform);
            return lattice.Yaw([.. uniform.Zip(twist, (u, t) => attitude * u + t)], extra);
        }
        return new(At(0), At(1) - At(0));
    }

    readonly record struct Line(double Start, double Slope)
    {
        public double At(double x) => Start + Slope * x;
    }

    /// <summary>Thin-aerofoil incidence change per unit deflection of a plain flap of this share of the chord.</summary>
    public static double FlapShare(double chordFraction)
    {
        var angle = Math.Acos(2 * chordFraction - 1);
        return 1 - (angle - Math.Sin(angle)) / Math.PI;
    }
}
