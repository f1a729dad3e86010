using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

public class MirrorTests
{
    const double Close = 1e-6;

    [Fact]
    public void Swapping_left_and_right_everywhere_turns_every_answer_round() => Reports.Any.Sample(
        request => Compare(Assessor.Assess(request, Trainer.Airframe), Assessor.Assess(Mirror.Of(request), Mirror.Of(Trainer.Airframe))),
        iter: 60);

    [Fact]
    public void The_contract_example_in_the_mirror_turns_the_right_eccentric() =>
        Compare(Assessor.Assess(Reports.Example, Trainer.Airframe), Assessor.Assess(Mirror.Of(Reports.Example), Mirror.Of(Trainer.Airframe)));

    static void Compare(AssessmentResponse one, AssessmentResponse other)
    {
        Turned(one.RollTendency, other.RollTendency);
        Assert.Equal(one.LoadContribution?.Mean ?? 0, -(other.LoadContribution?.Mean ?? 0), Close);
        foreach (var (here, there) in one.Causes.Zip(other.Causes))
        {
            Assert.Equal(here.Probability ?? -1, there.Probability ?? -1, Close);
            Assert.Equal(here.Explains ?? -1, there.Explains ?? -1, Close);
            // Friction and slipstream are as large in the mirror; it is their sides that change.
            if (here.Cause is Cause.ControlFriction or Cause.Slipstream)
                Alike(here.Amplitude, there.Amplitude);
            else
                Turned(here.Amplitude, there.Amplitude);
        }
        Assert.Equal(one.Indistinguishable, other.Indistinguishable);
        Assert.Equal(one.NextTests, other.NextTests);
        Assert.Equal(one.Refusals.Select(r => r.Code), other.Refusals.Select(r => r.Code));
        Turned(one.Correction?.PredictedRollTendency, other.Correction?.PredictedRollTendency);
        Assert.Equal(one.Correction?.Moves.Count ?? 0, other.Correction?.Moves.Count ?? 0);
        foreach (var here in one.Correction?.Moves ?? [])
        {
            var opposite = Opposite(here.Control);
            var there = other.Correction!.Moves.Single(move => move.Control == opposite);
            // An eccentric counts from its own neutral, whichever wing it is in; what is in the middle counts right wing down.
            var way = opposite == here.Control ? -1 : 1;
            Assert.Equal(here.FromDeg!.Value, way * there.FromDeg!.Value, Close);
            Assert.Equal(here.ToDeg!.Value, way * there.ToDeg!.Value, Close);
            Assert.Equal(here.TrailingEdge, there.TrailingEdge);
            if (here.Turn is not null)
                Assert.NotEqual(here.Turn, there.Turn);
        }
    }

    static AdjustableControl Opposite(AdjustableControl control) => control switch
    {
        AdjustableControl.LeftEccentric => AdjustableControl.RightEccentric,
        AdjustableControl.RightEccentric => AdjustableControl.LeftEccentric,
        _ => control,
    };

    static void Alike(Estimate? one, Estimate? other)
    {
        Assert.Equal(one?.Mean ?? 0, other?.Mean ?? 0, Close);
        Assert.Equal(one?.Low ?? 0, other?.Low ?? 0, Close);
        Assert.Equal(one?.High ?? 0, other?.High ?? 0, Close);
    }

    static void Turned(Estimate? one, Estimate? other)
    {
        Assert.Equal(one is null, other is null);
        if (one is null || other is null)
            return;
        Assert.Equal(one.Mean, -other.Mean, Close);
        Assert.Equal(one.Low, -other.High, Close);
        Assert.Equal(one.High, -other.Low, Close);
    }
}
