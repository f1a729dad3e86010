using System.Net;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Storage.Tests;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests.SignIn;

/// <summary>A cookie is worth what the session's row says, and the row ends when somebody says so.</summary>
public sealed class SessionTests(Postgres postgres) : IAsyncLifetime
{
    const string Mira = "mira@school.example";
    const string Olaf = "olaf@school.example";
    const string Another = "seven bolts and a thimble";

    TestSite site = null!;

    public async ValueTask InitializeAsync()
    {
        site = await TestSite.Start(postgres);
        await site.AddSchool();
        await site.AddPerson("Mira Mechanic", Mira, [Authority.Mechanic]);
        await site.AddPerson("Olaf Office", Olaf, [Authority.Office]);
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    static async Task<bool> IsIn(Browser browser) => (await browser.Open("/account")).Status == HttpStatusCode.OK;

    [Fact]
    public async Task What_is_ended_in_one_browser_is_over_in_the_other_at_once()
    {
        using var here = await site.SignedIn(Mira);
        using var there = await site.SignedIn(Mira);
        var page = await here.Open("/account");
        Assert.Equal(2, page.Document.QuerySelectorAll("tbody tr").Length);

        await here.Submit(page, [], "form:has(input[value=others])");

        Assert.True(await IsIn(here));
        Assert.False(await IsIn(there));
    }

    [Fact]
    public async Task A_session_ends_after_hours_without_use_and_after_a_working_day_in_any_case()
    {
        using var idle = await site.SignedIn(Mira);
        using var busy = await site.SignedIn(Mira);
        for (var hour = 0; hour < 11; hour++)
        {
            site.Clock.Advance(Duration.FromHours(1));
            Assert.True(await IsIn(busy));
        }

        Assert.False(await IsIn(idle));
        site.Clock.Advance(Duration.FromHours(1) + Duration.FromMinutes(1));
        Assert.False(await IsIn(busy));
    }

    [Fact]
    public async Task A_copied_cookie_is_worth_nothing_after_signing_out()
    {
        using var browser = await site.SignedIn(Mira);
        using var thief = site.Browser();
        thief.Http.DefaultRequestHeaders.Add("Cookie", browser.Cookies);
        Assert.True(await IsIn(thief));

        await browser.Submit(await browser.Open("/account"), [], ".masthead form");

        Assert.False(await IsIn(thief));
    }

    [Fact]
    public async Task A_new_password_needs_the_old_one_and_ends_the_other_sessions()
    {
        using var here = await site.SignedIn(Mira);
        using var there = await site.SignedIn(Mira);
        var page = await here.Open("/account");

        var refused = await here.Submit(page, new() { ["current"] = "not-the-password", ["wanted"] = Another }, "form:has([name=wanted])");
        Assert.Contains("Your present password was not accepted", refused.Text, StringComparison.Ordinal);
        Assert.True(await IsIn(there));
        var weak = await here.Submit(page, new() { ["current"] = TestSite.Password, ["wanted"] = "password1234" }, "form:has([name=wanted])");
        Assert.Contains("would be guessed soon", weak.Text, StringComparison.Ordinal);
        var changed = await here.Submit(page, new() { ["current"] = TestSite.Password, ["wanted"] = Another }, "form:has([name=wanted])");

        Assert.Equal("/account?done=password", changed.Location);
        Assert.True(await IsIn(here));
        Assert.False(await IsIn(there));
        using var again = await site.SignedIn(Mira, Another);
    }

    [Fact]
    public async Task Closing_an_account_ends_its_sessions_and_its_password_and_the_office_cannot_close_the_last_of_its_own()
    {
        using var mira = await site.SignedIn(Mira);
        using var office = await site.SignedIn(Olaf);

        await office.Submit(await office.Open("/people/1"), [], "form:has(input[value=close])");

        Assert.False(await IsIn(mira));
        using var again = site.Browser();
        var answer = await again.Submit(await again.Open("/sign-in"), new() { ["Form.Name"] = Mira, ["Form.Password"] = TestSite.Password });
        Assert.Contains("do not go together", answer.Text, StringComparison.Ordinal);
        var last = await office.Submit(await office.Open("/people/2"), [], "form:has(input[value=close])");
        Assert.Contains("Nobody else belongs to the maintenance office", last.Text, StringComparison.Ordinal);
        Assert.True(await IsIn(office));
    }

    [Fact]
    public async Task A_link_lets_its_person_choose_a_password_once_and_nobody_else_learns_it()
    {
        using var office = await site.SignedIn(Olaf);
        var page = await office.Open("/people");
        var added = await office.Submit(page, new() { ["name"] = "Nora New", ["email"] = "nora@school.example", ["authorities"] = "Pilot" }, "form:has([name=name])");
        var link = added.Document.QuerySelector("a[href^='invitation?code=']")!.GetAttribute("href")!;
        using var nora = site.Browser();
        Assert.Contains("Welcome, Nora New", (await nora.Open("/" + link)).Text, StringComparison.Ordinal);

        var weak = await nora.Submit(await nora.Open("/" + link), new() { ["password"] = "short" });
        Assert.Contains("least 12 characters", weak.Text, StringComparison.Ordinal);
        var chosen = await nora.Submit(await nora.Open("/" + link), new() { ["password"] = Another });

        Assert.Equal("/", chosen.Location);
        Assert.Contains("leads nowhere", (await nora.Open("/" + link)).Text, StringComparison.Ordinal);
        using var again = await site.SignedIn("nora@school.example", Another);
        Assert.DoesNotContain(link.Split('=')[1], (await office.Open("/security")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_lasts_a_week()
    {
        using var office = await site.SignedIn(Olaf);
        var made = await office.Submit(await office.Open("/people/1"), [], "form:has(input[value=invite])");
        var link = made.Document.QuerySelector("a[href^='invitation?code=']")!.GetAttribute("href")!;

        site.Clock.Advance(Invitations.Lasts + Duration.FromMinutes(1));

        using var late = site.Browser();
        Assert.Contains("leads nowhere", (await late.Open("/" + link)).Text, StringComparison.Ordinal);
    }
}
