using System.Net;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Tests;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Desk;

public sealed class ToolsPageTests(Postgres postgres) : IAsyncLifetime
{
    readonly Hangar hangar = new(postgres);

    static Dictionary<string, string> Wrench => new()
    {
        ["code"] = "TW-9",
        ["kind"] = "torque-wrench",
        ["description"] = "Click wrench",
        ["serial"] = "S/N 4711",
        ["rangeMin"] = "30",
        ["fullScale"] = "150",
        ["rangeUnit"] = "lbf.in",
        ["lever"] = "10",
        ["calibratedOn"] = "2026-01-10",
        ["calibrationDue"] = "2026-07-10",
    };

    public ValueTask InitializeAsync() => hangar.InitializeAsync();

    public ValueTask DisposeAsync() => hangar.DisposeAsync();

    async Task<Page> Enter(Dictionary<string, string> typed)
    {
        using var office = await hangar.As(School.Office);
        return await office.Submit(await office.Open("/tools"), typed, "form:has([name=calibrationDue])");
    }

    [Fact]
    public async Task Renewing_a_calibration_leaves_what_was_not_typed_as_it_is_on_file()
    {
        await Enter(Wrench);
        await Enter(new(Wrench) { ["serial"] = "", ["lever"] = "", ["calibratedOn"] = "2026-02-20", ["calibrationDue"] = "2026-08-20" });

        await using var db = hangar.Site.OpenDatabase();
        var kept = await db.Tools.SingleAsync(tool => tool.Code == "TW-9", TestContext.Current.CancellationToken);
        Assert.Equal(("S/N 4711", 10, new NodaTime.LocalDate(2026, 8, 20)), (kept.Serial, kept.LeverLengthIn, kept.CalibrationDue));
    }

    /// <summary>The summary has the focus and the title says it, so that a person at the form's end sees that nothing was taken in.</summary>
    [Theory]
    [InlineData("2026-02-20", "2026-02-19", "lies before the calibration itself")]
    [InlineData("2026-03-03", "2026-08-20", "has not come yet")]
    public async Task Days_that_cannot_follow_each_other_are_refused(string on, string due, string says)
    {
        var answer = await Enter(new(Wrench) { ["calibratedOn"] = on, ["calibrationDue"] = due });

        Assert.Equal(HttpStatusCode.OK, answer.Status);
        var summary = answer.Document.QuerySelector("[data-errors]")!;
        Assert.Contains(says, summary.TextContent, StringComparison.Ordinal);
        Assert.True(summary.HasAttribute("autofocus"));
        Assert.StartsWith("One thing needs your attention", answer.Document.Title, StringComparison.Ordinal);
        await using var db = hangar.Site.OpenDatabase();
        Assert.False(await db.Tools.AnyAsync(tool => tool.Code == "TW-9", TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("TW/9")]
    [InlineData("TW 9")]
    [InlineData("-TW")]
    [InlineData("TW-1234567890123456789")]
    public async Task A_code_that_no_label_or_address_can_carry_is_refused(string code)
    {
        var page = await Enter(new(Wrench) { ["code"] = code });

        Assert.Contains($"“{code}” is no code for a tool.", page.Text, StringComparison.Ordinal);
    }
}
