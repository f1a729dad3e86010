using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Correction;

public class CorrectionTests
{
    const double RadPerDeg = Math.PI / 180;

    static readonly GroundCheck Undamaged = new ClearanceCheck(GroundCheckKind.DamageInspection, true);
    static readonly GroundCheck FlapsAlike = new AngleCheck(GroundCheckKind.FlapDifference, 0, 0.1);

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
    public void A_fuller_right_tank_by_itself_is_never_cured_by_moving_a_wing()
    {
        var heavy = Trainer.Aboard(77, 77, 18, 38);
        var point = Reports.Flown(Trainer.Airframe, Bank(95) with { Load = heavy }, _ => default);

        Refused(Reports.Of(point).Assess(), "loading-explains");
    }

    [Fact]
    public void A_load_that_nobody_reported_is_recognised_by_its_speed_dependence()
    {
        // Twenty litres more in the right tank than was reported; the flaps and panels measured alike.
        var points = new[] { Bank(65), Bank(105), Bank(105) }
            .Select(point => Reports.Flown(Trainer.Airframe, point, flight => flight.Of(Trainer.Aboard(77, 77, 5, 25))));
        var request = Reports.Of([.. points]) with { GroundChecks = [FlapsAlike, new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0, 0.05)] };

        Refused(request.Assess(), "loading-explains");
    }

    [Theory, InlineData(EventKind.HardLanding), InlineData(EventKind.GroundStrike), InlineData(EventKind.FlapOverspeed),
        InlineData(EventKind.Repair), InlineData(EventKind.WingReplaced), InlineData(EventKind.SuddenOnset)]
    public void After_what_may_have_bent_something_nothing_moves_before_a_clear_inspection(EventKind happened)
    {
        var without = Reports.Example with
        {
            Events = [new(happened)],
            GroundChecks = [.. Reports.Example.GroundChecks.Where(check => check.Kind != GroundCheckKind.DamageInspection)],
        };

        Refused(without.Assess(), "damage-not-ruled-out");
        Assert.DoesNotContain((without with { GroundChecks = [.. without.GroundChecks, Undamaged] }).Assess().Refusals, r => r.Code == "damage-not-ruled-out");
        Refused((without with { GroundChecks = [.. without.GroundChecks, new ClearanceCheck(GroundCheckKind.DamageInspection, false)] }).Assess(), "damage-not-ruled-out");
    }

    [Fact]
    public void A_difference_beyond_the_limit_on_file_is_damage_until_shown_otherwise()
    {
        var request = Reports.Example with { GroundChecks = [FlapsAlike, Undamaged, new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0.8)] };

        Refused(request.Assess(), "damage-not-ruled-out");
    }

    [Fact]
    public void An_aeroplane_that_flies_straight_is_left_alone()
    {
        var response = Reports.Of(Bank(80), Bank(100)).Assess();

        Refused(response, "inside-limits");
        Assert.Equal("inside-limits", Assert.Single(response.Refusals).Code);
    }

    [Fact]
    public void Nothing_reported_is_nothing_moved() => Refused(Reports.Of().Assess(), "not-enough-evidence");

    [Fact]
    public void A_roll_that_flap_or_panel_explain_equally_well_is_not_guessed_at()
    {
        var points = new[] { Bank(75), Bank(105) }.Select(point => Reports.Flown(Trainer.Airframe, point, flight => 0.15 * RadPerDeg * flight.PanelIncidence));

        Refused(Reports.Of([.. points]).Assess(), "cause-not-singled-out");
    }

    [Fact]
    public void Floating_ailerons_are_not_cured_by_incidence()
    {
        var neutral = Trainer.Point(Manoeuvre.HoldNeutral, 95, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon });
        var points = new[] { Bank(75), Bank(105), neutral }.Select(point => Reports.Flown(Trainer.Airframe, point, _ => new(AileronFloatRad: 0.6 * RadPerDeg)));

        Refused((Reports.Of([.. points]) with { GroundChecks = [FlapsAlike] }).Assess(), "not-an-adjustment");
    }

    [Fact]
    public void A_yaw_that_only_shows_feet_off_is_not_cured_by_incidence()
    {
        var feetOff = Trainer.Point(Manoeuvre.ReleaseAll, 95, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon }, new BallReading(0));
        var points = new[] { Bank(95), feetOff }.Select(point => Reports.Flown(Trainer.Airframe, point, _ => new(RudderOffsetRad: 3 * RadPerDeg)));

        Refused(Reports.Of([.. points]).Assess(), "not-an-adjustment");
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
        var move = Assert.Single((HeavyLeft(0.09) with { Settings = new(new(0), new(30)) }).Assess().Correction!.Moves);

        Assert.Equal(AdjustableControl.RightEccentric, move.Control);
        Assert.Equal(0, move.ToDeg!.Value, 1e-9);
    }

    [Fact]
    public void Moves_come_in_the_steps_of_the_wrench_and_end_inside_the_stops()
    {
        foreach (var difference in new[] { 0.06, 0.09, 0.12, 0.16, 0.2, 0.24 })
            foreach (var move in HeavyLeft(difference).Assess().Correction?.Moves ?? [])
            {
                Assert.Equal(0, Math.IEEERemainder(move.Flats!.Value, 0.5), 1e-9);
                Assert.InRange(move.ToDeg!.Value, -90, 90);
            }
    }

    [Fact]
    public void What_is_not_on_file_or_not_recorded_is_asked_for()
    {
        var heavy = HeavyLeft(0.12);

        Refused(Assessor.Assess(heavy, Trainer.Airframe with { Eccentric = null }), "eccentric-not-on-file");
        Refused(Assessor.Assess(heavy, Trainer.Airframe with { Limits = null }), "limits-not-on-file");
        Refused((heavy with { Settings = null }).Assess(), "setting-not-recorded");
        Refused((heavy with { Settings = new(new(0, 30), new(0)) }).Assess(), "bushings-disagree");
        Refused(Assessor.Assess(heavy, Trainer.Airframe with { Wing = Trainer.Airframe.Wing with { Bracing = Bracing.StrutAtEachSpar } }), "panel-twists");
    }

    [Fact]
    public void Without_the_bushings_data_no_turning_direction_is_named()
    {
        var blank = Trainer.Airframe with { Eccentric = Trainer.Airframe.Eccentric! with { BushingIn = null } };

        var move = Assert.Single(Assessor.Assess(HeavyLeft(0.09), blank).Correction!.Moves);

        Assert.Null(move.Turn);
        Assert.NotNull(move.TrailingEdge);
    }

    /// <summary>Right panel so many degrees higher than the left, flown well and surveyed.</summary>
    static AssessmentRequest HeavyLeft(double differenceDeg)
    {
        var points = new[] { Bank(75), Bank(105) }.Select(point => Reports.Flown(Trainer.Airframe, point, flight => differenceDeg * RadPerDeg * flight.PanelIncidence));
        return Reports.Of([.. points]) with
        {
            GroundChecks = [FlapsAlike, Undamaged, new AngleCheck(GroundCheckKind.PanelIncidenceDifference, differenceDeg, 0.03), new AngleCheck(GroundCheckKind.AileronFloat, 0, 0.1)],
        };
    }

    static TestPoint Bank(double casKt) => Trainer.Point(Manoeuvre.ReleaseWheel, casKt, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon });

    static void Refused(AssessmentResponse response, string code)
    {
        Assert.Null(response.Correction);
        Assert.Contains(code, response.Refusals.Select(refusal => refusal.Code));
        Assert.All(response.Refusals, refusal => Assert.NotEmpty(refusal.Sentence));
    }
}
