using System.Net;
using System.Net.Http.Headers;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests;
using Rigging.Web.Report;

namespace Rigging.Web.Tests.Report;

/// <summary>Somebody in the cockpit without an account, on a site of its own: the PIN is one for the whole school.</summary>
public sealed class VisitorTests(Postgres postgres) : IAsyncLifetime
{
    const string Pin = "604213", Office = "office@school.example", Pilot = "pilot@school.example";

    readonly AircraftId aircraft = new(Guid.CreateVersion7());
    TestSite site = null!;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    string Cockpit => CockpitEndpoints.Path(aircraft);

    public async ValueTask InitializeAsync()
    {
        site = await TestSite.Start(postgres);
        await site.AddSchool();
        await site.AddPerson("Olaf Office", Office, [Authority.Office]);
        await site.AddPerson("Paula Pilot", Pilot, [Authority.Pilot]);
        await using var db = site.OpenDatabase();
        db.Airframes.Add(new() { Id = School.Airframe.Id, Version = School.Airframe.Version, Name = "ST-2 (invented)", Json = School.Airframe.Json, EnteredAt = School.Noon });
        db.Aircraft.Add(new() { Id = aircraft, Registration = "Q-900", Serial = "invented-9", AirframeId = School.Airframe.Id, AirframeVersion = School.Airframe.Version, TotalTimeTenths = 12000 });
        await db.SaveChangesAsync();
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    async Task SetsPin(string pin = Pin)
    {
        using var office = await site.SignedIn(Office);
        var set = await office.Submit(await office.Open("/school"), new() { ["cockpitPin"] = pin });
        Assert.Equal(HttpStatusCode.Redirect, set.Status);
    }

    static Dictionary<string, string> Least(string name = "Sam Sailor", string pin = Pin) =>
        new() { ["words"] = "Pulls left.", ["rollsTo"] = "Left", ["redFlags"] = "none", ["name"] = name, ["pin"] = pin };

    static string Problem(Page page, string field) => page.Document.QuerySelector($"#{field}-error")?.TextContent ?? "";

    [Fact]
    public async Task Without_a_pin_set_the_cockpit_page_leads_to_the_sign_in()
    {
        using var nobody = site.Browser();

        var page = await nobody.Open(Cockpit);

        Assert.Null(page.Document.QuerySelector("form[data-report]"));
        Assert.Contains("The school has set no PIN", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_and_the_pin_file_a_report_marked_unconfirmed_and_a_receipt_to_follow()
    {
        await SetsPin();
        using var visitor = site.Browser();

        var sent = await visitor.Submit(await visitor.Open(Cockpit), Least());
        var receipt = await visitor.Follow(sent);
        using var pilot = await site.SignedIn(Pilot);
        var people = await pilot.Open("/people");

        Assert.StartsWith("/receipt/", sent.Location, StringComparison.Ordinal);
        Assert.Contains("Filed as S-1", receipt.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Sam Sailor", receipt.Text, StringComparison.Ordinal);
        Assert.Null(receipt.Document.QuerySelector("a[href='squawks/1']"));
        Assert.Contains("Sam Sailor", people.Text, StringComparison.Ordinal);
        Assert.Contains("reporter, identity unconfirmed", people.Text, StringComparison.Ordinal);
        await using var db = site.OpenDatabase();
        var payload = await db.Entries.Select(entry => entry.Payload).SingleAsync(Ct);
        Assert.Contains("\"as\":\"reporter\"", payload, StringComparison.Ordinal);
        Assert.DoesNotContain("Sam", payload, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sent_twice_it_is_one_report_and_one_name()
    {
        await SetsPin();
        using var visitor = site.Browser();
        var form = await visitor.Open(Cockpit);

        var first = await visitor.Submit(form, Least());
        var second = await visitor.Submit(form, Least());

        Assert.Equal(first.Location, second.Location);
        await using var db = site.OpenDatabase();
        Assert.Equal((1, 1), (await db.Squawks.CountAsync(Ct), await db.People.CountAsync(person => person.Name == "Sam Sailor", Ct)));
    }

    [Fact]
    public async Task A_wrong_pin_files_nothing_keeps_what_was_typed_and_guessing_is_stopped()
    {
        await SetsPin();
        using var visitor = site.Browser();
        var form = await visitor.Open(Cockpit);

        var wrong = await visitor.Submit(form, Least(pin: "123456"));
        for (var i = 1; i < PinTries.MostFromOne; i++) await visitor.Submit(form, Least(pin: $"12345{i}"));
        var late = await visitor.Submit(form, Least());

        Assert.Contains("That is not the school’s PIN", Problem(wrong, "pin"), StringComparison.Ordinal);
        Assert.Equal(("Pulls left.", "Sam Sailor", ""), (wrong.Document.QuerySelector("#words")?.TextContent, wrong.Document.QuerySelector("#name")?.GetAttribute("value"), wrong.Document.QuerySelector("#pin")?.GetAttribute("value") ?? ""));
        Assert.Contains("Too many wrong PINs", Problem(late, "pin"), StringComparison.Ordinal);
        await using var db = site.OpenDatabase();
        Assert.False(await db.Squawks.AnyAsync(Ct));
        Assert.False(await db.People.AnyAsync(person => person.Name == "Sam Sailor", Ct));
        site.Clock.AdvanceMinutes(PinTries.RestMinutes + 1);
        Assert.Equal(HttpStatusCode.Redirect, (await visitor.Submit(form, Least())).Status);
    }

    [Fact]
    public async Task A_phone_that_knew_the_pin_is_not_asked_again_until_it_changes()
    {
        await SetsPin();
        using var visitor = site.Browser();
        await visitor.Submit(await visitor.Open(Cockpit), Least());

        var again = await visitor.Open(Cockpit);
        await SetsPin("771930");
        var changed = await visitor.Open(Cockpit);

        Assert.Null(again.Document.QuerySelector("#pin"));
        Assert.Equal("Sam Sailor", again.Document.QuerySelector("#name")?.GetAttribute("value"));
        Assert.NotNull(changed.Document.QuerySelector("#pin"));
    }

    [Theory]
    [InlineData("12345", "six to twelve digits")]
    [InlineData("password", "six to twelve digits")]
    [InlineData("111111", "too easy to guess")]
    public async Task A_weak_pin_is_refused(string pin, string says)
    {
        using var office = await site.SignedIn(Office);

        Assert.Contains(says, Problem(await office.Submit(await office.Open("/school"), new() { ["cockpitPin"] = pin }), "cockpitpin"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Only_the_office_sets_the_pin()
    {
        using var pilot = await site.SignedIn(Pilot);

        var page = await pilot.Open("/school");
        await pilot.Post("/school", new() { ["_handler"] = "pin", ["cockpitPin"] = Pin });

        Assert.Null(page.Document.QuerySelector("[name=cockpitPin]"));
        await using var db = site.OpenDatabase();
        Assert.True(await db.Installations.AllAsync(row => row.CockpitPinHash == null, Ct));
    }

    [Fact]
    public async Task Who_is_signed_in_is_not_asked_who_they_are()
    {
        await SetsPin();
        using var pilot = await site.SignedIn(Pilot);

        var form = await pilot.Open(Cockpit);
        var sent = await pilot.Submit(form, new() { ["words"] = "Pulls left.", ["rollsTo"] = "Left", ["redFlags"] = "none" });

        Assert.Null(form.Document.QuerySelector("[name=name]"));
        Assert.Contains("Read S-1", (await pilot.Follow(sent)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_goes_with_the_report_without_its_place_and_is_shown_to_the_school_only()
    {
        using var pilot = await site.SignedIn(Pilot);
        var form = await pilot.Open(Cockpit);
        byte[] photo = [0xFF, 0xD8, 0xFF, 0xFE, 0, 11, .. "GPS 51.47"u8, 0xFF, 0xDA, 0, 8, 1, 1, 0, 0, 63, 0, 1, 2, 3, 0xFF, 0xD9];
        using var body = new MultipartFormDataContent();
        foreach (var field in form.Document.QuerySelectorAll("main form input[type=hidden], main form input[name=form]"))
            body.Add(new StringContent(field.GetAttribute("value") ?? ""), field.GetAttribute("name")!);
        foreach (var (name, value) in (Dictionary<string, string>)new() { ["words"] = "A gap.", ["rollsTo"] = "Left", ["redFlags"] = "none" }) body.Add(new StringContent(value), name);
        using var picture = new ByteArrayContent(photo);
        picture.Headers.ContentType = new MediaTypeHeaderValue("image/jpeg");
        body.Add(picture, "photos", "gap.jpg");

        using var sent = await pilot.Http.PostAsync(new Uri(Cockpit, UriKind.Relative), body, Ct);

        Assert.Equal(HttpStatusCode.Redirect, sent.StatusCode);
        await using var db = site.OpenDatabase();
        var kept = await db.Attachments.SingleAsync(row => row.MediaType == "image/jpeg", Ct);
        Assert.DoesNotContain("GPS", System.Text.Encoding.Latin1.GetString(kept.Bytes), StringComparison.Ordinal);
        Assert.Equal([new Squawks.Entries.Photo(Convert.ToHexStringLower(kept.Sha256))], (await site.Services.GetRequiredService<LedgerStore>().Load(await db.Squawks.Select(row => row.Id).SingleAsync(Ct), Ct))!.State.Report!.Photos!);
        var address = new Uri($"/squawks/1/photos/{Convert.ToHexStringLower(kept.Sha256)}", UriKind.Relative);
        Assert.Equal(kept.Bytes, await pilot.Http.GetByteArrayAsync(address, Ct));
        using var nobody = site.Browser();
        using var refused = await nobody.Http.GetAsync(address, Ct);
        Assert.Equal(HttpStatusCode.Redirect, refused.StatusCode);
        using var other = await pilot.Http.GetAsync(new Uri($"/squawks/1/photos/{new string('0', 64)}", UriKind.Relative), Ct);
        Assert.Equal(HttpStatusCode.NotFound, other.StatusCode);
    }

    [Fact]
    public async Task A_receipt_of_no_report_leads_nowhere()
    {
        using var nobody = site.Browser();

        Assert.Equal(HttpStatusCode.NotFound, (await nobody.Open($"/receipt/{Guid.NewGuid()}")).Status);
    }
}
