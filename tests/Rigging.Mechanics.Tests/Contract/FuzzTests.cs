using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public sealed class FuzzTests
{
    static readonly string[] Strange =
    [
        "null", "true", "-1", "1e308", "-0", "1e-400", "123456789012345678901234567890", "\"\"", "\"left\"", "\"\\u0000\"", "[]", "{}", "[[[[]]]]",
        "{\"a\":{\"b\":[1,null]}}", "\"release-all\"", "0.5",
    ];

    static readonly Gen<char> Characters = Gen.OneOf(Gen.Char, Gen.Char["{}[],:\"\\0123456789.eE+- ntfu'/"]);

    static readonly Gen<(int At, int Removed, string Added)[]> Scratches =
        Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 3], Gen.String[Characters, 0, 3]).Array[1, 4];

    static readonly Gen<(int Node, string Json)[]> Swaps = Gen.Select(Gen.Int[0, 100_000], Gen.OneOf(Strange)).Array[1, 6];

    [Fact]
    public void A_scratched_text_never_throws_and_is_either_read_or_faulted() => Scratches.Sample(scratches =>
    {
        foreach (var example in new[] { Examples.Request, Examples.Airframe })
        {
            var text = scratches.Aggregate(example, (json, scratch) =>
            {
                var at = scratch.At % (json.Length + 1);
                return json.Remove(at, Math.Min(scratch.Removed, json.Length - at)).Insert(at, scratch.Added);
            });
            ReadOrFaulted(text);
        }
    }, iter: 1000);

    [Fact]
    public void A_form_with_strange_values_never_throws_and_is_either_read_or_faulted() => Swaps.Sample(swaps =>
    {
        var whole = Examples.Edited(Examples.Edited(Examples.Request, "airframeId", null), "airframe", Examples.Airframe);
        foreach (var example in new[] { Examples.Request, Examples.Airframe, whole })
            ReadOrFaulted(swaps.Aggregate(example, (json, swap) => Swapped(json, swap.Node, swap.Json)));
    }, iter: 400);

    static void ReadOrFaulted(string text)
    {
        var request = ContractReader.ReadRequest(text);
        var airframe = ContractReader.ReadAirframe(text);
        Assert.Equal(request.Ok, request.Faults.Count == 0);
        Assert.Equal(airframe.Ok, airframe.Faults.Count == 0);
        // What was read is whole: it can be written, and read again.
        if (request.Ok)
            Assert.True(ContractReader.ReadRequest(ContractWriter.Write(request.Value)).Ok);
        if (airframe.Ok)
            Assert.True(ContractReader.ReadAirframe(ContractWriter.Write(airframe.Value)).Ok);
    }

    static string Swapped(string json, int which, string value)
    {
        var root = JsonNode.Parse(json);
        JsonNode?[] nodes = [.. Below(root)];
        if (nodes.Length == 0)
            return value;
        var chosen = nodes[which % nodes.Length]!;
        chosen.ReplaceWith(JsonNode.Parse(value));
        return root!.ToJsonString(new JsonSerializerOptions());
    }

    static IEnumerable<JsonNode> Below(JsonNode? node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(child => Below(child).Prepend(child)),
        JsonArray items => items.OfType<JsonNode>().SelectMany(child => Below(child).Prepend(child)),
        _ => [],
    };
}
