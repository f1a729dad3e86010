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
}
