using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Microsoft.OpenApi;
using Microsoft.OpenApi.Reader;
using Rigging.Mechanics.Contract;

namespace Rigging.Web.Api;

/// <summary>The OpenAPI document: the request as its reader takes it, the answer as its writer writes it.</summary>
static class ApiDescription
{
    public const string Example = """
        {
          "airframeId": "st2",
          "settings": { "leftEccentricDeg": -15, "rightEccentricDeg": 0 },
          "straightBefore": true,
          "events": ["wing-removed"],
          "testPoints": [
            {
              "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000,
              "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
              "readings": [{ "kind": "bank-after", "seconds": 10, "deg": -6, "method": "stopwatch-horizon" }]
            }
          ],
          "groundChecks": [{ "kind": "damage-inspection", "clear": true }]
        }
        """;

    static readonly JsonSerializerOptions AnswerForm = new(JsonSerializerDefaults.Web)
    {
        TypeInfoResolver = new DefaultJsonTypeInfoResolver(),
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        NumberHandling = JsonNumberHandling.Strict,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false) },
    };

    public static IServiceCollection AddApiDescription(this IServiceCollection services) => services.AddOpenApi("v1", options =>
    {
        options.OpenApiVersion = OpenApiSpecVersion.OpenApi3_1;
        options.AddDocumentTransformer((document, _, _) =>
        {
            Describe(document);
            return Task.CompletedTask;
        });
    });

    static void Describe(OpenApiDocument document)
    {
        document.Info = new()
        {
            Title = "Rigging",
            Version = "v1",
            Description = "Causes of an asymmetry from flight readings and ground checks, and what to move, if anything. Estimates only: approved data and licensed people decide. "
                + "Right wing down, nose right, ball right of centre, right minus left, trailing edge down and incidence up are positive.",
        };
        document.Servers = [new() { Url = "/" }];
        document.Components ??= new();
        document.Components.Schemas = new Dictionary<string, IOpenApiSchema>(StringComparer.Ordinal);
        foreach (var (name, schema) in ReaderSchema.Components) document.Components.Schemas[name] = Parsed(schema, document);
        document.Components.Schemas["AssessmentResponse"] = Parsed(AnswerForm.GetJsonSchemaAsNode(typeof(AssessmentResponse), new() { TreatNullObliviousAsNonNullable = true }), document);
        document.Components.Schemas["Problem"] = Parsed(JsonNode.Parse(ProblemForm)!, document);
        document.RegisterComponents();

        var assess = document.Paths[AssessmentsEndpoint.Path].Operations![HttpMethod.Post];
        assess.Summary = "Assess a complaint";
        assess.Description = "Nothing is stored and nobody is signed in. The same request always gets the same answer. Unknown fields are refused.";
        assess.RequestBody = new OpenApiRequestBody
        {
            Required = true,
            Content = new Dictionary<string, OpenApiMediaType> { ["application/json"] = new OpenApiMediaType { Schema = Ref("AssessmentRequest", document), Example = JsonNode.Parse(Example) } },
        };
        assess.Responses = new()
        {
            ["200"] = Answer("The assessment; every cause of the catalogue, null where it is not assessable.", "application/json", "AssessmentResponse", document),
            ["400"] = Answer("Every faulty field by its JSON path, with the value seen and what was wanted.", "application/problem+json", "Problem", document),
            ["413"] = Answer($"More than {RequestBody.MostBytes} bytes.", "application/problem+json", "Problem", document),
            ["415"] = Answer("Not application/json in UTF-8.", "application/problem+json", "Problem", document),
        };
    }

    static OpenApiResponse Answer(string description, string type, string schema, OpenApiDocument document) => new()
    {
        Description = description,
        Content = new Dictionary<string, OpenApiMediaType> { [type] = new OpenApiMediaType { Schema = Ref(schema, document) } },
    };

    static OpenApiSchemaReference Ref(string name, OpenApiDocument document) => new(name, document);

    static OpenApiSchema Parsed(JsonNode schema, OpenApiDocument document) =>
        OpenApiModelFactory.Parse<OpenApiSchema>(schema.ToJsonString(), OpenApiSpecVersion.OpenApi3_1, document, out _, "json")
        ?? throw new InvalidOperationException("A schema that the document cannot hold.");

    const string ProblemForm = """
        {
          "type": "object",
          "description": "Problem details, RFC 9457",
          "properties": {
            "type": { "type": "string" }, "title": { "type": "string" }, "status": { "type": "integer" }, "detail": { "type": "string" }, "traceId": { "type": "string" },
            "errors": {
              "type": "array",
              "items": {
                "type": "object",
                "properties": { "path": { "type": "string" }, "seen": { "type": ["string", "null"] }, "wanted": { "type": "string" } },
                "required": ["path", "seen", "wanted"]
              }
            }
          },
          "required": ["type", "title", "status", "detail"]
        }
        """;
}
