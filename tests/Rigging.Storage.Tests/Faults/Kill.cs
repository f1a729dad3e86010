using System.Diagnostics;

namespace Rigging.Storage.Tests.Faults;

static class Kill
{
    /// <summary>SIGKILL to the server and each of its processes: nothing is flushed, nothing says goodbye.</summary>
    /// <remarks>Halted first: a server that dies before its processes lets one of them give up its locks, and another finish what it waited for.</remarks>
    public static void Server(int postmaster)
    {
        using var kill = Process.Start(new ProcessStartInfo("sh", ["-c", $"kill -STOP {postmaster}; pkill -KILL -P {postmaster}; kill -KILL {postmaster}"]) { RedirectStandardError = true })!;
        kill.WaitForExit();
    }
}
