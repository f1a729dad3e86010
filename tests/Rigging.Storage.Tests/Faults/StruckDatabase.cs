using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;

namespace Rigging.Storage.Tests.Faults;

/// <summary>A durable server of our own that can be killed at a chosen point of a transaction, and started again.</summary>
sealed class StruckDatabase(string data) : IDbContextFactory<RiggingDb>, IAsyncDisposable
{
    PrivateCluster cluster = null!;

    /// <summary>Kill the server just before the next commit is sent.</summary>
    public bool BeforeCommit { get; set; }

    /// <summary>Kill it when the commit is acknowledged, and keep the acknowledgement from the client.</summary>
    public bool AfterCommit { get; set; }

    public TestDatabase Database => new(
        new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Database = "rigging" }.ConnectionString,
        new NpgsqlConnectionStringBuilder(cluster.ConnectionFor(DatabaseSetup.App, "rigging")) { MaxPoolSize = 20 }.ConnectionString);

    public async Task Start() => cluster = await PrivateCluster.Start(data);

    public RiggingDb CreateDbContext()
    {
        var options = new DbContextOptionsBuilder<RiggingDb>();
        RiggingDb.Use(options, Database.App);
        options.AddInterceptors(new Strike(this));
        return new(options.Options);
    }

    public void Kill() => Faults.Kill.Server(cluster.PostmasterPid);

    public async Task StartAgain()
    {
        (BeforeCommit, AfterCommit) = (false, false);
        await cluster.DisposeAsync();
        await Start();
    }

    public ValueTask DisposeAsync() => cluster.DisposeAsync();

    sealed class Strike(StruckDatabase database) : DbTransactionInterceptor
    {
        public override ValueTask<InterceptionResult> TransactionCommittingAsync(DbTransaction transaction, TransactionEventData eventData, InterceptionResult result, CancellationToken cancellationToken = default)
        {
            if (database.BeforeCommit) database.Kill();
            return new(result);
        }

        public override Task TransactionCommittedAsync(DbTransaction transaction, TransactionEndEventData eventData, CancellationToken cancellationToken = default)
        {
            if (!database.AfterCommit) return Task.CompletedTask;
            database.Kill();
            throw new IOException("The answer was lost.");
        }
    }
}
