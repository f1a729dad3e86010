using Npgsql;

namespace Rigging.Storage;

/// <summary>The site's ways to its database: one pool for everything, and connections that are held and watched, which stay out of it.</summary>
/// <remarks>A pool of our own, not one that somebody else keeps by connection string: after the server went away its dead connections are cleared before any page is told.</remarks>
public sealed class DatabaseSources : IAsyncDisposable
{
    public DatabaseSources(string connection)
    {
        Pool = Source(connection);
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
