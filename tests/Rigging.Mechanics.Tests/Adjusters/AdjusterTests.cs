using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Adjusters;

public class AdjusterTests
{
    static readonly Airframe Strutted = Trainer.Airframe with { Wing = Trainer.Airframe.Wing with { Bracing = Bracing.StrutAtEachSpar } };

    static readonly StrutForkOnFile Fork = new(1, 30, 0.8, 2.6, 0, 12, 0.5, "invented");

    static readonly FlapRodOnFile Rod = new(1, 60, LengtheningLowers: true, -6, 6, 0.5, "invented");

    /// <summary>
    /// By hand: 1 mm longer at 30° lifts the fitting 2 mm; over 800 mm that is 0.1432° of twist. As a tip difference that grows on to the
    /// tip it counts for more than itself and less than (4.82 − 0.5)/(2.6 − 0.5) = 2.06 times itself.
    /// </summary>
    [Fact]
    public void A_turn_of_the_right_strut_fork_takes_a_seventh_of_a_degree_off_the_right_wing()
    {
        var fork = StrutFork.On(new Aeroplane(Strutted), Side.Right, Fork).Value!;

        Assert.Equal(Cause.TipIncidenceDifference, fork.Cause);
        Assert.InRange(fork.PerUnit, -2.06 * 0.1432, -0.1432);
        Assert.Equal(-fork.PerUnit, StrutFork.On(new Aeroplane(Strutted), Side.Left, Fork).Value!.PerUnit, 1e-12);
    }

    [Fact]
    public void A_fork_at_the_tip_is_the_tip_difference_itself()
    {
        var atTip = Fork with { FittingYM = 4.8199 };

        Assert.Equal(-0.1432, StrutFork.On(new Aeroplane(Strutted), Side.Right, atTip).Value!.PerUnit, 1e-4);
    }

    [Fact]
    public void Without_a_strut_at_each_spar_there_is_no_fork() =>
        Assert.Equal("no-rear-strut", Assert.Single(StrutFork.On(new Aeroplane(Trainer.Airframe), Side.Right, Fork).Refusals).Code);

    /// <summary>By hand: atan(1/60) = 0.9548°.</summary>
    [Theory]
    [InlineData(Side.Right, true, 0.9548)]
    [InlineData(Side.Left, true, -0.9548)]
    [InlineData(Side.Right, false, -0.9548)]
    public void A_turn_of_a_flap_rod_is_most_of_a_degree_of_flap(Side wing, bool lowers, double expected) =>
        Assert.Equal(expected, FlapRod.On(wing, Rod with { LengtheningLowers = lowers }).Value!.PerUnit, 1e-4);

    /// <summary>By hand, gain 0.35 on the right: 4° up drives the right aileron 1.4° down, so it floats 1.4° the way that lifts the right wing.</summary>
    [Fact]
    public void The_right_tab_bent_up_lifts_the_right_wing()
    {
        var tab = TabBend.OfAileron(Trainer.Airframe, Angle.FromDegrees(20)).Value!;

        Assert.Equal(-1.4, tab.AmplitudeChange(0, -4), 1e-12);
        Assert.True(new Aeroplane(Trainer.Airframe).Reference.RollTendencyDegPerS(new(AileronFloatRad: -0.01)) < 0);
    }

    [Fact]
    public void A_tab_on_the_other_aileron_does_the_opposite()
    {
        var onLeft = Trainer.Airframe with { Ailerons = Trainer.Airframe.Ailerons with { FixedTab = new(Side.Left, 0.35) } };

        Assert.Equal(1.4, TabBend.OfAileron(onLeft, Angle.FromDegrees(20)).Value!.AmplitudeChange(0, -4), 1e-12);
    }

    [Fact]
    public void A_rudder_tab_bent_left_drives_the_rudder_right() =>
        Assert.Equal(-3, TabBend.OfRudder(Trainer.Airframe, Angle.FromDegrees(20)).Value!.AmplitudeChange(0, 10), 1e-12);

    [Fact]
    public void Without_a_tab_on_file_nothing_is_bent()
    {
        var bare = Trainer.Airframe with { Rudder = null, Ailerons = Trainer.Airframe.Ailerons with { FixedTab = null } };

        Assert.Equal("no-tab-on-file", Assert.Single(TabBend.OfAileron(bare, Angle.FromDegrees(20)).Refusals).Code);
        Assert.Equal("no-tab-on-file", Assert.Single(TabBend.OfRudder(bare, Angle.FromDegrees(20)).Refusals).Code);
    }

    [Fact]
    public void A_tab_is_not_bent_by_a_bound_nor_without_a_stop()
    {
        var bounded = Trainer.Airframe with { Rudder = new(0.3, FixedTabBend: new(20, TabGain.UpperBound, "thin aerofoil")) };

        Assert.Equal("tab-gain-not-measured", Assert.Single(TabBend.OfRudder(bounded).Refusals).Code);
        Assert.Equal("tab-stop-not-on-file", Assert.Single(TabBend.OfAileron(Trainer.Airframe).Refusals).Code);
    }

    [Fact]
    public void The_stop_on_file_wins_over_the_callers()
    {
        var stopped = Trainer.Airframe with { Rudder = new(0.3, FixedTabBend: new(12, TabGain.Measured, "invented")) };

        Assert.Equal(12, TabBend.OfRudder(stopped, Angle.FromDegrees(20)).Value!.Greatest);
    }

    [Fact]
    public void A_wanted_change_is_met_within_half_a_step_and_taken_back_by_going_back() => Gen.Select(Gen.Double[-2, 2], Gen.Double[-3, 3]).Sample((wanted, from) =>
    {
        var rod = FlapRod.On(Side.Right, Rod).Value!;
        return !rod.For(from, wanted).Ok || rod.For(from, wanted).Value is { } move
            && Math.Abs(move.LeftOver) <= rod.Resolution / 2 + 1e-12
            && Math.Abs(rod.AmplitudeChange(move.From, move.To) + rod.AmplitudeChange(move.To, move.From)) < 1e-12
            && Math.Abs(move.AmplitudeChange + move.LeftOver - wanted) < 1e-12;
    });

    [Theory]
    [InlineData(5.5, 2, "at-stops")]
    [InlineData(0, 0.2, "nothing-to-turn")]
    [InlineData(6.5, -2, "found-beyond-stops")]
    public void Stops_and_steps_are_kept(double from, double wanted, string code) =>
        Assert.Equal(code, Assert.Single(FlapRod.On(Side.Right, Rod).Value!.For(from, wanted).Refusals).Code);

    [Fact]
    public void Hinge_moments_lie_on_the_published_chart()
    {
        foreach (var row in Published.Table("hinge-moment-published.csv"))
            Assert.Equal(row.Number("perRad"), ThinAerofoil.HingeMomentOfFlap(row.Number("chordShare")), row.Number("tolerance"));
    }

    /// <summary>No published value: an independent sum of Glauert's series gives −1.2599 and −0.9229 for a fifth of a fifth, so 1.365.</summary>
    [Fact]
    public void The_greatest_possible_tab_gain_is_that_of_the_series()
    {
        Assert.Equal(-1.2599, ThinAerofoil.HingeMomentOfTab(0.2, 0.2), 2e-4);
        Assert.Equal(1.365, ThinAerofoil.TabGainAtMost(0.2, 0.2, 1, drivesBoth: false), 1e-3);
        Assert.Equal(1.365 / 4, ThinAerofoil.TabGainAtMost(0.2, 0.2, 0.5, drivesBoth: true), 1e-3);
    }

    [Fact]
    public void A_wider_tab_can_do_more_up_to_a_third_of_the_chord() => Gen.Select(Gen.Double[0.1, 0.4], Gen.Double[0.05, 0.25]).Sample((surface, tab) =>
        ThinAerofoil.TabGainAtMost(surface, tab, 1, false) < ThinAerofoil.TabGainAtMost(surface, tab + 0.05, 1, false), iter: 50);
}
