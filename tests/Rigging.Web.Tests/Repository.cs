namespace Rigging.Web.Tests;

/// <summary>The files as they lie in the repository: styles and scripts are read, not run.</summary>
static class Repository
{
    public static string Home { get; } = Root();

    public static string Web { get; } = Path.Combine(Home, "src", "Rigging.Web");

    static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Rigging.sln"))) folder = folder.Parent ?? throw new DirectoryNotFoundException("Rigging.sln above " + AppContext.BaseDirectory);
        return folder.FullName;
    }
}
