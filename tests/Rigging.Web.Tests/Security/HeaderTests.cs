using System.Net;
using Rigging.Squawks.Tests;
using Rigging.Web.Security;

namespace Rigging.Web.Tests.Security;

/// <summary>What goes with every answer, whatever page it is.</summary>
[Collection(InTheHangar.Name)]
public sealed class HeaderTests(Hangar hangar)
{
    public static TheoryData<string> Addresses =>
        ["/", "/sign-in", "/account", "/report", "/squawks/N", "/squawks/N/checks", "/squawks/N/assessment", "/squawks/N/work", "/squawks/N/other", "/people", "/people/1", "/school", "/security", "/tools", "/aircraft", "/nothing-here", "/invitation?code=x"];

    [Theory, MemberData(nameof(Addresses))]
    public async Task A_page_lets_no_script_in_but_the_sites_own_files_and_is_kept_nowhere(string address)
    {
        var number = await hangar.Squawk(School.Called);
        using var browser = await hangar.As(School.Office);

        var answer = await browser.Http.GetAsync(new Uri(address.Replace("N", $"{number}", StringComparison.Ordinal), UriKind.Relative), TestContext.Current.CancellationToken);

        string Header(string name) => string.Join(", ", answer.Headers.TryGetValues(name, out var values) ? values : []);
        Assert.Equal(SecureHeaders.Policy, Header("Content-Security-Policy"));
        Assert.Contains("script-src 'self';", SecureHeaders.Policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Header("X-Content-Type-Options"));
        Assert.Equal("same-origin", Header("Referrer-Policy"));
        Assert.Equal("same-origin", Header("Cross-Origin-Opener-Policy"));
        Assert.Contains("no-store", Header("Cache-Control"), StringComparison.Ordinal);
        var page = await browser.Open(address.Replace("N", $"{number}", StringComparison.Ordinal));
        Assert.DoesNotContain(page.Document.QuerySelectorAll("script:not([src])"), script => script.TextContent.Length > 0);
        Assert.DoesNotContain(page.Document.All, element => element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal)));
        Assert.DoesNotContain(page.Document.QuerySelectorAll("[href], [src], [action]"), element => Regexes.Script().IsMatch(element.GetAttribute("href") ?? element.GetAttribute("src") ?? element.GetAttribute("action") ?? ""));
    }

    [Fact]
    public async Task Over_TLS_cookies_never_travel_without_it_and_scripts_do_not_see_them()
    {
        using var browser = hangar.Site.Browser();

        var answer = await browser.Http.GetAsync(new Uri("https://localhost/sign-in"), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.All(answer.Headers.GetValues("Set-Cookie"), cookie =>
        {
            Assert.Contains("; secure", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("; httponly", cookie, StringComparison.OrdinalIgnoreCase);
            Assert.Contains("; samesite=", cookie, StringComparison.OrdinalIgnoreCase);
        });
        Assert.Equal("max-age=31536000", Assert.Single(answer.Headers.GetValues("Strict-Transport-Security")));
    }

    [Theory]
    [InlineData("192.0.2.7", true)]
    [InlineData("127.0.0.1", false)]
    public async Task One_address_can_ask_only_so_much_and_this_machine_notices_nothing(string from, bool limited)
    {
        var refused = false;
        for (var i = 0; i < 1500 && !refused; i++)
        {
            var answer = await hangar.Site.Ask("/tokens.css", IPAddress.Parse(from));
            refused = answer.Response.StatusCode == StatusCodes429;
            if (refused) Assert.Equal("1", answer.Response.Headers.RetryAfter.ToString());
        }

        Assert.Equal(limited, refused);
    }

    const int StatusCodes429 = (int)HttpStatusCode.TooManyRequests;
}

static partial class Regexes
{
    [System.Text.RegularExpressions.GeneratedRegex(@"^\s*(javascript|data|vbscript):", System.Text.RegularExpressions.RegexOptions.IgnoreCase)]
    public static partial System.Text.RegularExpressions.Regex Script();
}
