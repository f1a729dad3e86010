using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Squawks.RuleSets;
using Rigging.Storage;

namespace Rigging.Web.Records;

sealed record SquawkLine(int Number, string Registration, Stage Stage, string FlightStatus, int Round, Instant OpenedAt, Instant UpdatedAt, string Words, string? Next);

sealed record AircraftLine(string Registration, string Serial, string Airframe, int AirframeVersion, double TotalTimeH, string FlightStatus);

sealed record ToolLine(string Code, string Kind, string Description, string? Serial, double? RangeMin, double? RangeMax, string? RangeUnit, double? Resolution, LocalDate? CalibratedOn, LocalDate? CalibrationDue);

/// <summary>The school's lists as files that other programs read. Null for whoever does not keep records.</summary>
public sealed class Lists(IDbContextFactory<RiggingDb> databases, RecordsRoom records, IClock clock)
{
    /// <summary>Long enough before the day to send a wrench away.</summary>
    const int RemindedDaysBefore = 14;

    public async Task<string?> Squawks(CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var rows = await db.Squawks.AsNoTracking().OrderBy(row => row.Number).Join(db.Aircraft, row => row.AircraftId, aircraft => aircraft.Id, (row, aircraft) => new { row, aircraft.Registration }).ToListAsync(ct);
        return Csv.Of(rows.Select(at => new SquawkLine(at.row.Number, at.Registration, at.row.Stage, Words.Of(at.row.FlightStatus), at.row.Round, at.row.OpenedAt, at.row.UpdatedAt, at.row.Summary, at.row.NextAct)));
    }

    public async Task<string?> Aircraft(CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var may = (await db.Squawks.AsNoTracking().Select(row => new { row.AircraftId, row.FlightStatus }).ToListAsync(ct)).ToLookup(row => row.AircraftId, row => row.FlightStatus);
        var rows = await db.Aircraft.AsNoTracking().OrderBy(row => row.Registration).ToListAsync(ct);
        return Csv.Of(rows.Select(row => new AircraftLine(row.Registration, row.Serial, row.AirframeId, row.AirframeVersion, row.TotalTimeTenths / 10.0, Words.Of(may[row.Id].DefaultIfEmpty(FlightStatus.MayFly).Max()))));
    }

    public async Task<string?> Tools(CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var rows = await db.Tools.AsNoTracking().OrderBy(tool => tool.Code).ToListAsync(ct);
        return Csv.Of(rows.Select(tool => new ToolLine(tool.Code, tool.Kind, tool.Description, tool.Serial, tool.RangeMin, tool.FullScale, tool.RangeUnit, tool.Resolution, tool.CalibratedOn, tool.CalibrationDue)));
    }

    /// <summary>iCalendar (RFC 5545): the last day of every calibration, certificate and statement of recent experience, as whole days.</summary>
    public async Task<string?> Dates(CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var rules = RuleSet.Shipped[await db.Installations.AsNoTracking().Select(row => row.RuleSet).SingleAsync(ct)];
        var tools = await db.Tools.AsNoTracking().Where(tool => tool.CalibrationDue != null).OrderBy(tool => tool.Code).ToListAsync(ct);
        var people = await db.People.AsNoTracking().Include(person => person.Certificates).Where(person => person.LeftAt == null).OrderBy(person => person.Number).ToListAsync(ct);
        var calendar = new Calendar { ProductId = "-//Rigging//Dates//EN" };
        calendar.Events.AddRange(
        [
            .. tools.Select(tool => Day($"tool-{tool.Id}", tool.CalibrationDue!.Value, $"{tool.Code}: last day of calibration", tool.Description)),
            .. from person in people from held in person.Certificates where held.ValidUntil is not null
               select Day($"certificate-{held.Id}", held.ValidUntil!.Value, $"{person.Name}: certificate ends", $"{rules.WordsFor(held.Kind)}, {held.Number}"),
            .. from person in people from held in person.Certificates where held.RecentUntil is not null
               select Day($"experience-{held.Id}", held.RecentUntil!.Value, $"{person.Name}: last day of recent experience", held.RecentBecause ?? ""),
        ]);
        return new CalendarSerializer().SerializeToString(calendar);
    }

    CalendarEvent Day(string uid, LocalDate day, string summary, string description)
    {
        var kept = new CalendarEvent
        {
            Uid = $"{uid}@rigging",
            DtStamp = new CalDateTime(clock.GetCurrentInstant().ToDateTimeUtc()),
            Start = new CalDateTime(day.Year, day.Month, day.Day),
            Summary = summary,
            Description = description,
            Transparency = TransparencyType.Transparent,
        };
        kept.Alarms.Add(new() { Action = AlarmAction.Display, Description = summary, Trigger = new(Ical.Net.DataTypes.Duration.FromDays(-RemindedDaysBefore)) });
        return kept;
    }
}
