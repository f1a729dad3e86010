using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Web.Api;

namespace Rigging.Web.Tests.Api;

public sealed class OpenApiTests(ApiSite site) : IClassFixture<ApiSite>
{
    async Task<JsonNode> Document() => JsonNode.Parse(await site.Http.GetStringAsync(new Uri("/openapi/v1.json", UriKind.Relative)))!;

    [Fact]
    public async Task The_document_describes_the_assessment_and_nothing_of_the_pages()
    {
        var document = await Document();

        Assert.Equal([AssessmentsEndpoint.Path], document["paths"]!.AsObject().Select(path => path.Key));
        var post = document["paths"]![AssessmentsEndpoint.Path]!["post"]!;
        Assert.Equal("#/components/schemas/AssessmentRequest", post["requestBody"]!["content"]!["application/json"]!["schema"]!["$ref"]!.GetValue<string>());
        Assert.Equal(["200", "400", "413", "415"], post["responses"]!.AsObject().Select(answer => answer.Key));
    }

    [Fact]
    public async Task The_description_takes_the_contracts_example_and_the_specimen_with_every_field()
    {
        var schema = new JsonSchema(await Document());

        Assert.True(schema.Holds(JsonNode.Parse(ApiSite.Example), "AssessmentRequest"));
        Assert.True(schema.Holds(ReaderSchema.Specimen(), "AssessmentRequest"));
        Assert.Empty(ContractReader.ReadRequest(ReaderSchema.Specimen().ToJsonString()).Faults);
    }

    [Fact]
    public async Task The_documents_own_example_is_answered()
    {
        var example = (await Document())["paths"]![AssessmentsEndpoint.Path]!["post"]!["requestBody"]!["content"]!["application/json"]!["example"]!;

        Assert.Equal(System.Net.HttpStatusCode.OK, (await site.Post(example.ToJsonString())).Status);
    }

    /// <summary>The reader lists the fields it knows when it meets a strange one: the specimen must hold them all, or the description would miss some.</summary>
    [Fact]
    public void The_specimen_holds_every_field_every_kind_of_reading_and_every_kind_of_check()
    {
        // Another name for sdDeg, and the other way to name an airframe: described by hand.
        string[] byHand = ["sd", "airframeId"];
        foreach (var path in Objects(ReaderSchema.Specimen()))
        {
            var specimen = ReaderSchema.Specimen();
            var place = Objects(specimen, specimen).Single(found => found.Path == path.Path).Node;
            place["strange"] = 1;
            if (ContractReader.ReadRequest(specimen.ToJsonString()).Faults.FirstOrDefault(fault => fault.Path.EndsWith(".strange", StringComparison.Ordinal))?.Wanted is not { } wanted
                || !wanted.StartsWith("only the fields ", StringComparison.Ordinal)) continue;
            Assert.Equal([], wanted["only the fields ".Length..].Split(", ").Except(place.Select(field => field.Key)).Except(byHand));
        }
        var kinds = ReaderSchema.Specimen();
        Assert.Equal(Wire.Words<ReadingKind>().Order(), kinds["testPoints"]![0]!["readings"]!.AsArray().Select(reading => reading!["kind"]!.GetValue<string>()).Order());
        Assert.Equal(Wire.Words<GroundCheckKind>().Order(), kinds["groundChecks"]!.AsArray().Select(check => check!["kind"]!.GetValue<string>()).Order());
    }

    static IEnumerable<(string Path, JsonObject Node)> Objects(JsonNode root) => Objects(root, root);

    static IEnumerable<(string Path, JsonObject Node)> Objects(JsonNode root, JsonNode node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(child => Objects(root, child)).Prepend((fields.GetPath(), fields)),
        JsonArray list => list.OfType<JsonNode>().SelectMany(child => Objects(root, child)),
        _ => [],
    };

    static readonly string[] Strange = ["null", "true", "-1", "1e6", "\"x\"", "[]", "{}"];

    /// <summary>One value changed at a time: whoever follows the description is never refused for the form of a field, and what it forbids is refused.</summary>
    [Fact]
    public async Task The_description_and_the_reader_agree_on_every_field()
    {
        var schema = new JsonSchema(await Document());
        var whole = ReaderSchema.Specimen();
        List<string> apart = [];
        foreach (var (path, at) in Nodes(whole).Select((node, at) => (node.GetPath(), at)))
        {
            // An airframe that is null or absent leaves nothing to describe; another kind asks for other fields.
            // A second tank has the form of the first.
            if (path == "$.airframe" || path.EndsWith(".kind", StringComparison.Ordinal) || (path.Contains("[1]", StringComparison.Ordinal) && !path.Contains(".readings", StringComparison.Ordinal) && !path.Contains(".groundChecks", StringComparison.Ordinal))) continue;
            foreach (var value in Strange.Append("(none)"))
            {
                var specimen = whole.DeepClone();
                var node = Nodes(specimen).ElementAt(at);
                if (value != "(none)") node.ReplaceWith(JsonNode.Parse(value));
                else if (node.Parent is JsonObject parent) parent.Remove(node.GetPropertyName());
                else continue;
                var faults = ContractReader.ReadRequest(specimen.ToJsonString()).Faults;
                // What must agree between fields (a tank's capacity, stations in order) is beyond a schema.
                var form = faults.Where(fault => (fault.Path == path || fault.Path.StartsWith(path + ".", StringComparison.Ordinal) || fault.Path.StartsWith(path + "[", StringComparison.Ordinal)) && !BetweenFields(fault)).ToList();
                var described = schema.Holds(specimen, "AssessmentRequest");
                if (described != (form.Count == 0)) apart.Add($"{path} = {value}: {(described ? "described" : "not described")}, reader: {string.Join("; ", faults)}");
            }
        }
        Assert.True(apart.Count == 0, string.Join('\n', apart.Take(20)));
    }

    static bool BetweenFields(Fault fault) => Between.Any(words => fault.Wanted.StartsWith(words, StringComparison.Ordinal));

    static readonly string[] Between =
    [
        "more than", "less than", "at most", "at least", "stations in order", "0: the first", "4.82: the last", "0.5: the last", "only seats", "only tanks", "the litres", "a different name", "a product", "a bank other", "least torque",
    ];

    static IEnumerable<JsonNode> Nodes(JsonNode node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(child => Nodes(child).Prepend(child)),
        JsonArray list => list.OfType<JsonNode>().SelectMany(child => Nodes(child).Prepend(child)),
        _ => [],
    };

    [Fact]
    public async Task Every_answer_and_every_refusal_is_as_described()
    {
        var schema = new JsonSchema(await Document());
        string[] requests =
        [
            ApiSite.Example,
            ApiSite.With(request => request["testPoints"] = new JsonArray()),
            ApiSite.With(request => request["groundChecks"] = new JsonArray()),
            ApiSite.With(request => request["settings"] = null),
            ReaderSchema.Specimen().ToJsonString(),
        ];
        foreach (var request in requests)
        {
            var (status, _, text) = await site.Post(request);
            Assert.True(status == System.Net.HttpStatusCode.OK, text);
            Assert.True(schema.Holds(JsonNode.Parse(text), "AssessmentResponse"), text);
        }
        Assert.True(schema.Holds(JsonNode.Parse((await site.Post("{}")).Text), "Problem"));
        Assert.False(schema.Holds(JsonNode.Parse("{\"airframeId\":\"st2\"}"), "AssessmentResponse"));
    }
}
