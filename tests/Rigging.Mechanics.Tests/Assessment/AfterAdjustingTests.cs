using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

/// <summary>Of what was adjusted something is left, and it is known no better than it was read.</summary>
public class AfterAdjustingTests
{
    const double ChangeDeg = -0.0586;

    /// <summary>Left-wing heavy, then half a flat taken out of it, and level by three releases.</summary>
    static AssessmentRequest Cured(int flightsBefore) => Reports.Of(
    [
        .. Enumerable.Repeat(Trainer.LetGo(95, -5.5) with { MovedSince = [new(Cause.PanelIncidenceDifference, ChangeDeg)] }, flightsBefore),
        Trainer.LetGo(75, 0), Trainer.LetGo(95, 0), Trainer.LetGo(105, 0),
    ]);

    /// <summary>By hand, as for a check flight: three banks good to 1.5° over 10 s are 0.28 °/s in all, nine times in ten; what was flown before may narrow that a little.</summary>
    [Theory, InlineData(1), InlineData(3), InlineData(12)]
    public void However_often_it_was_flown_before_the_move(int flightsBefore)
    {
        var tendency = Cured(flightsBefore).Assess().RollTendency!;

        Assert.True(tendency.High - tendency.Low > 0.2, $"{tendency}");
        Assert.InRange(tendency.Mean, -0.2, 0.2);
    }

    [Fact]
    public void What_is_left_is_no_cause_to_look_for() =>
        Assert.True(Cured(3).Assess().Causes.Single(cause => cause.Cause == Cause.PanelIncidenceDifference).Probability < 0.5);

    [Fact]
    public void The_practice_says_that_it_holds_after_adjusting() => Assert.EndsWith(", after adjusting", Practice.Usual.AfterAdjusting().Version, StringComparison.Ordinal);
}
