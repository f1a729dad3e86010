using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Correction;

/// <summary>A mechanic's own plan, and what was left otherwise than planned.</summary>
public class ForeseenTests
{
    static Answer<Foreseen> Of(params SetTo[] moves) => Outlook.Of(Reports.Example, Trainer.Airframe, Practice.Usual)!.After(moves);

    [Fact]
    public void The_proposed_move_as_a_plan_of_ones_own_is_foreseen_alike()
    {
        var proposed = Reports.Example.Assess().Correction!;
        var move = Assert.Single(proposed.Moves);

        var own = Of(new SetTo(move.Control, move.FromDeg!.Value, move.ToDeg!.Value)).Value!;

        Assert.Equal(proposed.PredictedRollTendency.Mean, own.After.Mean, 1e-9);
        Assert.Equal(proposed.PredictedRollTendency.High, own.After.High, 1e-6);
        Assert.Equal(proposed.ProbabilityWithinLimit, own.ProbabilityWithinLimit!.Value, 1e-6);
    }

    [Fact]
    public void Left_a_quarter_flat_short_it_is_foreseen_between_before_and_planned()
    {
        var planned = Of(new SetTo(AdjustableControl.LeftEccentric, -15, 15)).Value!;
        var left = Of(new SetTo(AdjustableControl.LeftEccentric, -15, 0)).Value!;

        Assert.InRange(left.After.Mean, planned.Before.Mean, planned.After.Mean);
    }

    static double Width(Estimate estimate) => estimate.High - estimate.Low;

    /// <summary>By hand: a turn of 1.25 mm on a horn of 80 mm is atan(1.25/80) = 0.895° of flap; longer lowers it, and the right flap lower is positive.</summary>
    [Fact]
    public void A_turn_of_a_flap_rod_adds_to_the_flaps_difference()
    {
        var aeroplane = new Aeroplane(Trainer.Airframe with { FlapRod = new(1.25, 80, true, -6, 6, 0.5, "invented for this test") });

        Assert.Equal((Cause.FlapDifference, 0.895), Rounded(new SetTo(AdjustableControl.RightFlapRod, 0, 1)));
        Assert.Equal((Cause.FlapDifference, -0.895), Rounded(new SetTo(AdjustableControl.LeftFlapRod, 0, 1)));
        Assert.Equal((Cause.AileronNeutralOffset, -1.2), Rounded(new SetTo(AdjustableControl.AileronNeutral, 1.2, 0)));

        (Cause, double) Rounded(SetTo move) => move.On(aeroplane).Value is { } change ? (change.Cause, Math.Round(change.Amplitude, 3)) : default;
    }

    /// <summary>One kind errs as one: both wings' eccentrics turned by half are as uncertain as one turned the whole way, not less.</summary>
    [Fact]
    public void Two_eccentrics_that_do_the_work_of_one_are_no_surer()
    {
        var one = Of(new SetTo(AdjustableControl.LeftEccentric, -30, 30)).Value!;
        // sin 30° is half: each wing does half, the left trailing edge down and the right one up.
        var both = Of(new SetTo(AdjustableControl.LeftEccentric, -30, 0), new SetTo(AdjustableControl.RightEccentric, 0, -30)).Value!;

        Assert.Equal(one.After.Mean, both.After.Mean, 0.005);
        Assert.Equal(Width(one.After), Width(both.After), 0.005);
    }

    /// <summary>The ball left feet off says that the rudder pushes the tail wrong: a tab to one side brings it back, to the other further out, and neither changes the roll.</summary>
    [Fact]
    public void A_rudder_tab_is_foreseen_in_the_ball_and_not_in_the_roll()
    {
        var request = Reports.Of(Reports.Flown(Trainer.Airframe, Trainer.Point(Manoeuvre.HoldLevel, 95, new BallReading(0)), flight => new(RudderOffsetRad: 2 * Math.PI / 180)));
        var outlook = Outlook.Of(request, Trainer.Airframe, Practice.Usual)!;
        Foreseen Bent(double deg) => outlook.After(new SetTo(AdjustableControl.RudderTab, 0, deg)).Value!;

        var (one, other) = (Bent(3), Bent(-3));

        Assert.Equal(one.Before.Mean, one.After.Mean, 1e-9);
        Assert.NotEqual(0, one.Ball!.Before.Mean, 0.1);
        // A tab drives its surface the other way: bent left it takes out a rudder that stands left.
        Assert.True(Math.Abs(one.Ball.After.Mean) < Math.Abs(one.Ball.Before.Mean));
        Assert.True(Math.Abs(other.Ball!.After.Mean) > Math.Abs(other.Ball.Before.Mean));
        Assert.Null(outlook.After(new SetTo(AdjustableControl.LeftEccentric, -15, 15)).Value!.Ball);
    }

    [Fact]
    public void The_wrong_way_is_foreseen_and_said()
    {
        var wrong = Of(new SetTo(AdjustableControl.LeftEccentric, -15, -60)).Value!;

        Assert.True(wrong.After.Mean < wrong.Before.Mean);
        Assert.Contains(wrong.Cautions, caution => caution.Contains("more than it does now", StringComparison.Ordinal));
    }

    [Fact]
    public void Beyond_a_stop_is_said_and_what_is_not_on_file_refused()
    {
        Assert.Contains(Of(new SetTo(AdjustableControl.LeftEccentric, -15, 100)).Value!.Cautions, caution => caution.Contains("beyond its stop", StringComparison.Ordinal));
        Assert.Equal("strut-fork-not-on-file", Assert.Single(Of(new SetTo(AdjustableControl.LeftStrutFork, 3, 4)).Refusals).Code);
        Assert.Equal("flap-rod-not-on-file", Assert.Single(Of(new SetTo(AdjustableControl.RightFlapRod, 0, 1)).Refusals).Code);
        Assert.Equal("plan-not-clear", Assert.Single(Of().Refusals).Code);
    }

    [Fact]
    public void A_supposed_turn_and_a_planned_one_are_foreseen_alike_with_what_earlier_turns_taught()
    {
        var taught = Reports.Example with { EarlierCorrections = [new(AdjustableControl.LeftEccentric, 1, 0.6, 0.1, SameAeroplane: true)] };
        var outlook = Outlook.Of(taught, Trainer.Airframe, Practice.Usual)!;
        var reference = Trainer.Airframe.Reference;
        SetTo turn = new(AdjustableControl.LeftEccentric, -15, 15);

        var planned = outlook.After(turn).Value!;
        var supposed = outlook.RollTendency(new(reference.CasKt, reference.Load, [turn]));
        var untaught = Outlook.Of(Reports.Example, Trainer.Airframe, Practice.Usual)!.After(turn).Value!;

        Assert.Equal(planned.After.Mean, supposed.Mean, 1e-9);
        Assert.Equal(planned.After.High, supposed.High, 1e-6);
        Assert.True(planned.After.Mean < untaught.After.Mean, "Turns that did less than the model says leave more of a left roll.");
    }
}
