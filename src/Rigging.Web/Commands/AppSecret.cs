using System.Security.Cryptography;
using System.Text;
using Rigging.Storage.Cluster;

namespace Rigging.Web.Commands;

/// <summary>The application's password on an existing server: from the environment, else made once and kept in the data folder.</summary>
static class AppSecret
{
    public const string Variable = "RIGGING_APP_PASSWORD";
    const string FileName = "rigging_app.password";

    public static string For(string dataFolder)
    {
        if (Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } given)
            return given;
        using var folder = DataFolder.Take(dataFolder);
        var path = Path.Combine(folder.Path, FileName);
        if (!File.Exists(path))
        {
            // Ours alone from its first byte on, and whole or not there.
            var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows())
                options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            using (var file = new FileStream(path + ".new", options))
                file.Write(Encoding.ASCII.GetBytes(RandomNumberGenerator.GetHexString(48, lowercase: true)));
            File.Move(path + ".new", path);
        }
        return File.ReadAllText(path);
    }
}
