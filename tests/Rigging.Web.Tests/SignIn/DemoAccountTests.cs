using System.Net;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.People;
using Rigging.Storage.Tests;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests.SignIn;

public sealed class DemoAccountTests(Postgres postgres)
{
    const string Demo = "demo@school.example";
    const string Real = "real@school.example";

    async Task<TestSite> Site(bool loopbackOnly)
    {
        var site = await TestSite.Start(postgres, loopbackOnly);
        await site.AddSchool(demo: true);
        await site.AddPerson("Demo Pilot", Demo, [Authority.Pilot], demo: true, Doorman.DemoPassword);
        await site.AddPerson("Real Pilot", Real, [Authority.Pilot]);
        return site;
    }

    [Fact]
    public async Task On_this_machine_the_page_lists_them_and_lets_them_in()
    {
        await using var site = await Site(loopbackOnly: true);
        using var browser = site.Browser();

        var page = await browser.Open("/sign-in");

        Assert.Contains($"Demo Pilot {Demo} pilot", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(Real, page.Text, StringComparison.Ordinal);
        using var signedIn = await site.SignedIn(Demo, Doorman.DemoPassword);
    }

    [Fact]
    public async Task Where_other_machines_reach_the_site_they_are_neither_listed_nor_let_in()
    {
        await using var site = await Site(loopbackOnly: false);
        using var browser = site.Browser();

        var page = await browser.Open("/sign-in");
        var answer = await browser.Submit(page, new() { ["Form.Name"] = Demo, ["Form.Password"] = Doorman.DemoPassword });

        Assert.DoesNotContain(Demo, page.Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Contains("do not go together", answer.Text, StringComparison.Ordinal);
        using var signedIn = await site.SignedIn(Real);
    }

    [Theory]
    [InlineData("127.0.0.1", 1)]
    [InlineData("::1", 1)]
    [InlineData("192.0.2.7", 0)]
    public async Task Only_someone_at_this_machine_is_shown_them(string from, int shown)
    {
        await using var site = await Site(loopbackOnly: true);
        await using var scope = site.Services.CreateAsyncScope();
        var asking = new DefaultHttpContext { Connection = { RemoteIpAddress = IPAddress.Parse(from) } };

        Assert.Equal(shown, (await scope.ServiceProvider.GetRequiredService<Doorman>().DemoAccountsFor(asking)).Count);
    }
}
