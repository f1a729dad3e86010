using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Storage.Tests;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.SignIn;

/// <summary>A school may demand two factors in one, the device and its owner's check (OWASP ASVS 5.0.0, 6.3.3): then a password signs nothing and opens to nobody who has a passkey.</summary>
public sealed class PasskeysOnlyTests(Postgres postgres) : IAsyncLifetime
{
    readonly Hangar hangar = new(postgres);

    public async ValueTask InitializeAsync()
    {
        await hangar.InitializeAsync();
        await HasPasskey(School.Inspector);
        using var office = await hangar.As(School.Office);
        Assert.Contains("A password signs as well as a passkey", (await office.Open("/school")).Text, StringComparison.Ordinal);

        await office.Submit(await office.Open("/school"), [], "form:has(input[value=passkeys])");

        Assert.Contains("Only a passkey signs", (await office.Open("/school")).Text, StringComparison.Ordinal);
    }

    public ValueTask DisposeAsync() => hangar.Site.DisposeAsync();

    /// <summary>As if a device had made one: its key is never asked for here.</summary>
    async Task HasPasskey(Person who)
    {
        await using var scope = hangar.Site.Services.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<User>>();
        var user = (await users.FindByEmailAsync(Hangar.EmailOf(who)))!;
        Assert.True((await users.AddOrUpdatePasskeyAsync(user, new([1, 2, 3], [4], School.Noon.ToDateTimeOffset(), 0, [], true, false, false, [], []))).Succeeded);
    }

    static async Task<Page> Knocks(Browser browser, Person who, string password) =>
        await browser.Submit(await browser.Open("/sign-in"), new() { ["Form.Name"] = Hangar.EmailOf(who), ["Form.Password"] = password });

    [Fact]
    public async Task Whoever_has_a_passkey_is_not_let_in_by_the_password_and_a_wrong_password_learns_nothing_of_it()
    {
        using var browser = hangar.Site.Browser();

        var right = await Knocks(browser, School.Inspector, TestSite.Password);
        var wrong = await Knocks(browser, School.Inspector, "not-the-password");

        Assert.Contains("wants your passkey", right.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("wants your passkey", wrong.Text, StringComparison.Ordinal);
        Assert.NotEqual(HttpStatusCode.OK, (await browser.Open("/account")).Status);
    }

    [Fact]
    public async Task Whoever_has_none_comes_in_to_add_one_and_signs_nothing_until_then()
    {
        var number = await hangar.Squawk(School.Torqued);
        await using (var scope = hangar.Site.Services.CreateAsyncScope())
            await scope.ServiceProvider.GetRequiredService<Drafts>().SaveFact(School.Mechanic.Id, number, School.Done);
        using var mechanic = await hangar.As(School.Mechanic);
        var page = await mechanic.Open($"/squawks/{number}/sign/work-done");
        Assert.Null(page.Document.QuerySelector("[name='Form.Password']"));
        Assert.NotNull(page.Document.QuerySelector("a[href=account]"));

        var answer = await mechanic.Submit(page, new() { ["Form.Password"] = TestSite.Password });

        Assert.Contains("signs with passkeys only, and nothing was signed", answer.Text, StringComparison.Ordinal);
        Assert.DoesNotContain((await hangar.Ledger(number)).Entries, entry => entry.Signature is not null);
    }

    [Fact]
    public async Task Only_the_office_changes_it_and_it_is_among_the_security_events()
    {
        using var pilot = await hangar.As(School.Pilot);
        await pilot.Open("/school");
        await pilot.Post("/school", new() { ["_handler"] = "passkeys" });
        using var office = await hangar.As(School.Office);
        Assert.Contains("Only a passkey signs", (await office.Open("/school")).Text, StringComparison.Ordinal);

        await office.Submit(await office.Open("/school"), [], "form:has(input[value=passkeys])");

        Assert.Contains("A password signs as well as a passkey", (await office.Open("/school")).Text, StringComparison.Ordinal);
        await using var db = hangar.Site.OpenDatabase();
        Assert.Equal([SecurityEventKind.PasskeysDemanded, SecurityEventKind.PasswordsAllowed],
            db.Set<SecurityEventRow>().Where(row => row.Kind == SecurityEventKind.PasskeysDemanded || row.Kind == SecurityEventKind.PasswordsAllowed).OrderBy(row => row.Id).Select(row => row.Kind));
    }
}
