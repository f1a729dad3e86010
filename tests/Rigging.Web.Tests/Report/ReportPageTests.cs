using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Report;

[Collection(InTheHangar.Name)]
public class ReportPageTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>An aircraft of its own, so that other tests' squawks do not count.</summary>
    async Task<string> Registration()
    {
        var id = Guid.CreateVersion7();
        var registration = $"Q-{id.ToString()[^6..].ToUpperInvariant()}";
        await using var db = hangar.Site.OpenDatabase();
        db.Aircraft.Add(new() { Id = new(id), Registration = registration, Serial = "invented-8", AirframeId = School.Airframe.Id, AirframeVersion = School.Airframe.Version, TotalTimeTenths = 12000 });
        await db.SaveChangesAsync(Ct);
        return registration;
    }

    static Dictionary<string, string> Least(string registration) => new() { ["aircraft"] = registration, ["words"] = "Pulls <left> & right.", ["rollsTo"] = "Left", ["redFlags"] = "none" };

    [Fact]
    public async Task A_pilot_files_a_report_and_is_told_its_number_and_that_nobody_flies()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);

        var sent = await pilot.Submit(await pilot.Open($"/report/{registration}"), Least(registration));
        var receipt = await pilot.Follow(sent);

        Assert.Equal(HttpStatusCode.Redirect, sent.Status);
        Assert.Contains("Held, not to be flown", receipt.Text, StringComparison.Ordinal);
        Assert.Contains("Pulls <left> & right.", receipt.Text, StringComparison.Ordinal);
        var number = int.Parse(receipt.Document.QuerySelector("h1 .mono")!.TextContent["S-".Length..], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal("Pulls <left> & right.", (await hangar.Ledger(number)).State.Report!.Words);
    }

    [Fact]
    public async Task A_red_flag_grounds_at_once_and_the_receipt_says_so()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);

        var sent = await pilot.Submit(await pilot.Open("/report"), new(Least(registration)) { ["redFlags"] = nameof(RedFlag.Bang) });

        Assert.Contains("The aircraft is grounded from now on", (await pilot.Follow(sent)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_danger_ticked_is_filed_at_once_whatever_else_is_missing_or_wrong()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);
        var form = await pilot.Open($"/report/{registration}");

        Assert.Equal("Ground it now", form.Document.QuerySelector(".grounding .at-once button[type=submit]")!.TextContent);
        Assert.Null(form.Document.QuerySelector(".grounding ~ fieldset input[name=redFlags]"));
        var sent = await pilot.Submit(form, new() { ["redFlags"] = nameof(Happening.HardLanding), ["casKt"] = "fast", ["fuelLeftL"] = "5000", ["fuelUnit"] = "l" });

        Assert.Equal(HttpStatusCode.Redirect, sent.Status);
        var receipt = await pilot.Follow(sent);
        Assert.Contains("Grounded until a damage inspection is recorded clear: a hard landing.", receipt.Text, StringComparison.Ordinal);
        var story = await pilot.Open($"/squawks/{receipt.Document.QuerySelector("h1 .mono")!.TextContent["S-".Length..]}/call");
        Assert.Equal(HttpStatusCode.OK, story.Status);
    }

    [Fact]
    public async Task The_call_page_has_the_pilots_ticks_above_the_choice_and_leaves_only_grounded_open()
    {
        var number = await hangar.Squawk(School.Empty.Do(School.Pilot, School.Report with { Words = "", Happened = [Happening.GroundStrike, Happening.Repaint], RedFlags = [RedFlag.ControlJammed] }));
        using var mechanic = await hangar.As(School.Mechanic);

        var page = await mechanic.Open($"/squawks/{number}/call");
        var main = page.Document.QuerySelector("main")!;
        var text = main.TextContent;

        Assert.All((string[])["A control that is stuck, stiff, or moves the wrong way", "A ground strike", "It was painted", "It stays grounded until a damage inspection is recorded clear."],
            wanted => Assert.InRange(text.IndexOf(wanted, StringComparison.Ordinal), 0, text.IndexOf("Your call", StringComparison.Ordinal)));
        Assert.Equal(["Grounded"], main.QuerySelectorAll("input[name=call]:not([disabled])").Select(input => input.GetAttribute("value")));

        var refused = await mechanic.Submit(page, new() { ["call"] = "NoRiggingHold", ["reason"] = "Looks fine." });
        Assert.Contains("stays grounded until a damage inspection is recorded clear", refused.Text, StringComparison.Ordinal);
        Assert.Single((await hangar.Ledger(number)).Entries);
    }

    [Fact]
    public async Task What_the_caller_knows_beyond_the_report_grounds_from_the_call()
    {
        var number = await hangar.Squawk(School.Checked);
        using var office = await hangar.As(School.Office);

        await office.Submit(await office.Open($"/squawks/{number}/call"), new() { ["call"] = "Grounded", ["reason"] = "The hirer rang.", ["redFlags"] = nameof(Happening.FlapOverspeed) });

        var state = (await hangar.Ledger(number)).State;
        Assert.Equal((Squawks.Ledgers.FlightStatus.Grounded, "flaps were down too fast"), (state.FlightStatus, Assert.Single(state.DamageQuestions)));
    }

    [Fact]
    public async Task The_same_form_sent_twice_lands_on_the_same_receipt()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);
        var form = await pilot.Open($"/report/{registration}");

        var first = await pilot.Submit(form, Least(registration));
        var second = await pilot.Submit(form, Least(registration));

        Assert.Equal(first.Location, second.Location);
    }

    [Fact]
    public async Task A_form_changed_after_it_was_sent_says_so_and_can_be_sent_as_another_report()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);
        var form = await pilot.Open($"/report/{registration}");
        var first = await pilot.Submit(form, Least(registration));

        var changed = await pilot.Submit(form, new(Least(registration)) { ["words"] = "Something else." });
        var again = await pilot.Submit(changed, []);

        Assert.Equal(HttpStatusCode.OK, changed.Status);
        Assert.Contains("This form was filed before, as S-", changed.Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, again.Status);
        Assert.NotEqual(first.Location, again.Location);
    }

    [Fact]
    public async Task Nothing_typed_is_lost_on_an_error_and_it_stands_beside_its_field()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);

        var page = await pilot.Submit(await pilot.Open("/report"), new(Least(registration)) { ["casKt"] = "ninety", ["happened"] = nameof(Happening.Repaint), ["sinceWhen"] = "May" });

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal("ninety", page.Document.QuerySelector("#caskt")?.GetAttribute("value"));
        Assert.Contains("“ninety” is not a number", page.Document.QuerySelector("#caskt-error")?.TextContent, StringComparison.Ordinal);
        Assert.Equal("Pulls <left> & right.", page.Document.QuerySelector("#words")?.TextContent);
        Assert.Equal("May", page.Document.QuerySelector("#sincewhen")?.GetAttribute("value"));
        Assert.NotNull(page.Document.QuerySelector("input[name=rollsTo][value=Left][checked]"));
        Assert.NotNull(page.Document.QuerySelector("input[name=happened][value=Repaint][checked]"));
        Assert.NotNull(page.Document.QuerySelector("details.more[open]"));
    }

    [Fact]
    public async Task What_the_rules_refuse_stands_beside_its_field_too()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);

        var page = await pilot.Submit(await pilot.Open("/report"), new(Least(registration)) { ["casKt"] = "900", ["fuelMethod"] = "Dip" });

        Assert.Contains("wanted 20 to 400 kt", page.Document.QuerySelector("#caskt-error")?.TextContent, StringComparison.Ordinal);
        Assert.Contains("give the litres on each side", page.Document.QuerySelector("#fuelleftl-error")?.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_its_antiforgery_token_or_without_signing_in_nothing_is_filed()
    {
        var registration = await Registration();
        using var pilot = await hangar.As(School.Pilot);
        using var nobody = hangar.Site.Browser();

        var forged = await pilot.Post("/report", new(Least(registration)) { ["_handler"] = "report" });
        var anonymous = await nobody.Open("/report");

        Assert.Equal(HttpStatusCode.BadRequest, forged.Status);
        Assert.Equal(HttpStatusCode.Redirect, anonymous.Status);
        Assert.StartsWith("/sign-in", anonymous.Location, StringComparison.Ordinal);
    }
}
