using Npgsql;

namespace Rigging.Storage;

/// <summary>The site's ways to its database: one pool for everything, and connections that are held and watched, which stay out of it.</summary>
/// <remarks>A pool of our own, not one that somebody else keeps by connection string: after the server went away its dead connections are cleared before any page is told.</remarks>
public sealed class DatabaseSources : IAsyncDisposable
{
    /// <summary>At once, where the connection string does not say: two hosts and an administrator fit into a server's usual hundred. What comes on top waits its turn.</summary>
    public const int MostConnections = 40;

    const int DriversDefault = 100;

    public DatabaseSources(string connection)
    {
        var pooled = new NpgsqlConnectionStringBuilder(connection);
        // The driver's own default is the server's whole limit; whoever wants more says so.
        if (pooled.MaxPoolSize == DriversDefault) pooled.MaxPoolSize = MostConnections;
        Pool = Source(pooled.ConnectionString);
        Held = Source(new NpgsqlConnectionStringBuilder(connection) { Pooling = false, KeepAlive = 15, Timeout = 5, CommandTimeout = 5, CancellationTimeout = 1000 }.ConnectionString);
    }

    public NpgsqlDataSource Pool { get; }

    public NpgsqlDataSource Held { get; }

    static NpgsqlDataSource Source(string connection)
    {
        var source = new NpgsqlDataSourceBuilder(connection);
        source.UseNodaTime();
        return source.Build();
    }

    public async ValueTask DisposeAsync()
    {
        await Pool.DisposeAsync();
        await Held.DisposeAsync();
    }
}
