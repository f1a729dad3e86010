using System.Text.Json;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using Rigging.Web.Plots;

namespace Rigging.Web.Fleet;

/// <summary>How an aircraft flew hands off over the months, and when it was worked on, as its ledgers have it on record.</summary>
static class TendencyHistory
{
    /// <summary>One roll tendency on record, °/s, right wing down positive.</summary>
    sealed record Found(Instant At, double Low, double Mean, double High, bool AfterFlight);

    /// <returns>The plot, and the latest estimate in it, °/s, right wing down positive; null when nothing on record says how it rolls.</returns>
    public static (Chart Chart, Estimate Latest)? Of(IReadOnlyList<Ledger> ledgers, DateTimeZone zone, double? limitDegPerS)
    {
        double Day(Instant at) => Chart.Day(at.InZone(zone).LocalDateTime);
        // Work signed on the day it was completed has its place among that day's entries; work signed late stands at noon of its day.
        double Worked(Entry entry, WorkDone done) => entry.At.InZone(zone).Date == done.CompletedOn ? Day(entry.At) : Chart.Day(done.CompletedOn.At(LocalTime.Noon));
        var found = ledgers.SelectMany(ledger => ledger.Entries).Select(Read).OfType<Found>().OrderBy(one => one.At).ToList();
        if (found.Count == 0) return null;
        Dots Of(bool afterFlight, Telling telling, string name) => new(telling, name,
            [.. found.Where(one => one.AfterFlight == afterFlight).Select(one => new Dot(Day(one.At), one.Mean, (one.Low, one.High)))]);
        List<Upright> works = [.. ledgers.SelectMany(ledger => ledger.Entries.Where(entry => entry.Fact is WorkDone)
            .Select(entry => new Upright(Worked(entry, (WorkDone)entry.Fact), Gaps.Fill(Say.WorkS, ledger.State.Report!.Number)))).OrderBy(work => work.X)];
        var last = found[^1];
        return (new Chart(Say.HowItFlewHandsOff, Say.Day, Say.RollDegPerSRightWing,
            Gaps.Fill(Say.AtSpeedAndLoadItIsRiggedForCircles, $"{last.At.InZone(zone).Date:uuuu-MM-dd}", Directions.Expected(last.Mean, last.Low, last.High)),
            [],
            [.. ((Dots[])[Of(false, Telling.Earlier, Say.Assessed), Of(true, Telling.Now, Say.AfterCheckFlight)]).Where(dots => dots.Points.Count > 0)],
            limitDegPerS is { } limit ? [new(limit, Gaps.Fill(Say.Limit, Numerals.Number(limit, 2))), new(-limit, Gaps.Fill(Say.Limit, Numerals.Number(limit, 2)))] : [],
            works, Dates: true), new(last.Mean, last.Low, last.High, "deg/s"));
    }

    static Found? Read(Entry entry) => entry.Fact switch
    {
        Assessed assessed => Read(entry.At, assessed.Response, afterFlight: false),
        VerdictGiven verdict => Read(entry.At, verdict.Response, afterFlight: true),
        _ => null,
    };

    // What nobody could read is plotted at the edge of what anybody could: an answer on record may be older than the mend of what it was computed with.
    static double Rate(JsonElement tendency, string end) =>
        Math.Clamp(tendency.GetProperty(end).GetDouble(), -ReadingLimits.RollRateDegPerS, ReadingLimits.RollRateDegPerS);

    // Both answers carry it under the same name, with its 90 % interval.
    static Found? Read(Instant at, string response, bool afterFlight)
    {
        using var answer = JsonDocument.Parse(response);
        return answer.RootElement.TryGetProperty("rollTendency", out var tendency) && tendency.ValueKind == JsonValueKind.Object
            ? new(at, Rate(tendency, "low"), Rate(tendency, "mean"), Rate(tendency, "high"), afterFlight)
            : null;
    }
}
