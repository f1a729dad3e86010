using Npgsql;
using Rigging.Storage;
using Rigging.Storage.Cluster;

namespace Rigging.Web.Commands;

/// <summary>The private database alone, for backup, restore and PostgreSQL's own programs; it stops when the input ends.</summary>
static class Database
{
    public static async Task<int> Run(Options options)
    {
        if (options.Connection is not null)
            throw new StartRefusedException("database: runs the private database; a server named by --connection runs already.");
        await using var cluster = await PrivateCluster.Start(options.Data);
        var admin = new NpgsqlConnectionStringBuilder(cluster.AdminConnection);
        Console.WriteLine($"host={admin.Host} port=5432 user={admin.Username} dbname=rigging");
        while (await Console.In.ReadLineAsync() is not null)
        {
            // Whoever started us says when it is over, by ending our input.
        }
        return 0;
    }
}
