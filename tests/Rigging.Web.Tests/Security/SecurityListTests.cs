using System.Net;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Security;

[Collection(InTheHangar.Name)]
public sealed class SecurityListTests(Hangar hangar)
{
    [Fact]
    public async Task The_page_tells_the_schools_time_to_the_minute_and_the_file_universal_time_to_the_second()
    {
        using var browser = await hangar.As(School.Office);

        var page = await browser.Open("/security");
        var file = await browser.Http.GetStringAsync(new Uri("/security.csv", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.All(page.Document.QuerySelectorAll("tbody tr td:first-child"), cell => Assert.Matches(@"^\d{4}-\d\d-\d\d \d\d:\d\d$", cell.TextContent));
        var noted = file.Split("\r\n").First(line => line.Contains(",Signed in,", StringComparison.OrdinalIgnoreCase));
        Assert.Matches(@"^\d+,\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ,", noted);
        var at = NodaTime.Text.InstantPattern.General.Parse(noted.Split(',')[1]).Value;
        Assert.Contains(page.Document.QuerySelectorAll("tbody tr"), row => row.TextContent.Contains("signed in", StringComparison.OrdinalIgnoreCase)
            && row.QuerySelector("td")!.TextContent == at.InZone(NodaTime.DateTimeZoneProviders.Tzdb["America/Chicago"]).ToString("uuuu-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("/security?before=99999999999999999999", HttpStatusCode.OK)]
    [InlineData("/security?before=-1", HttpStatusCode.OK)]
    [InlineData("/school/manuals?manual=%00", HttpStatusCode.NotFound)]
    public async Task An_address_that_nothing_can_have_is_no_fault_of_the_host(string address, HttpStatusCode status)
    {
        using var browser = await hangar.As(School.Office);

        Assert.Equal(status, (await browser.Open(address)).Status);
    }

    [Fact]
    public async Task A_form_sent_after_somebody_else_signed_in_is_not_taken_and_its_words_are_shown()
    {
        var number = await hangar.Squawk(School.Called);
        using var browser = await hangar.As(School.Pilot);
        var form = await browser.Open($"/squawks/{number}/other/note");
        await browser.Submit(await browser.Open("/sign-in"), new() { ["Form.Name"] = Hangar.EmailOf(School.Mechanic), ["Form.Password"] = TestSite.Password });

        var answer = await browser.Submit(form, new() { ["text"] = "It did it again, <slowly>." });

        Assert.Equal(HttpStatusCode.BadRequest, answer.Status);
        Assert.Contains("This form was not taken", answer.Text, StringComparison.Ordinal);
        Assert.Contains("It did it again, <slowly>.", answer.Text, StringComparison.Ordinal);
        Assert.Empty(answer.Document.QuerySelectorAll("form"));
        Assert.Equal(2, (await hangar.Ledger(number)).Length);
    }
}
