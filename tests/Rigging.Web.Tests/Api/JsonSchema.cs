using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Rigging.Web.Tests.Api;

/// <summary>As much of JSON schema as the document uses: enough to hold real requests and answers against it.</summary>
sealed class JsonSchema(JsonNode document)
{
    static readonly string[] Known =
    [
        "$ref", "type", "enum", "minimum", "maximum", "minLength", "maxLength", "pattern", "properties", "required", "additionalProperties", "items", "minItems", "maxItems",
        "oneOf", "anyOf", "not", "description", "discriminator", "title", "example", "default",
    ];

    public bool Holds(JsonNode? value, string name) => Fits(value, document["components"]!["schemas"]![name]!);

    bool Fits(JsonNode? value, JsonNode schema)
    {
        if (schema is JsonValue plain) return plain.GetValue<bool>();
        var s = schema.AsObject();
        foreach (var (keyword, _) in s) Assert.Contains(keyword, Known);
        if (s["$ref"] is { } reference) return Fits(value, document["components"]!["schemas"]![reference.GetValue<string>().Split('/')[^1]]!);
        return Type(value, s["type"])
            && (s["enum"] is not JsonArray words || words.Any(word => JsonNode.DeepEquals(word, value)))
            && (s["oneOf"] is not JsonArray one || one.Count(form => Fits(value, form!)) == 1)
            && (s["anyOf"] is not JsonArray any || any.Any(form => Fits(value, form!)))
            && (s["not"] is not { } not || !Fits(value, not))
            && value switch
            {
                JsonObject fields => Fields(fields, s),
                JsonArray list => (s["minItems"]?.GetValue<int>() ?? 0) <= list.Count && list.Count <= (s["maxItems"]?.GetValue<int>() ?? int.MaxValue)
                    && (s["items"] is not { } item || list.All(entry => Fits(entry, item))),
                JsonValue v when v.GetValueKind() == JsonValueKind.Number => (s["minimum"] is not { } low || v.GetValue<double>() >= low.GetValue<double>())
                    && (s["maximum"] is not { } high || v.GetValue<double>() <= high.GetValue<double>()),
                JsonValue v when v.GetValueKind() == JsonValueKind.String => v.GetValue<string>().Length is var length
                    && (s["minLength"]?.GetValue<int>() ?? 0) <= length && length <= (s["maxLength"]?.GetValue<int>() ?? int.MaxValue)
                    && (s["pattern"] is not { } pattern || Regex.IsMatch(v.GetValue<string>(), pattern.GetValue<string>())),
                _ => true,
            };
    }

    bool Fields(JsonObject fields, JsonObject s) =>
        (s["required"] is not JsonArray required || required.All(name => fields.ContainsKey(name!.GetValue<string>())))
        && fields.All(field => s["properties"]?[field.Key] is { } known
            ? Fits(field.Value, known)
            : s["additionalProperties"] is not { } more || Fits(field.Value, more));

    static bool Type(JsonNode? value, JsonNode? type) => type switch
    {
        null => true,
        JsonArray several => several.Any(one => Type(value, one)),
        _ => (type.GetValue<string>(), value?.GetValueKind() ?? JsonValueKind.Null) switch
        {
            ("null", JsonValueKind.Null) or ("object", JsonValueKind.Object) or ("array", JsonValueKind.Array) or ("string", JsonValueKind.String) or ("number", JsonValueKind.Number) => true,
            ("boolean", JsonValueKind.True or JsonValueKind.False) => true,
            ("integer", JsonValueKind.Number) => value!.GetValue<double>() % 1 == 0,
            _ => false,
        },
    };
}
