using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Motion;

/// <summary>
/// Which way it goes, in words a pilot would use, against sums done by hand. Reference: 95 kt calibrated at 3000 ft, so
/// q = ½·1.225·48.87² = 1463 Pa and V = 48.87·1.0453 = 51.1 m/s; S = 13.95 m², b = 9.64 m, 2V/b = 10.6 1/s.
/// </summary>
public class DirectionTests
{
    const double RadPerDeg = Math.PI / 180;

    static readonly Aeroplane Aeroplane = new(Trainer.Airframe);
    static readonly FlightPoint Point = Aeroplane.Reference;
    static readonly Asymmetry RightPanelUp = 0.10 * RadPerDeg * Point.PanelIncidence;
    static readonly Asymmetry TenLitresRight = Point.Of(Trainer.Aboard(77, 77, 25, 35));

    /// <summary>Published dynamics aside, these are the sums the other hand calculations rest on.</summary>
    [Fact]
    public void The_reference_point_is_as_worked_out_by_hand()
    {
        Assert.Equal(1463, Point.Model.DynamicPressurePa, 5.0);
        Assert.Equal(51.1, Point.Model.TrueAirspeedMPerS, 0.1);
        Assert.Equal(10.6, Point.Model.RateUnitRadPerS, 0.05);
    }

    /// <summary>
    /// By hand: each panel half of it, ε = 0.05° = 8.73e-4; the elliptic wing rolls at pb/2V = 16/(3π)·ε = 1.48e-3, that
    /// is 1.48e-3·10.6·57.3 = 0.90 °/s, a little less because the panels begin 0.5 m out.
    /// </summary>
    [Fact]
    public void A_tenth_of_a_degree_more_incidence_on_the_right_panel_rolls_it_left()
    {
        Assert.InRange(Point.RollTendencyDegPerS(RightPanelUp), -0.99, -0.76);
        Assert.True(Read(Manoeuvre.ReleaseWheel, new BankAfter(10, 0), RightPanelUp) < -4);
        Assert.True(Read(Manoeuvre.HoldNeutral, new BankAfter(10, 0), RightPanelUp) < -4);
        Assert.True(Read(Manoeuvre.ReleaseAll, new BankAfter(10, 0), RightPanelUp) < 0);
    }

    /// <summary>
    /// By hand: 7.2 kg·9.807·1.3 m = 91.8 N m; over q·S·b = 196 700 N m that is Cl = 4.67e-4. Damping: lifting line
    /// (6/8)/(1 + 12/(π·6.66)) = 0.477, of which lifting-surface theory leaves 0.87: 0.415. So
    /// 4.67e-4/0.415·10.6·57.3 = 0.68 °/s.
    /// </summary>
    [Fact]
    public void Ten_litres_more_in_the_right_tank_roll_it_right()
    {
        Assert.InRange(Point.RollTendencyDegPerS(TenLitresRight), 0.60, 0.76);
        Assert.True(Read(Manoeuvre.ReleaseWheel, new BankAfter(10, 0), TenLitresRight) > 3);
    }

    /// <summary>
    /// By hand: Cl of the fuel 4.67e-4 must come from the ailerons. Strip theory overstates them at
    /// (a/2)·τ·∫c·y dy·4/(S·b) with a = 4.6, τ = 0.57 and c·y summed from 2.75 to 4.65 m (mean chord 1.29 m, mean arm 3.70 m, so 9.1 m³):
    /// 4.6·0.57·9.1·2/(13.95·9.64) = 0.355 per radian each. So at least 4.67e-4/0.355 = 0.075° of aileron, 0.30° of wheel.
    /// </summary>
    [Fact]
    public void The_wheel_is_held_against_the_heavy_wing()
    {
        var right = Read(Manoeuvre.HoldLevel, new WheelAngle(0), RightPanelUp);
        var left = Read(Manoeuvre.HoldLevel, new WheelAngle(0), TenLitresRight);

        Assert.True(right > 0);
        Assert.InRange(left, -0.60, -0.30);
        Assert.True(Read(Manoeuvre.HoldLevel, new WheelForce(0), RightPanelUp) > 0);
        Assert.True(Read(Manoeuvre.HoldStraight, new WheelForce(0), TenLitresRight) < 0);
    }

    /// <summary>
    /// By hand, two degrees of rudder trailing edge left: β ≈ 0.065/0.070·2° = 1.86°, side force coefficient
    /// −0.45·0.0325 + 0.16·0.0349 = −0.0090, that is 0.0090·1463·13.95/6276 = 0.0294 of the weight, 1.68° or 0.48 of a
    /// ball's width. It turns left at 0.0294·9.81/51.1 rad/s = 0.32 °/s.
    /// </summary>
    [Fact]
    public void Nose_left_yaw_with_the_wings_held_level_puts_the_ball_right()
    {
        Asymmetry noseLeft = new(RudderOffsetRad: 2 * RadPerDeg);

        Assert.InRange(Read(Manoeuvre.HoldLevel, new BallReading(0), noseLeft), 0.36, 0.60);
        Assert.InRange(Read(Manoeuvre.HoldLevel, new HeadingRate(0), noseLeft), -0.42, -0.24);
        Assert.True(Read(Manoeuvre.ReleaseAll, new BankAfter(10, 0), noseLeft) < 0);
        Assert.Equal(0, Read(Manoeuvre.ReleaseWheel, new BankAfter(10, 0), noseLeft), 9);
    }

    /// <summary>A float to right wing down acts when the wheel is let go; put at its neutral, the wheel hides it.</summary>
    [Fact]
    public void Ailerons_that_float_right_wing_down_roll_right_only_when_let_go()
    {
        Asymmetry floating = new(AileronFloatRad: 0.5 * RadPerDeg);

        Assert.True(Read(Manoeuvre.ReleaseWheel, new BankAfter(10, 0), floating) > 3);
        Assert.Equal(0, Read(Manoeuvre.HoldNeutral, new BankAfter(10, 0), floating), 9);
        Assert.True(Read(Manoeuvre.HoldLevel, new WheelForce(0), floating) < 0);
        Assert.Equal(0, Read(Manoeuvre.HoldLevel, new WheelAngle(0), floating), 9);
    }

    [Fact]
    public void A_flap_lower_on_the_right_rolls_it_left() =>
        Assert.True(Point.RollTendencyDegPerS(RadPerDeg * Point.FlapDifference) < -1);

    /// <summary>Following a ball that shows right in truth makes the feet push the nose right, and the aeroplane rolls.</summary>
    [Fact]
    public void A_ball_half_a_width_out_rolls_it_more_than_a_tenth_of_a_degree_of_panel()
    {
        Asymmetry crooked = new(BallOffsetWidths: 0.5);

        Assert.True(Math.Abs(Point.RollTendencyDegPerS(crooked)) > Math.Abs(Point.RollTendencyDegPerS(RightPanelUp)));
        Assert.Equal(0, Read(Manoeuvre.ReleaseWheel, new BallReading(0), crooked), 9);
    }

    /// <summary>By hand: 0.90 °/s of panel against 0.068 °/s for each litre is about 13 litres more on the right.</summary>
    [Fact]
    public void More_incidence_on_the_right_is_balanced_by_more_fuel_on_the_right() =>
        Assert.InRange(Read(Manoeuvre.BalanceFuel, new FuelDifference(0), RightPanelUp), 10, 15);

    [Fact]
    public void Aerodynamic_roll_grows_with_airspeed_and_that_of_weight_falls()
    {
        var (slow, fast) = (At(75), At(105));

        Assert.True(Math.Abs(Panel(fast)) > 1.3 * Math.Abs(Panel(slow)));
        Assert.True(fast.RollTendencyDegPerS(TenLitresRight) < slow.RollTendencyDegPerS(TenLitresRight) / 1.3);

        static double Panel(FlightPoint point) => point.RollTendencyDegPerS(0.1 * RadPerDeg * point.PanelIncidence);
    }

    /// <summary>Right-turning yaw by slipstream: less power than the reference takes part of the left-turning moments away.</summary>
    [Fact]
    public void Less_power_than_the_reference_leaves_the_built_in_right_offsets_showing()
    {
        var idle = Aeroplane.At(Trainer.Point(Manoeuvre.HoldLevel, 95) with { PowerPercent = 0 });

        Assert.Equal(0.65 * 0.0010, idle.Slipstream.Yawing, 4e-6);
        Assert.Equal(0.65 * 0.0005, idle.Slipstream.Rolling, 4e-6);
        Assert.Equal(0, Aeroplane.Reference.Slipstream.Yawing, 12);
    }

    static FlightPoint At(double casKt) => Aeroplane.At(Trainer.Point(Manoeuvre.ReleaseWheel, casKt));

    static double Read(Manoeuvre manoeuvre, Reading reading, Asymmetry asymmetry) =>
        PilotReading.Predict(Point, manoeuvre, reading, asymmetry)!.Value;
}
