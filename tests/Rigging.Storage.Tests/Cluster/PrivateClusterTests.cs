using System.Diagnostics;
using System.Threading.Channels;
using Npgsql;
using Rigging.Storage.Cluster;

namespace Rigging.Storage.Tests.Cluster;

/// <summary>Linux only: they look into /proc for the processes of a server.</summary>
public sealed class PrivateClusterTests(MadeOnce made) : IClassFixture<MadeOnce>, IAsyncLifetime
{
    readonly ScratchFolder scratch = new();

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => await made.CopyTo(scratch.Data);

    public ValueTask DisposeAsync()
    {
        scratch.Dispose();
        return ValueTask.CompletedTask;
    }

    [Fact]
    public async Task Data_is_kept_between_starts()
    {
        await using (var first = await Start())
            await Execute(first, "create table kept (n int); insert into kept values (41)");

        await using var second = await Start();

        Assert.Equal(41, await Ask<int>(second, "select n from kept"));
    }

    [Fact]
    public async Task The_server_is_durable_and_listens_to_no_network()
    {
        await using var cluster = await Start();

        Assert.Equal("on", await Ask<string>(cluster, "show fsync"));
        Assert.Equal("on", await Ask<string>(cluster, "show synchronous_commit"));
        Assert.Equal("on", await Ask<string>(cluster, "show full_page_writes"));
        Assert.Equal("on", await Ask<string>(cluster, "show data_checksums"));
        Assert.Equal("", await Ask<string>(cluster, "show listen_addresses"));
        var socket = await Ask<string>(cluster, "show unix_socket_directories");
        Assert.Equal((UnixFileMode)0b111_000_000, new DirectoryInfo(socket).UnixFileMode);
    }

    [Fact]
    public async Task Stopping_leaves_no_process_and_no_socket_folder()
    {
        var cluster = await Start();
        var socket = await Ask<string>(cluster, "show unix_socket_directories");

        await cluster.DisposeAsync();

        Assert.False(Lives(cluster.PostmasterPid));
        Assert.False(Directory.Exists(socket));
    }

    [Fact]
    public async Task A_throw_away_server_leaves_nothing()
    {
        var cluster = await PrivateCluster.StartThrowAway(Ct);
        var root = await Ask<string>(cluster, "show unix_socket_directories");

        await cluster.DisposeAsync();

        Assert.False(Directory.Exists(root));
    }

    [Fact]
    public async Task After_everything_was_killed_the_next_start_works_and_sweeps()
    {
        var killed = await Start();
        await Execute(killed, "create table kept (n int); insert into kept values (41)");
        var socket = await Ask<string>(killed, "show unix_socket_directories");
        KillAll(GuardOf(killed), killed.PostmasterPid);
        await killed.DisposeAsync();
        Assert.True(Directory.Exists(socket));

        await using var next = await Start();

        Assert.Equal(41, await Ask<int>(next, "select n from kept"));
        Assert.False(Directory.Exists(socket));
    }

    [Fact]
    public async Task A_server_whose_owner_and_guard_were_killed_is_stopped_by_the_next_start()
    {
        var orphaned = await Start();
        KillAll(GuardOf(orphaned));
        await orphaned.DisposeAsync();
        Assert.True(Lives(orphaned.PostmasterPid));

        await using var next = await Start();

        Assert.False(Lives(orphaned.PostmasterPid));
    }

    [Fact]
    public async Task A_pid_file_that_names_some_other_process_does_not_stop_the_start()
    {
        await using (await Start()) { }
        File.WriteAllText(Path.Combine(scratch.Data, "cluster", "postmaster.pid"),
            $"{Environment.ProcessId}\n/elsewhere\n1700000000\n5432\n/nowhere\n\n");

        await using var next = await Start();

        Assert.Equal(1, await Ask<int>(next, "select 1"));
    }

    [Fact]
    public async Task A_first_start_cut_off_half_way_does_not_stop_the_next()
    {
        Directory.Delete(scratch.Data, recursive: true);
        using (DataFolder.Take(scratch.Data))
            File.WriteAllText(Path.Combine(Directory.CreateDirectory(Path.Combine(scratch.Data, "cluster.new")).FullName, "PG_VERSION"), "15");

        await using var next = await Start();

        Assert.Equal(1, await Ask<int>(next, "select 1"));
    }

    [Fact]
    public async Task A_folder_that_the_server_account_cannot_enter_still_works_for_root()
    {
        File.SetUnixFileMode(scratch.Path, (UnixFileMode)0b111_000_000);

        await using var cluster = await Start();

        Assert.Equal(1, await Ask<int>(cluster, "select 1"));
    }

    [Fact]
    public async Task A_killed_server_is_started_again_where_it_was_with_what_it_had_taken_in()
    {
        await using var cluster = await Start();
        await Execute(cluster, "create table kept (n int); insert into kept values (41)");
        var said = Channel.CreateUnbounded<string>();
        cluster.KeepUp(line => said.Writer.TryWrite(line));
        foreach (var times in (int[])[1, 2])
        {
            var killed = cluster.PostmasterPid;
            using (var server = Process.GetProcessById(killed)) server.Kill();

            Assert.Contains($"it is started again in {times} s", await said.Reader.ReadAsync(Ct), StringComparison.Ordinal);
            Assert.Equal("The private database runs again.", await said.Reader.ReadAsync(Ct));
            Assert.Equal(41, await Ask<int>(cluster, "select n from kept"));
            Assert.NotEqual(killed, cluster.PostmasterPid);
        }
    }

    [Fact]
    public async Task Another_program_finds_the_running_server_and_none_in_a_folder_at_rest()
    {
        await using (var cluster = await Start())
            Assert.Equal(await Ask<string>(cluster, "show unix_socket_directories"), PrivateCluster.SocketOfRunning(scratch.Data));

        Assert.Null(PrivateCluster.SocketOfRunning(scratch.Data));
        Assert.Contains("holds no data of Rigging", Assert.Throws<StartRefusedException>(() => PrivateCluster.SocketOfRunning(scratch.Path)).Message, StringComparison.Ordinal);
    }

    Task<PrivateCluster> Start() => PrivateCluster.Start(scratch.Data, Ct);

    static async Task Execute(PrivateCluster cluster, string sql)
    {
        await using var source = NpgsqlDataSource.Create(cluster.AdminConnection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }

    static async Task<T> Ask<T>(PrivateCluster cluster, string sql)
    {
        await using var source = NpgsqlDataSource.Create(cluster.AdminConnection);
        await using var command = source.CreateCommand(sql);
        return (T)(await command.ExecuteScalarAsync(Ct))!;
    }

    // Fields after the name in parentheses: state, parent.
    static int GuardOf(PrivateCluster cluster) =>
        int.Parse(File.ReadAllText($"/proc/{cluster.PostmasterPid}/stat").Split(") ")[1].Split(' ')[1], null);

    /// <summary>kill -9 of the guard, the processes that watch for it, and whatever else is named; not of the server below it.</summary>
    static void KillAll(int guard, params int[] others)
    {
        var watchers = Children(guard).Where(pid => !File.ReadAllText($"/proc/{pid}/comm").StartsWith("postgres", StringComparison.Ordinal)).ToList();
        // Listed before the first is killed: a watcher whose guard is gone ends by itself. The guard first: it tidies up after a server that ends before it.
        foreach (var pid in watchers.SelectMany(Children).Concat(watchers).Prepend(guard).Concat(others).ToList())
        {
            try
            {
                using var process = Process.GetProcessById(pid);
                process.Kill();
            }
            catch (Exception gone) when (gone is ArgumentException or InvalidOperationException)
            {
                // It was quicker.
            }
        }
    }

    static List<int> Children(int pid) =>
        [.. File.ReadAllText($"/proc/{pid}/task/{pid}/children").Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(text => int.Parse(text, null))];

    static bool Lives(int pid) => File.Exists($"/proc/{pid}/comm") && !File.ReadAllText($"/proc/{pid}/stat").Contains(") Z ", StringComparison.Ordinal);
}
