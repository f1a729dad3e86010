using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

/// <summary>A trim off neutral holds the aircraft, or rolls it, as a hand would; so does an autopilot. What was flown so is no clean flight.</summary>
public class FlownTrimsTests
{
    static readonly TrimsFlown Clean = new(RollTrim.Neutral, YawTrim.NotFitted, FlownAutopilot.Off);
    static readonly TrimsFlown RollOff = Clean with { Roll = RollTrim.LeftWingDown };
    static readonly TrimsFlown YawOff = Clean with { Yaw = YawTrim.NoseRight };
    static readonly TrimsFlown Engaged = Clean with { Autopilot = FlownAutopilot.Engaged };

    static string Timed(double deg) => FormattableString.Invariant($$"""
        [{ "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
           "readings": [{ "kind": "bank-after", "seconds": 10, "deg": {{deg}}, "method": "stopwatch-horizon" }] }]
        """);

    /// <summary>An evaluation flight for each, a day between them, the last today; the first banks one degree, the next two.</summary>
    static Ledger Flown(Ledger ledger, params TrimsFlown?[] flights) => flights.Select((trims, i) => (trims, i)).Aggregate(ledger, (before, flight) =>
        before.Do(School.Pilot, new EvaluationFlown(School.Today.PlusDays(flight.i + 1 - flights.Length), Timed(-1 - flight.i), null, flight.trims)));

    static Ledger Flown(params TrimsFlown?[] flights) => Flown(School.Checked, flights);

    static Ledger CheckFlown(params TrimsFlown?[] flights) => flights.Aggregate(School.Approved, (before, trims) => before.Do(School.Pilot, School.Flight with { TestPoints = Timed(0), Trims = trims }));

    static EvidenceRequest Evidence(Ledger ledger) => EvidenceRequest.Of(ledger, School.Airframe);

    static AssessmentRequest Read(Ledger ledger) => Evidence(ledger).Read();

    /// <summary>What was read on evaluation flights, by the bank it is known by.</summary>
    static IEnumerable<double> Banks(Ledger ledger) => Read(ledger).TestPoints.SelectMany(point => point.Readings).OfType<BankAfter>().Where(bank => bank.Method == ReadingMethod.StopwatchHorizon).Select(bank => bank.Deg);

    static IEnumerable<string> Refusals(Ledger ledger) => LedgerAssessment.Of(ledger, School.Airframe).Response.Refusals.Select(refusal => refusal.Code);

    [Theory]
    [InlineData(RollTrim.Neutral, YawTrim.Neutral, FlownAutopilot.Off, "neutral", "neutral", Autopilot.Off)]
    [InlineData(RollTrim.NotFitted, YawTrim.NoseLeft, FlownAutopilot.NotFitted, "none", "off neutral, nose left", Autopilot.None)]
    [InlineData(RollTrim.RightWingDown, YawTrim.NoseRight, FlownAutopilot.Disconnected, "off neutral, right wing down", "off neutral, nose right", Autopilot.Disconnected)]
    [InlineData(RollTrim.LeftWingDown, YawTrim.NotFitted, FlownAutopilot.Engaged, "off neutral, left wing down", "none", Autopilot.Engaged)]
    public void What_a_flight_has_on_record_reaches_the_request(RollTrim roll, YawTrim yaw, FlownAutopilot autopilot, string rollAt, string yawAt, Autopilot state)
    {
        var request = Read(Flown(new TrimsFlown(roll, yaw, autopilot)));

        Assert.Equal((new Trims(rollAt, yawAt), state), (request.Trims, request.Autopilot));
    }

    [Fact]
    public void What_nobody_recorded_is_not_made_up()
    {
        Assert.Equal((null, Autopilot.Unknown), (Read(Flown([null])).Trims, Read(Flown([null])).Autopilot));
        Assert.Equal((null, Autopilot.Off), (Read(Flown(new TrimsFlown(null, null, FlownAutopilot.Off))).Trims, Read(Flown(new TrimsFlown(null, null, FlownAutopilot.Off))).Autopilot));
        Assert.DoesNotContain("\"yaw\"", Evidence(Flown(new TrimsFlown(RollTrim.Neutral, null, null))).Json, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_is_taken_from_the_latest_flight_that_has_it_on_record()
    {
        var request = Read(Flown(Clean, new(RollTrim.NotFitted, null, null), null));

        Assert.Equal((new Trims("none", "none"), Autopilot.Off), (request.Trims, request.Autopilot));
    }

    [Fact]
    public void An_autopilot_on_record_is_no_longer_cautioned_about()
    {
        static bool Cautioned(Ledger ledger) => LedgerAssessment.Of(ledger, School.Airframe).Response.Cautions.Any(caution => caution.Contains("autopilot", StringComparison.Ordinal));

        Assert.True(Cautioned(Flown([null])));
        Assert.False(Cautioned(Flown(Clean)));
    }

    public static TheoryData<TrimsFlown> Held => [RollOff, YawOff, Engaged];

    static string Refusal(TrimsFlown held) => held == Engaged ? "autopilot-engaged" : "trim-not-neutral";

    public static TheoryData<TrimsFlown, string> Why => new()
    {
        { RollOff, "roll trim off neutral, left wing down" },
        { YawOff, "yaw trim off neutral, nose right" },
        { Engaged, "autopilot engaged" },
    };

    [Theory, MemberData(nameof(Why))]
    public void A_held_flight_is_left_aside_once_it_was_flown_without_and_the_sentence_names_its_day_and_why(TrimsFlown held, string why)
    {
        var ledger = Flown(held, Clean);

        Assert.Equal([-2], Banks(ledger));
        Assert.Equal($"The flight on 2026-03-01 was left aside: flown with {why}, its readings cannot be compared with those of a later one that was flown without.",
            Assert.Single(Evidence(ledger).Assumed, sentence => sentence.StartsWith("The flight on", StringComparison.Ordinal)));
        Assert.DoesNotContain(Refusal(held), Refusals(ledger));
    }

    [Theory, MemberData(nameof(Held))]
    public void Where_it_was_flown_no_other_way_it_stays_and_stops_every_move(TrimsFlown held)
    {
        var ledger = Flown(held);

        Assert.Equal([-1], Banks(ledger));
        Assert.DoesNotContain(Evidence(ledger).Assumed, sentence => sentence.Contains("left aside", StringComparison.Ordinal));
        Assert.Contains(Refusal(held), Refusals(ledger));
    }

    [Theory, MemberData(nameof(Held))]
    public void A_clean_flight_before_it_does_not_put_it_right(TrimsFlown held)
    {
        Assert.Equal([-1, -2], Banks(Flown(Clean, held)));
        Assert.Contains(Refusal(held), Refusals(Flown(Clean, held)));
    }

    [Theory, MemberData(nameof(Held))]
    public void A_later_flight_that_does_not_say_how_it_stood_does_not_put_it_right(TrimsFlown held)
    {
        var silent = new TrimsFlown(held.Roll == RollTrim.Neutral ? RollTrim.Neutral : null, held.Yaw == YawTrim.NotFitted ? YawTrim.NotFitted : null, held.Autopilot == FlownAutopilot.Off ? FlownAutopilot.Off : null);

        foreach (var later in (TrimsFlown?[])[null, silent])
        {
            Assert.Equal([-1, -2], Banks(Flown(held, later)));
            Assert.Contains(Refusal(held), Refusals(Flown(held, later)));
        }
    }

    [Fact]
    public void A_later_flight_that_was_held_by_something_else_does_not_put_it_right()
    {
        Assert.Equal([-1, -2], Banks(Flown(RollOff, Engaged)));
        Assert.Equal([-3], Banks(Flown(RollOff, Engaged, Clean)));
    }

    [Fact]
    public void A_later_flight_on_which_nothing_was_read_does_not_put_it_right()
    {
        var ledger = Flown(RollOff).Do(School.Pilot, new EvaluationFlown(School.Today, "[ ]", "Too rough to read anything.", Clean));

        Assert.Equal([-1], Banks(ledger));
        Assert.Contains("trim-not-neutral", Refusals(ledger));
    }

    [Fact]
    public void A_held_flight_before_the_work_is_left_aside_for_a_clean_one_after_it()
    {
        Ledger After(TrimsFlown? check) => Flown(School.Called, RollOff) is var flown
            ? School.Checks.Aggregate(flown, (ledger, measured) => ledger.Do(School.Mechanic, measured))
                .Do(School.Mechanic, School.HalfAFlat).Do(School.Mechanic, new WorkStarted("Padded stand under the strut fitting.", null))
                .Do(School.Mechanic, School.Found).Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done).Do(School.Inspector, School.Inspection)
                .Do(School.Certifier, School.Approval).Do(School.Pilot, School.Flight with { TestPoints = Timed(0), Trims = check })
            : flown;

        Assert.Equal([0], Banks(After(Clean)));
        Assert.Equal([-1, 0], Banks(After(null)));
    }

    [Fact]
    public void How_the_trims_stood_on_a_flight_that_counts_no_more_counts_no_more()
    {
        var after = Flown(RollOff)
            .Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Control.LeftFlapRod, null, null, "Left flap rod two turns shorter.")] })
            .Do(School.Mechanic, new WorkStarted("No bolt is loosened.", null))
            .Do(School.Mechanic, School.Found with { Other = "Left flap 0.3° low." })
            .MeasuredAgain()
            .Do(School.Mechanic, School.Done with { AsLeft = School.Found.Bushings, OtherAsLeft = "Both flaps at the stop." });

        Assert.Empty(Banks(after));
        Assert.Null(Read(after).Trims);
    }

    [Fact]
    public void The_reports_words_count_only_until_it_is_flown_whatever_that_flight_says()
    {
        Ledger Reported(params TrimsFlown?[] flights) => Flown(School.Empty.Do(School.Pilot, School.Report with { AsSet = "aileron trim one mark left, autopilot engaged" })
            .Do(School.Mechanic, new Called(Call.NoRiggingHold, "Flies straight enough to gather readings.", null)), flights);

        Assert.Equal((new Trims("one mark left", "none"), Autopilot.Engaged), (Read(Reported()).Trims, Read(Reported()).Autopilot));
        Assert.Equal((null, Autopilot.Unknown), (Read(Reported([null])).Trims, Read(Reported([null])).Autopilot));
        Assert.Equal((new Trims("neutral", "none"), Autopilot.Off), (Read(Reported(Clean)).Trims, Read(Reported(Clean)).Autopilot));
    }

    [Theory, MemberData(nameof(Why))]
    public void The_verdict_on_a_held_check_flight_is_not_enough_evidence_and_says_why(TrimsFlown held, string why)
    {
        Assert.Equal(VerdictWord.Accepted, LedgerVerdict.Of(CheckFlown(Clean, Clean), School.Airframe)!.Fact.Verdict);

        foreach (var flown in (Ledger[])[CheckFlown(held, held), CheckFlown(Clean, held), CheckFlown(held, null)])
        {
            var verdict = LedgerVerdict.Of(flown, School.Airframe)!.Fact;

            Assert.Equal((VerdictWord.NotEnoughEvidence, null), (verdict.Verdict, verdict.TendencyDegPerS));
            Assert.Contains(why.Split(' ')[0], verdict.Explanation, StringComparison.Ordinal);
            Assert.Contains("Fly it again", verdict.Explanation, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_check_flight_flown_again_without_has_its_verdict()
    {
        var flown = CheckFlown(RollOff, Clean, Clean);

        Assert.Equal(VerdictWord.Accepted, LedgerVerdict.Of(flown, School.Airframe)!.Fact.Verdict);
        Assert.Contains(EvidenceRequest.OfCheckFlights(flown, School.Airframe, fuelMeasured: true).Assumed, sentence => sentence.StartsWith("The flight on 2026-03-02 was left aside", StringComparison.Ordinal));
    }

    [Fact]
    public void A_held_flight_teaches_nothing_about_the_adjuster_that_was_moved()
    {
        Assert.NotEmpty(Lessons.Of(CheckFlown(Clean), School.Airframe, sameAircraft: true));
        Assert.Empty(Lessons.Of(CheckFlown(Engaged), School.Airframe, sameAircraft: true));
    }

    [Theory]
    [InlineData(RollTrim.Neutral, YawTrim.NotFitted, FlownAutopilot.Off, "roll trim neutral; yaw trim not fitted; autopilot off")]
    [InlineData(null, YawTrim.NoseLeft, null, "yaw trim off neutral, nose left")]
    [InlineData(RollTrim.RightWingDown, null, FlownAutopilot.Engaged, "roll trim off neutral, right wing down; autopilot engaged")]
    public void The_pilot_signs_what_was_recorded(RollTrim? roll, YawTrim? yaw, FlownAutopilot? autopilot, string words)
    {
        var said = $"Trims and autopilot: {words}.\n";
        string Text(TrimsFlown? trims) => Squawk.TextToSign(School.Approved, School.Flight with { Trims = trims }, School.Facts(School.Pilot));

        Assert.Contains(said, Text(new(roll, yaw, autopilot)), StringComparison.Ordinal);
        // Above a flight without it stands what stood there before anybody was asked.
        Assert.Equal(Text(null), Text(new(roll, yaw, autopilot)).Replace(said, "", StringComparison.Ordinal));
    }

    [Theory, InlineData("evaluation-flight"), InlineData("check-flight")]
    public void Flights_stored_before_it_was_asked_have_it_not_recorded(string kind)
    {
        var stored = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "payloads", $"{kind}.1.json"));

        Assert.Null(Assert.IsType<IFlown>(EntryCodec.Read(7, kind, 1, stored).Fact, exactMatch: false).Trims);
    }
}
