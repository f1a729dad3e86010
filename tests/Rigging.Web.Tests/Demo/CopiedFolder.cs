using System.Text.Json.Nodes;

namespace Rigging.Web.Tests.Demo;

/// <summary>A copy of a folder of files to spoil.</summary>
sealed class CopiedFolder : IDisposable
{
    public CopiedFolder(string original)
    {
        foreach (var file in Directory.EnumerateFiles(original, "*", SearchOption.AllDirectories))
        {
            var copy = System.IO.Path.Combine(Path, System.IO.Path.GetRelativePath(original, file));
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    public string Path { get; } = Directory.CreateTempSubdirectory("rigging-seeds-").FullName;

    public void Change(string file, Action<JsonNode> change)
    {
        var path = System.IO.Path.Combine(Path, file);
        var json = JsonNode.Parse(File.ReadAllText(path))!;
        change(json);
        File.WriteAllText(path, json.ToJsonString());
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
