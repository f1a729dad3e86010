using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Correction;

public partial class CorrectionTests
{
    const double RadPerDeg = Math.PI / 180;

    static readonly GroundCheck Undamaged = new ClearanceCheck(GroundCheckKind.DamageInspection, true);
    static readonly GroundCheck FlapsAlike = new AngleCheck(GroundCheckKind.FlapDifference, 0, 0.1);

    [Fact]
    public void A_fuller_right_tank_by_itself_is_never_cured_by_moving_a_wing()
    {
        var heavy = Trainer.Aboard(77, 77, 18, 38);
        var point = Reports.Flown(Trainer.Airframe, Bank(95) with { Load = heavy }, _ => default);

        Refused(Reports.Of(point).Assess(), "loading-explains");
    }

    [Theory]
    [InlineData("one mark left", "none")]
    [InlineData("none", "full right")]
    [InlineData("0", "-0.5")]
    public void Nothing_is_moved_on_a_flight_with_a_trim_off_neutral(string roll, string yaw)
    {
        var refused = (HeavyLeft(0.12) with { Trims = new(roll, yaw) }).Assess();

        Refused(refused, "trim-not-neutral");
        Assert.Contains(refused.Refusals, refusal => refusal.Sentence.Contains(roll is "none" or "0" ? yaw : roll, StringComparison.Ordinal));
    }

    [Theory, InlineData("Neutral", "centred"), InlineData("0", "none")]
    public void Trims_at_neutral_stand_in_the_way_of_nothing(string roll, string yaw) =>
        Assert.NotNull((HeavyLeft(0.12) with { Trims = new(roll, yaw) }).Assess().Correction);

    [Fact]
    public void Nothing_is_moved_on_a_flight_that_the_autopilot_flew() =>
        Refused((HeavyLeft(0.12) with { Autopilot = Autopilot.Engaged }).Assess(), "autopilot-engaged");

    [Fact]
    public void A_load_that_nobody_reported_is_recognised_by_its_speed_dependence()
    {
        // Twenty litres more in the right tank than was reported; the flaps and panels measured alike, the ball levelled.
        var points = new[] { Bank(65), Bank(105), Bank(105) }
            .Select(point => Reports.Flown(Trainer.Airframe, point, flight => flight.Of(Trainer.Aboard(77, 77, 5, 25))));
        var request = Reports.Of([.. points]) with { GroundChecks = [FlapsAlike, new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0, 0.05), new BallOffsetCheck(0)] };

        Refused(request.Assess(), "loading-explains");
    }

    [Theory, InlineData(0.1), InlineData(0.12)]
    public void A_load_on_record_hides_no_panel_that_a_survey_shows_and_the_flights_agree_with(double differenceDeg)
    {
        // Alone, with twenty litres more on the left: the load rolls it left more than twice as fast as the panel does.
        var alone = Trainer.Aboard(77, 0, 35, 15);
        var surveyed = HeavyLeft(differenceDeg, alone);

        var response = Assessor.Assess(surveyed, Trainer.Airframe, Practice.Usual.WithFuelMeasured());

        Assert.True(Math.Abs(response.LoadContribution!.Mean) > 2 * Math.Abs(response.RollTendency!.Mean));
        Assert.Empty(response.Refusals);
        Assert.Equal(AdjustableControl.LeftEccentric, Assert.Single(response.Correction!.Moves).Control);
    }

    [Fact]
    public void A_load_worth_most_of_the_roll_is_flown_again_where_only_words_tell_the_rest()
    {
        var words = Trainer.Point(Manoeuvre.ReleaseWheel, 95, new Rolls(RollSide.Left, RollStrength.Slowly)) with { Load = Trainer.Aboard(77, 0, 35, 15) };

        Refused(Reports.Of(words).Assess(), "loading-explains");
    }

    [Theory, InlineData(EventKind.HardLanding), InlineData(EventKind.GroundStrike), InlineData(EventKind.FlapOverspeed),
        InlineData(EventKind.Repair), InlineData(EventKind.WingReplaced), InlineData(EventKind.SuddenOnset), InlineData(EventKind.FullControl),
        InlineData(EventKind.ControlJammed), InlineData(EventKind.FirstFlightAfterAssembly), InlineData(EventKind.UnexplainedRecurrence), InlineData(EventKind.DamageSuspected)]
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
    public void Nearly_all_the_aileron_to_hold_it_level_is_no_matter_of_rigging()
    {
        var held = Reports.Of(Trainer.Point(Manoeuvre.HoldLevel, 95, new WheelAngle(64)));

        Refused(held.Assess(), "damage-not-ruled-out");
        Assert.DoesNotContain((held with { GroundChecks = [Undamaged] }).Assess().Refusals, refusal => refusal.Sentence.Contains("nearly all", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_is_flown_and_the_look_for_damage_comes_first_as_long_as_it_is_not_ruled_out()
    {
        var tests = (Reports.Example with { Events = [new(EventKind.HardLanding)], GroundChecks = [] }).Assess().NextTests;

        Assert.Equal("ground-check:damage-inspection", tests[0].Test);
        Assert.DoesNotContain(tests, test => test.Test.StartsWith("test-point", StringComparison.Ordinal));
    }

    [Fact]
    public void Nobody_is_told_to_fly_what_may_be_broken() => Reports.Any.Sample(request =>
    {
        var suspected = request with { Events = [.. request.Events, new(EventKind.HardLanding)], GroundChecks = [.. request.GroundChecks.Where(check => check.Kind != GroundCheckKind.DamageInspection)], Trims = new("left wing down", Trims.None), Autopilot = Autopilot.Engaged };
        var answer = suspected.Assess();

        Assert.DoesNotContain(answer.NextTests, test => test.Test.StartsWith("test-point", StringComparison.Ordinal));
        Assert.All([.. answer.Refusals.Select(refusal => refusal.Sentence), .. answer.Cautions], sentence => Assert.DoesNotMatch(@"(?i)(?<!first-)\b(fly|flights?)\b(?! is)", sentence));
    }, iter: 300);

    [Fact]
    public void Eccentrics_at_opposite_stops_are_never_turned_further() =>
        Refused((HeavyLeft(0.12) with { Settings = new(new(90), new(-90)) }).Assess(), "at-stops");

    [Fact]
    public void An_eccentric_at_its_stop_is_said_where_nothing_is_moved_and_may_be_turned_back()
    {
        var vague = Reports.Of(Trainer.Point(Manoeuvre.ReleaseWheel, 95, new Rolls(RollSide.Left, RollStrength.Barely))) with { Settings = new(new(88), new(0)) };
        Refused(vague.Assess(), "at-stops");

        var moved = (HeavyLeft(0.12) with { Settings = new(new(0), new(90)) }).Assess();
        Assert.Empty(moved.Refusals);
        Assert.Contains(moved.Correction!.Moves, move => move.Control == AdjustableControl.RightEccentric && move.ToDeg < 90);
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
    public void A_skin_that_was_found_to_differ_is_repaired_before_a_wing_is_turned()
    {
        var heavy = HeavyLeft(0.12);
        AssessmentRequest Surveyed(bool clear) => heavy with { GroundChecks = [.. heavy.GroundChecks, new ClearanceCheck(GroundCheckKind.ContourSurvey, clear)] };

        Assert.NotNull(Surveyed(clear: true).Assess().Correction);
        Refused(Surveyed(clear: false).Assess(), "not-an-adjustment");
    }

    [Fact]
    public void An_aileron_neutral_that_is_out_for_certain_is_set_before_a_wing_is_turned()
    {
        var heavy = HeavyLeft(0.12);
        var both = heavy with { GroundChecks = [.. heavy.GroundChecks, new AngleCheck(GroundCheckKind.AileronNeutralOffset, 1.2, 0.2)] };

        Assert.Equal(AdjustableControl.LeftEccentric, Assert.Single(heavy.Assess().Correction!.Moves).Control);
        Assert.Equal(AdjustableControl.AileronNeutral, Assert.Single(both.Assess().Correction!.Moves).Control);
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

    /// <summary>Right panel so many degrees higher than the left, flown well and surveyed.</summary>
    static AssessmentRequest HeavyLeft(double differenceDeg, Load? load = null)
    {
        var points = new[] { Bank(75), Bank(105) }.Select(point => Reports.Flown(Trainer.Airframe, point with { Load = load ?? Trainer.TwoUp }, flight => differenceDeg * RadPerDeg * flight.PanelIncidence));
        return Reports.Of([.. points]) with
        {
            GroundChecks = [FlapsAlike, Undamaged, new AngleCheck(GroundCheckKind.PanelIncidenceDifference, differenceDeg, 0.03), new AngleCheck(GroundCheckKind.AileronFloat, 0, 0.1)],
        };
    }

    static TestPoint Bank(double casKt) => Trainer.LetGo(casKt, 0);

    static void Refused(AssessmentResponse response, string code)
    {
        Assert.Null(response.Correction);
        Assert.Contains(code, response.Refusals.Select(refusal => refusal.Code));
        Assert.All(response.Refusals, refusal => Assert.NotEmpty(refusal.Sentence));
    }
}
