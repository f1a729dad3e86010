using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Correction;

public partial class CorrectionTests
{
    [Fact]
    public void Lowering_the_left_trailing_edge_cures_left_wing_heavy()
    {
        var correction = Reports.Example.Assess().Correction!;

        // By hand: 1.8 mm·(sin 15° + sin 15°) = 0.93 mm over 880 mm is 0.0607°; the panel that was 0.03° low goes 0.03° high.
        var move = Assert.Single(correction.Moves);
        Assert.Equal(AdjustableControl.LeftEccentric, move.Control);
        Assert.Equal(TrailingEdge.Down, move.TrailingEdge);
        Assert.Equal(-15, move.FromDeg!.Value, 1e-9);
        Assert.Equal(15, move.ToDeg!.Value, 1e-9);
        Assert.Equal(0.0607, move.IncidenceChangeDeg!.Value, 1e-4);
        Assert.True(Math.Abs(correction.PredictedRollTendency.Mean) < 0.25);
        Assert.InRange(correction.PredictedRollTendency.Mean, correction.PredictedRollTendency.Low, correction.PredictedRollTendency.High);
        Assert.True(correction.ProbabilityWithinLimit > 0.6);
    }

    [Fact]
    public void Both_eccentrics_at_the_stops_are_not_turned_further()
    {
        var request = HeavyLeft(0.15) with { Settings = new(new(90), new(-90)) };

        Refused(request.Assess(), "at-stops");
    }

    [Fact]
    public void More_than_both_eccentrics_can_take_out_is_refused()
    {
        var request = HeavyLeft(0.45) with { Settings = new(new(60), new(-60)) };

        Refused(request.Assess(), "beyond-adjuster");
    }

    [Fact]
    public void What_one_wing_cannot_do_both_do_together()
    {
        var correction = (HeavyLeft(0.22) with { Settings = new(new(0), new(0)) }).Assess().Correction!;

        Assert.Equal(2, correction.Moves.Count);
        Assert.Contains(correction.Moves, move => move is { Control: AdjustableControl.LeftEccentric, TrailingEdge: TrailingEdge.Down });
        Assert.Contains(correction.Moves, move => move is { Control: AdjustableControl.RightEccentric, TrailingEdge: TrailingEdge.Up });
    }

    [Fact]
    public void With_both_at_neutral_the_heavy_wings_trailing_edge_goes_down()
    {
        var move = Assert.Single((HeavyLeft(0.12) with { Settings = new(new(0), new(0)) }).Assess().Correction!.Moves);

        Assert.Equal(AdjustableControl.LeftEccentric, move.Control);
        Assert.Equal(TrailingEdge.Down, move.TrailingEdge);
    }

    [Fact]
    public void An_offset_already_there_is_taken_out_before_a_new_one_is_put_in()
    {
        // The right trailing edge was left low: raising it again is the cure, not lowering the left one too.
        var move = Assert.Single((HeavyLeft(0.08) with { Settings = new(new(0), new(30)) }).Assess().Correction!.Moves);

        Assert.Equal(AdjustableControl.RightEccentric, move.Control);
        Assert.Equal(0, move.ToDeg!.Value, 1e-9);
    }

    [Fact]
    public void Moves_come_in_the_steps_of_the_wrench_and_end_inside_the_stops()
    {
        double[] differences = [0.09, 0.12, 0.16, 0.2];
        var moves = differences.SelectMany(difference => HeavyLeft(difference).Assess().Correction!.Moves).ToArray();

        Assert.All(moves, move => Assert.Equal(0, Math.IEEERemainder(move.Flats!.Value, 0.5), 1e-9));
        Assert.All(moves, move => Assert.InRange(move.ToDeg!.Value, -90, 90));
    }

    [Fact]
    public void Without_the_bushings_data_no_turning_direction_is_named()
    {
        var blank = Trainer.Airframe with { Eccentric = Trainer.Airframe.Eccentric! with { BushingIn = null } };

        var move = Assert.Single(Assessor.Assess(HeavyLeft(0.09), blank).Correction!.Moves);

        Assert.Null(move.Turn);
        Assert.NotNull(move.TrailingEdge);
    }
}
