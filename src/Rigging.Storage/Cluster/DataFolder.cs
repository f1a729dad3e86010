namespace Rigging.Storage.Cluster;

/// <summary>The folder a private cluster lives in: empty or ours, and held by one program at a time.</summary>
/// <remarks>The marker file is also the lock; the kernel lets go of it however the program ends.</remarks>
public sealed class DataFolder : IDisposable
{
    public const string MarkerName = "rigging-data";
    const string MarkerText = "Rigging data, form 1. This folder belongs to Rigging: do not edit or add files.\n";

    readonly FileStream marker;

    DataFolder(string path, FileStream marker) => (Path, this.marker) = (path, marker);

    /// <summary>Full path.</summary>
    public string Path { get; }

    /// <summary>Where the server keeps its files.</summary>
    public string Cluster => System.IO.Path.Combine(Path, "cluster");

    /// <summary>Takes the folder, making it when it does not exist.</summary>
    /// <exception cref="StartRefusedException">The folder holds other files, is in use, or cannot be written.</exception>
    public static DataFolder Take(string path)
    {
        path = System.IO.Path.GetFullPath(path);
        try
        {
            if (File.Exists(path))
                throw Refused(path, "is a file; wanted: a folder");
            Directory.CreateDirectory(path);

            var markerPath = System.IO.Path.Combine(path, MarkerName);
            if (!File.Exists(markerPath) && Directory.EnumerateFileSystemEntries(path).Order(StringComparer.Ordinal).FirstOrDefault() is { } stranger)
                throw Refused(path, $"holds other files (for one '{System.IO.Path.GetFileName(stranger)}'); "
                    + $"wanted: an empty folder, or one that Rigging made (it holds a file '{MarkerName}')");

            var folder = new DataFolder(path, Lock(path, markerPath));
            folder.Mark();
            return folder;
        }
        catch (UnauthorizedAccessException)
        {
            throw Refused(path, $"cannot be written by '{Environment.UserName}'; wanted: a folder of this user, or run as the user who made it");
        }
    }

    public void Dispose() => marker.Dispose();

    /// <summary>Whether Rigging made this folder.</summary>
    public static bool IsOurs(string path) => File.Exists(System.IO.Path.Combine(path, MarkerName));

    /// <summary>Whether another program holds this folder now.</summary>
    public static bool IsHeld(string path)
    {
        try
        {
            using var marker = new FileStream(System.IO.Path.Combine(path, MarkerName), FileMode.Open, FileAccess.Read, FileShare.None);
            return false;
        }
        catch (UnauthorizedAccessException)
        {
            throw Refused(path, $"cannot be read by '{Environment.UserName}'; wanted: a folder of this user, or run as the user who made it");
        }
        catch (IOException)
        {
            return true;
        }
    }

    static FileStream Lock(string path, string markerPath)
    {
        try
        {
            return new FileStream(markerPath, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException)
        {
            throw Refused(path, "is in use by another Rigging; stop that one, or choose another folder");
        }
    }

    void Mark()
    {
        var buffer = new byte[MarkerText.Length];
        var length = marker.ReadAtLeast(buffer, buffer.Length, throwOnEndOfStream: false);
        var found = System.Text.Encoding.ASCII.GetString(buffer, 0, length);
        // An empty marker: an earlier start was cut off between making and writing it.
        if (found.Length > 0 && found != MarkerText)
        {
            Dispose();
            throw Refused(Path, $"holds a file '{MarkerName}' that this version does not know; wanted: '{MarkerText.Trim()}'");
        }
        marker.SetLength(0);
        marker.Write(System.Text.Encoding.ASCII.GetBytes(MarkerText));
        marker.Flush(flushToDisk: true);
    }

    static StartRefusedException Refused(string path, string what) => new($"--data: '{path}' {what}.");
}
