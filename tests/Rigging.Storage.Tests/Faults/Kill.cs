using System.Diagnostics;

namespace Rigging.Storage.Tests.Faults;

static class Kill
{
    /// <summary>SIGKILL to the server and each of its processes: nothing is flushed, nothing says goodbye.</summary>
    public static void Server(int postmaster)
    {
        using var children = Process.Start(new ProcessStartInfo("pkill", ["-KILL", "-P", $"{postmaster}"]))!;
        try
        {
            using var server = Process.GetProcessById(postmaster);
            server.Kill();
        }
        catch (ArgumentException)
        {
            // Dead already.
        }
        children.WaitForExit();
    }
}
