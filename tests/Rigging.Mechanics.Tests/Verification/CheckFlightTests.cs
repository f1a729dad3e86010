using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;
using Rigging.Mechanics.Verification;

namespace Rigging.Mechanics.Tests.Verification;

public class CheckFlightTests
{
    /// <summary>Eight litres more on the right roll it right at about 0.55 °/s, five degrees in ten seconds: outside the limit as flown.</summary>
    static readonly AssessmentRequest FullerRightTank = Reports.Of(
        Trainer.LetGo(75, 6), Trainer.LetGo(95, 5), Trainer.LetGo(105, 4)) is var flight
        ? flight with { TestPoints = [.. flight.TestPoints.Select(point => point with { Load = Trainer.Aboard(77, 77, 18, 26) })] }
        : flight;

    [Fact]
    public void A_slight_right_heaviness_that_a_measured_fuller_right_tank_explains_is_accepted()
    {
        var verdict = CheckFlight.Judge(FullerRightTank, Trainer.Airframe, fuelMeasured: true);

        Assert.Equal(Verdict.Accepted, verdict.Verdict);
        Assert.InRange(verdict.LoadContribution!.Mean, 0.45, 0.65);
        Assert.InRange(verdict.RollTendency!.Mean, -0.25, 0.25);
        Assert.Contains(verdict.Reasons, reason => reason.Contains("fuel and seats add", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_flight_without_measured_fuel_is_not_enough_evidence() =>
        Assert.Equal(Verdict.NotEnoughEvidence, CheckFlight.Judge(FullerRightTank, Trainer.Airframe, fuelMeasured: false).Verdict);

    [Theory]
    [InlineData("one mark left", "neutral", Autopilot.Off, "roll trim at “one mark left”")]
    [InlineData("none", "full right", Autopilot.Unknown, "yaw trim at “full right”")]
    [InlineData("neutral", "none", Autopilot.Engaged, "the autopilot engaged")]
    public void The_same_flight_held_by_a_trim_or_the_autopilot_is_not_enough_evidence_and_shows_no_tendency(string roll, string yaw, Autopilot autopilot, string by)
    {
        var verdict = CheckFlight.Judge(FullerRightTank with { Trims = new(roll, yaw), Autopilot = autopilot }, Trainer.Airframe, fuelMeasured: true);

        Assert.Equal((Verdict.NotEnoughEvidence, null), (verdict.Verdict, verdict.RollTendency));
        Assert.Contains(by, Assert.Single(verdict.Reasons), StringComparison.Ordinal);
    }

    [Fact]
    public void Trims_at_neutral_and_the_autopilot_off_change_nothing_about_it() =>
        Assert.Equal(Verdict.Accepted, CheckFlight.Judge(FullerRightTank with { Trims = new("neutral", "none"), Autopilot = Autopilot.Off }, Trainer.Airframe, fuelMeasured: true).Verdict);

    [Fact]
    public void The_same_roll_with_even_tanks_is_not_explained_away()
    {
        var even = FullerRightTank with { TestPoints = [.. FullerRightTank.TestPoints.Select(point => point with { Load = Trainer.TwoUp })] };

        Assert.NotEqual(Verdict.Accepted, CheckFlight.Judge(even, Trainer.Airframe, fuelMeasured: true).Verdict);
    }

    [Fact]
    public void A_wing_that_is_still_heavy_is_adjusted_again()
    {
        var verdict = CheckFlight.Judge(Reports.Of(Trainer.LetGo(75, -7), Trainer.LetGo(95, -9), Trainer.LetGo(105, -10)), Trainer.Airframe, fuelMeasured: true);

        Assert.Equal(Verdict.AdjustAgain, verdict.Verdict);
        Assert.True(verdict.RollTendency!.High < 0);
    }

    /// <summary>
    /// By hand: a bank by stopwatch and horizon is good to 1.5° (the contract's default), after 10 s to 0.15 °/s, three of them to 0.087 °/s; nine times
    /// in ten is 1.645 of that to either side, 0.28 °/s in all. What is known beforehand may narrow that a little.
    /// </summary>
    [Fact]
    public void What_is_left_is_known_no_better_than_it_was_read()
    {
        var left = CheckFlight.Judge(Reports.Of(Trainer.LetGo(75, 0), Trainer.LetGo(95, -1), Trainer.LetGo(105, 0)), Trainer.Airframe, fuelMeasured: true).RollTendency!;

        Assert.True(left.High - left.Low > 0.25, $"{left}");
    }

    [Fact]
    public void Straight_flight_in_rough_air_by_eye_settles_nothing()
    {
        var rough = Trainer.Point(Manoeuvre.ReleaseWheel, 95, new BankAfter(10, 0)) with { Air = AirState.Moderate };

        Assert.Equal(Verdict.NotEnoughEvidence, CheckFlight.Judge(Reports.Of(rough), Trainer.Airframe, fuelMeasured: true).Verdict);
    }

    [Fact]
    public void No_readings_or_no_limit_give_no_verdict()
    {
        Assert.Equal(Verdict.NotEnoughEvidence, CheckFlight.Judge(Reports.Of(), Trainer.Airframe, fuelMeasured: true).Verdict);
        Assert.Equal(Verdict.NotEnoughEvidence,
            CheckFlight.Judge(FullerRightTank, Trainer.Airframe with { Limits = null }, fuelMeasured: true).Verdict);
    }
}
