using System.Security.Cryptography;
using System.Text;
using Rigging.Storage.Cluster;

namespace Rigging.Web.Commands;

/// <summary>The application's password on an existing server: from the environment, else made once and kept in the data folder.</summary>
static class AppSecret
{
    public const string Variable = "RIGGING_APP_PASSWORD";
    const string FileName = "rigging_app.password";

    /// <summary>Null when nobody has told or made one yet.</summary>
    public static string? Known(string dataFolder)
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
            return given;
        var path = Path.Combine(dataFolder, FileName);
        return File.Exists(path) ? File.ReadAllText(path) : null;
    }

    public static string Make(string dataFolder)
    {
        using var folder = DataFolder.Take(dataFolder);
        var path = Path.Combine(folder.Path, FileName);
        // Ours alone from its first byte on, and whole or not there.
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        var password = RandomNumberGenerator.GetHexString(48, lowercase: true);
        using (var file = new FileStream(path + ".new", options))
            file.Write(Encoding.ASCII.GetBytes(password));
        File.Move(path + ".new", path);
        return password;
    }
}
