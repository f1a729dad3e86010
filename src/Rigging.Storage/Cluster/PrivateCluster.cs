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
    static readonly TimeSpan LeastWait = TimeSpan.FromSeconds(1), MostWait = TimeSpan.FromSeconds(60);

    // A crash costs nothing here, and a test run starts twice as fast.
    static readonly string[] ThrowAway =
    [
        "-c", "fsync=off", "-c", "synchronous_commit=off", "-c", "full_page_writes=off",
        "-c", "wal_level=minimal", "-c", "max_wal_senders=0", "-c", "autovacuum=off", "-c", "max_connections=200",
    ];

    readonly DataFolder? folder;
    readonly Layout layout;
    readonly CancellationTokenSource stopping = new();
    ServerAccount account;
    Process guard;
    Task? kept;
    bool stopped;

    PrivateCluster(DataFolder? folder, Layout layout, ServerAccount account, Process guard)
    {
        (this.folder, this.layout, this.account, this.guard) = (folder, layout, account, guard);
        PostmasterPid = PidIn(layout.Files);
    }

    /// <summary>Where a server's programs, files and socket are, and what settings it starts with.</summary>
    sealed record Layout(string Bin, string Files, string Socket, string[] Settings);

    public int PostmasterPid { get; private set; }

    /// <summary>The server's superuser: for <c>rigging migrate</c>, never for the running application.</summary>
    public string AdminConnection => AdminBeside(layout.Socket);

    public string ConnectionFor(string user, string database) => Beside(layout.Socket, user, database);

    /// <summary>The socket folder of the server that another program runs on this data folder now; null when nobody does.</summary>
    /// <exception cref="StartRefusedException">Rigging never made this folder, or somebody holds it whose server is not up.</exception>
    public static string? SocketOfRunning(string dataFolder)
    {
        dataFolder = Path.GetFullPath(dataFolder);
        if (!DataFolder.IsOurs(dataFolder))
            throw new StartRefusedException($"--data: '{dataFolder}' holds no data of Rigging; wanted: the folder that 'rigging migrate' made.");
        if (!DataFolder.IsHeld(dataFolder)) return null;
        try
        {
            // postmaster.pid: pid, data folder, start time, port, socket folder, …
            if (File.ReadLines(PidFile(Path.Combine(dataFolder, "cluster"))).ElementAtOrDefault(4) is { Length: > 0 } socket && Directory.Exists(socket)) return socket;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // Said below.
        }
        throw new StartRefusedException($"--data: '{dataFolder}' is in use by another Rigging, whose database cannot be reached from here; try again when it is up, as the user who runs it or as root.");
    }

    /// <summary>The superuser of a server that another program runs.</summary>
    public static string AdminBeside(string socket) => new NpgsqlConnectionStringBuilder(Beside(socket, Superuser, "postgres")) { Pooling = false }.ConnectionString;

    public static string Beside(string socket, string user, string database) =>
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
            var layout = new Layout(bin, folder.Cluster, socket, []);
            return new(folder, layout, account, await Start(layout, account, ct));
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
        var layout = new Layout(bin, files, root, ThrowAway);
        return new(null, layout, account, await Start(layout, account, ct));
    }

    /// <summary>Stops the server in good order.</summary>
    public async ValueTask DisposeAsync()
    {
        if (stopped)
            return;
        stopped = true;
        await stopping.CancelAsync();
        if (kept is not null) await kept;
        stopping.Dispose();
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

    /// <summary>Starts the server again whenever it ends by itself, at growing intervals, and says so.</summary>
    /// <param name="say">Takes a line for whoever runs the program.</param>
    public void KeepUp(Action<string> say) => kept ??= Keep(say);

    async Task Keep(Action<string> say)
    {
        try
        {
            var wait = LeastWait;
            while (true)
            {
                var since = Stopwatch.StartNew();
                await guard.WaitForExitAsync(stopping.Token);
                if (since.Elapsed > MostWait) wait = LeastWait;
                do
                {
                    say($"The private database ended by itself; it is started again in {wait.TotalSeconds:0} s. Its log: {LogOf(layout.Files)}");
                    await Task.Delay(wait, stopping.Token);
                    wait = wait * 2 < MostWait ? wait * 2 : MostWait;
                }
                while (!await StartedAgain(say));
                say("The private database runs again.");
            }
        }
        catch (OperationCanceledException)
        {
            // We end, and the server with us.
        }
    }

    async Task<bool> StartedAgain(Action<string> say)
    {
        try
        {
            await LeftBehind.ClearAway(layout.Files, layout.Bin, account, stopping.Token);
            if (Directory.Exists(layout.Socket)) Directory.Delete(layout.Socket, recursive: true);
            Directory.CreateDirectory(layout.Socket, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            await account.Own(layout.Socket, recursive: false, stopping.Token);
            var again = await Start(layout, account, stopping.Token);
            guard.Dispose();
            (guard, PostmasterPid) = (again, PidIn(layout.Files));
            return true;
        }
        catch (Exception error) when (error is StartRefusedException or IOException or UnauthorizedAccessException)
        {
            say(error.Message);
            return false;
        }
    }

    /// <summary>Gives up root, if this process has it, and goes on as the account that the server runs as. Null when done, else why not.</summary>
    /// <param name="program">The folder this program runs from.</param>
    public async Task<string?> StepDown(string program, CancellationToken ct = default)
    {
        if (await account.StepDown(program, ct) is { } why) return why;
        account = ServerAccount.Oneself;
        return null;
    }

    /// <summary>The same for a program whose database runs elsewhere.</summary>
    public static Task<string?> StepDownAlone(string program, CancellationToken ct = default) => ServerAccount.Nobody.StepDown(program, ct);

    static int PidIn(string files) => int.Parse(File.ReadLines(PidFile(files)).First(), CultureInfo.InvariantCulture);

    static string PidFile(string files) => Path.Combine(files, "postmaster.pid");

    static string LogOf(string files) => Path.Combine(Path.GetDirectoryName(files)!, "postgres.log");

    /// <returns>The process that guards the server.</returns>
    static async Task<Process> Start(Layout layout, ServerAccount account, CancellationToken ct)
    {
        var (bin, files, socket, settings) = layout;
        var log = LogOf(files);
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
                return guard;

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
