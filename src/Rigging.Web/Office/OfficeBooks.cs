using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Security;

namespace Rigging.Web.Office;

/// <summary>What the maintenance office keeps: people, tools, aircraft. Every write asks afresh whether the person belongs to the office.</summary>
public sealed partial class OfficeBooks(IDbContextFactory<RiggingDb> databases, Actor actor, Badge badge, Watch watch, IClock clock)
{
    // It stands in addresses, on labels and in lists.
    [GeneratedRegex(@"^[\p{L}\p{Nd}][\p{L}\p{Nd}._-]{0,19}$")]
    private static partial Regex CodeForm();

    internal static BrokenRule NotOffice => new("no-authority", Say.RegistersAreKeptByMaintenanceOffice);

    public async Task<Books> Show(CancellationToken ct = default)
    {
        var (me, mine) = (await actor.Me(), await badge.Mine(ct));
        var all = Badge.ReadsOthers(mine);
        await using var db = await databases.CreateDbContextAsync(ct);
        return new(
            await Registers.School(db, ct),
            await db.People.AsNoTracking().Include(person => person.Authorities).Include(person => person.Certificates).OrderBy(person => person.Number)
                .Select(person => new PersonLine(person.Number, person.Name, all || person.Id == me ? person.Email : null, person.Authorities.Select(held => held.Authority).ToList(),
                    person.Certificates.Where(_ => all || person.Id == me).Select(c => new CertificateLine(c.Kind, c.Number, c.ValidUntil, c.Ratings, c.RecentUntil, c.RecentBecause)).ToList())).ToListAsync(ct),
            await db.Tools.AsNoTracking().OrderBy(tool => tool.Code).Select(tool => new ToolLine(tool.Code, tool.Kind, tool.Description, tool.CalibrationDue)).ToListAsync(ct),
            await db.Aircraft.AsNoTracking().OrderBy(aircraft => aircraft.Registration)
                .Select(aircraft => new AircraftLine(aircraft.Registration, aircraft.Serial, aircraft.AirframeId, aircraft.AirframeVersion, aircraft.TotalTimeTenths / 10.0, aircraft.TotalTimeOn)).ToListAsync(ct),
            await db.Airframes.AsNoTracking().OrderBy(airframe => airframe.Id).ThenBy(airframe => airframe.Version)
                .Select(airframe => new AirframeLine(airframe.Id, airframe.Version, airframe.Name)).ToListAsync(ct),
            clock.GetCurrentInstant(),
            Badge.IsOffice(mine) ? null : NotOffice,
            await db.Installations.AnyAsync(row => row.CockpitPinHash != null, ct));
    }

    /// <summary>The PIN for reports from the cockpit without an account; null takes it away.</summary>
    public async Task<IReadOnlyList<BrokenRule>> SetCockpitPin(string? pin, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        var installation = await db.Installations.SingleAsync(ct);
        installation.CockpitPinHash = pin is null ? null : new PasswordHasher<InstallationRow>().HashPassword(installation, pin);
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.PasswordChanged, null, pin is null ? "cockpit PIN taken away" : "cockpit PIN set", ct: ct);
        return [];
    }

    /// <summary>Whether passwords sign, and let in whoever has a passkey.</summary>
    public async Task<IReadOnlyList<BrokenRule>> DemandPasskeys(bool demanded, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        (await db.Installations.SingleAsync(ct)).PasskeysOnly = demanded;
        await db.SaveChangesAsync(ct);
        await watch.Note(demanded ? SecurityEventKind.PasskeysDemanded : SecurityEventKind.PasswordsAllowed, null, "", ct: ct);
        return [];
    }

    public async Task<IReadOnlyList<BrokenRule>> AddCertificate(int personNumber, CertificateLine certificate, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.People.Include(p => p.Certificates).SingleOrDefaultAsync(p => p.Number == personNumber, ct) is not { } person)
            return [new("person-unknown", Gaps.Fill(Say.ThereIsNoP, personNumber), "person")];
        person.Certificates.Add(certificate.ToRow());
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.CertificateEntered, person.Id, certificate.Kind, ct: ct);
        return [];
    }

    /// <summary>Adds a tool, or brings one of that code up to date: what was left empty stays as it is on file.</summary>
    public async Task<IReadOnlyList<BrokenRule>> KeepTool(KeptTool tool, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        var known = await db.Tools.SingleOrDefaultAsync(row => row.Code == tool.Code, ct);
        if (known is null && !CodeForm().IsMatch(tool.Code))
            return [new("tool-code-form", Gaps.Fill(Say.ToolCodeForm, tool.Code), "code")];
        var (on, due) = (tool.CalibratedOn ?? known?.CalibratedOn, tool.CalibrationDue ?? known?.CalibrationDue);
        if (on > clock.GetCurrentInstant().InZone((await Registers.School(db, ct)).Zone).Date)
            return [new("date-in-future", Gaps.Fill(Say.CalibratedOnHasNotComeYet, $"{on:uuuu-MM-dd}"), "calibratedOn")];
        if (due < on) return [new("dates-out-of-order", Gaps.Fill(Say.CalibrationDueBeforeCalibratedOn, $"{due:uuuu-MM-dd}", $"{on:uuuu-MM-dd}"), "calibrationDue")];
        if (tool.CalibratedOn is { } anew && tool.CalibrationDue is null && known?.CalibratedOn < anew)
            return [new("date-missing", Gaps.Fill(Say.CalibratedAnewDueWhen, $"{anew:uuuu-MM-dd}"), "calibrationDue")];
        if (known is not null)
        {
            (known.Kind, known.Description, known.CalibratedOn, known.CalibrationDue) = (tool.Kind, tool.Description, on, due);
            known.Serial = tool.Serial ?? known.Serial;
            // Two ends of one scale and their unit: they are given together or not at all.
            if (tool.RangeMin is not null || tool.FullScale is not null || tool.RangeUnit is not null)
                (known.RangeMin, known.FullScale, known.RangeUnit) = (tool.RangeMin, tool.FullScale, tool.RangeUnit);
            known.Resolution = tool.Resolution ?? known.Resolution;
            known.LeverLengthIn = tool.LeverLengthIn ?? known.LeverLengthIn;
        }
        else
        {
            db.Tools.Add(new()
            {
                Code = tool.Code,
                Kind = tool.Kind,
                Description = tool.Description,
                Serial = tool.Serial,
                RangeMin = tool.RangeMin,
                FullScale = tool.FullScale,
                RangeUnit = tool.RangeUnit,
                LeverLengthIn = tool.LeverLengthIn,
                Resolution = tool.Resolution,
                CalibratedOn = tool.CalibratedOn,
                CalibrationDue = tool.CalibrationDue,
            });
        }
        await db.SaveChangesAsync(ct);
        return [];
    }

    /// <summary>A new version of an airframe file, exactly as entered. Every fault of the file is named.</summary>
    public async Task<IReadOnlyList<BrokenRule>> AddAirframe(string json, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        var read = ContractReader.ReadAirframe(json);
        if (!read.Ok) return [.. read.Faults.Select(fault => new BrokenRule("airframe-fault", fault.ToString(), "json"))];
        var version = (await db.Airframes.Where(row => row.Id == read.Value.Id).MaxAsync(row => (int?)row.Version, ct) ?? 0) + 1;
        db.Airframes.Add(new() { Id = read.Value.Id, Version = version, Name = read.Value.Name, Json = json, EnteredBy = await actor.Me(), EnteredAt = clock.GetCurrentInstant() });
        await db.SaveChangesAsync(ct);
        return [];
    }

    /// <summary>Adds an aircraft, or moves one of that registration to another airframe version.</summary>
    /// <param name="hoursAgain">Total time read a second time; null when it was not.</param>
    /// <param name="hoursWrongBecause">Why the total time on record is wrong: then this one stands in its place, whichever way it goes. Null when it is not.</param>
    public async Task<IReadOnlyList<BrokenRule>> KeepAircraft(
        string registration, string serial, string airframeId, int version, double totalTimeH, double? hoursAgain, string? hoursWrongBecause, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await db.Airframes.AnyAsync(row => row.Id == airframeId && row.Version == version, ct))
            return [new("airframe-unknown", Say.ChooseAirframeFileThatIsOnRecord, "airframe")];
        var (tenths, today) = ((int)Math.Round(totalTimeH * 10), (await Show(ct)).Today);
        var known = await db.Aircraft.SingleOrDefaultAsync(row => row.Registration == registration, ct);
        var last = known is null ? null : new TotalTimeOnRecord(known.TotalTimeTenths / 10.0, known.TotalTimeOn);
        IReadOnlyList<BrokenRule> wrong = last is not null && hoursWrongBecause is not null
            ? [.. TotalTimeRules.Of(new Squawks.Entries.TotalTimeCorrected(totalTimeH, hoursWrongBecause), last, "totalTimeH", "hoursWrongBecause")]
            : [.. TotalTimeRules.Of(totalTimeH, hoursAgain, today, last, today, "totalTimeH", "totalTimeAgainH")];
        if (wrong.Count > 0) return wrong;
        if (known is null)
            db.Aircraft.Add(new() { Registration = registration, Serial = serial, AirframeId = airframeId, AirframeVersion = version, TotalTimeTenths = tenths, TotalTimeOn = today });
        else
            (known.Serial, known.AirframeId, known.AirframeVersion, known.TotalTimeTenths, known.TotalTimeOn) = (serial, airframeId, version, tenths, today);
        await db.SaveChangesAsync(ct);
        if (last is not null && hoursWrongBecause is not null)
            await watch.Note(SecurityEventKind.TotalTimeCorrected, null, $"{registration}: {Words.Number(last.Hours, 1)} h to {Words.Number(totalTimeH, 1)} h, because: {hoursWrongBecause}", ct: ct);
        return [];
    }

    /// <summary>Chooses the load an aircraft is rigged for: where it is judged from now on.</summary>
    /// <param name="load">One of <see cref="PilotsCurrency.CommonLoads"/> of its airframe, by name; null for the airframe file's own.</param>
    public async Task<IReadOnlyList<BrokenRule>> ChooseLoad(string registration, string? load, string reason, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return [NotOffice];
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Aircraft.SingleOrDefaultAsync(row => row.Registration == registration, ct) is not { } aircraft)
            return [new("aircraft-unknown", Gaps.Fill(Say.ThereIsNoInFleet, registration), "rigged.registration")];
        var file = await db.Airframes.AsNoTracking().SingleAsync(row => row.Id == aircraft.AirframeId && row.Version == aircraft.AirframeVersion, ct);
        var airframe = ContractReader.ReadAirframe(file.Json).Value!;
        var chosen = PilotsCurrency.CommonLoads(airframe, Equivalents.PersonKg).SingleOrDefault(common => common.Name == load)?.Load;
        if (load is not null && chosen is null)
            return [new("not-a-choice", Gaps.Fill(Say.HasNoLoadCalled, airframe.Name, load), "rigged.load")];
        (aircraft.RiggedForLoad, aircraft.RiggedForChosenBy, aircraft.RiggedForReason) = chosen is null
            ? (null, null, null)
            : (JsonSerializer.Serialize(new { chosen.SeatsKg, chosen.FuelL }, JsonSerializerOptions.Web), (PersonId?)await actor.Me(), reason);
        await db.SaveChangesAsync(ct);
        return [];
    }
}

/// <param name="TakesCockpitReports">A PIN is set for reports without an account.</param>
/// <param name="Refused">Why this person may only read; null for the office.</param>
public sealed record Books(
    SchoolOnFile School, IReadOnlyList<PersonLine> People, IReadOnlyList<ToolLine> Tools, IReadOnlyList<AircraftLine> Aircraft, IReadOnlyList<AirframeLine> Airframes,
    Instant Now, BrokenRule? Refused, bool TakesCockpitReports)
{
    public LocalDate Today => Now.InZone(School.Zone).Date;
}

public sealed record PersonLine(int Number, string Name, string? Email, IReadOnlyList<Authority> Authorities, IReadOnlyList<CertificateLine> Certificates);

/// <param name="RecentUntil">Last day up to which recent experience is stated.</param>
/// <param name="RecentBecause">What the statement rests on.</param>
public sealed record CertificateLine(string Kind, string Number, LocalDate? ValidUntil, string? Ratings, LocalDate? RecentUntil, string? RecentBecause)
{
    internal CertificateRow ToRow() => new()
    {
        Kind = Kind,
        Number = Number,
        ValidUntil = ValidUntil,
        Ratings = Ratings,
        RecentUntil = RecentUntil,
        RecentBecause = RecentBecause,
    };
}

public sealed record ToolLine(string Code, string Kind, string Description, LocalDate? CalibrationDue);

public sealed record AircraftLine(string Registration, string Serial, string AirframeId, int Version, double TotalTimeH, LocalDate? TotalTimeOn);

public sealed record AirframeLine(string Id, int Version, string Name);

/// <summary>A tool as the office enters it; the range in the unit of its own scale.</summary>
public sealed record KeptTool
{
    public required string Code { get; init; }
    public required string Kind { get; init; }
    public required string Description { get; init; }
    public string? Serial { get; init; }
    public double? RangeMin { get; init; }
    public double? FullScale { get; init; }
    public string? RangeUnit { get; init; }
    public double? LeverLengthIn { get; init; }

    /// <summary>Smallest step, in the unit of its scale; of an angle in degrees.</summary>
    public double? Resolution { get; init; }
    public LocalDate? CalibratedOn { get; init; }
    public LocalDate? CalibrationDue { get; init; }
}
