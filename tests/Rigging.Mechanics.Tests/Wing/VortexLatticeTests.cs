using CsCheck;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

public class VortexLatticeTests
{
    [Fact]
    public void Damping_in_roll_matches_the_published_lifting_surface_chart()
    {
        foreach (var row in Published.Table("lifting-surface-published.csv"))
        {
            var actual = RollDamping(new(Planforms.Of(row)));
            Assert.True(Math.Abs(actual / row.Number("rollDamping") - 1) < 0.03, $"{row}: {actual}");
        }
    }

    /// <summary>NACA ARR L5F23 (1945), summary: 13 % less than lifting line, printed to the percent.</summary>
    [Fact]
    public void An_elliptic_wing_of_aspect_ratio_six_has_087_of_the_lifting_line_damping()
    {
        var wing = Planforms.Elliptic(6);
        var line = new LiftingLine(wing, 99).Response(IncidenceShape.RollRate(wing.SpanM)).RollingMomentCoefficient;

        Assert.InRange(-RollDamping(new(wing)) / line, 0.855, 0.885);
    }

    /// <summary>
    /// A very long wing is the lifting line, and there the section's own lift slope must come through: half a per cent
    /// at aspect ratio 200 for slopes below and above 2π.
    /// </summary>
    [Theory, InlineData(5.0), InlineData(6.0), InlineData(6.6)]
    public void A_very_long_wing_takes_the_lift_slope_of_its_section(double slope)
    {
        var wing = Planforms.Tapered(200, 1, slope);
        var lattice = new VortexLattice(wing, 80, 2).Response(IncidenceShape.Uniform(wing.SpanM)).LiftCoefficient;
        var line = new LiftingLine(wing, 99).Response(IncidenceShape.Uniform(wing.SpanM)).LiftCoefficient;

        Assert.InRange(lattice / line, 0.995, 1.005);
    }

    /// <summary>Exact for any wing: twist that grows linearly to ±ε at the tips is the incidence of a roll rate pb/2V = ε.</summary>
    [Fact]
    public void Linear_twist_rolls_at_the_rate_of_its_tips()
    {
        var lattice = new VortexLattice(Planforms.Trainer);
        var half = Planforms.Trainer.SpanM / 2;
        var twist = lattice.Response(IncidenceShape.TwistDifference(0, half)).RollingMomentCoefficient;

        Assert.Equal(0.5, twist / -RollDamping(lattice), 9);
    }

    [Fact]
    public void Finer_lattices_change_the_answers_by_less_than_one_per_cent()
    {
        var (coarse, fine) = (new VortexLattice(Planforms.Trainer), new VortexLattice(Planforms.Trainer, 120, 4));
        var panel = IncidenceShape.BandDifference(0.5, 4.82);
        var ailerons = IncidenceShape.BandDifference(2.75, 4.65);

        Assert.InRange(RollDamping(coarse) / RollDamping(fine), 0.99, 1.01);
        Assert.InRange(Rolling(coarse, panel) / Rolling(fine, panel), 0.99, 1.01);
        Assert.InRange(Rolling(coarse, ailerons) / Rolling(fine, ailerons), 0.99, 1.01);
    }

    static readonly Gen<IncidenceShape.Piece> Pieces =
        from inboard in Gen.Double[0, 4]
        from width in Gen.Double[0.1, 0.8]
        from root in Gen.Double[-1, 1]
        from tip in Gen.Double[-1, 1]
        select new IncidenceShape.Piece(inboard, inboard + width, root, tip);

    static readonly VortexLattice Lattice = new(Planforms.Trainer);

    [Fact]
    public void Swapping_left_and_right_turns_every_moment_round() => Pieces.Sample(piece =>
    {
        var right = Lattice.Response(new([piece]));
        var left = Lattice.Response(new([new(-piece.ToYM, -piece.FromYM, piece.AtToRad, piece.AtFromRad)]));
        var cruise = Lattice.AtLift(0.4);
        return Math.Abs(right.RollingMomentCoefficient + left.RollingMomentCoefficient) < 1e-9
            && Math.Abs(right.LiftCoefficient - left.LiftCoefficient) < 1e-9
            && Math.Abs(cruise.YawingMomentOf(right) + cruise.YawingMomentOf(left)) < 1e-9;
    });

    [Fact]
    public void More_incidence_on_the_right_panel_rolls_left_and_drags_the_nose_right()
    {
        var change = Lattice.Response(IncidenceShape.BandDifference(0.5, 4.82));

        Assert.True(change.RollingMomentCoefficient < 0);
        Assert.True(Lattice.AtLift(0.4).YawingMomentOf(change) > 0);
    }

    /// <summary>The elliptic wing spends the least: CL²/(π·AR).</summary>
    [Fact]
    public void Induced_drag_of_the_elliptic_wing_is_the_textbook_least()
    {
        var loading = new VortexLattice(Planforms.Elliptic(6), 80, 2).AtLift(0.5);

        Assert.Equal(0.5, loading.LiftCoefficient, 9);
        Assert.InRange(loading.InducedDragCoefficient / (0.25 / (Math.PI * 6)), 0.995, 1.02);
    }

    /// <summary>
    /// Flap effectiveness chart of the handbook (fig. 8.53a, second-hand digitisation, commit
    /// a56728d3a8c0cc9b513c13cfec8175442f48027f): thin-aerofoil theory lies within 1.2 % of it.
    /// </summary>
    [Theory, InlineData(0.09804, 0.3932), InlineData(0.1922, 0.5458), InlineData(0.2366, 0.5992), InlineData(0.3203, 0.6856)]
    public void Flap_effectiveness_lies_on_the_published_chart(double share, double published) =>
        Assert.InRange(IncidenceShape.FlapEffectiveness(share) / published, 0.988, 1.012);

    static double RollDamping(VortexLattice lattice) => -Rolling(lattice, IncidenceShape.RollRate(lattice.Wing.SpanM));

    static double Rolling(VortexLattice lattice, IncidenceShape shape) => lattice.Response(shape).RollingMomentCoefficient;
}
