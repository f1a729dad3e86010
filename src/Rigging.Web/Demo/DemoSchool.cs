using System.Globalization;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Storage;
using Rigging.Storage.Fleet;
using Rigging.Storage.School;
using Rigging.Storage.Tools;
using Rigging.Web.SignIn;

namespace Rigging.Web.Demo;

/// <summary>Puts the invented school into an empty database.</summary>
/// <remarks>
/// The accounts come last, in the same transaction as the rest of what is finished last: until they exist nobody can sign in,
/// so a load that was cut off is taken up where it stopped, and one that is complete is never touched again.
/// </remarks>
public sealed class DemoSchool(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    /// <summary>Published in the README like the passwords.</summary>
    public const string DemoPin = "202526";

    // Two hosts that start at once take turns.
    const long LoadLock = 0x5249_4744_454d;

    /// <summary>News this old is no news when somebody first signs in.</summary>
    static readonly Duration OldNews = Duration.FromDays(3);

    /// <returns>Whether there was anything left to load.</returns>
    /// <exception cref="StartRefusedException">The files do not hold together, or a rule refuses what a story tells.</exception>
    public async Task<bool> Load(string folder, CancellationToken ct = default)
    {
        await using var turn = await databases.CreateDbContextAsync(ct);
        await turn.Database.OpenConnectionAsync(ct);
        await turn.Database.ExecuteSqlAsync($"select pg_advisory_lock({LoadLock})", ct);
        try
        {
            if (await turn.Installations.AnyAsync(installation => !installation.Demo, ct) || await turn.Users.AnyAsync(ct)) return false;
            var seeds = SeedFolder.Read(folder);
            var begun = await turn.Installations.AsNoTracking().SingleOrDefaultAsync(ct) ?? await Register(seeds, ct);
            await new StoryTeller(databases, seeds, begun.Created.InZone(DateTimeZoneProviders.Tzdb[seeds.School.TimeZone])).TellAll(ct);
            await Finish(seeds, begun.Created, ct);
            return true;
        }
        finally
        {
            await turn.Database.ExecuteSqlAsync($"select pg_advisory_unlock({LoadLock})", CancellationToken.None);
        }
    }

    async Task<InstallationRow> Register(SeedFolder seeds, CancellationToken ct)
    {
        var now = clock.GetCurrentInstant();
        var today = now.InZone(DateTimeZoneProviders.Tzdb[seeds.School.TimeZone]).Date;
        await using var db = await databases.CreateDbContextAsync(ct);
        var installation = new InstallationRow { SchoolName = seeds.School.Name, RuleSet = seeds.School.RuleSet, TimeZone = seeds.School.TimeZone, Created = now, Demo = true };
        installation.CockpitPinHash = new PasswordHasher<InstallationRow>().HashPassword(installation, DemoPin);
        db.Installations.Add(installation);
        db.People.AddRange(seeds.People.Select((person, index) => Row(person, index + 1, today)));
        db.Tools.AddRange(seeds.Tools.Select(tool => Row(tool, today)));
        db.Airframes.AddRange(seeds.Airframes.Select(airframe => new AirframeRow
        {
            Id = airframe.Key,
            Version = 1,
            Name = ContractReader.ReadAirframe(airframe.Value).Value!.Name,
            Json = airframe.Value,
            EnteredAt = now,
        }));
        db.Aircraft.AddRange(seeds.Fleet.Select(aircraft => Row(aircraft, seeds)));
        await db.SaveChangesAsync(ct);
        return installation;
    }

    async Task Finish(SeedFolder seeds, Instant loaded, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        foreach (var aircraft in await db.Aircraft.ToListAsync(ct))
            (aircraft.TotalTimeTenths, aircraft.TotalTimeOn) = (Tenths(seeds.Fleet.Single(seed => seed.Registration == aircraft.Registration).TotalTimeH), loaded.InZone(DateTimeZoneProviders.Tzdb[seeds.School.TimeZone]).Date);
        foreach (var notice in await db.Notices.Where(notice => notice.ReadAt == null && notice.CreatedAt < loaded - OldNews).ToListAsync(ct))
            notice.ReadAt = notice.CreatedAt;
        db.Users.AddRange(seeds.People.Select(Account));
        await db.SaveChangesAsync(ct);
    }

    static PersonRow Row(PersonSeed person, int number, LocalDate today) => new()
    {
        Id = new(person.Id),
        Number = number,
        Name = person.Name,
        Email = person.Email,
        Authorities = [.. person.Authorities.Select(authority => new PersonAuthorityRow { Authority = authority })],
        Certificates = [.. person.Certificates.Select(certificate => new CertificateRow
        {
            Id = new(certificate.Id),
            Kind = certificate.Kind,
            Number = certificate.Number,
            ValidUntil = certificate.ValidForDays is { } days ? today.PlusDays(days) : null,
            RecentUntil = certificate.RecentForDays is { } recent ? today.PlusDays(recent) : null,
            RecentBecause = certificate.RecentBecause,
        })],
    };

    static ToolRow Row(ToolSeed tool, LocalDate today) => new()
    {
        Id = new(tool.Id),
        Code = tool.Code,
        Kind = tool.Kind,
        Description = tool.Description,
        Serial = tool.Serial,
        RangeMin = tool.RangeMin,
        FullScale = tool.FullScale,
        RangeUnit = tool.RangeUnit,
        LeverLengthIn = tool.LeverLengthIn,
        Resolution = tool.Resolution,
        CalibratedOn = tool.CalibratedDaysAgo is { } ago ? today.PlusDays(-ago) : null,
        CalibrationDue = tool.CalibrationDueInDays is { } due ? today.PlusDays(due) : null,
    };

    // Hours are set last: what a story's mechanic read off months ago is not held against today's.
    static AircraftRow Row(AircraftSeed aircraft, SeedFolder seeds) => new()
    {
        Id = new(aircraft.Id),
        Registration = aircraft.Registration,
        Serial = aircraft.Serial,
        AirframeId = aircraft.Airframe,
        AirframeVersion = 1,
        TotalTimeTenths = 0,
        RiggedForLoad = aircraft.RiggedFor?.Load.ToJsonString(),
        RiggedForChosenBy = aircraft.RiggedFor is { } load ? new(seeds.Person(load.ChosenBy)!.Id) : null,
        RiggedForReason = aircraft.RiggedFor?.Reason,
    };

    static User Account(PersonSeed person)
    {
        var user = new User
        {
            Id = person.Id,
            PersonId = new(person.Id),
            Demo = true,
            UserName = person.Email,
            NormalizedUserName = person.Email.ToUpperInvariant(),
            Email = person.Email,
            NormalizedEmail = person.Email.ToUpperInvariant(),
            LockoutEnabled = true,
            SecurityStamp = Guid.NewGuid().ToString("N", CultureInfo.InvariantCulture),
        };
        user.PasswordHash = new PasswordHasher<User>().HashPassword(user, Doorman.DemoPassword);
        return user;
    }

    static int Tenths(double hours) => (int)Math.Round(hours * 10);
}
