using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Correction;

/// <summary>Strut forks and flap rods as remedies.</summary>
public class AdjusterPlanTests
{
    const double RadPerDeg = Math.PI / 180;

    static readonly Airframe Strutted = Trainer.Airframe with
    {
        Eccentric = null,
        Wing = Trainer.Airframe.Wing with { Bracing = Bracing.StrutAtEachSpar },
        StrutFork = new(1.25, 40, 0.9, 2.4, 0, 10, 0.5, "invented for this test"),
    };

    static readonly Airframe Rodded = Trainer.Airframe with { FlapRod = new(1.25, 80, true, -6, 6, 0.5, "invented for this test") };

    /// <summary>Flown with a cause and measured with it; everything else measured as nothing.</summary>
    static AssessmentRequest With(Airframe airframe, Cause cause, double deg, EccentricSettings? settings)
    {
        var points = new[] { 75.0, 105 }.Select(casKt => Reports.Flown(airframe,
            Trainer.LetGo(casKt, 0),
            flight => deg * RadPerDeg * (cause == Cause.TipIncidenceDifference ? flight.TipIncidence : flight.FlapDifference)));
        return Reports.Of([.. points]) with
        {
            Settings = settings,
            GroundChecks =
            [
                new AngleCheck(GroundCheckKind.FlapDifference, cause == Cause.FlapDifference ? deg : 0, 0.1),
                new AngleCheck(GroundCheckKind.TipIncidenceDifference, cause == Cause.TipIncidenceDifference ? deg : 0, 0.04),
                new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0, 0.02),
                new AngleCheck(GroundCheckKind.AileronFloat, 0, 0.1),
                new ClearanceCheck(GroundCheckKind.DamageInspection, true),
                new ClearanceCheck(GroundCheckKind.ContourSurvey, true),
            ],
        };
    }

    [Theory, InlineData(0.4), InlineData(-0.4)]
    public void A_twisted_wing_with_a_strut_at_each_spar_is_cured_at_the_fork(double tipDeg)
    {
        var answer = Assessor.Assess(With(Strutted, Cause.TipIncidenceDifference, tipDeg, new(null, null, 5, 5)), Strutted);

        var move = Assert.Single(answer.Correction!.Moves);
        // The heavy wing, on the side of less incidence, is given some: its rear strut shorter, its trailing edge lower.
        Assert.Equal(tipDeg > 0 ? AdjustableControl.LeftStrutFork : AdjustableControl.RightStrutFork, move.Control);
        Assert.Equal(TrailingEdge.Down, move.TrailingEdge);
        Assert.Contains(" in, from 5 to ", move.Turn, StringComparison.Ordinal);
        Assert.True(Math.Abs(answer.Correction.PredictedRollTendency.Mean) < 0.4 * Math.Abs(answer.RollTendency!.Mean));
        Assert.Contains(answer.Cautions, caution => caution.Contains("stalls", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_the_forks_stand_must_be_on_record() =>
        Assert.Equal("setting-not-recorded", Assessor.Assess(With(Strutted, Cause.TipIncidenceDifference, 0.4, null), Strutted).Refusals[0].Code);

    [Fact]
    public void A_flap_that_hangs_lower_is_put_right_by_the_rod_that_is_off_its_drawing()
    {
        var answer = Assessor.Assess(With(Rodded, Cause.FlapDifference, 1.8, new(new(0), new(0), null, null, 0, 2)), Rodded);

        var move = Assert.Single(answer.Correction!.Moves);
        Assert.Equal(AdjustableControl.RightFlapRod, move.Control);
        Assert.Equal(TrailingEdge.Up, move.TrailingEdge);
        Assert.Contains(" in, from 2 to 0", move.Turn, StringComparison.Ordinal);
        Assert.True(Math.Abs(answer.Correction.PredictedRollTendency.Mean) < 0.5);
    }

    /// <summary>By hand: 1.25 mm a turn on a strut that rises 40° lifts the fitting by 1.945 mm, over 0.9 m between the struts 0.1238°; the equal-roll tip difference is another number.</summary>
    [Fact]
    public void What_a_level_outboard_of_the_strut_will_show_is_the_twist_itself()
    {
        var move = Assert.Single(Assessor.Assess(With(Strutted, Cause.TipIncidenceDifference, 0.4, new(null, null, 5, 5)), Strutted).Correction!.Moves);

        Assert.Equal(-0.1238 * (move.ToTurns!.Value - move.FromTurns!.Value), move.IncidenceChangeDeg!.Value, 0.0005);
    }

    /// <summary>With both rods at the drawing's length one flap hangs for another reason: it is brought up, its neighbour is not let down to it.</summary>
    [Theory, InlineData(1.2, AdjustableControl.RightFlapRod), InlineData(-1.2, AdjustableControl.LeftFlapRod)]
    public void The_flap_that_hangs_is_raised_and_the_other_is_never_drooped_to_match(double deg, AdjustableControl hanging)
    {
        var move = Assert.Single(Assessor.Assess(With(Rodded, Cause.FlapDifference, deg, new(new(0), new(0), null, null, 0, 0)), Rodded).Correction!.Moves);

        Assert.Equal((hanging, TrailingEdge.Up), (move.Control, move.TrailingEdge));
    }

    [Fact]
    public void A_rod_that_holds_its_flap_up_off_the_drawing_goes_back_to_it()
    {
        // The left rod is two turns short: that flap sits too high, and the right one seems to hang.
        var move = Assert.Single(Assessor.Assess(With(Rodded, Cause.FlapDifference, 1.8, new(new(0), new(0), null, null, -2, 0)), Rodded).Correction!.Moves);

        Assert.Equal((AdjustableControl.LeftFlapRod, 0.0), (move.Control, move.ToTurns));
    }

    [Fact]
    public void A_fork_found_beyond_its_stops_stops_the_other_wings_too() =>
        Assert.Contains(Assessor.Assess(With(Strutted, Cause.TipIncidenceDifference, 0.4, new(null, null, 5, 12)), Strutted) is { Correction: null } answer ? answer.Refusals : [],
            refusal => refusal.Code == "found-beyond-stops");

    [Fact]
    public void A_rod_that_was_seen_to_do_less_than_the_model_says_is_foreseen_to_do_less_and_turned_no_further()
    {
        var request = With(Rodded, Cause.FlapDifference, 1.8, new(new(0), new(0), null, null, 0, 2));
        var taught = request with { EarlierCorrections = [new(AdjustableControl.LeftFlapRod, 1, 0.6, 0.05, true), new(AdjustableControl.RightFlapRod, 1, 0.6, 0.05, true)] };

        Assert.Contains("from 2 to 0", Assessor.Assess(request, Rodded).Correction!.Moves[0].Turn, StringComparison.Ordinal);
        var answer = Assessor.Assess(taught, Rodded);
        // Flaps are put alike by what the rod does to the flap; what that was seen to do to the roll is in the prediction.
        Assert.Contains("from 2 to 0", answer.Correction!.Moves[0].Turn, StringComparison.Ordinal);
        Assert.True(answer.Correction.PredictedRollTendency.Mean < Assessor.Assess(request, Rodded).Correction!.PredictedRollTendency.Mean);
        Assert.Contains(answer.Cautions, caution => caution.Contains("°/s for a turn, from 2 earlier corrections", StringComparison.Ordinal));
    }

    [Fact]
    public void Where_no_eccentric_is_on_file_that_is_why_none_is_turned()
    {
        var answer = Assessor.Assess(With(Strutted, Cause.TipIncidenceDifference, 0.4, new(null, null, 8, 9)), Strutted);

        Assert.NotNull(answer.Correction);
        Assert.Contains(answer.Cautions, caution => caution.StartsWith("Why not the eccentric: none is on file for this airframe; what is moved instead is the ", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_rod_on_file_the_flaps_go_back_to_the_book()
    {
        var answer = Trainer.Airframe is var plain ? Assessor.Assess(With(plain, Cause.FlapDifference, 1.8, new(new(0), new(0))), plain) : null;

        Assert.Equal("not-an-adjustment", Assert.Single(answer!.Refusals).Code);
        Assert.Contains(answer.Cautions, caution => caution.StartsWith("Why not the eccentric: what stands in the way: it is no matter of adjusting a wing.", StringComparison.Ordinal));
    }
}
