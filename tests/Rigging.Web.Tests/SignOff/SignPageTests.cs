using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.SignOff;

[Collection(InTheHangar.Name)]
public sealed class SignPageTests(Hangar hangar)
{
    const string Password = "Form.Password";

    /// <summary>A squawk whose work is done but not signed, the mechanic's text prepared.</summary>
    async Task<(int Number, string Address)> Prepared()
    {
        var number = await hangar.Squawk(School.Torqued);
        await Prepare(number, School.Done);
        return (number, $"/squawks/{number}/sign/work-done");
    }

    async Task Prepare(int number, WorkDone done)
    {
        await using var scope = hangar.Site.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<Drafts>().SaveFact(School.Mechanic.Id, number, done);
    }

    [Fact]
    public async Task The_right_password_under_the_text_as_shown_makes_one_signed_entry_and_the_draft_is_gone()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);
        var page = await browser.Open(address);

        var answer = await browser.Submit(page, new() { [Password] = TestSite.Password });

        Assert.Equal($"/squawks/{number}", answer.Location);
        var entry = (await hangar.Ledger(number)).Entries[^1];
        Assert.IsType<WorkDone>(entry.Fact);
        Assert.Equal("password", entry.Signature!.Method);
        Assert.Contains($"[person:{School.Mechanic.Id}]", entry.Signature.Text, StringComparison.Ordinal);
        Assert.Contains("Nothing to sign", (await browser.Open(address)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_hours_that_were_signed_are_the_aircrafts_from_then_on()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);
        await browser.Submit(await browser.Open(address), new() { [Password] = TestSite.Password });

        await using var db = hangar.Site.Services.GetRequiredService<IDbContextFactory<Rigging.Storage.RiggingDb>>().CreateDbContext();
        var tenths = await db.Squawks.Where(squawk => squawk.Number == number).Join(db.Aircraft, squawk => squawk.AircraftId, aircraft => aircraft.Id, (_, aircraft) => aircraft.TotalTimeTenths)
            .SingleAsync(TestContext.Current.CancellationToken);
        Assert.Equal(School.Done.TotalTimeH, tenths / 10.0);
    }

    [Fact]
    public async Task Before_signing_the_whole_text_the_signer_and_the_certificate_are_shown()
    {
        var (_, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);

        var page = await browser.Open(address);

        Assert.Contains("Work: Left eccentric turned half a flat, trailing edge down.", page.Text, StringComparison.Ordinal);
        Assert.Contains($"I did this work as described: Mira Mechanic, mechanic, airframe rating, certificate {Hangar.NumberOf(School.Mechanic.Certificates[0])}.", page.Text, StringComparison.Ordinal);
        Assert.Contains("You sign as Mira Mechanic , acting as mechanic.", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_password_signs_nothing_and_five_of_them_lock_the_account()
    {
        var number = await hangar.Squawk(School.Inspected);
        await using (var scope = hangar.Site.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<Drafts>().SaveFact(School.Certifier.Id, number, School.Approval, TestContext.Current.CancellationToken);
        using var browser = await hangar.As(School.Certifier);
        var page = await browser.Open($"/squawks/{number}/sign/approval");

        for (var i = 0; i < 5; i++)
        {
            page = await browser.Submit(page, new() { [Password] = "not-the-password" });
            Assert.Contains("The password was not accepted, and nothing was signed.", page.Text, StringComparison.Ordinal);
        }
        var locked = await browser.Submit(page, new() { [Password] = TestSite.Password });

        Assert.Contains("the account rests", locked.Text, StringComparison.Ordinal);
        Assert.Equal(Stage.AwaitingApproval, (await hangar.Ledger(number)).State.Stage);
        Assert.Contains("Approved by Conrad Certifier", locked.Text, StringComparison.Ordinal);
        await using var db = hangar.Site.OpenDatabase();
        Assert.NotNull((await db.Users.SingleAsync(user => user.PersonId == School.Certifier.Id, TestContext.Current.CancellationToken)).LockoutEnd);
        await db.Users.Where(user => user.PersonId == School.Certifier.Id).ExecuteUpdateAsync(set => set.SetProperty(user => user.LockoutEnd, (DateTimeOffset?)null), TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task A_text_that_was_prepared_anew_meanwhile_is_refused_and_shown_anew()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);
        var page = await browser.Open(address);
        await Prepare(number, School.Done with { Description = "Something else was done." });

        var answer = await browser.Submit(page, new() { [Password] = TestSite.Password });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Contains("The text has changed since the page was shown.", answer.Text, StringComparison.Ordinal);
        Assert.Contains("Something else was done.", answer.Text, StringComparison.Ordinal);
        Assert.Equal(Stage.InWork, (await hangar.Ledger(number)).State.Stage);
    }

    [Fact]
    public async Task A_squawk_that_grew_meanwhile_is_read_again_before_it_is_signed()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);
        var page = await browser.Open(address);
        await hangar.Add(number, School.Office, new Noted("The tag is on the wheel.", null));

        var answer = await browser.Submit(page, new() { [Password] = TestSite.Password });

        Assert.Contains("Something was added to this squawk since the page was shown: note by Olaf Office", answer.Text, StringComparison.Ordinal);
        Assert.Equal(Stage.InWork, (await hangar.Ledger(number)).State.Stage);
        Assert.Equal($"/squawks/{number}", (await browser.Submit(answer, new() { [Password] = TestSite.Password })).Location);
    }

    [Fact]
    public async Task Nobody_signs_what_somebody_else_prepared()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Inspector);

        var page = await browser.Open(address);
        var answer = await browser.Post(address, new() { ["_handler"] = "sign", [Password] = TestSite.Password });

        Assert.Contains("Nothing to sign", page.Text, StringComparison.Ordinal);
        Assert.NotEqual(HttpStatusCode.Redirect, answer.Status);
        Assert.Equal(Stage.InWork, (await hangar.Ledger(number)).State.Stage);
    }

    [Fact]
    public async Task A_post_from_elsewhere_is_refused()
    {
        var (number, address) = await Prepared();
        using var browser = await hangar.As(School.Mechanic);
        var page = await browser.Open(address);
        string Hidden(string name) => page.Document.QuerySelector($"input[name='{name}']")!.GetAttribute("value")!;

        var answer = await browser.Post(address, new()
        {
            ["_handler"] = "sign",
            ["Form.LengthSeen"] = Hidden("Form.LengthSeen"),
            ["Form.TextSha256"] = Hidden("Form.TextSha256"),
            ["Form.ShownSha256"] = Hidden("Form.ShownSha256"),
            [Password] = TestSite.Password,
        });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Equal(Stage.InWork, (await hangar.Ledger(number)).State.Stage);
    }

    [Fact]
    public async Task A_stranger_is_sent_to_sign_in_and_comes_back_here()
    {
        var (_, address) = await Prepared();
        using var browser = hangar.Site.Browser();

        var page = await browser.Open(address);

        Assert.Equal(HttpStatusCode.Redirect, page.Status);
        Assert.Contains(Uri.EscapeDataString(address), page.Location!, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task What_has_no_place_now_is_shown_with_the_reason_and_cannot_be_signed()
    {
        var (number, address) = await Prepared();
        await hangar.Add(number, School.Mechanic, new WorkHandedOver("Half way.", "Left rear bolt LOOSE, do not move."));
        using var browser = await hangar.As(School.Mechanic);

        var page = await browser.Open(address);

        Assert.Contains("Left rear bolt LOOSE", page.Text, StringComparison.Ordinal);
        Assert.Null(page.Document.QuerySelector("main form"));
    }
}
