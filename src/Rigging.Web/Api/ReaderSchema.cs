using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Rigging.Mechanics.Contract;

namespace Rigging.Web.Api;

/// <summary>
/// The JSON schema of a request, asked from its reader: each field of a complete specimen is taken away, set to null and
/// filled wrongly in turn, and what the reader then says it wanted is the schema. So the description cannot drift from what is enforced.
/// </summary>
sealed partial class ReaderSchema
{
    /// <summary>Forms worth a name of their own, by JSON path without indices.</summary>
    static readonly Dictionary<string, string> Named = new()
    {
        ["$"] = "AssessmentRequest",
        ["$.airframe"] = "Airframe",
        ["$.airframe.reference.load"] = "Load",
        ["$.testPoints[]"] = "TestPoint",
        ["$.testPoints[].load"] = "Load",
        ["$.testPoints[].readings[]"] = "Reading",
        ["$.groundChecks[]"] = "GroundCheck",
    };

    /// <summary>Objects whose field names are the writer's own.</summary>
    static readonly string[] Maps = [".seatsKg", ".fuelL", ".baggageKg"];

    readonly JsonNode specimen;
    readonly Dictionary<string, JsonObject> components = [];

    ReaderSchema(JsonNode specimen) => this.specimen = specimen;

    /// <summary>By name; they refer to each other under <c>#/components/schemas/</c>.</summary>
    public static IReadOnlyDictionary<string, JsonObject> Components { get; } = Ask();

    /// <summary>A request with every field, every kind of reading and every kind of ground check.</summary>
    public static JsonNode Specimen()
    {
        using var stream = typeof(ReaderSchema).Assembly.GetManifestResourceStream("complete-request.json")!;
        return JsonNode.Parse(stream)!;
    }

    static Dictionary<string, JsonObject> Ask()
    {
        var schema = new ReaderSchema(Specimen());
        schema.SchemaOf(schema.specimen);
        return schema.components;
    }

    JsonObject SchemaOf(JsonNode node)
    {
        var place = Index().Replace(node.GetPath(), "[]");
        var schema = Form(node, place);
        if (Named.GetValueOrDefault(place) is not { } name) return schema;
        components[name] = schema;
        return RefTo(name);
    }

    JsonObject Form(JsonNode node, string place) => (place, node) switch
    {
        ("$", JsonObject request) => Either(Fields(request), "airframeId", "airframe"),
        ("$.settings.leftEccentricDeg" or "$.settings.rightEccentricDeg", JsonObject both) => Shapes(SchemaOf(both["front"]!), Fields(both)),
        ("$.trims", JsonObject trims) => Shapes(Schema.Words([Trims.None]), Fields(trims)),
        ("$.trims.roll" or "$.trims.yaw", _) => Schema.TextOrNumber(Leaf(node), -1000, 1000),
        ("$.events[]", _) => Schema.Event,
        ("$.airframe.eccentric.fastener.torqueInLb", JsonArray pair) => Schema.Pair(Leaf(pair[0]!)),
        (_, JsonObject amounts) when Maps.Any(map => place.EndsWith(map, StringComparison.Ordinal)) => Schema.Map(Leaf(amounts.First().Value!)),
        (_, JsonObject fields) => Fields(fields),
        (_, JsonArray list) => List(list, place),
        _ => Leaf(node),
    };

    JsonObject Fields(JsonObject fields)
    {
        JsonObject properties = [];
        JsonArray required = [];
        foreach (var (name, value) in fields)
        {
            var schema = name == "kind" ? Schema.Words([value!.GetValue<string>()]) : SchemaOf(value!);
            // One of the two airframes must be there; which one is said beside.
            if (value!.GetPath() != "$.airframe")
            {
                if (Wanted(value, twin => twin.Parent!.AsObject().Remove(name)) is not null) required.Add(name);
                else if (Wanted(value, twin => twin.Parent!.AsObject()[name] = null) is null) schema = Schema.OrNull(schema);
            }
            properties[name] = schema;
        }
        JsonObject whole = new() { ["type"] = "object", ["properties"] = properties, ["required"] = required, ["additionalProperties"] = false };
        if (fields == specimen) properties["airframeId"] = Schema.Text(60);
        if (properties["sdDeg"] is { } sdDeg)
        {
            // Either name is understood, not both.
            properties["sd"] = sdDeg.DeepClone();
            whole["not"] = new JsonObject { ["required"] = new JsonArray("sd", "sdDeg") };
        }
        if (fields["kind"]?.GetValue<string>() == Wire.Word(ReadingKind.Rolls))
        {
            required.Remove(required.Single(name => name!.GetValue<string>() == "strength"));
            properties["strength"] = Schema.OrNull(properties["strength"]!.DeepClone().AsObject());
            var strong = new JsonObject { ["properties"] = new JsonObject { ["strength"] = Schema.Words(Wire.Words<RollStrength>()) }, ["required"] = new JsonArray("strength") };
            whole["anyOf"] = new JsonArray(new JsonObject { ["properties"] = new JsonObject { ["side"] = Schema.Words([Wire.Word(RollSide.None)]) } }, strong);
        }
        return whole;
    }

    JsonObject List(JsonArray list, string place)
    {
        var wanted = ListWanted().Match(Wanted(list, twin => twin.ReplaceWith(0))!);
        return new()
        {
            ["type"] = "array",
            ["minItems"] = int.Parse(wanted.Groups[1].Value, CultureInfo.InvariantCulture),
            ["maxItems"] = int.Parse(wanted.Groups[2].Value, CultureInfo.InvariantCulture),
            ["items"] = list[0] is JsonObject first && first.ContainsKey("kind") ? Kinds(list, Named[place + "[]"]) : SchemaOf(list[0]!),
        };
    }

    /// <summary>One form for each kind, told apart by the word in <c>kind</c>.</summary>
    JsonObject Kinds(JsonArray list, string family)
    {
        JsonArray forms = [];
        JsonObject mapping = [];
        foreach (var item in list)
        {
            var kind = item!["kind"]!.GetValue<string>();
            var name = $"{family}-{kind}";
            components[name] = Fields(item.AsObject());
            forms.Add(RefTo(name));
            mapping[kind] = $"#/components/schemas/{name}";
        }
        components[family] = new() { ["oneOf"] = forms, ["discriminator"] = new JsonObject { ["propertyName"] = "kind", ["mapping"] = mapping } };
        return RefTo(family);
    }

    JsonObject Leaf(JsonNode node) => Schema.FromWords(Wanted(node, twin => twin.ReplaceWith(new JsonObject())) ?? throw new InvalidOperationException($"{node.GetPath()} takes anything."));

    /// <summary>What the reader wants at a node's path when the specimen is changed there; null when the change suits it.</summary>
    string? Wanted(JsonNode node, Action<JsonNode> change)
    {
        var copy = specimen.DeepClone();
        change(Twin(node, copy));
        var path = node.GetPath();
        return ContractReader.ReadRequest(copy.ToJsonString()).Faults.FirstOrDefault(fault => fault.Path == path)?.Wanted;
    }

    static JsonNode Twin(JsonNode node, JsonNode copy) => node.Parent switch
    {
        JsonObject parent => Twin(parent, copy)[node.GetPropertyName()]!,
        JsonArray parent => Twin(parent, copy)[node.GetElementIndex()]!,
        _ => copy,
    };

    static JsonObject Either(JsonObject schema, string one, string other)
    {
        schema["oneOf"] = new JsonArray(new JsonObject { ["required"] = new JsonArray(one) }, new JsonObject { ["required"] = new JsonArray(other) });
        return schema;
    }

    static JsonObject Shapes(JsonObject one, JsonObject other) => new() { ["oneOf"] = new JsonArray(one, other) };

    static JsonObject RefTo(string name) => new() { ["$ref"] = $"#/components/schemas/{name}" };

    [GeneratedRegex(@"\[\d+\]")]
    private static partial Regex Index();

    [GeneratedRegex(@"^a list of (\d+) to (\d+)$")]
    private static partial Regex ListWanted();
}
