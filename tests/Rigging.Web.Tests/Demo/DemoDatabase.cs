using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Testing;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests;
using Rigging.Web.Demo;

namespace Rigging.Web.Tests.Demo;

/// <summary>An empty database for the invented school, with a way to pull the plug.</summary>
sealed class DemoDatabase(TestDatabase database) : IDbContextFactory<RiggingDb>, IAsyncDisposable
{
    public static readonly Instant LoadDay = Instant.FromUtc(2026, 6, 15, 14, 0);

    int opened;

    public static async Task<DemoDatabase> Create(Postgres postgres) => new(await postgres.Create());

    public FakeClock Clock { get; } = new(LoadDay);

    public LedgerStore Ledgers => new(this, Clock);

    /// <summary>After so many uses of the database the plug is pulled; null: never.</summary>
    public int? PlugPulledAfter { get; set; }

    public int Opened => opened;

    public RiggingDb CreateDbContext() =>
        ++opened > PlugPulledAfter ? throw new PlugPulledException() : RiggingDb.Open(database.App);

    public Task<bool> Load(string? folder = null) => new DemoSchool(this, Clock).Load(folder ?? SeedFolder.Shipped);

    /// <summary>Every entry as it is stored, in order: what two equal loads have in common.</summary>
    public async Task<List<string>> Entries()
    {
        await using var db = CreateDbContext();
        return await db.Entries.OrderBy(entry => entry.SquawkId).ThenBy(entry => entry.Sequence).Select(entry => entry.Sequence + " " + entry.Kind + " " + entry.Payload).ToListAsync();
    }

    public ValueTask DisposeAsync()
    {
        PlugPulledAfter = null;
        return database.Drop();
    }
}

/// <summary>The invented school, loaded once for whoever only looks.</summary>
public sealed class LoadedSchool(Postgres postgres) : IAsyncLifetime
{
    internal DemoDatabase Database { get; private set; } = null!;

    /// <summary>How often a whole load uses the database.</summary>
    public int Uses { get; private set; }

    public async ValueTask InitializeAsync()
    {
        Database = await DemoDatabase.Create(postgres);
        Assert.True(await Database.Load());
        Uses = Database.Opened;
    }

    public ValueTask DisposeAsync() => Database.DisposeAsync();
}

sealed class PlugPulledException() : Exception("The plug was pulled.");
