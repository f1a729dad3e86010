using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Checks, evaluation flights and the correction.</summary>
public partial class ForbiddenStories
{
    static readonly EvaluationFlown Evaluation = new(Today, "[]", "Left itself at 95 kt.");

    [Fact]
    public void An_evaluation_flight_while_held_for_a_call() => Refused("wrong-stage", School.Reported, Pilot, Evaluation);

    [Fact]
    public void An_evaluation_flight_while_grounded() => Refused("aircraft-may-not-fly", School.Called.Do(Office, Grounded), Pilot, Evaluation);

    [Theory, InlineData(FlightStatus.CrewOnly), InlineData(FlightStatus.Held), InlineData(FlightStatus.Grounded)]
    public void An_evaluation_flight_barred_by_another_squawk(FlightStatus other) =>
        Refused("aircraft-may-not-fly", School.Called, Pilot, Evaluation, facts => facts with { OtherSquawks = [new(Other, 7, other)] });

    [Fact]
    public void An_evaluation_flight_dated_tomorrow() => Refused("date-in-future", School.Called, Pilot, Evaluation with { FlownOn = Today.PlusDays(1) });

    [Fact]
    public void A_check_measured_with_a_tool_out_of_calibration() =>
        Refused("tool-out-of-calibration", School.Called, Mechanic, Measured(Check.FlapDifference, 0.1) with { Tool = ProtractorADayOut.Id });

    [Fact]
    public void A_damage_inspection_called_not_applicable() =>
        Refused("damage-always-applies", School.Called, Mechanic, Measured(Check.DamageInspection, null) with { NotApplicableReason = "It looked fine." });

    [Fact]
    public void A_check_called_not_applicable_without_a_reason() =>
        Refused("not-applicable-needs-reason", School.Called, Mechanic, Measured(Check.RudderTab, null) with { NotApplicableReason = " " });

    public static TheoryData<Check> PrerequisiteChecks => [.. Checks.Select(check => check.Check)];

    [Theory, MemberData(nameof(PrerequisiteChecks))]
    public void An_incidence_move_with_one_prerequisite_missing(Check missing)
    {
        var ledger = Checks.Where(check => check.Check != missing).Aggregate(School.Called, (ledger, check) => ledger.Do(Mechanic, check));

        var refused = Assert.IsType<Decision.Refused>(Try(ledger, Mechanic, HalfAFlat));

        var gate = Assert.Single(refused.Broken, b => b.Code == "prerequisites-missing");
        Assert.EndsWith($": {Words.Of(CheckUnits.Serves(missing)!.Value)}.", gate.Sentence, StringComparison.Ordinal);
        Assert.Equal(missing == Check.DamageInspection ? ["prerequisites-missing", "damage-not-ruled-out"] : ["prerequisites-missing"], refused.Broken.Select(b => b.Code));
    }

    [Theory, InlineData(Control.LeftEccentric), InlineData(Control.RightEccentric), InlineData(Control.LeftStrutFork), InlineData(Control.RightStrutFork)]
    public void Incidence_is_moved_with_damage_not_ruled_out(Control control) =>
        Refused("damage-not-ruled-out", Checked.Do(Mechanic, DamageFound), Mechanic,
            HalfAFlat with { Moves = [new(control, -15, 15, "Trailing edge down.")] });

    [Fact]
    public void Work_on_incidence_starts_after_damage_was_found_meanwhile() =>
        Refused("wrong-stage", Agreed.Do(Mechanic, DamageFound), Mechanic, new WorkStarted("Padded stand.", null));

    [Theory, InlineData("", "57-10", "C"), InlineData("Manual", " ", "C"), InlineData("Manual", "57-10", "")]
    public void A_correction_without_approved_data(string manual, string section, string revision) =>
        Refused("approved-data-missing", Checked, Mechanic, HalfAFlat with { Data = new(manual, section, revision) });

    [Fact]
    public void A_correction_that_corrects_nothing() => Refused("nothing-to-do", Checked, Mechanic, HalfAFlat with { Moves = [] });

    [Theory, InlineData(90.1), InlineData(-120)]
    public void An_eccentric_is_turned_past_its_stop(double to) =>
        Refused("past-the-stop", Checked, Mechanic, HalfAFlat with { Moves = [HalfAFlat.Moves[0] with { ToDeg = to }] });

    [Fact]
    public void An_eccentric_is_turned_whose_data_are_blank() =>
        Refused("airframe-data-missing", Checked, Mechanic, HalfAFlat, facts => facts with { Airframe = facts.Airframe! with { EccentricMaxAngleDeg = null } });

    [Fact]
    public void An_eccentric_is_turned_on_an_aircraft_without_an_airframe_file() =>
        Refused("airframe-data-missing", Checked, Mechanic, HalfAFlat, facts => facts with { Airframe = null });

    [Fact]
    public void An_eccentric_is_turned_under_bracing_that_twists_the_panel() =>
        Refused("bracing-not-modelled", Checked, Mechanic, HalfAFlat, facts => facts with { Airframe = facts.Airframe! with { RigidPanel = false } });

    [Theory, InlineData(-15, 10, 0, 0), InlineData(-15, -15, 30, 0)]
    public void An_eccentric_is_turned_although_bushings_disagreed_when_looked_at(double leftFront, double leftRear, double rightFront, double rightRear) =>
        Refused("bushings-disagree", Checked.Do(Mechanic, new AsFound(new(leftFront, leftRear, rightFront, rightRear), null)), Mechanic, HalfAFlat);

    [Theory]
    [InlineData("value-missing", 1.0, null)]
    [InlineData("value-missing", null, 1.0)]
    [InlineData("value-out-of-range", 51.0, 0.0)]
    [InlineData("value-out-of-range", 0.0, double.NaN)]
    [InlineData("past-the-stop", 0.0, 7.0)]
    public void A_flap_rod_is_planned_from_or_to_where_it_cannot_stand(string code, double? from, double? to) =>
        Refused(code, Checked, Mechanic, HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod in.", from, to)] },
            facts => facts with { Airframe = Rodded });

    [Fact]
    public void A_plan_starts_from_somewhere_else_than_what_is_on_record()
    {
        Refused("not-from-where-it-stands", Checked.Do(Mechanic, Found with { Bushings = new(0, 0, 0, 0) }), Mechanic, HalfAFlat);
        Refused("not-from-where-it-stands", Checked.Do(Mechanic, Found with { Adjusters = [new(Control.LeftFlapRod, 1)] }), Mechanic,
            HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod in.", 2, 0)] }, facts => facts with { Airframe = Rodded });
    }

    [Fact]
    public void One_eccentric_is_moved_twice_in_one_plan() =>
        Refused("same-control-twice", Checked, Mechanic, HalfAFlat with { Moves = [HalfAFlat.Moves[0], HalfAFlat.Moves[0] with { ToDeg = 30 }] });

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity)]
    public void A_number_that_is_none(double number)
    {
        Refused("value-out-of-range", Checked, Mechanic, HalfAFlat with { PredictedDegPerS = number });
        Refused("value-out-of-range", Checked, Mechanic, HalfAFlat with { Moves = [HalfAFlat.Moves[0] with { ToDeg = number }] });
    }

    [Fact]
    public void A_pilot_agrees_the_correction() => Refused("no-authority", Checked, Pilot, HalfAFlat);

    [Fact]
    public void The_office_agrees_the_correction() => Refused("no-authority", Checked, Office, HalfAFlat);

    [Theory, InlineData(Control.LeftEccentric, -15.0, -15.0), InlineData(Control.LeftEccentric, -15.0, -13.0), InlineData(Control.AileronTab, 2.0, 2.0)]
    public void A_plan_that_moves_nothing(Control control, double from, double to) =>
        Refused("moves-nothing", Checked, Mechanic, HalfAFlat with { Moves = [new(control, from, to, "As it stands.")] });

    [Fact]
    public void A_plan_of_turns_that_moves_nothing() =>
        Refused("moves-nothing", Checked, Mechanic, HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "As it stands.", 1, 1)] });

    [Fact]
    public void A_pilot_withdraws_what_was_agreed() => Refused("no-authority", Agreed, Pilot, new CorrectionWithdrawn("Not today."));

    [Fact]
    public void A_correction_is_withdrawn_once_work_has_started() => Refused("wrong-stage", InWork, Mechanic, new CorrectionWithdrawn("Not today."));
}
