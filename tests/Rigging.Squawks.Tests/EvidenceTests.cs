using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;

namespace Rigging.Squawks.Tests;

public class EvidenceTests
{
    const string OnePoint = """
        [{ "manoeuvre": "hold-level", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77 }, "fuelL": { "left": 25, "right": 30 } },
           "readings": [{ "kind": "ball", "widths": 0.1, "method": "eye" }] }]
        """;

    static AssessmentRequest Read(Ledgers.Ledger ledger)
    {
        var read = ContractReader.ReadRequest(EvidenceRequest.Of(ledger, School.Airframe).Json);
        Assert.Empty(read.Faults);
        return read.Value!;
    }

    [Fact]
    public void Report_and_checks_become_a_request_that_the_endpoint_accepts()
    {
        var request = Read(School.Checked);

        var point = Assert.Single(request.TestPoints);
        Assert.Equal((Manoeuvre.ReleaseWheel, 95.0), (point.Manoeuvre, point.CasKt));
        Assert.Equal(new BankAfter(10, -6) { Method = ReadingMethod.Eye }, Assert.Single(point.Readings));
        Assert.Contains(request.GroundChecks, check => check is AngleCheck { Kind: GroundCheckKind.FlapDifference, Deg: 0.1 });
        Assert.Contains(request.GroundChecks, check => check is ClearanceCheck { Clear: true });
        Assert.Equal([new PastEvent(EventKind.Repaint)], request.Events);
    }

    [Theory]
    [InlineData(Aboard.AloneLeft, 77, 0)]
    [InlineData(Aboard.AloneRight, 0, 77)]
    [InlineData(Aboard.TwoUp, 77, 77)]
    [InlineData(Aboard.MoreThanTwo, 77, 77)]
    public void Who_sat_where_counts_though_nobody_was_weighed_and_it_is_said(Aboard aboard, double leftKg, double rightKg)
    {
        var ledger = School.Empty.Do(School.Pilot, School.Report with { SeatLeftKg = null, SeatRightKg = null, Aboard = aboard });

        var load = Assert.Single(Read(ledger).TestPoints).Load;

        Assert.Equal((leftKg, rightKg), (load.SeatsKg["left"], load.SeatsKg["right"]));
        Assert.Contains(EvidenceRequest.Of(ledger, School.Airframe).Assumed, sentence => sentence.EndsWith("taken as 77 kg a person.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_report_without_numbers_says_what_was_assumed()
    {
        var vague = School.Report with
        {
            CasKt = null,
            PressureAltitudeFt = null,
            PowerPercent = null,
            BankDeg = null,
            BankAfterS = null,
            FuelLeftL = null,
            FuelRightL = null,
            FuelMethod = FuelMethod.NotKnown,
            SeatLeftKg = null,
            SeatRightKg = null,
            Strength = Entries.RollStrength.NotRecorded,
        };

        var ledger = School.Empty.Do(School.Pilot, vague);

        Assert.Equal(new Rolls(RollSide.Left, Mechanics.Contract.RollStrength.Slowly), Assert.Single(Read(ledger).TestPoints[0].Readings));
        Assert.Equal(6, EvidenceRequest.Of(ledger, School.Airframe).Assumed.Count);
    }

    [Fact]
    public void Flights_made_before_an_eccentric_was_turned_still_speak_with_the_turn_beside_them()
    {
        var flown = School.Called.Do(School.Pilot, new EvaluationFlown(School.Today, OnePoint, null));
        Assert.All(Read(flown).TestPoints, point => Assert.Null(point.MovedSince));

        var after = School.Approved.Do(School.Pilot, School.Flight with { SecondCrewDuty = null, TestPoints = OnePoint });

        var (before, now) = (Read(after).TestPoints[0], Read(after).TestPoints[^1]);
        var turned = Assert.Single(before.MovedSince!);
        // Half a flat of the left eccentric from −15° to 15°, throw 1.8 mm, spars 880 mm apart: 2·atan(1.8·sin 15°/880) = 0.0607° more on the left.
        Assert.Equal((Mechanics.Contract.Cause.PanelIncidenceDifference, -0.0607), (turned.Cause, Math.Round(turned.Amplitude, 4)));
        Assert.Null(now.MovedSince);
        Assert.Equal(new Mechanics.Contract.BushingAngles(15), Read(after).Settings!.LeftEccentricDeg);
    }

    [Fact]
    public void Flights_made_before_anything_else_was_moved_no_longer_speak()
    {
        var after = School.Checked
            .Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod two turns shorter."), School.HalfAFlat.Moves[0]] })
            .Do(School.Mechanic, new WorkStarted("Padded stand under the strut fitting.", null))
            .Do(School.Mechanic, School.Found with { Other = "Left flap 0.3° low." })
            .Do(School.Mechanic, School.Torque)
            .MeasuredAgain()
            .Do(School.Mechanic, School.Done with { OtherAsLeft = "Both flaps at the stop." });

        Assert.Empty(Read(after).TestPoints);
    }

    static PastEvent WithoutEffect(Cause cause) => new(EventKind.CorrectionWithoutEffect, cause);

    [Fact]
    public void What_the_reporter_says_was_tried_in_vain_speaks_against_what_it_was_meant_for()
    {
        var request = Read(School.Empty.Do(School.Pilot, School.Report with { WithoutEffect = [Tried.Incidence, Tried.RudderTab] }));

        Assert.Equal([new(EventKind.Repaint), WithoutEffect(Cause.PanelIncidenceDifference), WithoutEffect(Cause.RudderOrFinOffset)], request.Events);
    }

    /// <summary>The flights before a flap rod was turned that nobody counted no longer speak; that the turn changed nothing does. Expected was −0.8 to −0.1 °/s.</summary>
    [Theory]
    [InlineData(-0.75, true)]
    [InlineData(-1.0, true)]
    [InlineData(-0.4, false)]
    public void A_flap_that_was_set_and_flown_without_effect_speaks_against_the_flaps(double afterDegPerS, bool inVain)
    {
        var left = School.Checked
            .Do(School.Mechanic, new Assessed("{}", """{"rollTendency":{"mean":-0.8}}""", "0.1", "1", "st2", 1))
            .Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod two turns shorter.")] })
            .Do(School.Mechanic, new WorkStarted("No bolt is loosened.", null))
            .Do(School.Mechanic, School.Found with { Other = "Left flap 0.3° low." })
            .MeasuredAgain()
            .Do(School.Mechanic, School.Done with { AsLeft = School.Found.Bushings, OtherAsLeft = "Both flaps at the stop." });
        var flown = left
            .Do(School.Inspector, School.Inspection with { Observations = [.. left.State.ControlsToSee.Select(asked => asked with { Seen = asked.Expected })] })
            .Do(School.Certifier, School.Approval)
            .Do(School.Pilot, School.Flight)
            .Do(School.Mechanic, School.Verdict(VerdictWord.AdjustAgain) with { TendencyDegPerS = afterDegPerS });

        Assert.Equal(inVain, Read(flown).Events.Contains(WithoutEffect(Cause.FlapDifference)));
    }

    static EvidenceRequest Of(string? asSet) => EvidenceRequest.Of(School.Empty.Do(School.Pilot, School.Report with { AsSet = asSet }), School.Airframe);

    [Theory]
    [InlineData("2400 rpm, aileron trim one mark left, autopilot off", "one mark left", "none", Autopilot.Off)]
    [InlineData("Rudder trim: full right; autopilot engaged.", "none", "full right", Autopilot.Engaged)]
    [InlineData("Roll trim was neutral\nyaw trim neutral\nA/P none", "neutral", "neutral", Autopilot.None)]
    public void Trims_and_autopilot_are_taken_from_the_pilots_words_where_they_name_them(string asSet, string roll, string yaw, Autopilot autopilot)
    {
        var evidence = Of(asSet);

        Assert.Equal((new Trims(roll, yaw), autopilot), (evidence.Read().Trims, evidence.Read().Autopilot));
        Assert.Contains(evidence.Assumed, sentence => sentence.Contains(asSet, StringComparison.Ordinal));
    }

    [Theory, InlineData("2400 rpm and trimmed"), InlineData("autopilot tripped twice"), InlineData("the rudder trim")]
    public void Words_that_name_no_place_are_shown_and_not_guessed_at(string asSet)
    {
        var evidence = Of(asSet);

        Assert.Equal((null, Autopilot.Unknown), (evidence.Read().Trims, evidence.Read().Autopilot));
        Assert.Contains(evidence.Assumed, sentence => sentence.Contains(asSet, StringComparison.Ordinal) && sentence.Contains("not", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Once_it_was_flown_for_readings_the_trims_of_the_report_stand_in_the_way_no_more() =>
        Assert.Null(Read(School.Empty.Do(School.Pilot, School.Report with { AsSet = "aileron trim one mark left" })
            .Do(School.Mechanic, new Called(Call.NoRiggingHold, "Flies straight enough to gather readings.", null))
            .Do(School.Pilot, new EvaluationFlown(School.Today, OnePoint, null))).Trims);

    [Fact]
    public void A_reading_that_cannot_be_is_refused_by_its_place_in_the_list()
    {
        var refused = Assert.IsType<Rules.Decision.Refused>(
            School.Try(School.Called, School.Pilot, new EvaluationFlown(School.Today, OnePoint.Replace("95", "900", StringComparison.Ordinal), null)));

        var broken = Assert.Single(refused.Broken);
        Assert.Equal(("test-points-unreadable", "testPoints[0].casKt"), (broken.Code, broken.Field));
    }

    [Fact]
    public void What_was_measured_before_it_was_moved_no_longer_counts()
    {
        var flaps = School.Checked
            .Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod two turns shorter."), School.HalfAFlat.Moves[0]] })
            .Do(School.Mechanic, new WorkStarted("Padded stand under the strut fitting.", null))
            .Do(School.Mechanic, School.Found with { Other = "Left flap 0.3° low." })
            .Do(School.Mechanic, School.Torque);
        Assert.Contains(Read(flaps).GroundChecks, check => check.Kind == GroundCheckKind.FlapDifference);

        var after = flaps.Once(School.Done with { OtherAsLeft = "Both flaps at the stop." });

        Assert.DoesNotContain(Read(after).GroundChecks, check => check.Kind == GroundCheckKind.FlapDifference);
        Assert.Contains(Read(after).GroundChecks, check => check.Kind == GroundCheckKind.BallOffset);
    }

    [Fact]
    public void More_fuel_than_the_tank_holds_is_taken_as_full_and_said()
    {
        // Taken by earlier versions, and by this one where a danger is reported.
        var ledger = School.Empty.Do(School.Pilot, School.Report with { FuelRightL = 400, Happened = [Happening.FlapOverspeed] });

        Assert.Equal(42, Read(ledger).TestPoints[0].Load.FuelL["right"]);
        Assert.Contains(EvidenceRequest.Of(ledger, School.Airframe).Assumed, sentence => sentence.StartsWith("400 L was reported in the right tank, which holds 42 L", StringComparison.Ordinal));
    }

    [Fact]
    public void A_check_that_no_request_can_hold_is_left_aside_and_said()
    {
        var ledger = School.Checked.Do(School.Mechanic, School.Measured(Check.RudderTab, 60));

        Assert.DoesNotContain(Read(ledger).GroundChecks, check => check.Kind == GroundCheckKind.RudderTab);
        Assert.Contains("A ground check was left aside: deg is 60; wanted a number from -45 to 45 °.", EvidenceRequest.Of(ledger, School.Airframe).Assumed);
    }

    [Fact]
    public void A_verdict_rests_on_the_flights_whose_fuel_is_known_like_the_last_ones()
    {
        var unmeasured = School.Approved.Do(School.Pilot, School.Flight with { SecondCrewDuty = null, TestPoints = OnePoint.Replace("30", "40", StringComparison.Ordinal), FuelMeasured = false });
        Assert.Equal(VerdictWord.NotEnoughEvidence, LedgerVerdict.Of(unmeasured, School.Airframe)!.Fact.Verdict);

        var again = unmeasured.Do(School.Pilot, School.Flight with { SecondCrewDuty = null, TestPoints = OnePoint });

        Assert.Equal(30, Assert.Single(LedgerVerdict.Of(again, School.Airframe)!.Request.TestPoints).Load.FuelL["right"]);
        Assert.Null(LedgerVerdict.Of(School.Approved, School.Airframe));
    }

    [Fact]
    public void An_assessment_goes_on_record_with_all_that_it_takes_to_repeat_it()
    {
        var made = LedgerAssessment.Of(School.Checked, School.Airframe);

        Assert.Equal(("st2", 1), (made.Fact.AirframeId, made.Fact.AirframeVersion));
        var again = ContractReader.ReadRequest(made.Fact.Request).Value!;
        var practice = Mechanics.Assessment.Practice.Usual.WithFuelMeasured();
        Assert.Equal(practice.Version, made.Fact.PriorsVersion);
        Assert.Equal(made.Fact.Response, ContractWriter.Write(Mechanics.Assessment.Assessor.Assess(again, again.Airframe!, practice)));
        School.Checked.Do(School.Mechanic, made.Fact);
    }

    [Fact]
    public void Fuel_that_was_dipped_is_no_longer_the_first_suspect()
    {
        static double? Load(Ledgers.Ledger ledger) => LedgerAssessment.Of(ledger, School.Airframe).Response.Causes.Single(cause => cause.Cause == Cause.FuelAndLoading).Explains;

        Assert.True(Load(School.Called.Do(School.Mechanic, School.Checks[0])) < Load(School.Called.Do(School.Mechanic, School.Checks[1])) / 2);
    }
}
