using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>Reads what was disturbed lately on one aircraft. It asks for no account: whoever holds the aircraft's code sits in it.</summary>
public sealed class CockpitNews(IDbContextFactory<RiggingDb> databases, LedgerStore ledgers, IClock clock)
{
    /// <summary>Null when the fleet has no such aircraft.</summary>
    public async Task<Lately?> Of(AircraftId id, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Aircraft.AsNoTracking().SingleOrDefaultAsync(row => row.Id == id, ct) is not { } aircraft) return null;
        var school = await Registers.School(db, ct);
        var today = clock.GetCurrentInstant().InZone(school.Zone).Date;
        var since = clock.GetCurrentInstant() - Duration.FromDays(Lately.Days);
        var airframe = await db.Airframes.AsNoTracking().Where(row => row.Id == aircraft.AirframeId && row.Version == aircraft.AirframeVersion).Select(row => row.Name).SingleOrDefaultAsync(ct);
        var rows = await db.Squawks.AsNoTracking().Where(row => row.AircraftId == id).OrderBy(row => row.Number).Select(row => new { row.Id, row.UpdatedAt, row.Stage, row.FlightStatus }).ToListAsync(ct);
        List<Disturbance> disturbed = [];
        List<OpenComplaint> open = [];
        foreach (var row in rows.Where(row => row.UpdatedAt >= since || row.Stage.IsOpen()))
        {
            if (await ledgers.Load(row.Id, ct) is not { } ledger) continue;
            disturbed.AddRange(Worked(ledger, since, today));
            if (row.Stage.IsOpen())
                open.Add(new(ledger.State.Report!.Number, Day(ledger.Entries[0].At.InZone(school.Zone).Date, today), GroundingQuestions.Complaint(ledger.State.Report!),
                    ledger.State.FlightStatus, StatusReason.Of(ledger.State), StatusReason.Limits(ledger.State)));
        }
        return new(id, aircraft.Registration, airframe ?? aircraft.AirframeId, rows.Select(row => row.FlightStatus).DefaultIfEmpty(FlightStatus.MayFly).Max(), school,
            [.. disturbed.OrderByDescending(work => work.On).ThenByDescending(work => work.Squawk)],
            [.. open.OrderByDescending(complaint => complaint.May).ThenBy(complaint => complaint.Squawk)]);
    }

    static IEnumerable<Disturbance> Worked(Ledger ledger, Instant since, LocalDate today)
    {
        foreach (var entry in ledger.Entries)
            if (entry is { Fact: WorkDone work } && entry.At >= since && ledger.Entries.LastOrDefault(later => later.Fact is WorkDone && later.Sequence > entry.Sequence) is null)
                yield return new(ledger.State.Report!.Number, work.CompletedOn, Day(work.CompletedOn, today), work.Disturbed, ControlSense.Sentences(work, ledger.Entries.Take(entry.Sequence).Select(before => before.Fact).OfType<CorrectionAgreed>().LastOrDefault()),
                    ledger.Entries.Any(later => later.Sequence > entry.Sequence && later.Fact is CheckFlown { Satisfactory: true }));
    }

    /// <summary>As people say it: "today", "Tuesday", "Tuesday 3 March".</summary>
    internal static string Day(LocalDate day, LocalDate today) => Period.Between(day, today, PeriodUnits.Days).Days switch
    {
        0 => Say.Today,
        1 => Say.Yesterday,
        > 1 and < 7 => day.ToString("dddd", System.Globalization.CultureInfo.InvariantCulture),
        _ => day.ToString("dddd d MMMM", System.Globalization.CultureInfo.InvariantCulture),
    };
}
