using System.Text.RegularExpressions;
using CsCheck;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;
using Check = Rigging.Squawks.Entries.Check;
using Wire = Rigging.Mechanics.Contract.Wire;

namespace Rigging.Squawks.Tests;

/// <summary>A danger that somebody answered with yes grounds, and is one question everywhere, until a damage inspection answers it.</summary>
public partial class DamageQuestionTests
{
    static readonly GroundChecked Clear = Checks.Single(check => check.Check == Check.DamageInspection);
    static readonly GroundChecked Cracked = Clear with { Clear = false, Finding = "Cracked skin at the rear fitting." };

    [GeneratedRegex(@"\bfly\b(?! straight)", RegexOptions.IgnoreCase)]
    private static partial Regex Fly();

    public static TheoryData<RedFlag?, Happening?> Dangers =>
    [
        .. Enum.GetValues<RedFlag>().Select(flag => new TheoryDataRow<RedFlag?, Happening?>(flag, null)),
        .. ((Happening[])[Happening.HardLanding, Happening.GroundStrike, Happening.FlapOverspeed, Happening.Repair, Happening.WingRemoved, Happening.WingReplaced, Happening.ControlReplaced])
            .Select(happening => new TheoryDataRow<RedFlag?, Happening?>(null, happening)),
    ];

    static Reported Ticked(RedFlag? flag, Happening? happened) => Report with { RedFlags = flag is { } f ? [f] : [], Happened = happened is { } h ? [h] : [] };

    static IEnumerable<string> Refused(Ledger ledger, Person who, Fact fact, Func<Facts, Facts>? change = null) =>
        Assert.IsType<Decision.Refused>(Try(ledger, who, fact, change)).Broken.Select(rule => rule.Code);

    [Theory, MemberData(nameof(Dangers))]
    public void Each_danger_grounds_from_the_report_or_from_the_call_and_reaches_the_assessment_as_the_event_it_is(RedFlag? flag, Happening? happened)
    {
        var ticked = Ticked(flag, happened);
        var called = School.Called.Do(Inspector, Clear).Do(Office, new Called(Call.Grounded, "The hirer rang.", null, ticked.RedFlags, ticked.Happened));

        foreach (var ledger in (Ledger[])[Empty.Do(Pilot, ticked), called])
        {
            Assert.Equal(FlightStatus.Grounded, ledger.State.FlightStatus);
            Assert.Contains("red-flags-not-cleared", Refused(ledger, Mechanic, new Called(Call.NoRiggingHold, "Looks fine.", null)));
            Assert.Contains("red-flags-not-cleared", Refused(ledger, Mechanic, new Called(Call.MayFlyWithLimits, "Looks fine.", "Day.")));
            Assert.Equal(typeof(GroundChecked), NextAct.Of(ledger.State)!.Kind);
            var made = LedgerAssessment.Of(ledger, School.Airframe);
            Assert.Contains(made.Request.Events, e => Wire.Word(e.Kind) == Event(flag, happened));
            Assert.True(made.Response.DamageInDoubt);
            Assert.Equal("ground-check:damage-inspection", made.Response.NextTests[0].Test);

            var cleared = ledger.Do(Inspector, Clear);
            Assert.NotEqual(FlightStatus.Grounded, cleared.Do(Mechanic, new Called(Call.NoRiggingHold, "Looked at.", null)).State.FlightStatus);
            Assert.DoesNotContain(LedgerAssessment.Of(cleared, School.Airframe).Response.Refusals, refusal => refusal.Sentence.EndsWith(": nothing is moved until a damage inspection is recorded clear.", StringComparison.Ordinal));
        }
        Assert.Equal(["red-flags-not-cleared"], Refused(School.Called, Mechanic, new Called(Call.NoRiggingHold, "Rang.", null, ticked.RedFlags, ticked.Happened)));
    }

    static string Event(RedFlag? flag, Happening? happened) => (flag, happened) switch
    {
        (null, { } word) => Wire.Word(word),
        (RedFlag.SuddenOnset or RedFlag.Bang or RedFlag.StuckOrSplitFlap, _) => "sudden-onset",
        (RedFlag.FullOrNearlyFullControl or RedFlag.BothHands, _) => "full-control",
        (RedFlag.FirstFlightAfterAssembly, _) => "first-flight-after-assembly",
        (RedFlag.UnexplainedRecurrence, _) => "unexplained-recurrence",
        (RedFlag.ControlJammed, _) => "control-jammed",
        _ => "damage-suspected",
    };

    [Fact]
    public void A_danger_is_filed_without_a_word_and_without_an_answer()
    {
        var bare = new Reported(1, Aircraft, "", Side.NotRecorded, RollStrength.NotRecorded, Hands.NotRecorded, Feet.NotRecorded, null, null, null, null, null, null, null,
            null, null, FuelMethod.NotKnown, null, null, null, null, null, [], [RedFlag.ControlJammed]);

        Assert.Equal(FlightStatus.Grounded, Empty.Do(Pilot, bare).State.FlightStatus);
        Assert.Equal("A control that is stuck, stiff, or moves the wrong way", GroundingQuestions.Complaint(bare));
        Assert.Equal(["text-missing"], Refused(Empty, Pilot, bare with { RedFlags = [], Happened = [Happening.Repaint] }));
    }

    [Fact]
    public void What_cannot_be_stands_beside_a_report_that_grounds_and_holds_nothing_up()
    {
        var typed = Report with { RedFlags = [RedFlag.Bang], CasKt = 9000, BankDeg = 20, BankAfterS = null, FuelMethod = FuelMethod.Dip, FuelLeftL = null, Words = new string('a', 4001) + "\u0007" };

        var report = AtOnce.Of(typed, ["Power: “lots” is not a number."]);

        Assert.Equal((null, null, FuelMethod.NotKnown, 4000), (report.CasKt, report.BankDeg, report.FuelMethod, report.Words.Length));
        Assert.Contains("Power: “lots” is not a number.", report.Unread!);
        Assert.Contains(report.Unread!, line => line.Contains("9000", StringComparison.Ordinal));
        Assert.Contains("a", report.Unread!);
        Assert.Equal(FlightStatus.Grounded, Empty.Do(Pilot, report).State.FlightStatus);
    }

    [Fact]
    public void A_clear_look_before_it_happened_answers_nothing()
    {
        var ledger = Checked.Do(Office, new Called(Call.Grounded, "The hirer rang.", null, [], [Happening.HardLanding]));

        Assert.Contains(Entries.Prerequisite.Damage, ledger.State.MissingPrerequisites);
        Assert.Contains("damage-not-ruled-out", Refused(ledger, Mechanic, HalfAFlat));
        Assert.DoesNotContain(LedgerAssessment.Of(ledger, School.Airframe).Request.GroundChecks, check => check is Mechanics.Contract.ClearanceCheck { Clear: true });
    }

    [Fact]
    public void Whoever_worked_on_the_squawk_in_any_round_does_not_find_it_free_of_damage()
    {
        var again = Flown.Do(Mechanic, Verdict(VerdictWord.AdjustAgain)).Do(Mechanic, new RoundOpened("Not cured.")).Do(Inspector, Cracked);

        Assert.Equal(["inspector-did-the-work"], Refused(again, Mechanic, Clear));
        Assert.Equal(FlightStatus.Grounded, again.State.FlightStatus);
        Assert.False(again.Do(Inspector, Clear).State.DamageSuspected);
    }

    [Fact]
    public void Limits_of_the_call_stay_until_the_verdict_says_cured()
    {
        var limited = School.Reported.Do(Mechanic, new Called(Call.MayFlyWithLimits, "Slow.", "Two up, day."));
        var flown = Checks.Aggregate(limited, (ledger, check) => ledger.Do(Mechanic, check)).Do(Mechanic, HalfAFlat).Do(Mechanic, new WorkStarted("Stand.", null))
            .Do(Mechanic, Found).Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done).Do(Inspector, Inspection).Do(Certifier, Approval).Do(Pilot, Flight);

        Assert.Equal(FlightStatus.Limits, flown.State.FlightStatus);
        var again = flown.Do(Mechanic, Verdict(VerdictWord.AdjustAgain));
        Assert.Equal((FlightStatus.Limits, "Two up, day."), (again.State.FlightStatus, again.State.Call!.Limits!));
        Assert.Equal(FlightStatus.Limits, again.Do(Mechanic, new RoundOpened("Not cured.")).State.FlightStatus);
        Assert.Equal(FlightStatus.MayFly, flown.Do(Mechanic, Verdict(VerdictWord.Accepted)).State.FlightStatus);
    }

    [Theory, InlineData(0.9, -0.3, false), InlineData(0.9, 0.6, false), InlineData(0.3, -0.9, true), InlineData(-0.5, -0.9, true)]
    public void Worse_than_before_is_grounded_until_looked_at(double before, double after, bool worse)
    {
        var assessed = new Assessed("{}", $$"""{ "rollTendency": { "mean": {{before.ToString(System.Globalization.CultureInfo.InvariantCulture)}} } }""", "0.1", "9", "st2", 1);
        var judged = Checked.Do(Mechanic, assessed).Do(Mechanic, HalfAFlat).Do(Mechanic, new WorkStarted("Stand.", null))
            .Do(Mechanic, Found).Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done).Do(Inspector, Inspection).Do(Certifier, Approval).Do(Pilot, Flight)
            .Do(Mechanic, Verdict(VerdictWord.AdjustAgain) with { TendencyDegPerS = after });

        Assert.Equal(worse, judged.State.DamageSuspected);
        if (!worse) return;
        var round = judged.Do(Mechanic, new RoundOpened("Worse."));
        Assert.Equal((FlightStatus.Grounded, FlightStatus.Grounded), (judged.State.FlightStatus, round.State.FlightStatus));
        Assert.Contains("red-flags-not-cleared", Refused(round, Mechanic, new Called(Call.NoRiggingHold, "It will do.", null)));
    }

    [Fact]
    public void Damage_in_doubt_by_another_squawk_of_the_aircraft_holds_here_too()
    {
        static Facts Elsewhere(Facts facts) => facts with { OtherSquawks = [new(Other, 7, FlightStatus.Grounded, DamageSuspected: true)] };

        var made = LedgerAssessment.Of(Checked, School.Airframe, damageElsewhere: true);
        Assert.True(made.Response.DamageInDoubt);
        Assert.DoesNotContain(made.Response.NextTests, test => test.Test.StartsWith("test-point", StringComparison.Ordinal));
        Assert.Contains("damage-not-ruled-out", Refused(Checked, Mechanic, HalfAFlat, Elsewhere));
        Assert.Contains("damage-not-ruled-out", Refused(Agreed, Mechanic, new WorkStarted("Stand.", null), Elsewhere));
        Assert.Contains("damage-not-ruled-out", Refused(Flown, Mechanic, Verdict(VerdictWord.Accepted), Elsewhere));
        Assert.DoesNotMatch(Fly(), NextAct.Of(School.Approved.State, Elsewhere(Facts(Pilot)))!.Sentence);
    }

    /// <summary>A danger at any moment of a squawk's life, then whatever people do: nothing that the rules allow lifts it but a clear inspection by an inspector who did no work.</summary>
    [Fact]
    public void No_path_of_allowed_entries_leads_away_from_the_ground_while_a_damage_question_is_open() => Walks.All.Sample(steps =>
    {
        var open = false;
        foreach (var moment in Walks.Walk(steps))
        {
            var grew = moment.After.Length > moment.Before.Length;
            var raised = grew && moment.Fact switch
            {
                Entries.Reported report => report.RedFlags.Count > 0 || report.Happened.Any(GroundingQuestions.Happenings.Contains),
                Entries.Called call => call.RedFlags?.Count > 0 || call.Happened?.Count > 0,
                GroundChecked check => check is { Check: Check.DamageInspection, Clear: false },
                Entries.Inspected => ((Entries.Inspected)moment.After.Entries[^1].Fact).Observations.Any(seen => seen.WrongWay),
                _ => false,
            };
            var cleared = grew && moment.Fact is GroundChecked { Check: Check.DamageInspection, Clear: true };
            if (cleared && open) Assert.DoesNotContain(moment.After.Entries[^1].By, moment.Before.State.EverWorked);
            open = (open && !cleared) || raised;
            if (!open || moment.After.State.Stage is not { } stage) continue;

            var state = moment.After.State;
            Assert.True(stage.IsOpen(), $"It ended as {stage} with a damage question open.");
            Assert.True(state.DamageSuspected);
            Assert.Equal(FlightStatus.Grounded, state.FlightStatus);
            Assert.DoesNotMatch(Fly(), NextAct.Of(state)!.Sentence);
            Assert.NotEqual(typeof(CheckFlown), NextAct.Of(state)!.Kind);
            foreach (var flight in (Type[])[typeof(EvaluationFlown), typeof(CheckFlown)])
                Assert.NotEmpty(Squawk.WhatBlocks(flight, moment.After, Facts(Walks.Cast[6])));
        }
    }, iter: 400);

    /// <summary>Every combination of dangers, asked on the report and on the call: what comes of the evidence says no word of flying.</summary>
    [Fact]
    public void No_combination_of_dangers_leaves_a_flight_in_the_assessment() => Gen.Select(
        Gen.Enum<RedFlag>().Array[0, 3], Gen.Int[0, GroundingQuestions.Happenings.Count - 1].Select(i => GroundingQuestions.Happenings[i]).Array[0, 3], Gen.Bool, Gen.Bool, Gen.Bool,
        (flags, happened, onCall, checkedBefore, flown) => (flags, happened, onCall, checkedBefore, flown)).Where(all => all.flags.Length + all.happened.Length > 0).Sample(all =>
    {
        var (flags, happened, onCall, checkedBefore, flown) = all;
        var ledger = onCall ? School.Reported : Empty.Do(Pilot, Report with { RedFlags = [.. flags.Distinct()], Happened = [.. happened.Distinct()], AsSet = "aileron trim left wing down, autopilot on" });
        if (onCall && checkedBefore) ledger = Checks.Aggregate(ledger, (grown, check) => grown.Do(Inspector, check));
        if (onCall && flown) ledger = ledger.Do(Mechanic, new Called(Call.NoRiggingHold, "Readings first.", null)).Do(Pilot, new EvaluationFlown(Today, FlownTrimsPoints, null, new(RollTrim.LeftWingDown, null, FlownAutopilot.Engaged)));
        if (onCall) ledger = ledger.Do(Office, new Called(Call.Grounded, "The hirer rang.", null, [.. flags.Distinct()], [.. happened.Distinct()]));

        var answer = LedgerAssessment.Of(ledger, School.Airframe).Response;

        Assert.True(answer.DamageInDoubt);
        Assert.DoesNotContain(answer.NextTests, test => test.Test.StartsWith("test-point", StringComparison.Ordinal));
        Assert.All([.. answer.Refusals.Select(refusal => refusal.Sentence), .. answer.Cautions], sentence => Assert.DoesNotMatch(Fly(), sentence));
    }, iter: 60);

    const string FlownTrimsPoints = """[{ "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } }, "readings": [{ "kind": "bank-after", "seconds": 10, "deg": -9 }] }]""";
}
