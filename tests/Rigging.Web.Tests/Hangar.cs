using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests;

/// <summary>Tests that work in one hangar.</summary>
[CollectionDefinition(Name)]
public sealed class InTheHangar : ICollectionFixture<Hangar>
{
    public const string Name = "hangar";
}

/// <summary>
/// The site with the invented school of the domain's tests in its database, where a squawk can be brought to any stage by its own entries.
/// One for all tests that share it: every squawk has an aircraft to itself.
/// </summary>
public sealed class Hangar(Postgres postgres) : IAsyncLifetime
{
    static readonly (Person Who, string Name)[] People =
    [
        (School.Pilot, "Paula Pilot"), (School.Student, "Stefan Student"), (School.Office, "Olaf Office"),
        (School.Mechanic, "Mira Mechanic"), (School.Inspector, "Ines Inspector"), (School.Certifier, "Conrad Certifier"),
    ];

    public TestSite Site { get; private set; } = null!;

    LedgerStore Ledgers => Site.Services.GetRequiredService<LedgerStore>();

    public async ValueTask InitializeAsync()
    {
        Site = await TestSite.Start(postgres);
        await Site.AddSchool();
        foreach (var (who, name) in People)
            await Site.AddPerson(name, EmailOf(who), [.. who.Authorities], id: who.Id,
                certificates: who.Certificates.Select(held => new CertificateRow { Id = held.Id, Kind = held.Kind, Number = NumberOf(held), ValidUntil = held.ValidUntil, RecentUntil = held.RecentUntil }));
        await using var db = Site.OpenDatabase();
        db.Airframes.Add(new() { Id = School.Airframe.Id, Version = School.Airframe.Version, Name = "ST-2 (invented)", Json = School.Airframe.Json, EnteredAt = School.Noon });
        foreach (var tool in School.Tools.Values)
            db.Tools.Add(new()
            {
                Id = tool.Id,
                Code = tool.Code,
                Kind = JsonNamingPolicy.KebabCaseLower.ConvertName(tool.Kind.ToString()),
                Description = tool.Description,
                RangeMin = tool.Low,
                FullScale = tool.High,
                RangeUnit = tool.Kind switch { ToolKind.TorqueWrench => "lbf.in", ToolKind.Tensiometer => "N", ToolKind.DialIndicator => "mm", _ => "deg" },
                Resolution = tool.Scale?.Step,
                LeverLengthIn = tool.LeverIn,
                CalibrationDue = tool.CalibrationDue,
            });
        await db.SaveChangesAsync();
    }

    public static string NumberOf(Certificate held) => $"INV-{held.Id.Value.ToString()[^4..]}";

    public static string NameOf(Person who) => People.Single(known => known.Who.Id == who.Id).Name;

    public Task<Browser> As(Person who) => Site.SignedIn(EmailOf(who));

    /// <summary>A squawk with these entries, each made by its own person through the rules; its number.</summary>
    public async Task<int> Squawk(Ledger like)
    {
        var aircraft = new AircraftId(Guid.CreateVersion7());
        await using (var db = Site.OpenDatabase())
        {
            db.Aircraft.Add(new() { Id = aircraft, Registration = $"Q-{aircraft.Value.ToString()[^5..].ToUpperInvariant()}", Serial = "invented-7", AirframeId = School.Airframe.Id, AirframeVersion = School.Airframe.Version, TotalTimeTenths = 12000 });
            await db.SaveChangesAsync();
        }
        Ledger? ledger = null;
        foreach (var entry in like.Entries)
            ledger = await Add(ledger?.Id, entry.By, entry.Fact is Squawks.Entries.Reported report ? report with { Aircraft = aircraft } : entry.Fact);
        return ledger!.State.Report!.Number;
    }

    /// <summary>One more entry by this person; signed, if its kind is.</summary>
    public async Task Add(int number, Person who, Squawks.Entries.Fact fact) => await Add((await Ledger(number)).Id, who.Id, fact);

    public async Task<Ledger> Ledger(int number)
    {
        await using var db = Site.OpenDatabase();
        var id = await db.Squawks.Where(row => row.Number == number).Select(row => row.Id).SingleAsync();
        return (await Ledgers.Load(id, CancellationToken.None))!;
    }

    async Task<Ledger> Add(SquawkId? squawk, PersonId who, Squawks.Entries.Fact fact)
    {
        var outcome = squawk is { } id ? await Append(id, who, fact) : await Ledgers.File(who, (Squawks.Entries.Reported)fact, CancellationToken.None);
        return outcome is Outcome.Appended added ? added.Ledger
            : throw new InvalidOperationException($"{fact.GetType().Name}: {string.Join("; ", (outcome as Outcome.Refused)?.Broken.Select(rule => rule.Sentence) ?? [outcome.ToString()!])}");
    }

    async Task<Outcome> Append(SquawkId id, PersonId who, Squawks.Entries.Fact fact)
    {
        var (ledger, facts) = (await Ledgers.Look(id, who, CancellationToken.None))!.Value;
        var hash = SignedText.Sha256(Rigging.Squawks.Rules.Squawk.TextToSign(ledger, fact, facts));
        return await Ledgers.Append(id, ledger.Length, who, fact, MoveTable.MustBeSigned(fact, ledger.State) ? new("password", facts.Now, hash, hash) : null, CancellationToken.None);
    }

    public static string EmailOf(Person who) => $"{NameOf(who).Split(' ')[0].ToLowerInvariant()}@school.example";

    public ValueTask DisposeAsync() => Site.DisposeAsync();
}
