using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Inspection;

[Collection(InTheHangar.Name)]
public sealed class InspectionPageTests(Hangar hangar) : IAsyncLifetime
{
    int number;

    string Address => $"/squawks/{number}/inspection";

    public async ValueTask InitializeAsync() => number = await hangar.Squawk(School.Worked);

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    /// <summary>Everything as it must be, by what the domain expects.</summary>
    static Dictionary<string, string> Passing() => new(School.Worked.State.ControlsToSee.Select(o => KeyValuePair.Create(Field(o), o.Expected.ToString())))
    {
        ["fullTravelAtEveryFlapSetting"] = "yes",
        ["securedAndLocked"] = "yes",
        ["nothingLeftBehind"] = "yes",
        ["findings"] = "Fitting, stripe, cables and travel seen.",
        ["passed"] = "yes",
    };

    static string Field(Observation asked) => $"seen-{asked.Surface}-{asked.Input}".Replace(' ', '-');

    [Fact]
    public async Task What_must_be_seen_is_asked_for_and_never_told()
    {
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open(Address);

        Assert.Equal(HttpStatusCode.OK, page.Status);
        var form = page.Document.QuerySelector("main form")!;
        Assert.Empty(form.QuerySelectorAll("input[type=radio][checked]"));
        Assert.DoesNotContain("must", form.TextContent, StringComparison.OrdinalIgnoreCase);
        // Whatever is right, every surface of a kind is offered the same answers in the same order.
        var offered = School.Worked.State.ControlsToSee.Select(o => string.Join('|', form.QuerySelectorAll($"input[name='{Field(o)}']").Select(i => i.GetAttribute("value"))));
        Assert.Equal("Up|Down|Still|NotRecorded", Assert.Single(offered.Distinct()));
    }

    [Theory, InlineData("inspection"), InlineData("approval")]
    public async Task Whoever_signs_after_the_work_sees_when_it_was_completed_and_at_what_total_time(string step)
    {
        using var browser = await hangar.As(step == "inspection" ? School.Inspector : School.Certifier);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(step == "inspection" ? School.Worked : School.Inspected)}/{step}");

        var facts = page.Document.QuerySelectorAll("dl.facts dt").ToDictionary(term => term.TextContent, term => term.NextElementSibling!.TextContent);
        Assert.Equal("2026-03-02", facts["Work completed on"]);
        Assert.Equal("1234.5 h", facts["Total time in service"]);
    }

    [Fact]
    public async Task A_tab_that_was_bent_stands_there_drawn_and_with_the_measurement_of_its_edge()
    {
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(School.Turned(Control.RudderTab, 0, 3))}/inspection");

        Assert.Contains("The rudder's tab: bend the trailing edge left", page.Document.QuerySelectorAll("svg[role=img]").Select(svg => svg.GetAttribute("aria-label")!.Split(". Seen")[0]));
        Assert.Contains("Rudder tab: tab's trailing edge,", page.Text, StringComparison.Ordinal);
        Assert.Contains("left, with DI-1 (steps of 0.01 mm,", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_left_otherwise_than_planned_stands_there_with_what_is_expected_of_it()
    {
        var differs = School.Torqued.Do(School.Mechanic, School.Done with
        {
            AsLeft = new(0, 0, 0, 0),
            DiffersBecause = "It tightened there.",
            PredictedDegPerS = -0.6,
            PredictedLowDegPerS = -1,
            PredictedHighDegPerS = -0.2,
        });
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(differs)}/inspection");

        Assert.Contains("The left wing eccentric is left neutral; the plan said 15° trailing edge down.", page.Text, StringComparison.Ordinal);
        Assert.Contains(Directions.Expected(-0.6, -1, -0.2).Replace(Directions.Space, " ", StringComparison.Ordinal), page.Text, StringComparison.Ordinal);
        Assert.Contains(Directions.Expected(-0.1, -0.4, 0.2).Replace(Directions.Space, " ", StringComparison.Ordinal), page.Text, StringComparison.Ordinal);
        Assert.Contains("The mechanic wrote: It tightened there.", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_full_of_answers_leads_to_the_signature_and_the_ledger_waits_for_it()
    {
        using var browser = await hangar.As(School.Inspector);

        var answer = await browser.Submit(await browser.Open(Address), Passing());

        Assert.Equal($"/squawks/{number}/sign/independent-inspection", answer.Location);
        Assert.Equal(School.Worked.Length, (await hangar.Ledger(number)).Length);
        var sign = await browser.Follow(answer);
        Assert.Contains("wheel left: left aileron seen to move up (must move up).", sign.Text, StringComparison.Ordinal);
        Assert.Contains("I inspected this work and took no part in it: Ines Inspector", sign.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_page_names_every_question_and_keeps_what_was_written()
    {
        using var browser = await hangar.As(School.Inspector);

        var answer = await browser.Submit(await browser.Open(Address), new() { ["findings"] = "Looked at nothing yet." });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Contains("Wheel left, left aileron: nothing chosen. Choose one.", answer.Text, StringComparison.Ordinal);
        Assert.Contains("Result: nothing chosen. Answer yes or no.", answer.Text, StringComparison.Ordinal);
        Assert.Equal("Looked at nothing yet.", answer.Document.QuerySelector("textarea")!.TextContent);
    }

    [Fact]
    public async Task A_control_that_went_the_wrong_way_cannot_pass_and_the_page_does_not_tell_the_right_way()
    {
        using var browser = await hangar.As(School.Inspector);
        var typed = Passing();
        typed["seen-left-aileron-wheel-left"] = nameof(Seen.Down);

        var answer = await browser.Submit(await browser.Open(Address), typed);

        Assert.Contains("Wheel left: the left aileron did not do what it must.", answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("must move up", answer.Text, StringComparison.Ordinal);
        typed["passed"] = "no";
        var failed = await browser.Submit(answer, typed);
        Assert.Equal($"/squawks/{number}/sign/independent-inspection", failed.Location);
    }

    [Fact]
    public async Task A_surface_that_was_not_looked_at_cannot_pass()
    {
        using var browser = await hangar.As(School.Inspector);
        var typed = Passing();
        typed["seen-right-flap-flaps-down"] = nameof(Seen.NotRecorded);

        var answer = await browser.Submit(await browser.Open(Address), typed);

        Assert.Contains("Flaps down: the right flap was not looked at.", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task How_it_was_found_and_how_it_was_left_are_each_said_once_settings_before_words()
    {
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(School.Turned(Control.LeftFlapRod, 1, 0))}/inspection");

        string[] Under(string label) => [.. Assert.Single(page.Document.QuerySelectorAll("dl.facts dt"), term => term.TextContent == label).NextElementSibling!.Children.Select(line => line.TextContent)];
        Assert.Equal(["Left flap rod 1 turn out from the length of the drawing.", "Lock wire in place."], Under("How it was found"));
        Assert.Equal(["Left flap rod at the length of the drawing.", "Lock wire renewed."], Under("How it was left"));
    }

    [Fact]
    public async Task After_a_flap_rod_the_flaps_are_looked_at_up_as_well()
    {
        using var browser = await hangar.As(School.Inspector);

        Assert.Contains("flaps up, both seen on their stops", (await browser.Open($"/squawks/{await hangar.Squawk(School.Turned(Control.LeftFlapRod, 1, 0))}/inspection")).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("flaps up", (await browser.Open(Address)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task After_a_failed_look_the_same_inspectors_next_one_starts_from_what_was_seen_and_asks_that_all_was_looked_at_again()
    {
        var failed = School.Worked.Do(School.Inspector, School.Inspection with { Passed = false, SecuredAndLocked = false, Findings = "Stripe missing on the rear bolt." });
        var again = await hangar.Squawk(failed.Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done));
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open($"/squawks/{again}/inspection");
        Assert.Contains("These are your answers of", page.Text, StringComparison.Ordinal);
        Assert.Equal("Stripe missing on the rear bolt.", page.Document.QuerySelector("textarea[name=findings]")!.TextContent);
        Assert.All(School.Worked.State.ControlsToSee, asked => Assert.NotNull(page.Document.QuerySelector($"input[name='{Field(asked)}'][value={asked.Expected}][checked]")));
        Assert.Equal("no", page.Document.QuerySelector("input[name=securedAndLocked][checked]")!.GetAttribute("value"));
        Assert.Null(page.Document.QuerySelector("input[name=passed][checked]"));

        var refused = await browser.Submit(page, new() { ["securedAndLocked"] = "yes", ["passed"] = "yes" });
        Assert.Contains("say that you looked at all of it again", refused.Document.QuerySelector("#lookedagain-error")!.TextContent, StringComparison.Ordinal);
        Assert.Equal($"/squawks/{again}/sign/independent-inspection", (await browser.Submit(refused, new() { ["lookedAgain"] = "true" })).Location);
    }

    [Fact]
    public async Task Another_inspector_does_not_start_from_somebody_elses_answers()
    {
        var failed = School.Worked.Do(School.Inspector, School.Inspection with { Passed = false, Findings = "Stripe missing." });
        var again = await hangar.Squawk(failed.Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done));
        using var browser = await hangar.As(School.Mechanic);

        Assert.Empty((await browser.Open($"/squawks/{again}/inspection")).Document.QuerySelectorAll("main form input[type=radio][checked]"));
    }

    [Fact]
    public async Task Whoever_did_the_work_reads_why_they_may_not_and_can_post_nothing()
    {
        using var browser = await hangar.As(School.Mechanic);

        var page = await browser.Open(Address);
        var answer = await browser.Submit(page, Passing());

        Assert.Contains("You took part in this work, so you cannot be its independent inspector.", page.Text, StringComparison.Ordinal);
        Assert.NotNull(page.Document.QuerySelector("main form fieldset[disabled] button[disabled]"));
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Contains("You took part in this work", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_fell_behind_says_what_changed_and_keeps_what_was_typed()
    {
        using var browser = await hangar.As(School.Inspector);
        var page = await browser.Open(Address);
        await hangar.Add(number, School.Office, new Noted("The tag is on the wheel.", null));

        var answer = await browser.Submit(page, Passing());

        Assert.Contains("note by Olaf Office", answer.Text, StringComparison.Ordinal);
        Assert.Equal("Fitting, stripe, cables and travel seen.", answer.Document.QuerySelector("textarea")!.TextContent);
        Assert.Equal($"/squawks/{number}/sign/independent-inspection", (await browser.Submit(answer, [])).Location);
    }

    [Fact]
    public async Task Leaving_and_coming_back_shows_what_was_typed()
    {
        using var browser = await hangar.As(School.Inspector);
        await browser.Submit(await browser.Open(Address), new() { ["findings"] = "Half way." });

        var page = await browser.Open(Address);

        Assert.Equal("Half way.", page.Document.QuerySelector("textarea")!.TextContent);
    }

    [Fact]
    public async Task A_squawk_that_does_not_exist_is_not_found()
    {
        using var browser = await hangar.As(School.Inspector);

        Assert.Equal(HttpStatusCode.NotFound, (await browser.Open("/squawks/999/inspection")).Status);
    }
}
