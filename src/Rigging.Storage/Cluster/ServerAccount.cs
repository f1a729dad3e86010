using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;

namespace Rigging.Storage.Cluster;

/// <summary>As whom the server runs. PostgreSQL refuses to run as root.</summary>
/// <remarks>
/// An ordinary user: as oneself. Root: as whoever owns the files already, else <c>postgres</c>, else <c>nobody</c>;
/// below a folder those cannot enter (say /root), in a user namespace that shows root as somebody else.
/// </remarks>
sealed class ServerAccount
{
    static readonly string[] Namespace = ["unshare", "--user", "--map-user=1000", "--map-group=1000"];

    readonly string? user;
    readonly string[] prefix;

    ServerAccount(string? user, string[] prefix) => (this.user, this.prefix) = (user, prefix);

    /// <summary>An ordinary user's own account.</summary>
    public static ServerAccount Oneself { get; } = new(null, []);

    // Asked anew each time: this process may have stepped down.
    static bool IsRoot => Libc.EffectiveUser() == 0;

    /// <summary>Gives up root for good and goes on as this account. Null when that is done or there was nothing to give up; else why it could not be.</summary>
    /// <param name="program">The folder this program runs from, which the account must be able to read.</param>
    public async Task<string?> StepDown(string program, CancellationToken ct)
    {
        if (!IsRoot) return null;
        if (user is null) return "no other account can enter the data folder";
        if (await Exit("/bin/sh", ["-c", "cd \"$1\" && ls >/dev/null && test -r rigging.dll", "sh", program], ct) != 0)
            return $"the account '{user}' cannot read the program in '{program}'";
        // /etc/passwd: name, password, user number, group number, …
        var line = File.ReadLines("/etc/passwd").Select(line => line.Split(':')).First(line => line[0] == user);
        var (number, group) = (uint.Parse(line[2], CultureInfo.InvariantCulture), uint.Parse(line[3], CultureInfo.InvariantCulture));
        if (Libc.SetGroups(1, [group]) != 0 || Libc.SetGroup(group) != 0 || Libc.SetUser(number) != 0 || Libc.EffectiveUser() != number || Libc.SetUser(0) == 0)
            throw new StartRefusedException($"This process could not become '{user}' (error {Marshal.GetLastPInvokeError()}).");
        return null;
    }

    /// <summary>The account of a process that needs no data folder of its own.</summary>
    public static ServerAccount Nobody { get; } = new("nobody", []);

    static class Libc
    {
        [DllImport("libc", EntryPoint = "geteuid")]
        public static extern uint EffectiveUser();

        // The C library carries these over to every thread of the process.
        [DllImport("libc", EntryPoint = "setuid", SetLastError = true)]
        public static extern int SetUser(uint user);

        [DllImport("libc", EntryPoint = "setgid", SetLastError = true)]
        public static extern int SetGroup(uint group);

        [DllImport("libc", EntryPoint = "setgroups", SetLastError = true)]
        public static extern int SetGroups(nuint count, uint[] groups);
    }

    /// <summary>The account for a server with its files in <paramref name="cluster"/>, below <paramref name="folder"/>.</summary>
    public static async Task<ServerAccount> For(string folder, string cluster, CancellationToken ct)
    {
        if (!IsRoot)
            return Oneself;

        var known = File.ReadLines("/etc/passwd").Select(line => line.Split(':')[0]).ToHashSet();
        var owner = await Owner(cluster, ct);
        foreach (var user in new[] { owner, "postgres", "nobody" }.Where(name => name is not null and not "root" && known.Contains(name)))
        {
            var account = new ServerAccount(user, []);
            await account.Own(folder, recursive: false, ct);
            if (await account.Exit("/bin/sh", ["-c", "cd \"$1\"", "sh", folder], ct) == 0)
                return account;
        }

        var apart = new ServerAccount(null, Namespace);
        if (await apart.Exit("true", [], ct) != 0)
            throw new StartRefusedException($"--data: PostgreSQL does not run as root, and no other account can enter '{folder}'. "
                + "Wanted: a folder others can enter (say --data /var/lib/rigging), or run as an ordinary user.");
        await apart.Own(folder, recursive: false, ct);
        return apart;
    }

    /// <summary>Gives a folder to this account and shuts everybody else out of it.</summary>
    public async Task Own(string folder, bool recursive, CancellationToken ct)
    {
        if (IsRoot)
        {
            var chown = new ProcessStartInfo("chown", [.. recursive ? ["-R"] : Array.Empty<string>(), (user ?? "root") + ":", folder]);
            if (await Exit(chown, ct) is not 0)
                throw new StartRefusedException($"'{folder}' cannot be given to the account '{user ?? "root"}' (chown failed).");
        }
        File.SetUnixFileMode(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }

    /// <summary>How to start a program as this account, deaf to the server settings of the person's own shell.</summary>
    public ProcessStartInfo Command(string program, IEnumerable<string> arguments)
    {
        string[] line = [.. prefix, program, .. arguments];
        // The folder we stand in may be closed to the account.
        var command = new ProcessStartInfo(line[0], line[1..]) { UseShellExecute = false, WorkingDirectory = "/" };
        if (user is not null)
            command.UserName = user;
        foreach (var name in command.Environment.Keys.Where(name => name.StartsWith("PG", StringComparison.Ordinal)).ToList())
            command.Environment.Remove(name);
        return command;
    }

    /// <summary>Runs a program to its end; a failure throws with what it printed.</summary>
    public async Task Run(string program, IEnumerable<string> arguments, CancellationToken ct)
    {
        var command = Command(program, arguments);
        command.RedirectStandardOutput = command.RedirectStandardError = true;
        using var process = Process.Start(command)!;
        var output = process.StandardOutput.ReadToEndAsync(ct);
        var errors = process.StandardError.ReadToEndAsync(ct);
        await process.WaitForExitAsync(ct);
        if (process.ExitCode != 0)
            throw new StartRefusedException($"{Path.GetFileName(program)} failed ({process.ExitCode}):\n{await output}{await errors}");
    }

    Task<int?> Exit(string program, IEnumerable<string> arguments, CancellationToken ct) => Exit(Command(program, arguments), ct);

    static async Task<int?> Exit(ProcessStartInfo command, CancellationToken ct)
    {
        command.RedirectStandardOutput = command.RedirectStandardError = true;
        try
        {
            using var process = Process.Start(command)!;
            await process.WaitForExitAsync(ct);
            return process.ExitCode;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null; // no such program here
        }
    }

    static async Task<string?> Owner(string folder, CancellationToken ct)
    {
        if (!Directory.Exists(folder))
            return null;
        using var stat = Process.Start(new ProcessStartInfo("stat", ["-c", "%U", folder]) { RedirectStandardOutput = true })!;
        var name = await stat.StandardOutput.ReadToEndAsync(ct);
        await stat.WaitForExitAsync(ct);
        return stat.ExitCode == 0 ? name.Trim() : null;
    }
}
