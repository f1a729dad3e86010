using Rigging.Mechanics.Contract;
using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Wing;
using Aeroplane = Rigging.Mechanics.Motion.Aeroplane;

namespace Rigging.Mechanics.Tests.Simulated;

public class LatticeTests
{
    const double Span = 10;

    static double RollDamping(Station[] wing)
    {
        var lattice = new Lattice(wing, Span);
        return Math.Abs(lattice.Roll(lattice.Circulation(strip => strip.At / (Span / 2))));
    }

    // 0.005 for reading the chart, 0.01 in all: the lattice is coarse at the tips of a pointed wing.
    [Fact]
    public void Damping_in_roll_agrees_with_the_chart() => Assert.All(
        Published.Table("lifting-surface-published.csv").Where(row => row["source"] == "chart"),
        row =>
        {
            var taper = row.Number("taper");
            var root = 2 * Span / row.Number("aspectRatio") / (1 + taper);
            Assert.Equal(row.Number("rollDamping"), RollDamping([new(0, root, 0, 2 * Math.PI), new(Span / 2, root * taper, 0, 2 * Math.PI)]), 0.01);
        });

    [Fact]
    public void An_elliptic_wing_of_aspect_ratio_six_has_87_hundredths_of_the_damping_of_lifting_line()
    {
        var root = 4 * Span / (Math.PI * 6);
        Station[] ellipse = [.. Enumerable.Range(0, 61).Select(i => Math.Sin(Math.PI / 2 * i / 60))
            .Select(y => new Station(y * Span / 2, Math.Max(0.01, root * Math.Sqrt(1 - y * y)), 0, 2 * Math.PI))];
        var liftingLine = Math.PI / 4 * 6 / (6 + 4);
        // The report gives 13 % to the percent.
        Assert.Equal(0.87, RollDamping(ellipse) / liftingLine, 0.015);
    }

    [Fact]
    public void A_linear_twist_reaching_one_unit_at_the_tips_rolls_as_one_unit_of_helix_angle()
    {
        Station[] wing = [new(0, 1.6, 0, 6), new(Span / 2, 1, 0, 6)];
        var lattice = new Lattice(wing, Span);
        var twisted = lattice.Roll(lattice.Circulation(strip => -2 * strip.At / Span));
        Assert.Equal(RollDamping(wing), twisted, 12);
    }

    /// <summary>Flaps at 20° carry lift inboard; what a difference of the panels then does in yaw, by either lattice. 2 %: two grids.</summary>
    [Theory, InlineData(0), InlineData(10), InlineData(20)]
    public void Flaps_lowered_change_the_yaw_of_a_difference_alike(double flapDeg)
    {
        var file = AirframeFile.Named("st2");
        var there = new Aeroplane(Trainer.Airframe).At(Trainer.Point(Manoeuvre.ReleaseWheel, 70) with { FlapDeg = flapDeg });
        var lattice = new Lattice(file.Stations, file.Span);
        var (uniform, twist) = (lattice.Circulation(_ => 1), lattice.Circulation(strip => strip.Incidence));
        var share = WingNumbers.FlapShare(file.FlapChordFraction) * flapDeg * Math.PI / 180;
        var flaps = lattice.Circulation(strip => share * Math.Abs(strip.Within(file.FlapInboard, file.FlapOutboard)));
        var lift = there.Model.WeightN / there.Model.ForceN;
        var attitude = (lift - lattice.Lift(twist) - lattice.Lift(flaps)) / lattice.Lift(uniform);
        var carried = uniform.Zip(twist, (u, t) => attitude * u + t).Zip(flaps, (built, flap) => built + flap).ToArray();
        var yaw = lattice.Yaw(carried, lattice.Circulation(strip => strip.Within(file.PanelInboard, file.Span / 2) / 2));

        Assert.InRange(there.PanelIncidence.Yawing / yaw, 0.98, 1.02);
    }

    [Fact]
    public void A_wing_of_thicker_section_lifts_less()
    {
        Lattice Of(double slope) => new([new(0, 1.5, 0, slope), new(Span / 2, 1.5, 0, slope)], Span);
        var (thin, thick) = (Of(2 * Math.PI), Of(5.5));
        Assert.InRange(thick.Lift(thick.Circulation(_ => 1)) / thin.Lift(thin.Circulation(_ => 1)), 5.5 / (2 * Math.PI), 1);
    }
}
