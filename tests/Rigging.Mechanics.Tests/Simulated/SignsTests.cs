using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Motion;
using Loaded = Rigging.Simulation.Motion.Load;
using Point = Rigging.Simulation.Motion.TestPoint;

namespace Rigging.Mechanics.Tests.Simulated;

/// <summary>The contract's words about directions, one by one.</summary>
public class SignsTests
{
    public static TheoryData<string> Airframes => [.. AirframeFile.All.Select(file => file.Id)];

    static Aeroplane With(string airframe, string cause, double amplitude) => new(AirframeFile.Named(airframe), Departures.None, Faults.Of(cause, amplitude));

    static double Shown(Aeroplane aeroplane, string manoeuvre, string kind, double argument = 0, Loaded? load = null)
    {
        var file = aeroplane.File;
        var point = new Point(
            manoeuvre, file.ReferenceKt, file.ReferenceFt, Flow.StandardC(file.ReferenceFt), file.ReferencePower, load ?? Loaded.Of(file.ReferenceLoad));
        return Instruments.Shows(aeroplane, point, new(kind, argument))!.Value;
    }

    [Theory, MemberData(nameof(Airframes))]
    public void An_aeroplane_with_nothing_wrong_stays_where_it_is(string airframe)
    {
        var straight = new Aeroplane(AirframeFile.Named(airframe), Departures.None, Faults.None);
        Assert.Equal(0, Shown(straight, "release-wheel", "bank-after", 10), 9);
        Assert.Equal(0, Shown(straight, "release-all", "heading-change", 10), 9);
        Assert.Equal(0, Shown(straight, "hold-level", "ball"), 9);
        Assert.Equal(0, straight.TendencyDegPerS, 9);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void More_incidence_on_the_right_lifts_it_and_rolls_left(string airframe)
    {
        var aeroplane = With(airframe, Faults.Panel, 0.2);
        Assert.True(Shown(aeroplane, "release-wheel", "bank-after", 5) < 0);
        Assert.True(aeroplane.TendencyDegPerS < 0);
        Assert.True(Shown(aeroplane, "hold-level", "wheel-angle") > 0);
        Assert.True(Shown(aeroplane, "hold-level", "wheel-force") > 0);
        Assert.True(Shown(aeroplane, "balance-fuel", "fuel-difference") > 0);
        Assert.True(With(airframe, Faults.Tip, 0.5).TendencyDegPerS < 0);
        Assert.True(With(airframe, Faults.Flap, 1).TendencyDegPerS < 0);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void The_aileron_floats_only_hands_off_and_the_neutral_is_off_only_when_held(string airframe)
    {
        Assert.True(Shown(With(airframe, Faults.Float, 0.3), "release-wheel", "bank-after", 5) > 0);
        Assert.Equal(0, Shown(With(airframe, Faults.Float, 0.3), "hold-neutral", "bank-after", 5), 9);
        Assert.True(Shown(With(airframe, Faults.Neutral, 0.3), "hold-neutral", "bank-after", 5) > 0);
        Assert.Equal(0, Shown(With(airframe, Faults.Neutral, 0.3), "release-wheel", "bank-after", 5), 9);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void A_rudder_with_its_trailing_edge_left_turns_left_and_skids_the_ball_right_feet_off(string airframe)
    {
        var aeroplane = With(airframe, Faults.Rudder, 2);
        Assert.True(Shown(aeroplane, "hold-level", "heading-rate") < 0);
        Assert.True(Shown(aeroplane, "hold-level", "ball") > 0);
        Assert.True(Shown(aeroplane, "release-all", "bank-after", 8) < 0);
        Assert.Equal(0, Shown(aeroplane, "release-wheel", "bank-after", 8), 9);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void Feet_that_follow_a_ball_that_shows_right_slip_left_and_roll_right(string airframe)
    {
        var aeroplane = With(airframe, Faults.Ball, 0.5);
        Assert.Equal(0.5, Shown(aeroplane, "hold-level", "ball"), 9);
        Assert.True(Shown(aeroplane, "release-wheel", "bank-after", 5) > 0);
        Assert.Equal(0, aeroplane.TendencyDegPerS, 9);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void A_heavier_right_side_rolls_right_and_less_so_the_faster(string airframe)
    {
        var file = AirframeFile.Named(airframe);
        var aeroplane = With(airframe, Faults.Fuel, 20);
        double Rolls(double knots) => Instruments.Shows(aeroplane, new(
            "release-wheel", knots, 3000, 9, file.ReferencePower, Loaded.Of(file.ReferenceLoad)), new("roll-rate"))!.Value;
        Assert.True(Rolls(70) > Rolls(95) && Rolls(95) > 0);
        // The gauges call it even at 20 L more on the right: burning must show 20 L more on the left.
        Assert.Equal(-20, Shown(aeroplane, "balance-fuel", "fuel-difference"), 9);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void Power_acts_by_the_power_and_not_by_the_airspeed(string airframe)
    {
        var file = AirframeFile.Named(airframe);
        var aeroplane = With(airframe, Faults.Slipstream, 1);
        var reference = Flow.At(file.ReferenceKt, file.ReferenceFt, Flow.StandardC(file.ReferenceFt)).Pressure;
        Assert.Equal(0, aeroplane.PowerEffect(file.ReferencePower, reference).Yaw, 12);
        Assert.Equal(2 * file.Derivatives.SlipstreamCn * (2 - file.ReferencePower), aeroplane.PowerEffect(1, reference / 2).Yaw, 12);
    }

    [Theory, MemberData(nameof(Airframes))]
    public void The_mirror_image_flies_the_mirror_image(string airframe)
    {
        foreach (var cause in Faults.Proportional)
            foreach (var (manoeuvre, kind) in new[] { ("release-wheel", "bank-after"), ("hold-neutral", "bank-after"), ("release-all", "heading-change"), ("hold-level", "ball"), ("hold-level", "wheel-angle") })
                Assert.Equal(Shown(With(airframe, cause, 0.3), manoeuvre, kind, 7), -Shown(With(airframe, cause, -0.3), manoeuvre, kind, 7), 9);
    }

    [Fact]
    public void Friction_leaves_it_rolling_the_way_of_the_last_input()
    {
        var file = AirframeFile.Named("st2");
        var aeroplane = With("st2", Faults.Friction, 3);
        double After(int input) => Instruments.Shows(aeroplane, new Point(
            "release-wheel", 95, 3000, 9, 0.65, Loaded.Of(file.ReferenceLoad))
        { LastInput = input }, new("bank-after", 5))!.Value;
        Assert.True(After(-1) < -5 && After(1) > 5);
        Assert.Equal(0, aeroplane.TendencyDegPerS, 9);
    }
}
