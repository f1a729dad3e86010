using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Tests.Contract;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

public class CoarserGridsTests
{
    static readonly CoarserGrids Grids = new(Planforms.Trainer);
    static readonly VortexLattice Finest = new(Planforms.Trainer, 120, 2);

    [Theory, InlineData(0.5, 4.82), InlineData(2.75, 4.65), InlineData(0.6, 2.7)]
    public void The_error_estimate_covers_what_a_much_finer_grid_changes(double fromYM, double toYM)
    {
        var shape = IncidenceShape.BandDifference(fromYM, toYM);
        var found = Grids.RollingMomentOf(shape);

        Assert.InRange(Math.Abs(Finest.Response(shape).RollingMomentCoefficient - found.Value), 0, found.GridError);
        Assert.InRange(found.GridError / Math.Abs(found.Value), 0, 0.05);
        Assert.True(Math.Abs(found.LiftingLine) > Math.Abs(found.Value));
    }

    [Fact]
    public void An_aeroplane_says_how_far_its_grid_can_be_trusted_and_so_does_every_answer()
    {
        var aeroplane = new Aeroplane(Trainer.Airframe);
        var answer = Assessor.Assess(ContractReader.ReadRequest(Examples.Request).Value!, Trainer.Airframe);

        Assert.Equal("40 × 2", aeroplane.Panels);
        Assert.InRange(aeroplane.GridErrorPercent, 0.01, 5);
        Assert.Contains(answer.Cautions, caution => caution.Contains("on 40 × 2 panels", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_figure_of_the_wing_has_the_lifting_lines_beside_it()
    {
        var figures = new Aeroplane(Trainer.Airframe).Figures;

        Assert.Equal(Enum.GetValues<WingQuantity>(), figures.Select(figure => figure.Quantity));
        // Lifting surface over lifting line: 0.87 in roll at aspect ratio 6 (NACA ARR L5F23); closer in plain lift, further off over a short band.
        Assert.All(figures, figure => Assert.InRange(figure.Checked.Value / figure.Checked.LiftingLine, 0.75, 0.99));
        Assert.All(figures, figure => Assert.InRange(figure.Checked.GridErrorPercent, 0, 5));
    }

    [Fact]
    public void The_lift_along_the_span_adds_up_and_is_alike_on_both_sides()
    {
        var loading = new VortexLattice(Planforms.Trainer).AtLift(0.4);
        var along = loading.Spanwise;

        Assert.Equal(along[0].LiftM, along[^1].LiftM, 1e-12);
        Assert.Equal(-along[0].YM, along[^1].YM, 1e-12);
        // Trapezes between the control points, none at the tips where the lift is nothing.
        var lift = along.Zip(along.Skip(1), (a, b) => (a.LiftM + b.LiftM) / 2 * (b.YM - a.YM)).Sum() / Planforms.Trainer.AreaM2;
        Assert.Equal(0.4, lift, 0.004);
    }

    [Fact]
    public void A_tab_on_one_side_rolls_as_the_same_difference_and_lifts_besides()
    {
        var lattice = new VortexLattice(Planforms.Trainer);
        var (right, left) = (lattice.Response(IncidenceShape.OneSided(3, 4, onRight: true)), lattice.Response(IncidenceShape.OneSided(3, 4, onRight: false)));

        Assert.Equal(lattice.Response(IncidenceShape.BandDifference(3, 4)).RollingMomentCoefficient, right.RollingMomentCoefficient, 1e-12);
        Assert.Equal(-left.RollingMomentCoefficient, right.RollingMomentCoefficient, 1e-12);
        Assert.True(right.RollingMomentCoefficient < 0 && right.LiftCoefficient > 0);
    }
}
