using System.Diagnostics;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests.Cluster;

namespace Rigging.Storage.Tests.Ledgers;

/// <summary>Kills processes, not the machine's power: that the server waits for the disk is shown by its settings, in the cluster's tests.</summary>
public sealed class DurabilityTests
{
    [Fact]
    public async Task A_killed_server_keeps_every_acknowledged_entry()
    {
        using var scratch = new ScratchFolder();
        await using var killed = await PrivateCluster.Start(scratch.Data, TestContext.Current.CancellationToken);
        var school = new SchoolHouse(() => SetUp(killed));
        await school.InitializeAsync();
        var ledger = await school.Walk();
        for (var remark = 2; remark <= 20; remark++)
            ledger = Assert.IsType<Outcome.Appended>(
                await school.Ledgers.Append(ledger.Id, ledger.Length, school.Pilot, new Noted($"Remark {remark}", null), null, CancellationToken.None)).Ledger;

        using (var server = Process.GetProcessById(killed.PostmasterPid))
            server.Kill();
        await killed.DisposeAsync();

        await using var next = await PrivateCluster.Start(scratch.Data, TestContext.Current.CancellationToken);
        var again = new SchoolHouse(() => SetUp(next));
        await again.Connect();
        Assert.Equal(20, (await again.Ledgers.Load(ledger.Id, CancellationToken.None))!.Length);
        Assert.Empty((await again.Audit.Verify(CancellationToken.None)).Faults);
        NpgsqlConnection.ClearAllPools();
    }

    static async Task<TestDatabase> SetUp(PrivateCluster cluster)
    {
        var admin = new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Database = "rigging" }.ConnectionString;
        await DatabaseSetup.Prepare(admin);
        return new(admin, cluster.ConnectionFor(DatabaseSetup.App, "rigging"));
    }
}
