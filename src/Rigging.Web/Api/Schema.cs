using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Rigging.Mechanics.Contract;

namespace Rigging.Web.Api;

/// <summary>Pieces of JSON schema.</summary>
static partial class Schema
{
    /// <summary>From the words in which the reader says what it wanted.</summary>
    public static JsonObject FromWords(string wanted) => wanted switch
    {
        "true or false" => new() { ["type"] = "boolean" },
        _ when Range().Match(wanted) is { Success: true } range => new()
        {
            ["type"] = range.Groups["whole"].Success ? "integer" : "number",
            ["minimum"] = Number(range.Groups["low"].Value),
            ["maximum"] = Number(range.Groups["high"].Value),
            ["description"] = wanted,
        },
        _ when Length().Match(wanted) is { Success: true } length => Text(int.Parse(length.Groups[1].Value, CultureInfo.InvariantCulture)),
        _ when wanted.StartsWith("one of ", StringComparison.Ordinal) => Words(wanted["one of ".Length..].Split(", ")),
        _ => throw new InvalidOperationException($"The reader wanted “{wanted}”, which is no form known here."),
    };

    /// <summary>One line that says something.</summary>
    public static JsonObject Text(int longest) => new() { ["type"] = "string", ["minLength"] = 1, ["maxLength"] = longest };

    public static JsonObject Words(IEnumerable<string> words) => new() { ["type"] = "string", ["enum"] = new JsonArray([.. words.Select(word => (JsonNode)word)]) };

    public static JsonObject Map(JsonObject value) => new() { ["type"] = "object", ["additionalProperties"] = value };

    public static JsonObject Pair(JsonObject value) => new() { ["type"] = "array", ["minItems"] = 2, ["maxItems"] = 2, ["items"] = value, ["description"] = "least, greatest" };

    public static JsonObject TextOrNumber(JsonObject text, double least, double greatest)
    {
        text["type"] = new JsonArray("string", "number");
        (text["minimum"], text["maximum"]) = (least, greatest);
        return text;
    }

    public static JsonObject Event => new()
    {
        ["type"] = "string",
        ["anyOf"] = new JsonArray(
            new JsonObject { ["enum"] = new JsonArray([.. Wire.Words<EventKind>().Except([Wire.Word(EventKind.CorrectionWithoutEffect)]).Select(word => (JsonNode)word)]) },
            new JsonObject { ["pattern"] = $"^{Wire.Word(EventKind.CorrectionWithoutEffect)}:({string.Join('|', Wire.Words<Cause>())})$" }),
    };

    public static JsonObject OrNull(JsonObject schema)
    {
        if (schema["type"] is not JsonValue type) return new() { ["oneOf"] = new JsonArray(new JsonObject { ["type"] = "null" }, schema) };
        schema["type"] = new JsonArray(type.GetValue<string>(), "null");
        if (schema["enum"] is JsonArray words) words.Add(null);
        return schema;
    }

    static JsonNode Number(string text) => decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^a (?<whole>whole )?number from (?<low>\S+) to (?<high>\S+)")]
    private static partial Regex Range();

    [GeneratedRegex(@"^a text of 1 to (\d+) characters$")]
    private static partial Regex Length();
}
