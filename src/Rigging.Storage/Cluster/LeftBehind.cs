using System.Globalization;

namespace Rigging.Storage.Cluster;

/// <summary>What a killed program leaves in a data folder: a server nobody owns, or its pid file and socket folder.</summary>
static class LeftBehind
{
    /// <summary>Stops such a server and removes its traces. The caller holds the folder, so no living program owns the server.</summary>
    public static async Task ClearAway(string cluster, string bin, ServerAccount account, CancellationToken ct)
    {
        var pidFile = Path.Combine(cluster, "postmaster.pid");
        if (!File.Exists(pidFile))
            return;

        // postmaster.pid: pid, data folder, start time, port, socket folder, …
        var lines = await File.ReadAllLinesAsync(pidFile, ct);
        var pid = lines is [var first, ..] && int.TryParse(first, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : 0;
        if (IsServerOf(pid, lines) == true)
            await Stop(pid, lines, cluster, bin, account, ct);
        // The number may by now belong to any other process, which would keep the server from starting.
        if (IsServerOf(pid, lines) == false && Directory.Exists("/proc/self"))
            File.Delete(pidFile);

        if (lines.ElementAtOrDefault(4) is { } socket && Path.GetFileName(socket).StartsWith("rigging-", StringComparison.Ordinal) && Directory.Exists(socket))
            Directory.Delete(socket, recursive: true);
    }

    static async Task Stop(int pid, string[] lines, string cluster, string bin, ServerAccount account, CancellationToken ct)
    {
        try
        {
            await account.Run(Path.Combine(bin, "pg_ctl"), ["stop", "-D", cluster, "-m", "fast", "-w", "-t", "60", "-s"], ct);
        }
        catch (StartRefusedException) when (IsServerOf(pid, lines) == false)
        {
            // It was dying already, and was quicker.
        }
    }

    // A server stands in its data folder, so the pid file seen from there is the one we read. Null: we may not look.
    static bool? IsServerOf(int pid, string[] lines)
    {
        try
        {
            return File.ReadAllLines($"/proc/{pid}/cwd/postmaster.pid").SequenceEqual(lines);
        }
        catch (IOException)
        {
            return false;
        }
        catch (UnauthorizedAccessException)
        {
            return null;
        }
    }
}
