using System.Diagnostics;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Storage.Cluster;
using Rigging.Storage.Database;
using Rigging.Storage.Seals;
using Rigging.Storage.Tests;
using Rigging.Storage.Tests.Cluster;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Web.Tests.Commands;

/// <summary>The rehearsal: back up, destroy, restore, and everything that stood is there and holds.</summary>
public sealed class BackupTests
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_destroyed_database_comes_back_whole_and_a_forged_one_is_found()
    {
        using var scratch = new ScratchFolder();
        var backups = Directory.CreateTempSubdirectory("rigging-backup-").FullName;
        try
        {
            // Taken from a running database, as every night.
            Ledger ledger;
            string running;
            await using (var cluster = await PrivateCluster.Start(scratch.Data, Ct))
            {
                var school = new SchoolHouse(() => SetUp(cluster));
                await school.InitializeAsync();
                ledger = await school.Walk((school.Mechanic, SchoolHouse.Call), (school.Pilot, new Noted("It did it again.", null)));
                await new Sealer(school, school.Clock).SealNow(Ct);
                running = await Script("backup.sh", "--data", scratch.Data, backups);
                NpgsqlConnection.ClearAllPools();
            }
            var dump = running.Trim();
            Assert.True(File.Exists(dump), running);
            Assert.True(File.Exists(dump + ".seal.txt"));

            // And from one at rest, which the script starts for itself.
            var resting = (await Script("backup.sh", "--data", scratch.Data, backups)).Trim();
            Assert.NotEqual(dump, resting);

            var (refused, why) = await Try("restore.sh", "--data", scratch.Data, dump);
            Assert.Equal(2, refused);
            Assert.Contains("restored into an empty place only", why, StringComparison.Ordinal);

            Directory.Delete(scratch.Data, recursive: true);
            var said = await Script("restore.sh", "--data", scratch.Data, dump);
            Assert.Contains("1 ledgers with 3 entries, 0 broken; 2 seals, 0 broken.", said, StringComparison.Ordinal);

            await using (var restored = await PrivateCluster.Start(scratch.Data, Ct))
            {
                var again = new SchoolHouse(() => SetUp(restored));
                await again.Connect();
                var read = (await again.Ledgers.Load(ledger.Id, Ct))!;
                Assert.Equal(ledger.Entries.Select(EntryCodec.Write), read.Entries.Select(EntryCodec.Write));
                Assert.True((await again.Audit.Verify(Ct)).Holds);
                // It goes on from there, by the application's own role.
                await using var db = again.CreateDbContext();
                Assert.Equal(4, db.People.Count());
                var owner = (string?)await Postgres.Ask(again.Database.Admin, "select relowner::regrole::text from pg_class where relname = 'ledger_entry'");
                Assert.Equal(DatabaseSetup.Owner, owner);
                await Assert.ThrowsAsync<PostgresException>(() => Postgres.Execute(again.Database.App, "delete from seal"));
                NpgsqlConnection.ClearAllPools();
            }

            // A dump that was touched is refused before anything is restored.
            Directory.Delete(scratch.Data, recursive: true);
            await using (var touched = new FileStream(dump, FileMode.Append)) touched.WriteByte(0);
            var (code, words) = await Try("restore.sh", "--data", scratch.Data, dump);
            Assert.Equal(2, code);
            Assert.Contains("its SHA-256 differs", words, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(backups, recursive: true);
        }
    }

    static async Task<TestDatabase> SetUp(PrivateCluster cluster)
    {
        var admin = new NpgsqlConnectionStringBuilder(cluster.AdminConnection) { Database = "rigging" }.ConnectionString;
        await DatabaseSetup.Prepare(admin);
        return new(admin, cluster.ConnectionFor(DatabaseSetup.App, "rigging"));
    }

    static async Task<string> Script(string name, params string[] line)
    {
        var (code, said) = await Try(name, line);
        Assert.True(code == 0, $"{name} ended with {code}: {said}");
        return said;
    }

    static async Task<(int Code, string Said)> Try(string name, params string[] line)
    {
        var start = new ProcessStartInfo("bash", [Path.Combine(Repository.Home, "deploy", name), .. line]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["RIGGING_PROGRAM"] = Path.Combine(AppContext.BaseDirectory, "rigging.dll");
        using var script = Process.Start(start)!;
        var output = script.StandardOutput.ReadToEndAsync(Ct);
        var errors = script.StandardError.ReadToEndAsync(Ct);
        await script.WaitForExitAsync(Ct);
        return (script.ExitCode, await output + await errors);
    }
}
