using Npgsql;
using Rigging.Storage;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;

namespace Rigging.Web.Commands;

/// <summary>The database a command works on: a private cluster of our own, or an existing server.</summary>
/// <param name="Admin">For <c>migrate</c>: somebody who may create roles and tables.</param>
/// <param name="App">For everything else: the role that may add to ledgers and never change them.</param>
/// <param name="AppPassword">What <c>migrate</c> gives that role; null leaves it alone.</param>
sealed record DatabaseAtHand(string Admin, string App, string? AppPassword, PrivateCluster? Cluster) : IAsyncDisposable
{
    const string Name = "rigging";

    public static async Task<DatabaseAtHand> Open(Options options, CancellationToken ct = default)
    {
        if (options.Connection is { } connection)
        {
            var app = new NpgsqlConnectionStringBuilder(connection);
            if (app.Username == DatabaseSetup.App)
                return new(connection, connection, null, null);
            var password = AppSecret.Known(options.Data) ?? await FirstSecret(connection, options, ct);
            (app.Username, app.Password) = (DatabaseSetup.App, password);
            return new(connection, app.ConnectionString, password, null);
        }

        // What only reads, or adds as a page would, goes beside the site that runs on this folder; what starts or changes a database has it alone.
        if (options.Command is not ("serve" or "migrate" or "database") && PrivateCluster.SocketOfRunning(options.Data) is { } socket)
            return new(PrivateCluster.AdminBeside(socket), PrivateCluster.Beside(socket, DatabaseSetup.App, Name), null, null);

        var cluster = await PrivateCluster.Start(options.Data, ct);
        var admin = new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Database = Name };
        return new(admin.ConnectionString, cluster.ConnectionFor(DatabaseSetup.App, Name), null, cluster);
    }

    // Only the first migration makes one: the role may serve another installation on this server already, which must keep its password.
    static async Task<string> FirstSecret(string connection, Options options, CancellationToken ct) =>
        options.Command == "migrate" && !await DatabaseSetup.AppExists(connection, ct)
            ? AppSecret.Make(options.Data)
            : throw new StartRefusedException($"The password of '{DatabaseSetup.App}' on this server is not known here. "
                + $"Wanted: the data folder that the first 'rigging migrate' used, or {AppSecret.Variable} in the environment"
                + (options.Command == "migrate" ? "; if it is set, that becomes the password." : ", or --connection as that user."));

    public ValueTask DisposeAsync() => Cluster?.DisposeAsync() ?? ValueTask.CompletedTask;
}
