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

    static readonly Gen<Planform> Wings = Gen.Select(Gen.Double[4, 12], Gen.Double[0.3, 1], Gen.Double[5, 6.6])
        .Select((aspectRatio, taper, slope) => Planforms.Tapered(aspectRatio, taper, slope));

    /// <summary>Exact for any wing: twist that grows linearly to ±ε at the tips is the incidence of a roll rate pb/2V = ε.</summary>
    [Fact]
    public void Linear_twist_rolls_any_wing_at_the_rate_of_its_tips() => Wings.Sample(wing =>
    {
        var lattice = new VortexLattice(wing, 20, 2);
        var twist = 2 * lattice.Response(IncidenceShape.TwistDifference(0, wing.SpanM / 2)).RollingMomentCoefficient;
        return Math.Abs(-twist / RollDamping(lattice) - 1) < 1e-6;
    }, iter: 30);

    /// <summary>A section that lifts next to nothing induces nothing: what is left is strip theory.</summary>
    [Fact]
    public void Without_induced_flow_it_is_the_published_strip_theory()
    {
        const double slope = 1e-6;
        foreach (var row in Published.Table("strip-theory-published.csv"))
        {
            var (span, taper) = (33.4, row.Number("taper"));
            // The root chord of 7.2 ft and the area of 184 ft² are both as printed; they differ by 0.6 %.
            var wing = new Planform(span, row["quantity"] == "ailerons" ? 184 : span * 7.2 * (1 + taper) / 2,
                y => 7.2 * (1 - (1 - taper) * 2 * y / span), _ => slope, _ => 0);
            var lattice = new VortexLattice(wing, 80, 1);
            var actual = row["quantity"] == "damping"
                ? RollDamping(lattice) / slope
                : -2 * 0.36 * 4.44 / slope * Rolling(lattice, IncidenceShape.BandDifference(11.1, 16));
            Assert.True(Math.Abs(actual / row.Number("expected") - 1) <= row.Number("tolerance"), $"{row}: {actual}");
        }
    }

    [Fact]
    public void The_unit_of_length_does_not_matter() => Wings.Sample(wing =>
    {
        const double feetPerM = 1 / 0.3048;
        var inFeet = new Planform(wing.SpanM * feetPerM, wing.AreaM2 * feetPerM * feetPerM,
            y => wing.ChordAt(y / feetPerM) * feetPerM, y => wing.SectionLiftSlopeAt(y / feetPerM), _ => 0);
        var (metres, feet) = (new VortexLattice(wing, 16, 1), new VortexLattice(inFeet, 16, 1));
        var half = wing.SpanM / 2;
        return Math.Abs(Rolling(metres, IncidenceShape.BandDifference(0.1 * half, half))
            / Rolling(feet, IncidenceShape.BandDifference(0.1 * half * feetPerM, half * feetPerM)) - 1) < 1e-9;
    }, iter: 20);

    [Fact]
    public void Two_changes_together_do_what_they_do_one_by_one() => Gen.Select(Pieces, Pieces).Sample((one, other) =>
    {
        if (one.ToYM > other.FromYM && other.ToYM > one.FromYM)
            return true;
        var (a, b, both) = (Lattice.Response(new([one])), Lattice.Response(new([other])), Lattice.Response(new([one, other])));
        return Math.Abs(a.RollingMomentCoefficient + b.RollingMomentCoefficient - both.RollingMomentCoefficient) < 1e-12
            && Math.Abs(a.LiftCoefficient + b.LiftCoefficient - both.LiftCoefficient) < 1e-12;
    });

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

    [Fact]
    public void Flap_effectiveness_lies_on_the_published_chart()
    {
        foreach (var row in Published.Table("flap-effectiveness-published.csv"))
            Assert.InRange(IncidenceShape.FlapEffectiveness(row.Number("chordShare")) / row.Number("effectiveness"), 0.988, 1.012);
    }

    static double RollDamping(VortexLattice lattice) => -Rolling(lattice, IncidenceShape.RollRate(lattice.Wing.SpanM));

    static double Rolling(VortexLattice lattice, IncidenceShape shape) => lattice.Response(shape).RollingMomentCoefficient;
}
