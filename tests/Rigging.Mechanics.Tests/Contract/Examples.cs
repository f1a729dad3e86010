using System.Text.Json;
using System.Text.Json.Nodes;

namespace Rigging.Mechanics.Tests.Contract;

/// <summary>The contract's own example files, and edits of them.</summary>
static class Examples
{
    public static readonly string Airframe = Text("airframe.example.json");
    public static readonly string Request = Text("assessment-request.example.json");
    public static readonly string Response = Text("assessment-response.example.json");

    /// <summary>The example with one value replaced; <paramref name="path"/> as <c>wing.stations[1].chordM</c>; a null text removes it.</summary>
    public static string Edited(string example, string path, string? json)
    {
        var root = JsonNode.Parse(example)!;
        var keys = path.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        var parent = keys[..^1].Aggregate(root, (node, key) => key[0] == '[' ? node[int.Parse(key[1..^1], null)]! : node[key]!);
        var value = json is null ? null : JsonNode.Parse(json);
        if (keys[^1][0] == '[')
            parent.AsArray()[int.Parse(keys[^1][1..^1], null)] = value;
        else if (json is null)
            parent.AsObject().Remove(keys[^1]);
        else
            parent[keys[^1]] = value;
        return root.ToJsonString();
    }

    /// <summary>The same fields with the same values, whatever their order and however a number is written.</summary>
    public static bool SameJson(string one, string other)
    {
        using var first = JsonDocument.Parse(one);
        using var second = JsonDocument.Parse(other);
        return JsonElement.DeepEquals(first.RootElement, second.RootElement);
    }

    static string Text(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "contract", file));
}
