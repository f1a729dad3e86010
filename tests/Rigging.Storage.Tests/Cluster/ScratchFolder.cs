namespace Rigging.Storage.Tests.Cluster;

/// <summary>A folder for one test, gone afterwards.</summary>
sealed class ScratchFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("rigging-test-").FullName;

    public string Data => System.IO.Path.Combine(Path, "data");

    // Another account has to walk through it to its own folder below.
    public ScratchFolder() => File.SetUnixFileMode(Path, (UnixFileMode)0b111_101_101);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
