namespace Rigging.Storage.Cluster;

/// <summary>Where this machine keeps the PostgreSQL server programs.</summary>
public static class PostgresBinaries
{
    /// <summary>Names the folder outright; wins over every other place.</summary>
    public const string FolderVariable = "RIGGING_PG_BIN";

    const string DebianRoot = "/usr/lib/postgresql";

    /// <summary>The folder with <c>initdb</c> and <c>postgres</c>, newest version first; null when there is none.</summary>
    public static string? Find()
    {
        var named = Environment.GetEnvironmentVariable(FolderVariable);
        if (!string.IsNullOrEmpty(named))
            return Holds(named)
                ? named
                : throw new StartRefusedException($"{FolderVariable}: '{named}' does not hold the programs initdb and postgres.");

        var path = Environment.GetEnvironmentVariable("PATH") ?? "";
        return DebianFolders().Concat(path.Split(Path.PathSeparator)).FirstOrDefault(Holds);
    }

    /// <summary>As <see cref="Find"/>, with advice instead of null.</summary>
    public static string Require() => OperatingSystem.IsWindows()
        ? throw new StartRefusedException("A private PostgreSQL needs Linux or macOS. Give --connection to use a server.")
        : Find() ?? throw new StartRefusedException(
        "PostgreSQL is not on this machine. Install the package 'postgresql' (Debian: apt-get install postgresql), "
        + $"or set {FolderVariable} to the folder that holds initdb and postgres, or give --connection to use another server.");

    static IEnumerable<string> DebianFolders() =>
        Directory.Exists(DebianRoot)
            ? Directory.GetDirectories(DebianRoot)
                .OrderByDescending(folder => int.TryParse(Path.GetFileName(folder), out var version) ? version : 0)
                .Select(folder => Path.Combine(folder, "bin"))
            : [];

    // initdb looks for postgres beside itself, so a lone link to one of them on the PATH is not enough.
    static bool Holds(string folder) =>
        folder.Length > 0 && File.Exists(Path.Combine(folder, "initdb")) && File.Exists(Path.Combine(folder, "postgres"));
}
