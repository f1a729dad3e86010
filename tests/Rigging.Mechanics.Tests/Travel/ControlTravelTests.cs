using Rigging.Mechanics.Survey;
using Rigging.Mechanics.Travel;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Travel;

public class ControlTravelTests
{
    static readonly TravelLimits Ailerons = new(
        new(Angle.FromDegrees(19), Angle.FromDegrees(21)), new(Angle.FromDegrees(14), Angle.FromDegrees(16)), Angle.FromDegrees(1), "invented");

    /// <summary>By hand: a protractor that shows 0.7° on a level place, on an aileron built 1° down, moved 20° up and 15° down.</summary>
    [Fact]
    public void The_zero_of_the_protractor_and_the_angle_it_is_built_at_do_not_count()
    {
        var aileron = Read("left aileron", zero: 0.7, built: 1, up: 20, down: 15);

        Assert.Equal(20, aileron.Up.Degrees, 1e-12);
        Assert.Equal(15, aileron.Down.Degrees, 1e-12);
        Assert.All(ControlTravel.Of(aileron, Ailerons), finding => Assert.True(finding.Within));
    }

    [Fact]
    public void Too_little_and_too_much_are_both_found()
    {
        var findings = ControlTravel.Of(Read("left aileron", 0, 0, 18.9, 16.1), Ailerons);

        Assert.All(findings, finding => Assert.False(finding.Within));
        Assert.Equal("left aileron up 18.9°, allowed 19.0° to 21.0°.", findings[0].Sentence);
    }

    [Fact]
    public void Exactly_at_a_limit_is_within_it() =>
        Assert.All(ControlTravel.Of(Read("left aileron", 0.3, 0.7, 21, 14), Ailerons), finding => Assert.True(finding.Within));

    [Fact]
    public void Each_inside_its_limits_they_may_still_differ_too_much()
    {
        var findings = ControlTravel.OfPair(Read("left aileron", 0, 0, 19.2, 15), Read("right aileron", 0, 0, 20.8, 15.5), Ailerons);

        Assert.Equal("right less left up", Assert.Single(findings, finding => !finding.Within).What);
    }

    [Fact]
    public void Left_and_right_changed_over_turns_the_difference_round()
    {
        var (one, other) = (Read("a", 0, 0, 19.2, 15), Read("b", 0, 0, 20.8, 15.5));

        Assert.Equal(
            -ControlTravel.OfPair(one, other, Ailerons)[^1].Measured.Degrees,
            ControlTravel.OfPair(other, one, Ailerons)[^1].Measured.Degrees, 1e-12);
    }

    static SurfaceTravel Read(string surface, double zero, double built, double up, double down)
    {
        ReversedReading At(double deg) => new(Angle.FromDegrees(built + deg + zero), Angle.FromDegrees(-built - deg + zero));
        return new SurfaceReadings(surface, At(0), At(-up), At(down)).Travel;
    }
}
