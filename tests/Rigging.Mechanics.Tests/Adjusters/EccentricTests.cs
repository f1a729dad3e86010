using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Adjusters;

public sealed class EccentricTests
{
    static readonly Gen<(Eccentric Eccentric, Angle Turn)> Cases = Gen.Select(Gen.Double[0.0005, 0.006], Gen.Double[0.4, 1.5], Gen.Double[-89.9, 89.9])
        .Select((throwM, spacingM, turnDeg) => (Bushing.With(throwM, spacingM), Angle.FromDegrees(turnDeg)));

    [Fact]
    public void A_flat_of_a_hexagon_is_60_degrees_and_six_make_a_turn()
    {
        var hexagon = Bushing.With(0.002, 0.9);

        Assert.Equal(60, hexagon.PerFlat.Degrees);
        Assert.Equal(6, hexagon.FlatsBetween(Angle.Zero, Angle.FromDegrees(360)), 12);
        Assert.Equal(0.5, hexagon.FlatsBetween(Angle.FromDegrees(15), Angle.FromDegrees(-15)), 12);
    }

    /// <summary>By hand: 0.0625 / 30 = 0.0020833; × 57.2958 = 0.11937, so 0.12° to the printed hundredth.</summary>
    [Fact]
    public void A_sixteenth_of_an_inch_at_thirty_inches_is_0_12_degrees_of_incidence()
    {
        var eccentric = Bushing.With(Bushing.Inch / 16, 30 * Bushing.Inch);

        Assert.Equal(0.12, eccentric.IncidenceAt(Angle.FromDegrees(90)).Degrees, 0.005);
        Assert.Equal(0.119366, eccentric.IncidenceAt(Angle.FromDegrees(90)).Degrees, 1e-6);
    }

    /// <summary>By hand, throw 1/8 in: sin 30° = 1/2, so 1/16 in; 1 − cos 60° = 1/2, so 1/16 in along the span.</summary>
    [Fact]
    public void At_thirty_degrees_half_the_throw_is_used_and_at_sixty_half_of_it_has_gone_spanwise()
    {
        var eccentric = Bushing.With(Bushing.Inch / 8, 30 * Bushing.Inch);

        Assert.Equal(1.0 / 16, eccentric.DropAt(Angle.FromDegrees(30)).Inches, 1e-12);
        Assert.Equal(1.0 / 16, eccentric.SpanwiseMoveAt(Angle.FromDegrees(60)).Inches, 1e-12);
    }

    [Fact]
    public void A_positive_angle_lowers_the_trailing_edge_and_raises_the_incidence() => Cases.Sample((eccentric, turn) =>
        Math.Sign(eccentric.DropAt(turn).Meters) == Math.Sign(turn.Degrees) && Math.Sign(eccentric.IncidenceAt(turn).Degrees) == Math.Sign(turn.Degrees));

    [Fact]
    public void Turning_the_other_way_does_the_opposite() => Cases.Sample((eccentric, turn) =>
        Math.Abs(eccentric.IncidenceAt(turn).Degrees + eccentric.IncidenceAt(-turn).Degrees) < 1e-12
        && Math.Abs(eccentric.SpanwiseMoveAt(turn).Meters - eccentric.SpanwiseMoveAt(-turn).Meters) < 1e-15);

    [Fact]
    public void Turning_and_turning_back_changes_nothing() => Cases.Sample((eccentric, turn) =>
    {
        var from = Angle.FromDegrees(12);
        return Math.Abs((eccentric.IncidenceChange(from, turn) + eccentric.IncidenceChange(turn, from)).Degrees) < 1e-12;
    });

    // Near 90° the arcsine gives back only the square root of the rounding.
    [Fact]
    public void The_angle_for_a_drop_or_an_incidence_gives_it_back() => Cases.Sample((eccentric, turn) =>
        Math.Abs(eccentric.AngleForDrop(eccentric.DropAt(turn))!.Value.Degrees - turn.Degrees) < 1e-6
        && Math.Abs(eccentric.AngleForIncidence(eccentric.IncidenceAt(turn))!.Value.Degrees - turn.Degrees) < 1e-6);

    [Fact]
    public void The_sensitivity_is_the_slope_of_the_incidence() => Cases.Sample((eccentric, turn) =>
    {
        const double step = 0.001;
        var slope = (eccentric.IncidenceAt(turn + Angle.FromDegrees(step)) - eccentric.IncidenceAt(turn - Angle.FromDegrees(step))).Degrees / (2 * step);
        return Math.Abs(slope - eccentric.SensitivityAt(turn)) < 1e-9;
    });

    [Fact]
    public void Sensitivity_falls_to_nothing_at_a_quarter_turn_and_reverses_past_it()
    {
        var eccentric = Bushing.With(0.0018, 0.88);

        Assert.Equal(0, eccentric.SensitivityAt(Angle.FromDegrees(90)), 1e-15);
        Assert.True(eccentric.SensitivityAt(Angle.FromDegrees(89)) > 0);
        Assert.True(eccentric.SensitivityAt(Angle.FromDegrees(100)) < 0);
        Assert.True(eccentric.SensitivityAt(Angle.FromDegrees(-100)) < 0);
    }

    [Fact]
    public void More_than_the_throw_cannot_be_reached()
    {
        var eccentric = Bushing.With(0.0018, 0.88);

        Assert.Null(eccentric.AngleForDrop(Length.FromMillimeters(1.81)));
        Assert.Null(eccentric.AngleForIncidence(Angle.FromDegrees(-0.2)));
        Assert.Null(eccentric.AngleForIncidence(Angle.FromDegrees(95)));
    }

    [Theory]
    [InlineData(Bracing.SingleStrutAtRearSpar)]
    [InlineData(Bracing.StrutAtEachSpar)]
    [InlineData(Bracing.Wires)]
    public void A_panel_that_would_twist_is_refused(Bracing bracing)
    {
        var refused = Eccentric.On(Bushing.Example with { Wing = Bushing.Example.Wing with { Bracing = bracing } });

        Assert.Equal("panel-twists", Assert.Single(refused.Refusals).Code);
        Assert.Null(refused.Value);
    }

    [Fact]
    public void Without_data_on_file_there_is_no_eccentric() =>
        Assert.Equal("eccentric-not-on-file", Assert.Single(Eccentric.On(Bushing.Example with { Eccentric = null }).Refusals).Code);

    /// <summary>
    /// By hand: a wing hanging on a hole that lies inboard at neutral can only go outboard when it turns; a wing that carries
    /// the bushing goes the other way.
    /// </summary>
    [Theory]
    [InlineData(BushingIn.FuselageFitting, Spanwise.Inboard, Spanwise.Outboard)]
    [InlineData(BushingIn.FuselageFitting, Spanwise.Outboard, Spanwise.Inboard)]
    [InlineData(BushingIn.WingFitting, Spanwise.Inboard, Spanwise.Inboard)]
    [InlineData(BushingIn.WingFitting, Spanwise.Outboard, Spanwise.Outboard)]
    public void The_spanwise_move_leaves_the_neutral_offset(BushingIn fitting, Spanwise offset, Spanwise goes)
    {
        var eccentric = Eccentric.On(Bushing.Airframe(0.0018, 0.88, bushingIn: fitting, offset: new(offset, offset))).Value!;

        Assert.Equal(goes, eccentric.SpanwiseDirection(Side.Left));
        Assert.Equal(goes, eccentric.SpanwiseDirection(Side.Right));
    }

    [Fact]
    public void Without_bushing_data_the_spanwise_direction_is_unknown() =>
        Assert.Null(Eccentric.On(Bushing.Airframe(0.0018, 0.88, bushingIn: null)).Value!.SpanwiseDirection(Side.Left));
}
