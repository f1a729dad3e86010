using System.Text.RegularExpressions;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>No text above a signature says two things of one, whatever was answered: every combination of answers is put to the rules, and what they let through is read.</summary>
public class ContradictionTests
{
    /// <summary>What cannot both be so, as the words that say it.</summary>
    static readonly (string One, string Other)[] Pairs =
    [
        ("Passengers barred", "cannot have changed how the aircraft flies"),
        ("Passengers barred", "Ground evidence"),
        ("(?m)^Agreed: .*eccentric|^Agreed: (Left|Right) wing:", "no eccentric touched"),
        ("Independent(ly inspected by .*| inspection): passed", "WRONG|not looked at|: no\\b|not accepted|Independently inspected by .*: failed"),
        ("As left differs from the plan", "As left: left eccentric front 15°, rear 15°; right eccentric front 0°, rear 0° \\(trailing edge down positive\\)\\.\n"),
        (", alone\\.", "seats \\w+ \\d+\u202Fkg, \\w+ \\d+\u202Fkg"),
        ("second crew member: ", "seats \\w+ \\d+\u202Fkg, fuel"),
        ("The stall was flown", "Stall not flown"),
        ("Each flap setting was flown", "Not every flap setting"),
        ("No fault found", "On record as not clear"),
        ("This lifts the grounding", "stays grounded|grounded by"),
        ("(?i)sha-?256|(?m)because: *$", ""),
    ];

    static readonly bool[] Either = [true, false];

    static readonly string[] Loads = ["""{"left":77}""", """{"left":77,"right":70}""", """{"left":77,"right":70,"rear":30}"""];

    static string Readings(string seats) =>
        $$$"""[{"manoeuvre":"release-wheel","casKt":95,"pressureAltitudeFt":3000,"load":{"seatsKg":{{{seats}}},"fuelL":{"left":25,"right":25}},"readings":[{"kind":"bank-after","seconds":10,"deg":-6}]}]""";

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Works() =>
        from because in (string?[])[null, "", "It only tightened there."]
        from left in (BushingAngles[])[new(15, 15, 0, 0), new(45, 45, 0, 0), BushingAngles.None]
        from other in (string?[])[null, "Lock wire renewed."]
        from proof in (string[])["", Done.DirectionProof]
        from refitted in Either
        from loose in Either
        from handed in (string?[])[null, "left rear bolt LOOSE"]
        from ledger in (Ledger[])[Torqued, InWork]
        select (handed is null ? ledger : ledger.Do(Mechanic, new WorkHandedOver("Half done.", handed)), Mechanic,
            (Fact)(Done with { DiffersBecause = because, AsLeft = left, OtherAsLeft = other, DirectionProof = proof, EverythingRefitted = refitted, NothingLoose = loose }));

    static Ledger Differing => Torqued.Do(Mechanic, Done with { AsLeft = new(45, 45, 0, 0), DiffersBecause = "It only tightened there." });

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Inspections() =>
        from ledger in (Ledger[])[Worked, Differing]
        from passed in Either
        from seen in (Func<Observation, Seen>[])[o => o.Expected, _ => Seen.NotRecorded, _ => Seen.Still]
        from travel in Either
        from secured in Either
        from nothing in Either
        from accepts in (bool?[])[null, true, false]
        select (ledger, Inspector, (Fact)new Inspected(passed, [.. Inspection.Observations.Select(o => o with { Seen = seen(o) })], travel, secured, nothing, accepts, "Fitting seen."));

    static Ledger Tabbed
    {
        get
        {
            var worked = Turned(Control.RudderTab, 0, 4);
            return worked.Do(Inspector, Inspection with { Observations = [.. worked.State.ControlsToSee.Select(o => o with { Seen = o.Expected })] });
        }
    }

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Approvals() =>
        from ledger in (Ledger[])[School.Inspected, Differing.Do(Inspector, Inspection with { AcceptsDifference = true }),
            Turned(Control.LeftFlapRod, 0, 1).Do(Inspector, Inspection), Tabbed]
        from changed in Either
        from because in (string?[])[null, "Measured on the ground."]
        select (ledger, Certifier, (Fact)(Approval with { MayHaveChangedHandling = changed, ConclusiveBecause = because }));

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Flights() =>
        from ledger in (Ledger[])[School.Approved, Tabbed.Do(Certifier, Approval)]
        from points in (string[])["[]", .. Loads.Select(Readings)]
        from duty in (string?[])[null, "", "times"]
        from stalls in Either
        from stallsBecause in (string?[])[null, "Cloud."]
        from flaps in Either
        from flapsBecause in (string?[])[null, "Cloud."]
        from measured in Either
        from fine in Either
        from people in (int[])[0, 1]
        select (ledger, Pilot, (Fact)(Flight with
        {
            TestPoints = points,
            SecondCrewDuty = duty,
            StallsFlown = stalls,
            StallsNotFlownBecause = stallsBecause,
            EveryFlapSetting = flaps,
            FlapsNotFlownBecause = flapsBecause,
            FuelMeasured = measured,
            Satisfactory = fine,
            Passengers = people,
        }));

    static GroundChecked Survey(bool clear) => Measured(Check.ContourSurvey, null) with { Clear = clear, Finding = "The left strut fairing." };

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Ends() =>
        from call in (Called[])[new(Call.NoRiggingHold, "Fine.", null), new(Call.MayFlyWithLimits, "Mild.", "Two up only."), new(Call.Grounded, "Wing first.", null)]
        from surveys in (bool[][])[[], [true], [false], [false, true], [true, false]]
        let ledger = surveys.Aggregate(School.Reported.Do(Mechanic, call), (before, clear) => before.Do(Mechanic, Survey(clear)))
        from fact in (Fact[])[new NoFaultFound("Looked at and flown.", true), new NoFaultFound("Looked at.", false), new WithinLimits("0.3 °/s.", "School limit.", true)]
        select (ledger, Inspector, fact);

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Clearings() =>
        from called in Either
        let reported = Empty.Do(Pilot, Report with { RedFlags = [RedFlag.Bang] })
        select (called ? reported.Do(Mechanic, new Called(Call.Grounded, "Wing first.", null)) : reported, Inspector, (Fact)Checks.Single(check => check.Check == Check.DamageInspection));

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Closings() =>
        from verdict in Enum.GetValues<VerdictWord>()
        from limits in Either
        let flown = limits ? Flown.Do(Mechanic, new Called(Call.MayFlyWithLimits, "Mild.", "Two up only.")) : Flown
        select (flown.Do(Mechanic, Verdict(verdict)), Inspector, (Fact)new Closed("Explained."));

    public static TheoryData<string> Kinds => ["work", "inspection", "approval", "check flight", "end", "damage", "closing"];

    static IEnumerable<(Ledger Ledger, Person Who, Fact Fact)> Answers(string kind) => kind switch
    {
        "work" => Works(),
        "inspection" => Inspections(),
        "approval" => Approvals(),
        "check flight" => Flights(),
        "end" => Ends(),
        "damage" => Clearings(),
        _ => Closings(),
    };

    [Theory, MemberData(nameof(Kinds))]
    public void No_text_that_can_be_signed_contradicts_itself(string kind)
    {
        List<string> texts = [];
        foreach (var (ledger, who, fact) in Answers(kind))
            if (Try(ledger, who, fact) is Decision.Accepted { Entry.Signature: { Text: var text } }) texts.Add(text);

        Assert.NotEmpty(texts);
        foreach (var text in texts.Distinct())
            foreach (var (one, other) in Pairs)
                Assert.False(Regex.IsMatch(text, one) && Regex.IsMatch(text, other), $"“{one}” and “{other}”:\n{text}");
    }

    /// <summary>The pairs are read by words: each is looked for in the text of a fact that the rules refuse, so that a change of words cannot leave them looking at nothing.</summary>
    [Fact]
    public void The_words_that_contradict_each_other_are_the_words_of_the_texts()
    {
        string Text(Ledger ledger, Person who, Fact fact) => Squawk.TextToSign(ledger, fact, Facts(who));
        var texts = Kinds.SelectMany(kind => Answers(kind.Data)).Select(answer => Text(answer.Ledger, answer.Who, answer.Fact)).Distinct().ToList();

        Assert.All(Pairs[..10], pair =>
        {
            Assert.Contains(texts, text => Regex.IsMatch(text, pair.One));
            Assert.Contains(texts, text => Regex.IsMatch(text, pair.Other));
        });
    }

    static void IsRefused(string code, string field, Ledger ledger, Person who, Fact fact)
    {
        var broken = Assert.IsType<Decision.Refused>(Try(ledger, who, fact)).Broken;
        Assert.Equal((code, field), (Assert.Single(broken).Code, broken[0].Field));
    }

    [Fact]
    public void Passengers_are_barred_after_any_work_and_nothing_argues_that_away()
    {
        Ledger[] worked = [School.Inspected, Tabbed];
        Assert.All(worked, ledger =>
        {
            IsRefused("check-flight-needed", "mayHaveChangedHandling", ledger, Certifier, Approval with { MayHaveChangedHandling = false, ConclusiveBecause = "Measured on the ground." });
            IsRefused("check-flight-needed", "conclusiveBecause", ledger, Certifier, Approval with { ConclusiveBecause = "Measured on the ground." });
        });
    }

    [Fact]
    public void A_reason_for_a_difference_that_is_none_is_refused() =>
        IsRefused("nothing-differs", "differsBecause", Torqued, Mechanic, Done with { DiffersBecause = "It only tightened there." });

    [Theory]
    [InlineData(null, 1)]
    [InlineData("times", 0)]
    public void Who_flew_and_which_seats_were_filled_must_agree(string? duty, int load) =>
        IsRefused("crew-and-seats-disagree", "crew", School.Approved, Pilot, Flight with { SecondCrewDuty = duty, TestPoints = Readings(Loads[load]) });

    [Fact]
    public void What_was_flown_has_no_reason_why_it_was_not()
    {
        IsRefused("flown-and-not-flown", "stallsNotFlownBecause", School.Approved, Pilot, Flight with { StallsNotFlownBecause = "Cloud." });
        IsRefused("flown-and-not-flown", "flapsNotFlownBecause", School.Approved, Pilot, Flight with { FlapsNotFlownBecause = "Cloud." });
    }

    [Fact]
    public void No_fault_is_found_only_where_none_stands_on_record()
    {
        var ledger = School.Called.Do(Mechanic, Survey(false));
        var none = new NoFaultFound("Flown; nothing found.", true);

        IsRefused("text-contradicts-itself", "text", ledger, Inspector, none);
        Assert.IsType<Decision.Accepted>(Try(ledger.Do(Mechanic, Survey(true)), Inspector, none));
    }

    [Fact]
    public void A_damage_inspection_does_not_claim_to_lift_what_a_call_or_another_squawk_grounds()
    {
        var clear = Checks.Single(check => check.Check == Check.DamageInspection);
        var reported = Empty.Do(Pilot, Report with { RedFlags = [RedFlag.Bang] });
        string Text(Ledger ledger, params OtherSquawk[] others) => Squawk.TextToSign(ledger, clear, Facts(Inspector) with { OtherSquawks = others });

        Assert.Contains("This lifts the grounding.", Text(reported), StringComparison.Ordinal);
        Assert.Contains("the aircraft stays grounded by the call of this squawk and S-7.",
            Text(reported.Do(Mechanic, new Called(Call.Grounded, "Wing first.", null)), new OtherSquawk(Other, 7, FlightStatus.Grounded)), StringComparison.Ordinal);
    }

    [Fact]
    public void What_nobody_recorded_is_not_said_to_be_untouched_as_found() =>
        Assert.DoesNotContain("As found: no eccentric touched", Squawk.TextToSign(Turned(Control.LeftFlapRod, 0, 1), Inspection, Facts(Inspector)), StringComparison.Ordinal);

    [Fact]
    public void A_flight_that_needed_no_stall_says_so_and_leaves_no_reason_blank() =>
        Assert.Contains("Stall not flown: not needed after this work.",
            Squawk.TextToSign(Tabbed.Do(Certifier, Approval), Flight with { StallsFlown = false }, Facts(Pilot)), StringComparison.Ordinal);
}
