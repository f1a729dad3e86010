using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.School;
using Rigging.Web.Desk;

namespace Rigging.Web.Office;

/// <summary>What the maintenance office keeps: people, tools, aircraft. Every write asks afresh whether the person belongs to the office.</summary>
public sealed class OfficeBooks(IDbContextFactory<RiggingDb> databases, UserManager<User> users, Actor actor, IClock clock)
{
    static readonly BrokenRule NotOffice = new("no-authority", "The registers are kept by the maintenance office. You may read them.");

    public async Task<Books> Show(CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return new(
            await Registers.School(db, ct),
            await db.People.AsNoTracking().Include(person => person.Authorities).Include(person => person.Certificates).OrderBy(person => person.Number)
                .Select(person => new PersonLine(person.Number, person.Name, person.Email, person.Authorities.Select(held => held.Authority).ToList(),
                    person.Certificates.Select(c => new CertificateLine(c.Kind, c.Number, c.ValidUntil)).ToList())).ToListAsync(ct),
            await db.Tools.AsNoTracking().OrderBy(tool => tool.Code).Select(tool => new ToolLine(tool.Code, tool.Kind, tool.Description, tool.CalibrationDue)).ToListAsync(ct),
            await db.Aircraft.AsNoTracking().OrderBy(aircraft => aircraft.Registration)
                .Select(aircraft => new AircraftLine(aircraft.Registration, aircraft.Serial, aircraft.AirframeId, aircraft.AirframeVersion, aircraft.TotalTimeTenths / 10.0)).ToListAsync(ct),
            await db.Airframes.AsNoTracking().OrderBy(airframe => airframe.Id).ThenBy(airframe => airframe.Version)
                .Select(airframe => new AirframeLine(airframe.Id, airframe.Version, airframe.Name)).ToListAsync(ct),
            clock.GetCurrentInstant(),
            await IsOffice(db, ct) ? null : NotOffice);
    }

    public async Task<IReadOnlyList<BrokenRule>> AddPerson(NewPerson person, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await IsOffice(db, ct)) return [NotOffice];
        return await Enter(db, users, person, ct);
    }

    /// <summary>Register and account together, or neither.</summary>
    internal static async Task<IReadOnlyList<BrokenRule>> Enter(RiggingDb db, UserManager<User> users, NewPerson person, CancellationToken ct)
    {
        if (await users.FindByNameAsync(person.Email) is not null)
            return [new("email-taken", $"Somebody else signs in as {person.Email}.", "email")];
        var row = new PersonRow { Number = (await db.People.MaxAsync(p => (int?)p.Number, ct) ?? 0) + 1, Name = person.Name, Email = person.Email };
        row.Authorities.AddRange(person.Authorities.Select(authority => new PersonAuthorityRow { Authority = authority }));
        if (person.Certificate is { } certificate)
            row.Certificates.Add(new() { Kind = certificate.Kind, Number = certificate.Number, ValidUntil = certificate.ValidUntil });
        var account = new User { UserName = person.Email, Email = person.Email, PersonId = row.Id };
        List<BrokenRule> weak = [];
        foreach (var validator in users.PasswordValidators)
            weak.AddRange((await validator.ValidateAsync(users, account, person.Password)).Errors.Select(error => new BrokenRule("password-weak", error.Description, "password")));
        if (weak.Count > 0) return weak;
        db.People.Add(row);
        await db.SaveChangesAsync(ct);
        var made = await users.CreateAsync(account, person.Password);
        if (made.Succeeded) return [];
        db.People.Remove(row);
        await db.SaveChangesAsync(ct);
        return [.. made.Errors.Select(error => new BrokenRule("account-refused", error.Description, "email"))];
    }

    public async Task<IReadOnlyList<BrokenRule>> AddCertificate(int personNumber, CertificateLine certificate, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await IsOffice(db, ct)) return [NotOffice];
        if (await db.People.Include(p => p.Certificates).SingleOrDefaultAsync(p => p.Number == personNumber, ct) is not { } person)
            return [new("person-unknown", $"There is no P-{personNumber}.", "person")];
        person.Certificates.Add(new() { Kind = certificate.Kind, Number = certificate.Number, ValidUntil = certificate.ValidUntil });
        await db.SaveChangesAsync(ct);
        return [];
    }

    /// <summary>Adds a tool, or brings one of that code up to date.</summary>
    public async Task<IReadOnlyList<BrokenRule>> KeepTool(KeptTool tool, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await IsOffice(db, ct)) return [NotOffice];
        if (await db.Tools.SingleOrDefaultAsync(row => row.Code == tool.Code, ct) is { } known)
            (known.Kind, known.Description, known.Serial, known.RangeMin, known.FullScale, known.RangeUnit, known.LeverLengthIn, known.CalibratedOn, known.CalibrationDue) =
                (tool.Kind, tool.Description, tool.Serial, tool.RangeMin, tool.FullScale, tool.RangeUnit, tool.LeverLengthIn, tool.CalibratedOn, tool.CalibrationDue);
        else
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
                CalibratedOn = tool.CalibratedOn,
                CalibrationDue = tool.CalibrationDue,
            });
        await db.SaveChangesAsync(ct);
        return [];
    }

    /// <summary>A new version of an airframe file, exactly as entered. Every fault of the file is named.</summary>
    public async Task<IReadOnlyList<BrokenRule>> AddAirframe(string json, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await IsOffice(db, ct)) return [NotOffice];
        var read = ContractReader.ReadAirframe(json);
        if (!read.Ok) return [.. read.Faults.Select(fault => new BrokenRule("airframe-fault", fault.ToString(), "json"))];
        var version = (await db.Airframes.Where(row => row.Id == read.Value.Id).MaxAsync(row => (int?)row.Version, ct) ?? 0) + 1;
        db.Airframes.Add(new() { Id = read.Value.Id, Version = version, Name = read.Value.Name, Json = json, EnteredBy = await actor.Me(), EnteredAt = clock.GetCurrentInstant() });
        await db.SaveChangesAsync(ct);
        return [];
    }

    /// <summary>Adds an aircraft, or moves one of that registration to another airframe version.</summary>
    public async Task<IReadOnlyList<BrokenRule>> KeepAircraft(string registration, string serial, string airframeId, int version, double totalTimeH, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (!await IsOffice(db, ct)) return [NotOffice];
        if (!await db.Airframes.AnyAsync(row => row.Id == airframeId && row.Version == version, ct))
            return [new("airframe-unknown", "Choose an airframe file that is on record.", "airframe")];
        var tenths = (int)Math.Round(totalTimeH * 10);
        if (await db.Aircraft.SingleOrDefaultAsync(row => row.Registration == registration, ct) is not { } known)
            db.Aircraft.Add(new() { Registration = registration, Serial = serial, AirframeId = airframeId, AirframeVersion = version, TotalTimeTenths = tenths });
        else if (tenths < known.TotalTimeTenths)
            return [new("total-time-backwards", $"Total time {Words.Number(totalTimeH, 1)} h is less than the {Words.Number(known.TotalTimeTenths / 10.0, 1)} h on record.", "totalTimeH")];
        else
            (known.Serial, known.AirframeId, known.AirframeVersion, known.TotalTimeTenths) = (serial, airframeId, version, tenths);
        await db.SaveChangesAsync(ct);
        return [];
    }

    async Task<bool> IsOffice(RiggingDb db, CancellationToken ct)
    {
        var me = await actor.Me();
        return await db.People.AnyAsync(person => person.Id == me && person.Authorities.Any(held => held.Authority == Authority.Office), ct);
    }
}

/// <param name="Refused">Why this person may only read; null for the office.</param>
public sealed record Books(
    SchoolOnFile School, IReadOnlyList<PersonLine> People, IReadOnlyList<ToolLine> Tools, IReadOnlyList<AircraftLine> Aircraft, IReadOnlyList<AirframeLine> Airframes,
    Instant Now, BrokenRule? Refused)
{
    public LocalDate Today => Now.InZone(School.Zone).Date;
}

public sealed record PersonLine(int Number, string Name, string? Email, IReadOnlyList<Authority> Authorities, IReadOnlyList<CertificateLine> Certificates);

public sealed record CertificateLine(string Kind, string Number, LocalDate? ValidUntil);

public sealed record ToolLine(string Code, string Kind, string Description, LocalDate? CalibrationDue);

public sealed record AircraftLine(string Registration, string Serial, string AirframeId, int Version, double TotalTimeH);

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
    public LocalDate? CalibratedOn { get; init; }
    public LocalDate? CalibrationDue { get; init; }
}

/// <param name="Password">The first one; the person is asked to choose another in person, since this program sends none.</param>
public sealed record NewPerson(string Name, string Email, string Password, IReadOnlyList<Authority> Authorities, CertificateLine? Certificate);
