using System.Threading.Channels;
using Microsoft.Extensions.Logging.Abstractions;
using Npgsql;
using Rigging.Squawks.People;
using Rigging.Storage.Ledgers;

namespace Rigging.Storage.Tests.Ledgers;

public sealed class LedgerListenerTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);
    readonly Channel<SquawkId?> heard = Channel.CreateUnbounded<SquawkId?>();
    DatabaseSources sources = null!;
    LedgerListener listener = null!;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await school.InitializeAsync();
        sources = new(new NpgsqlConnectionStringBuilder(school.Database.App) { ApplicationName = "listener" }.ConnectionString);
        listener = new(sources, NullLogger<LedgerListener>.Instance);
        listener.Changed += id => heard.Writer.TryWrite(id);
        await listener.StartAsync(Ct);
        await UntilListening();
    }

    public async ValueTask DisposeAsync()
    {
        await listener.StopAsync(CancellationToken.None);
        listener.Dispose();
        await sources.DisposeAsync();
        await school.DisposeAsync();
    }

    [Fact]
    public async Task Every_append_is_heard()
    {
        var ledger = await school.Walk((school.Mechanic, SchoolHouse.Call));

        Assert.Equal(ledger.Id, await heard.Reader.ReadAsync(Ct));
        Assert.Equal(ledger.Id, await heard.Reader.ReadAsync(Ct));
    }

    [Fact]
    public async Task A_refused_append_is_not_heard()
    {
        var ledger = await school.Walk();
        await school.Ledgers.Append(ledger.Id, ledger.Length, school.Pilot, SchoolHouse.Call, null, Ct);
        var next = await school.Walk();

        Assert.Equal(ledger.Id, await heard.Reader.ReadAsync(Ct));
        Assert.Equal(next.Id, await heard.Reader.ReadAsync(Ct));
    }

    /// <summary>The page that hears of it reads at once: it must not be handed a connection that died with the server.</summary>
    [Fact]
    public async Task Whoever_hears_that_anything_may_have_changed_is_given_a_living_connection()
    {
        await using (var idle = await sources.Pool.OpenConnectionAsync(Ct)) Assert.Equal(System.Data.ConnectionState.Open, idle.State);
        await Postgres.Execute(school.Database.Admin, "select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'listener'");

        Assert.Null(await heard.Reader.ReadAsync(Ct));
        await using var living = sources.Pool.CreateCommand("select 1");
        Assert.Equal(1, await living.ExecuteScalarAsync(Ct));
    }

    [Fact]
    public async Task After_a_lost_connection_anything_may_have_changed()
    {
        await Postgres.Execute(school.Database.Admin, "select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'listener'");

        Assert.Null(await heard.Reader.ReadAsync(Ct));

        var ledger = await school.Walk();
        Assert.Equal(ledger.Id, await heard.Reader.ReadAsync(Ct));
    }

    [Fact]
    public async Task A_page_that_stumbles_does_not_keep_the_news_from_the_others()
    {
        listener.Changed += _ => throw new InvalidOperationException("stumbled");
        listener.Changed += id => heard.Writer.TryWrite(id);

        await school.Walk();

        await heard.Reader.ReadAsync(Ct);
        await heard.Reader.ReadAsync(Ct);
    }

    // Its connection then waits, idle, with LISTEN as the last thing it said.
    async Task UntilListening()
    {
        while ((long)(await Postgres.Ask(school.Database.Admin,
            "select count(*) from pg_stat_activity where application_name = 'listener' and state = 'idle' and query ilike 'listen%'"))! == 0)
            await Task.Yield();
    }
}
