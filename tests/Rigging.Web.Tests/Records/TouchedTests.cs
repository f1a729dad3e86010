using System.Globalization;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Records;

[Collection(InTheHangar.Name)]
public sealed class TouchedTests(Hangar hangar)
{
    [Fact]
    public async Task A_wrench_out_of_tolerance_leads_to_every_fastener_and_squawk_in_one_click()
    {
        var (one, two, none) = (await hangar.Squawk(School.Torqued), await hangar.Squawk(School.Closed), await hangar.Squawk(School.InWork));
        using var browser = await hangar.As(School.Office);
        var tools = await browser.Open("/tools");

        var page = await browser.Open("/" + tools.Document.QuerySelectorAll("tbody a").Single(link => link.TextContent == School.Wrench.Code).GetAttribute("href"));

        var rows = page.Document.QuerySelectorAll("tbody tr").Select(row => string.Join(' ', row.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).ToList();
        Assert.Contains(rows, row => row.StartsWith($"S-{one}, entry ", StringComparison.Ordinal) && row.Contains("left rear spar attach bolt 3/8-24", StringComparison.Ordinal) && row.Contains("reached 190 in·lb", StringComparison.Ordinal));
        Assert.Contains(rows, row => row.StartsWith($"S-{two}, entry ", StringComparison.Ordinal));
        Assert.DoesNotContain(rows, row => row.StartsWith($"S-{none},", StringComparison.Ordinal));
        var torqued = (await hangar.Ledger(one)).Entries.First(entry => entry.Fact is TorqueApplied).At;
        Assert.Contains(page.Document.QuerySelectorAll("tbody tr"), row => row.QuerySelector("a")!.TextContent == $"S-{one}" && row.QuerySelector("td time")!.TextContent == AtTheSchool(torqued));
        Assert.Contains("Nothing.", (await browser.Open($"/tools/{School.WrenchADayOut.Code}")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_superseded_revision_leads_to_every_correction_made_to_it()
    {
        var revised = School.HalfAFlat with { Data = School.Manual with { Revision = "D, of a test" } };
        var (old, newer) = (await hangar.Squawk(School.Agreed), await hangar.Squawk(School.Checked.Do(School.Mechanic, revised)));
        using var browser = await hangar.As(School.Inspector);
        var all = await browser.Open("/school/manuals");

        var page = await browser.Open("/" + all.Document.QuerySelectorAll("main li a").Single(link => link.TextContent.EndsWith("revision D, of a test", StringComparison.Ordinal)).GetAttribute("href"));

        Assert.Contains($"S-{old} ,", all.Text.Replace($"S-{old},", $"S-{old} ,", StringComparison.Ordinal), StringComparison.Ordinal);
        var agreed = (await hangar.Ledger(newer)).Entries.Single(entry => entry.Fact is CorrectionAgreed).At;
        Assert.Equal(AtTheSchool(agreed), page.Document.QuerySelector("tbody td time")!.TextContent);
        Assert.StartsWith($"S-{newer}", Assert.Single(page.Document.QuerySelectorAll("tbody tr")).TextContent.Trim(), StringComparison.Ordinal);
    }

    static string AtTheSchool(Instant at) => at.InZone(DateTimeZoneProviders.Tzdb["America/Chicago"]).ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
