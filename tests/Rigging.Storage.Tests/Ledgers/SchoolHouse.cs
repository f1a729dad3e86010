using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;

namespace Rigging.Storage.Tests.Ledgers;

/// <summary>An invented school of four in a database of its own, reached as the application reaches it.</summary>
public sealed class SchoolHouse(Func<Task<TestDatabase>> database) : IAsyncLifetime, IDbContextFactory<RiggingDb>
{
    public SchoolHouse(Postgres postgres) : this(postgres.Create) { }

    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 2, 12, 0);

    public TestDatabase Database { get; private set; } = null!;
    public FakeClock Clock { get; } = new(Noon);
    public LedgerStore Ledgers => new(this, Clock);
    public LedgerAudit Audit => new(this);

    public PersonId Pilot { get; } = new(Guid.CreateVersion7());
    public PersonId Office { get; } = new(Guid.CreateVersion7());
    public PersonId Mechanic { get; } = new(Guid.CreateVersion7());
    public PersonId Inspector { get; } = new(Guid.CreateVersion7());
    public AircraftId Aircraft { get; } = new(Guid.CreateVersion7());

    public RiggingDb CreateDbContext() => RiggingDb.Open(Database.App);

    public async Task Connect() => Database = await database();

    public async ValueTask InitializeAsync()
    {
        await Connect();
        await using var db = CreateDbContext();
        db.Installations.Add(new() { SchoolName = "Invented Flying School", RuleSet = "united-states", TimeZone = "America/Chicago", Created = Noon });
        db.People.AddRange(
            Person(Pilot, 1, "Paula Pilot", [Authority.Pilot], "private-pilot"),
            Person(Office, 2, "Olaf Office", [Authority.Office]),
            Person(Mechanic, 3, "Mira Mechanic", [Authority.Mechanic], "mechanic-airframe"),
            Person(Inspector, 4, "Ines Inspector", [Authority.Inspector, Authority.Certifier], "mechanic-airframe"));
        db.Airframes.Add(new()
        {
            Id = "invented-two-seat",
            Version = 1,
            Name = "Invented two-seat",
            EnteredAt = Noon,
            Json = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "airframes", "st2.json")),
        });
        db.Tools.Add(new()
        {
            Code = "TW-1",
            Kind = "torque-wrench",
            Description = "Torque wrench",
            RangeMin = 5,
            FullScale = 25,
            RangeUnit = "N.m",
            CalibrationDue = new(2026, 12, 31),
        });
        await db.SaveChangesAsync();
        db.Aircraft.Add(new()
        {
            Id = Aircraft,
            Registration = "Q-TEST",
            Serial = "7",
            AirframeId = "invented-two-seat",
            AirframeVersion = 1,
            TotalTimeTenths = 12345,
        });
        await db.SaveChangesAsync();
    }

    static PersonRow Person(PersonId id, int number, string name, Authority[] authorities, params string[] certificates) => new()
    {
        Id = id,
        Number = number,
        Name = name,
        Authorities = [.. authorities.Select(authority => new PersonAuthorityRow { Authority = authority })],
        Certificates = [.. certificates.Select(kind => new CertificateRow { Kind = kind, Number = "0000", RecentUntil = new(2030, 1, 1) })],
    };

    public Reported Report(string words = "Rolls left hands off.", params RedFlag[] redFlags) => new(
        Number: 0, Aircraft, words, Side.Left, RollStrength.Slowly, Hands.Released, Feet.BallCentred,
        CasKt: 90, PressureAltitudeFt: null, PowerPercent: null, FlapDeg: null, BallWidths: null, BankDeg: null, BankAfterS: null,
        FuelLeftL: null, FuelRightL: null, FuelMethod.NotKnown, SeatLeftKg: null, SeatRightKg: null,
        SinceWhen: null, LastWork: null, StraightBefore: null, [], redFlags);

    public static Called Call { get; } = new(Squawks.Entries.Call.NoRiggingHold, "Mild; checks at the next opportunity.", null);

    /// <summary>Files a report and goes on with these entries, each by its person.</summary>
    public async Task<Ledger> Walk(params (PersonId Who, Fact Fact)[] steps)
    {
        var ledger = Assert.IsType<Outcome.Appended>(await Ledgers.File(Pilot, Report(), CancellationToken.None)).Ledger;
        foreach (var (who, fact) in steps)
            ledger = Assert.IsType<Outcome.Appended>(await Ledgers.Append(ledger.Id, ledger.Length, who, fact, null, CancellationToken.None)).Ledger;
        return ledger;
    }

    public async ValueTask DisposeAsync() => await Database.Drop();
}
