using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Tests.Assessment;
using UnitsNet;

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
        var change = Eccentric.On(Trainer.Airframe).Value!.IncidenceChange(Angle.FromDegrees(-15), Angle.FromDegrees(15)).Degrees;

        var planned = outlook.After(new SetTo(AdjustableControl.LeftEccentric, -15, 15)).Value!;
        var supposed = outlook.RollTendency(new(reference.CasKt, reference.Load, -change));
        var untaught = Outlook.Of(Reports.Example, Trainer.Airframe, Practice.Usual)!.After(new SetTo(AdjustableControl.LeftEccentric, -15, 15)).Value!;

        Assert.Equal(planned.After.Mean, supposed.Mean, 1e-9);
        Assert.Equal(planned.After.High, supposed.High, 1e-6);
        Assert.True(planned.After.Mean < untaught.After.Mean, "Turns that did less than the model says leave more of a left roll.");
    }
}
