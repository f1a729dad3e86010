using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Records;

/// <summary>The school's lists as other programs read them.</summary>
[Collection(InTheHangar.Name)]
public sealed class ListsTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    async Task<string> Take(string address)
    {
        using var office = await hangar.As(School.Office);
        return await office.Http.GetStringAsync(new Uri(address, UriKind.Relative), Ct);
    }

    [Fact]
    public async Task Every_squawk_is_a_line_with_where_it_stands()
    {
        var number = await hangar.Squawk(School.Called);

        var lines = (await Take("/squawks.csv")).Split("\r\n");

        Assert.Equal("number,registration,stage,flight-status,round,opened-at,updated-at,words,next", lines[0]);
        var line = Assert.Single(lines, line => line.StartsWith($"{number},Q-", StringComparison.Ordinal));
        Assert.Contains(",called,no rigging hold,1,2026-03-02T", line, StringComparison.Ordinal);
        Assert.EndsWith(NextAct.Of(School.Called.State)!.Sentence, line.TrimEnd('"'), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_aircrafts_line_says_what_its_squawks_allow_together()
    {
        await hangar.Squawk(School.InWork);

        var lines = (await Take("/aircraft.csv")).Split("\r\n");

        Assert.Equal("registration,serial,airframe,airframe-version,total-time-h,flight-status", lines[0]);
        Assert.Contains(lines, line => line.EndsWith(",held", StringComparison.Ordinal));
        Assert.Contains((await Take("/tools.csv")).Split("\r\n"), line => line.StartsWith("TW-3,", StringComparison.Ordinal) && line.EndsWith(",2026-04-01", StringComparison.Ordinal));
    }

    /// <summary>RFC 5545: a whole day is a DTSTART of VALUE=DATE; lines end in CR LF.</summary>
    [Fact]
    public async Task What_runs_out_is_a_whole_day_in_a_calendar_with_a_reminder_before_it()
    {
        var calendar = (await Take("/dates.ics")).ReplaceLineEndings("\n").Replace("\n ", "", StringComparison.Ordinal);

        Assert.StartsWith("BEGIN:VCALENDAR\n", calendar, StringComparison.Ordinal);
        var wrench = Assert.Single(calendar.Split("BEGIN:VEVENT"), day => day.Contains("SUMMARY:TW-3: last day of calibration", StringComparison.Ordinal));
        Assert.Contains("DTSTART;VALUE=DATE:20260401\n", wrench, StringComparison.Ordinal);
        Assert.Contains("TRIGGER:-P14D\n", wrench, StringComparison.Ordinal);
        Assert.Contains($"SUMMARY:{Hangar.NameOf(School.Mechanic)}: last day of recent experience", calendar, StringComparison.Ordinal);
    }
}
