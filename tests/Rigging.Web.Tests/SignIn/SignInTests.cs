using System.Net;
using Rigging.Squawks.People;
using Rigging.Storage.Tests;
using Rigging.Web.SignIn;

namespace Rigging.Web.Tests.SignIn;

public sealed class SignInTests(Postgres postgres) : IAsyncLifetime
{
    const string Mira = "mira@school.example";

    TestSite site = null!;

    public async ValueTask InitializeAsync()
    {
        site = await TestSite.Start(postgres);
        await site.AddSchool();
        await site.AddPerson("Mira Mechanic", Mira, [Authority.Mechanic]);
    }

    public ValueTask DisposeAsync() => site.DisposeAsync();

    static Task<Page> Try(Browser browser, Page page, string? email, string? password) =>
        browser.Submit(page, new() { ["Form.Name"] = email ?? "", ["Form.Password"] = password ?? "" });

    [Fact]
    public async Task Who_signs_in_goes_where_they_were_going()
    {
        using var browser = site.Browser();

        var answer = await Try(browser, await browser.Open("/sign-in?ReturnUrl=%2Fsquawks%2F7%2Fsign%2Fapproval"), Mira, TestSite.Password);

        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        Assert.Equal("/squawks/7/sign/approval", answer.Location);
    }

    [Fact]
    public async Task The_page_says_who_is_signed_in_by_name()
    {
        using var browser = await site.SignedIn(Mira);

        var page = await browser.Open("/not-found");

        Assert.Equal("Mira Mechanic", page.Document.QuerySelector(".who-name")?.TextContent);
    }

    [Theory]
    [InlineData(Mira, "not-the-password")]
    [InlineData(Mira, "")]
    [InlineData("nobody@school.example", TestSite.Password)]
    [InlineData("", "")]
    public async Task A_refusal_gives_nothing_away(string email, string password)
    {
        using var browser = site.Browser();

        var answer = await Try(browser, await browser.Open("/sign-in"), email, password);

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Contains("This e-mail address and password do not go together.", answer.Text, StringComparison.Ordinal);
        Assert.Equal(email, answer.Document.QuerySelector("#form-name")?.GetAttribute("value") ?? "");
        Assert.Null(answer.Document.QuerySelector("#form-password")?.GetAttribute("value"));
    }

    [Fact]
    public async Task After_five_wrong_tries_the_right_password_does_not_help_and_the_answer_is_the_same()
    {
        using var browser = site.Browser();
        var page = await browser.Open("/sign-in");
        for (var i = 0; i < 5; i++) page = await Try(browser, page, Mira, "wrong");

        var answer = await Try(browser, page, Mira, TestSite.Password);

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.Equal(page.Text, answer.Text);
    }

    [Fact]
    public async Task Four_wrong_tries_are_forgiven()
    {
        using var browser = site.Browser();
        var page = await browser.Open("/sign-in");
        for (var i = 0; i < 4; i++) page = await Try(browser, page, Mira, "wrong");

        Assert.Equal(HttpStatusCode.Redirect, (await Try(browser, page, Mira, TestSite.Password)).Status);
    }

    [Fact]
    public async Task A_sign_in_that_another_site_posts_is_refused()
    {
        using var browser = site.Browser();

        var answer = await browser.Post("/sign-in", new() { ["_handler"] = "sign-in", ["Form.Name"] = Mira, ["Form.Password"] = TestSite.Password });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
    }

    [Fact]
    public async Task Signing_out_ends_it_and_needs_the_form_of_the_page()
    {
        using var browser = await site.SignedIn(Mira);

        Assert.Equal(HttpStatusCode.BadRequest, (await browser.Post("/sign-out", [])).Status);
        Assert.NotNull((await browser.Open("/not-found")).Document.QuerySelector(".who-name"));

        var answer = await browser.Submit(await browser.Open("/not-found"), [], ".masthead form");
        Assert.Equal("/sign-in", answer.Location);
        Assert.Null((await browser.Open("/not-found")).Document.QuerySelector(".who-name"));
    }

    [Theory]
    [InlineData("/squawks/3", "/squawks/3")]
    [InlineData("/report?aircraft=QRA-101", "/report?aircraft=QRA-101")]
    [InlineData(null, "/")]
    [InlineData("", "/")]
    [InlineData("squawks/3", "/")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("/\t/elsewhere.example", "/")]
    [InlineData("/\n/elsewhere.example", "/")]
    [InlineData("https://elsewhere.example", "/")]
    [InlineData("javascript:alert(1)", "/")]
    public void A_return_address_never_leaves_the_site(string? asked, string goesTo) => Assert.Equal(goesTo, Doorman.LocalOnly(asked));
}
