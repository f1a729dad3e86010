using System.Diagnostics;
using Rigging.Storage.Cluster;

namespace Rigging.Storage.Tests.Cluster;

/// <summary>A data folder made and stopped once and copied for each test: making one takes seconds.</summary>
public sealed class MadeOnce : IAsyncLifetime
{
    readonly ScratchFolder scratch = new();

    public async ValueTask InitializeAsync() => await (await PrivateCluster.Start(scratch.Data)).DisposeAsync();

    public async Task CopyTo(string data)
    {
        using var copy = Process.Start("cp", ["-a", scratch.Data, data]);
        await copy.WaitForExitAsync();
        Assert.Equal(0, copy.ExitCode);
    }

    public ValueTask DisposeAsync()
    {
        scratch.Dispose();
        return ValueTask.CompletedTask;
    }
}
