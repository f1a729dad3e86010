using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>The check flight, its verdict and the closing.</summary>
public partial class ForbiddenStories
{
    [Theory, InlineData(Stage.InWork), InlineData(Stage.AwaitingInspection), InlineData(Stage.AwaitingApproval)]
    public void A_flight_before_inspection_and_approval(Stage stage)
    {
        Refused("wrong-stage", At(stage), Pilot, Flight);
        Refused("wrong-stage", At(stage), Pilot, Evaluation);
    }

    [Fact]
    public void A_check_flight_dated_between_the_work_and_its_approval()
    {
        var approved = TorquedDaysAgo(2).Do(Mechanic, Done with { CompletedOn = Today.PlusDays(-2) }).Do(Inspector, Inspection).Do(Certifier, Approval);
        Refused("flown-before-approval", approved, Pilot, Flight with { FlownOn = Today.PlusDays(-1) });
    }

    [Fact]
    public void A_check_flight_dated_tomorrow() => Refused("date-in-future", School.Approved, Pilot, Flight with { FlownOn = Today.PlusDays(1) });

    [Fact]
    public void A_student_flies_the_check_flight() => Refused("pilot-not-rated", School.Approved, Student, Flight);

    [Fact]
    public void A_pilot_whose_certificate_has_run_out_flies_the_check_flight() =>
        Refused("certificate-expired", School.Approved, Pilot with { Certificates = [Pilot.Certificates[0] with { ValidUntil = Today.PlusDays(-1) }] }, Flight);

    [Fact]
    public void A_mechanic_who_is_no_pilot_logs_the_check_flight() => Refused("no-authority", School.Approved, Someone(9, [Authority.Mechanic], "private-pilot"), Flight);

    [Fact]
    public void A_passenger_on_the_check_flight() => Refused("passengers-carried", School.Approved, Pilot, Flight with { Passengers = 1 });

    [Fact]
    public void A_student_along_on_the_check_flight() => Refused("students-carried", School.Approved, Pilot, Flight with { Students = 1 });

    [Fact]
    public void A_second_crew_member_without_a_duty() => Refused("second-crew-without-duty", School.Approved, Pilot, Flight with { SecondCrewDuty = " " });

    [Fact]
    public void A_check_flight_without_stalls_or_a_reason() => Refused("stalls-missing", School.Approved, Pilot, Flight with { StallsFlown = false });

    [Fact]
    public void A_check_flight_without_each_flap_setting_or_a_reason() => Refused("flaps-missing", School.Approved, Pilot, Flight with { EveryFlapSetting = false });

    [Fact]
    public void The_pilot_did_not_read_what_was_disturbed() => Refused("briefing-not-read", School.Approved, Pilot, Flight with { ReadWhatWasDisturbed = false });

    [Fact]
    public void The_pilot_did_not_check_the_controls() => Refused("controls-not-checked", School.Approved, Pilot, Flight with { ControlsCheckedBeforeFlight = false });

    [Theory, InlineData(FlightStatus.Held), InlineData(FlightStatus.Grounded)]
    public void A_check_flight_although_another_squawk_keeps_it_down(FlightStatus other) =>
        Refused("aircraft-may-not-fly", School.Approved, Pilot, Flight, facts => facts with { OtherSquawks = [new(Other, 7, other)] });

    [Fact]
    public void A_check_flight_after_the_office_grounded_the_approved_aircraft() => Refused("aircraft-grounded", School.Approved.Do(Office, Grounded), Pilot, Flight);

    [Fact]
    public void A_check_flight_after_damage_was_found_on_the_approved_aircraft() => Refused("aircraft-grounded", School.Approved.Do(Mechanic, DamageFound), Pilot, Flight);

    [Fact]
    public void Accepted_although_nobody_measured_the_fuel() =>
        Refused("fuel-not-measured", School.Approved.Do(Pilot, Flight with { FuelMeasured = false }), Mechanic, Verdict(VerdictWord.Accepted));

    [Fact]
    public void Accepted_although_the_autopilot_flew_it() =>
        Refused("flown-held", School.Approved.Do(Pilot, Flight with { Trims = new(RollTrim.Neutral, null, FlownAutopilot.Engaged) }), Mechanic, Verdict(VerdictWord.Accepted));

    [Fact]
    public void A_verdict_without_a_word_of_explanation() => Refused("text-missing", Flown, Mechanic, Verdict(VerdictWord.Accepted) with { Explanation = "" });

    [Fact]
    public void The_pilot_judges_own_flight() => Refused("no-authority", Flown, Pilot, Verdict(VerdictWord.Accepted));

    [Fact]
    public void Closed_without_a_verdict() => Refused("verdict-missing", Flown, Inspector, new Closed("Fine."));

    [Fact]
    public void Closed_on_the_verdict_of_an_earlier_flight() => Refused("verdict-missing", Judged.Do(Pilot, Flight), Inspector, new Closed("Fine."));

    [Theory, InlineData(VerdictWord.AdjustAgain), InlineData(VerdictWord.NotEnoughEvidence)]
    public void Closed_on_a_verdict_that_does_not_accept(VerdictWord verdict) =>
        Refused("verdict-not-accepted", Flown.Do(Mechanic, Verdict(verdict)), Inspector, new Closed("Good enough."));

    [Fact]
    public void Closed_after_a_flight_that_was_not_satisfactory() =>
        Refused("aircraft-grounded", School.Approved.Do(Pilot, Flight with { Satisfactory = false }).Do(Mechanic, Verdict(VerdictWord.Accepted)), Inspector, new Closed("Fine."));

    [Fact]
    public void Closed_while_grounded_since_the_flight() => Refused("aircraft-grounded", Judged.Do(Office, Grounded), Inspector, new Closed("Fine."));

    [Fact]
    public void The_office_closes_the_complaint() => Refused("no-authority", Judged, Office, new Closed("Fine."));

    [Fact]
    public void Another_report_is_written_into_the_same_ledger() => Refused("wrong-stage", School.Called, Pilot, Report);

    [Fact]
    public void Something_is_added_to_a_closed_complaint() => Refused("wrong-stage", School.Closed, Mechanic, Measured(Check.BallOffset, 0));
}
