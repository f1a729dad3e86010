using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;
using Rigging.Web.Checks;

namespace Rigging.Web.Tests.Checks;

[Collection(InTheHangar.Name)]
public sealed class ChecksPageTests(Hangar hangar)
{
    static Dictionary<string, string> Flaps(string value) => new() { ["way"] = "plus", ["value"] = value, ["finding"] = "by protractor", ["act"] = "record" };

    [Fact]
    public async Task A_mechanic_records_a_check_and_the_page_says_what_is_missing_still()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);

        var page = await mechanic.Open($"/squawks/{squawk}/checks?check=flap-difference");
        Assert.Contains("0 of 7 on record", page.Text, StringComparison.Ordinal);
        var answer = await mechanic.Submit(page, Flaps("0.1"));

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        var after = await mechanic.Follow(answer);
        Assert.Contains("1 of 7 on record", after.Text, StringComparison.Ordinal);
        Assert.Contains("Right flap 0.1° lower", after.Text, StringComparison.Ordinal);
        Assert.Contains(Hangar.NameOf(School.Mechanic), after.Text, StringComparison.Ordinal);
        Assert.Equal(0.1, Assert.IsType<GroundChecked>((await hangar.Ledger(squawk)).Entries[^1].Fact).Value);
    }

    [Fact]
    public async Task A_check_is_entered_late_with_the_day_and_hour_it_was_made_or_refused_with_what_is_missing()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);
        var page = await mechanic.Open($"/squawks/{squawk}/checks?check=flap-difference");

        var refused = await mechanic.Submit(page, new(Flaps("0.1")) { ["happenedOn"] = "2026-02-27" });
        Assert.Contains("At about: nothing entered", refused.Document.QuerySelector("#happenedtime-error")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(refused.Document.QuerySelector("details[open] #happenedon"));
        await mechanic.Submit(refused, new(Flaps("0.1")) { ["happenedOn"] = "2026-02-27", ["happenedTime"] = "16:40" });

        Assert.Equal(NodaTime.Instant.FromUtc(2026, 2, 27, 22, 40), Assert.IsType<GroundChecked>((await hangar.Ledger(squawk)).Entries[^1].Fact).HappenedAt);
    }

    [Fact]
    public async Task A_look_that_lifts_the_grounding_leads_to_the_inspectors_signature()
    {
        var squawk = await hangar.Squawk(School.Empty.Do(School.Pilot, School.Report with { RedFlags = [RedFlag.Bang] }));
        Dictionary<string, string> clear = new() { ["clear"] = "yes", ["finding"] = "Struts and fittings: no damage.", ["act"] = "record" };
        using var inspector = await hangar.As(School.Inspector);

        var prepared = await inspector.Submit(await inspector.Open($"/squawks/{squawk}/checks?check=damage-inspection"), clear);
        Assert.Equal($"/squawks/{squawk}/sign/ground-check", prepared.Location);
        Assert.Single((await hangar.Ledger(squawk)).Entries);
        var page = await inspector.Follow(prepared);
        Assert.Contains("This lifts the grounding.", page.Text, StringComparison.Ordinal);
        Assert.Equal($"/squawks/{squawk}", (await inspector.Submit(page, new() { ["Form.Password"] = TestSite.Password })).Location);

        var entry = (await hangar.Ledger(squawk)).Entries[^1];
        Assert.Equal("password", entry.Signature!.Method);
        Assert.DoesNotContain("Struts", (await inspector.Open($"/squawks/{squawk}/checks?check=damage-inspection")).Document.QuerySelector("textarea[name=finding]")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_value_comes_back_as_typed_with_words_at_its_field_and_records_nothing()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);

        var answer = await mechanic.Submit(await mechanic.Open($"/squawks/{squawk}/checks?check=flap-difference"), Flaps("99"));

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal("99", answer.Document.QuerySelector("input[name=value]")!.GetAttribute("value"));
        Assert.Contains("99 ° cannot be: wanted at most 15", answer.Document.QuerySelector("#value-error")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("by protractor", answer.Document.QuerySelector("textarea[name=finding]")!.TextContent, StringComparison.Ordinal);
        Assert.Equal(School.Called.Length, (await hangar.Ledger(squawk)).Length);
    }

    [Fact]
    public async Task Does_not_apply_needs_a_reason_and_is_recorded_with_the_name()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);
        var page = await mechanic.Open($"/squawks/{squawk}/checks?check=rudder-tab");

        var without = await mechanic.Submit(page, new() { ["act"] = "not-applicable" });
        Assert.NotNull(without.Document.QuerySelector("#notapplicablereason-error"));
        var with = await mechanic.Submit(without, new() { ["act"] = "not-applicable", ["notApplicableReason"] = "It has no rudder tab." });

        Assert.Equal(HttpStatusCode.Redirect, with.Status);
        Assert.Contains("does not apply", (await mechanic.Follow(with)).Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Prerequisite.Rudder, (await hangar.Ledger(squawk)).State.MissingPrerequisites);
    }

    [Fact]
    public async Task A_page_overtaken_by_another_entry_says_so_and_keeps_what_was_typed()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);
        var page = await mechanic.Open($"/squawks/{squawk}/checks?check=flap-difference");
        await hangar.Add(squawk, School.Mechanic, School.Measured(Check.BallOffset, 0));

        var answer = await mechanic.Submit(page, Flaps("0.1"));

        Assert.Contains("Checked: ball", answer.Text, StringComparison.Ordinal);
        Assert.Equal("0.1", answer.Document.QuerySelector("input[name=value]")!.GetAttribute("value"));
        Assert.Equal(HttpStatusCode.Redirect, (await mechanic.Submit(answer, Flaps("0.1"))).Status);
    }

    [Fact]
    public async Task A_pilot_reads_the_checks_and_is_told_who_records_them()
    {
        var squawk = await hangar.Squawk(School.Checked);
        using var pilot = await hangar.As(School.Pilot);

        var page = await pilot.Open($"/squawks/{squawk}/checks?check=flap-difference");

        Assert.Contains("This is for mechanic or inspector", page.Text, StringComparison.Ordinal);
        Assert.True(page.Document.QuerySelector("fieldset")!.HasAttribute("disabled"));
        Assert.Contains("All seven are on record", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_pilot_posts_all_the_same_is_refused()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var pilot = await hangar.As(School.Pilot);

        var answer = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/checks?check=flap-difference"), Flaps("0.1"));

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal(School.Called.Length, (await hangar.Ledger(squawk)).Length);
    }

    [Fact]
    public async Task Marks_are_read_in_degrees_or_off_a_clock_and_drawn()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var mechanic = await hangar.As(School.Mechanic);

        var answer = await mechanic.Submit(await mechanic.Open($"/squawks/{squawk}/checks?check=marks"), new()
        {
            ["leftFrontDeg"] = "2:30",
            ["leftFrontDegWay"] = "rear",
            ["leftRearDeg"] = "15",
            ["leftRearDegWay"] = "up",
            ["rightFrontDeg"] = "0",
            ["rightRearDeg"] = "9",
            ["rightRearDegWay"] = "rear",
        });

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        Assert.Equal(new BushingAngles(-15, -15, 0, 0), (await hangar.Ledger(squawk)).State.Settings);
        var page = await mechanic.Follow(answer);
        Assert.Equal(["Left eccentric: 15° trailing edge up", "Right eccentric: neutral"], page.Document.QuerySelectorAll("figcaption b").Select(caption => caption.TextContent));
    }

    [Fact]
    public async Task A_fork_stands_where_the_work_left_it_and_not_where_it_was_found()
    {
        var squawk = await hangar.Squawk(School.Turned(Control.LeftStrutFork, 9, 10.5));
        using var mechanic = await hangar.As(School.Mechanic);

        var page = await mechanic.Open($"/squawks/{squawk}/checks");

        Assert.Equal("Left rear strut fork 10.5 turns out from fully in", Assert.Single(page.Document.QuerySelectorAll("#standing li")).TextContent);
        Assert.DoesNotContain("The eccentrics as they stand", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("No eccentric was touched", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_tab_measured_since_it_was_bent_stands_as_its_check_says()
    {
        var bent = School.Turned(Control.RudderTab, 0, 3);

        Assert.Equal([new AdjusterSetting(Control.RudderTab, 3)], ChecksSoFar.Standing(bent));
        Assert.Empty(ChecksSoFar.Standing(new(bent.Id, [.. bent.Entries, bent.Entries[^1] with { Sequence = bent.Length + 1, Fact = School.Measured(Check.RudderTab, 2) }])));
    }

    [Fact]
    public async Task An_aircraft_with_eccentrics_alone_has_them_in_its_heading()
    {
        var squawk = await hangar.Squawk(School.Worked);
        using var mechanic = await hangar.As(School.Mechanic);

        var page = await mechanic.Open($"/squawks/{squawk}/checks");

        Assert.Contains("The eccentrics as they stand", page.Text, StringComparison.Ordinal);
        Assert.Null(page.Document.QuerySelector("#standing"));
    }

    [Fact]
    public async Task An_evaluation_flight_is_logged_by_a_pilot()
    {
        var squawk = await hangar.Squawk(School.Called);
        using var pilot = await hangar.As(School.Pilot);
        Dictionary<string, string> flight = new()
        {
            ["seat.left"] = "77",
            ["seat.right"] = "77",
            ["p1.manoeuvre"] = "release-wheel",
            ["p1.casKt"] = "95",
            ["p1.pressureAltitudeFt"] = "3000",
            ["p1.fuel.left"] = "25",
            ["p1.fuel.right"] = "50",
            ["p1.bankDeg"] = "6",
            ["p1.bankSide"] = "left",
            ["p1.bankSeconds"] = "10",
        };

        var refused = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/flight"), flight);
        Assert.Contains("Point 1, fuel right: 50 given; wanted at most the tank's 42 L.", refused.Document.QuerySelector("#p1-fuel-right-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("6", refused.Document.QuerySelector("input[name='p1.bankDeg']")!.GetAttribute("value"));
        flight["p1.fuel.right"] = "25";
        var logged = await pilot.Submit(refused, flight);

        Assert.Equal(HttpStatusCode.Redirect, logged.Status);
        Assert.Null(Assert.IsType<EvaluationFlown>((await hangar.Ledger(squawk)).Entries[^1].Fact).Trims);
        Assert.Contains("on record", (await pilot.Follow(logged)).Text, StringComparison.Ordinal);

        flight["yawTrim"] = "to the left";
        var wrong = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/flight"), flight);
        Assert.Contains("Yaw trim: “to the left” is not one of the choices", wrong.Document.QuerySelector("#yawtrim-error")!.TextContent, StringComparison.Ordinal);
        (flight["rollTrim"], flight["yawTrim"], flight["autopilot"]) = ("Neutral", "NoseLeft", "Off");
        await pilot.Submit(wrong, flight);

        Assert.Equal(new(RollTrim.Neutral, YawTrim.NoseLeft, FlownAutopilot.Off), Assert.IsType<EvaluationFlown>((await hangar.Ledger(squawk)).Entries[^1].Fact).Trims);
    }

    [Fact]
    public async Task A_grounded_aircraft_makes_no_evaluation_flight()
    {
        var squawk = await hangar.Squawk(School.Reported.Do(School.Mechanic, new Called(Call.Grounded, "Too brisk.", null)));
        using var pilot = await hangar.As(School.Pilot);

        var page = await pilot.Open($"/squawks/{squawk}/flight");

        Assert.Contains("an evaluation flight needs a call that permits it", page.Text, StringComparison.Ordinal);
        Assert.True(page.Document.QuerySelector("form[data-draft] fieldset")!.HasAttribute("disabled"));
    }

    [Fact]
    public async Task There_is_no_page_for_a_squawk_that_is_not()
    {
        using var mechanic = await hangar.As(School.Mechanic);

        Assert.Equal(HttpStatusCode.NotFound, (await mechanic.Open("/squawks/999999/checks")).Status);
    }
}
