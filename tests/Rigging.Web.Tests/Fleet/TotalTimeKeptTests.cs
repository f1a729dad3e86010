using System.Net;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Fleet;

/// <summary>The register asks about total time by the same rule as the work does.</summary>
[Collection(InTheHangar.Name)]
public sealed class TotalTimeKeptTests(Hangar hangar)
{
    [Fact]
    public async Task A_total_time_the_days_cannot_hold_is_asked_about_and_a_lower_one_needs_its_reason()
    {
        using var office = await hangar.As(School.Office);
        async Task<Page> Keep(string hours, string again = "", string because = "") =>
            await office.Submit(await office.Open("/aircraft"), new()
            {
                ["registration"] = "Q-HOURS",
                ["serial"] = "invented-12",
                ["airframe"] = $"{School.Airframe.Id}|{School.Airframe.Version}",
                ["totalTimeH"] = hours,
                ["totalTimeAgainH"] = again,
                ["hoursWrongBecause"] = because,
            });
        static string Error(Page page, string field) => page.Document.QuerySelector($"#{field.ToLowerInvariant()}-error")!.TextContent;

        Assert.Equal(HttpStatusCode.Redirect, (await Keep("1200")).Status);
        Assert.Contains("is 8800 h more than the 1200 h of", Error(await Keep("10000"), "totalTimeAgainH"), StringComparison.Ordinal);
        Assert.Contains("as 10000 h and, the second time, as 1000 h", Error(await Keep("10000", "1000"), "totalTimeAgainH"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await Keep("10000", "10000")).Status);
        Assert.Contains("Total time 1201 h is less than the 10000 h of", Error(await Keep("1201"), "totalTimeH"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Redirect, (await Keep("1201", because: "A nought too many.")).Status);

        Assert.Contains("1201.0", (await office.Open("/aircraft")).Document.QuerySelectorAll("tr").Single(row => row.TextContent.Contains("Q-HOURS", StringComparison.Ordinal)).TextContent, StringComparison.Ordinal);
        Assert.Contains("Q-HOURS: 10000 h to 1201 h, because: A nought too many.", (await office.Open("/security")).Text, StringComparison.Ordinal);
    }
}
