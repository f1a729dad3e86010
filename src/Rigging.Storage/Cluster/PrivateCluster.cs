using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace Rigging.Storage.Cluster;

/// <summary>A PostgreSQL server of our own: started by this program, reached through a socket only this user can open, gone with it.</summary>
/// <remarks>Durable by default: what was acknowledged survives a kill -9 of this program, of the server, of both.</remarks>
public sealed class PrivateCluster : IAsyncDisposable
{
    const string Superuser = "rigging_admin";

    // The longest socket path on Linux is 107 bytes, on macOS 103, file name included.
    const int LongestSocketFolder = 103 - 16;
    static readonly TimeSpan StartLimit = TimeSpan.FromSeconds(60);

    // A crash costs nothing here, and a test run starts twice as fast.
    static readonly string[] ThrowAway =
    [
        "-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off",
        "-c", "wal_level=minimal", "-c", "max_wal_senders=0", "-c", "autovacuum=off", "-c", "max_connections=200",
    ];

    readonly DataFolder? folder;
    readonly Process guard;
    readonly string socket;
    bool stopped;

    PrivateCluster(DataFolder? folder, string files, string socket, Process guard)
    {
        (this.folder, this.socket, this.guard) = (folder, socket, guard);
        PostmasterPid = int.Parse(File.ReadLines(Path.Combine(files, "postmaster.pid")).First(), CultureInfo.InvariantCulture);
    }

    public int PostmasterPid { get; }

    /// <summary>The server's superuser: for <c>rigging migrate</c>, never for the running application.</summary>
    public string AdminConnection => new NpgsqlConnectionStringBuilder(ConnectionFor(Superuser, "postgres")) { Pooling = false }.ConnectionString;

    public string ConnectionFor(string user, string database) =>
        new NpgsqlConnectionStringBuilder { Host = socket, Username = user, Database = database }.ConnectionString;

    /// <summary>Starts the server that keeps its data in <paramref name="dataFolder"/>, making it on the first start.</summary>
    public static async Task<PrivateCluster> Start(string dataFolder, CancellationToken ct = default)
    {
        var bin = PostgresBinaries.Require();
        var folder = DataFolder.Take(dataFolder);
        try
        {
            var account = await ServerAccount.For(folder.Path, folder.Cluster, ct);
            if (File.Exists(Path.Combine(folder.Cluster, "PG_VERSION")))
            {
                // First: the files of a server that is still stopping come and go.
                await LeftBehind.ClearAway(folder.Cluster, bin, account, ct);
                await account.Own(folder.Cluster, recursive: true, ct);
            }
            else
            {
                await Make(folder.Cluster, bin, account, ["--data-checksums"], ct);
            }
            var socket = SocketFolder();
            await account.Own(socket, recursive: false, ct);
            return await Start(bin, account, folder, folder.Cluster, socket, [], ct);
        }
        catch
        {
            folder.Dispose();
            throw;
        }
    }

    /// <summary>Starts an empty server that leaves nothing behind. For tests: a crash loses data.</summary>
    public static async Task<PrivateCluster> StartThrowAway(CancellationToken ct = default)
    {
        var bin = PostgresBinaries.Require();
        var root = SocketFolder();
        var files = Path.Combine(root, "cluster");
        var account = await ServerAccount.For(root, files, ct);
        await Make(files, bin, account, ["--no-sync"], ct);
        return await Start(bin, account, null, files, root, ThrowAway, ct);
    }

    /// <summary>Stops the server in good order.</summary>
    public async ValueTask DisposeAsync()
    {
        if (stopped)
            return;
        stopped = true;
        NpgsqlConnection.ClearAllPools();
        guard.StandardInput.Close();
        await guard.WaitForExitAsync(CancellationToken.None);
        guard.Dispose();
        folder?.Dispose();
    }

    // Made beside its place and moved there when whole: a start cut off half way leaves no half cluster.
    static async Task Make(string files, string bin, ServerAccount account, string[] options, CancellationToken ct)
    {
        var unfinished = files + ".new";
        if (Directory.Exists(unfinished))
            Directory.Delete(unfinished, recursive: true);
        Directory.CreateDirectory(unfinished);
        await account.Own(unfinished, recursive: false, ct);
        await account.Run(Path.Combine(bin, "initdb"),
            ["-D", unfinished, "-U", Superuser, "--auth=trust", "--locale=C.UTF-8", "-E", "UTF8", "--no-instructions", .. options], ct);
        Directory.Move(unfinished, files);
    }

    static async Task<PrivateCluster> Start(
        string bin, ServerAccount account, DataFolder? folder, string files, string socket, string[] settings, CancellationToken ct)
    {
        var log = Path.Combine(Path.GetDirectoryName(files)!, "postgres.log");
        string[] server =
        [
            Path.Combine(bin, "postgres"), "-D", files,
            "-c", "listen_addresses=", "-c", "unix_socket_directories=" + socket, "-c", "unix_socket_permissions=0700", "-c", "port=5432",
            "-c", "logging_collector=off", "-c", "log_destination=stderr", "-c", "log_min_messages=warning", "-c", "log_checkpoints=off", "-c", "log_line_prefix=%m ",
            "-c", "timezone=UTC", "-c", "log_timezone=UTC",
            .. settings,
        ];
        var clock = Stopwatch.StartNew();
        while (true)
        {
            if (File.Exists(log))
                File.Delete(log);
            var guard = Guard(account, server, socket, log);
            if (await Answers(guard, socket, clock, ct))
                return new(folder, files, socket, guard);

            guard.StandardInput.Close();
            await guard.WaitForExitAsync(ct);
            var said = File.Exists(log) ? await File.ReadAllTextAsync(log, ct) : "";
            // Processes of a killed server hold its memory for a moment longer than it lives itself.
            if (!said.Contains("shared memory block", StringComparison.Ordinal) || clock.Elapsed > StartLimit)
                throw new StartRefusedException($"PostgreSQL did not start in {clock.Elapsed.TotalSeconds:0} s; its log '{log}' ends:\n{Tail(said)}");
            Directory.CreateDirectory(socket);
            await account.Own(socket, recursive: false, ct);
            await Task.Delay(200, ct);
        }
    }

    static Process Guard(ServerAccount account, string[] server, string socket, string log)
    {
        using var script = new StreamReader(typeof(PrivateCluster).Assembly.GetManifestResourceStream("guard.sh")!);
        string[] line = ["/bin/sh", "-c", script.ReadToEnd(), "rigging-postgres", socket, log, .. server];
        // A session of its own: Ctrl-C in the terminal reaches us alone, and we stop the server when we are ready.
        if (File.Exists("/usr/bin/setsid"))
            line = ["/usr/bin/setsid", .. line];
        var command = account.Command(line[0], line[1..]);
        command.RedirectStandardInput = true;
        return Process.Start(command)!;
    }

    static async Task<bool> Answers(Process guard, string socket, Stopwatch clock, CancellationToken ct)
    {
        var admin = new NpgsqlConnectionStringBuilder { Host = socket, Username = Superuser, Database = "postgres", Pooling = false, Timeout = 5 };
        while (!guard.HasExited && clock.Elapsed < StartLimit)
        {
            try
            {
                await using var connection = new NpgsqlConnection(admin.ConnectionString);
                await connection.OpenAsync(ct);
                return true;
            }
            catch (NpgsqlException)
            {
                await Task.Delay(20, ct);
            }
        }
        return false;
    }

    static string SocketFolder()
    {
        var folder = Directory.CreateTempSubdirectory("rigging-").FullName;
        if (folder.Length <= LongestSocketFolder)
            return folder;
        Directory.Delete(folder);
        folder = "/tmp/rigging-" + Path.GetRandomFileName();
        Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        return folder;
    }

    static string Tail(string text) => string.Join('\n', text.Trim().Split('\n').TakeLast(12));
}
