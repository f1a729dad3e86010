using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json.Nodes;
using CsCheck;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Mechanics.Contract;
using Rigging.Web.Security;

namespace Rigging.Web.Tests.Api;

public sealed class AssessmentsTests(ApiSite site) : IClassFixture<ApiSite>
{
    [Fact]
    public async Task The_contracts_example_gets_the_contracts_answer_in_full()
    {
        var (status, type, text) = await site.Post(ApiSite.Example);

        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal("application/json", type);
        var answer = JsonNode.Parse(text)!.AsObject();
        Assert.Equal(
            ["airframeId", "rollTendency", "loadContribution", "causes", "indistinguishable", "nextTests", "prerequisites", "correction", "refusals", "cautions"],
            answer.Select(field => field.Key));
        Assert.Equal("st2", answer["airframeId"]!.GetValue<string>());
        Assert.Equal(Wire.Words<Cause>(), answer["causes"]!.AsArray().Select(cause => cause!["cause"]!.GetValue<string>()).Order(StringComparer.Ordinal).OrderBy(word => Wire.Words<Cause>().ToList().IndexOf(word)));
        Assert.True(answer["rollTendency"]!["mean"]!.GetValue<double>() < 0);
    }

    [Fact]
    public async Task The_newest_version_on_file_answers_for_an_airframe_id()
    {
        var byId = await site.Post(ApiSite.Example);
        var written = await site.Post(ApiSite.With(request =>
        {
            request.Remove("airframeId");
            request["airframe"] = JsonNode.Parse(ApiSite.Airframe);
        }));

        Assert.Equal(written.Text, byId.Text);
    }

    [Fact]
    public async Task The_same_request_gets_the_same_answer_and_nothing_is_stored()
    {
        var before = await Rows();
        var once = await site.Post(ApiSite.Example);
        var again = await site.Post(ApiSite.Example);

        Assert.Equal(once.Text, again.Text);
        Assert.Equal(before, await Rows());
    }

    async Task<object?> Rows() => await Rigging.Storage.Tests.Postgres.Ask(site.Site.Connection,
        "select (select count(*) from ledger_entry) || ' ' || (select count(*) from squawk) || ' ' || (select count(*) from draft) || ' ' || (select count(*) from airframe)");

    [Fact]
    public async Task Every_faulty_field_is_named_with_what_was_seen_and_what_was_wanted()
    {
        var (status, type, text) = await site.Post(ApiSite.With(request =>
        {
            request["testPoints"]![0]!["casKt"] = 900;
            request["testPoints"]![1]!["readings"]![0]!["deg"] = 400;
            request["groundChecks"]![0]!["kind"] = "flap-diference";
            request["colour"] = "red";
        }));

        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Equal("application/problem+json", type);
        var problem = JsonNode.Parse(text)!;
        Assert.Equal(400, problem["status"]!.GetValue<int>());
        var errors = problem["errors"]!.AsArray().ToDictionary(error => error!["path"]!.GetValue<string>(), error => error!);
        Assert.Equal(["$.colour", "$.groundChecks[0].kind", "$.testPoints[0].casKt", "$.testPoints[1].readings[0].deg"], errors.Keys.Order(StringComparer.Ordinal));
        Assert.Equal("900", errors["$.testPoints[0].casKt"]["seen"]!.GetValue<string>());
        Assert.Equal("a number from 20 to 400 kt", errors["$.testPoints[0].casKt"]["wanted"]!.GetValue<string>());
        Assert.Contains("flap-difference", errors["$.groundChecks[0].kind"]["wanted"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{\"airframeId\":", "$")]
    [InlineData("", "$")]
    [InlineData("[]", "$")]
    [InlineData("{\"airframeId\":\"st2\",\"testPoints\":[],\"testPoints\":[]}", "$.testPoints")]
    [InlineData("{\"airframeId\":\"none-such\",\"testPoints\":[]}", "$.airframeId")]
    [InlineData("{\"testPoints\":[]}", "$.airframeId")]
    [InlineData("{\"airframeId\":\"\\uD800\",\"testPoints\":[]}", "$.airframeId")]
    public async Task What_is_wrong_is_said_at_its_place(string json, string path)
    {
        var (status, type, text) = await site.Post(json);

        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Equal("application/problem+json", type);
        Assert.Contains(path, JsonNode.Parse(text)!["errors"]!.AsArray().Select(error => error!["path"]!.GetValue<string>()));
    }

    [Fact]
    public async Task A_load_that_does_not_fit_the_airframe_on_file_is_named()
    {
        var (status, _, text) = await site.Post(ApiSite.With(request => request["testPoints"]![0]!["load"]!["fuelL"]!["left"] = 43));

        Assert.Equal(HttpStatusCode.BadRequest, status);
        var error = Assert.Single(JsonNode.Parse(text)!["errors"]!.AsArray())!;
        Assert.Equal("$.testPoints[0].load.fuelL.left", error["path"]!.GetValue<string>());
        Assert.Equal("at most the tank's 42 L", error["wanted"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("text/plain")]
    [InlineData("application/xml")]
    [InlineData("application/json; charset=utf-16")]
    [InlineData(null)]
    public async Task Anything_but_json_in_utf_8_is_refused_as_such(string? type)
    {
        using var content = new ByteArrayContent(Encoding.UTF8.GetBytes(ApiSite.Example));
        content.Headers.ContentType = type is null ? null : MediaTypeHeaderValue.Parse(type);

        var answer = await site.Post(content);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.Status);
        Assert.Equal("application/problem+json", answer.Type);
    }

    [Fact]
    public async Task Bytes_that_are_no_utf_8_are_refused()
    {
        using var content = new ByteArrayContent([0x7B, 0xFF, 0x7D]);
        content.Headers.ContentType = new("application/json");

        Assert.Equal(HttpStatusCode.BadRequest, (await site.Post(content)).Status);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_body_too_large_is_refused_whether_or_not_it_says_its_length(bool saysLength)
    {
        var bytes = new byte[Web.Api.RequestBody.MostBytes + 1];
        Array.Fill(bytes, (byte)' ');
        using var content = saysLength ? (HttpContent)new ByteArrayContent(bytes) : new StreamContent(new Unsized(bytes));
        content.Headers.ContentType = new("application/json");

        var answer = await site.Post(content);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.Status);
        Assert.Equal("application/problem+json", answer.Type);
    }

    sealed class Unsized(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;
    }

    [Theory]
    [InlineData("GET", "/api/v1/assessments", HttpStatusCode.MethodNotAllowed)]
    [InlineData("DELETE", "/api/v1/assessments", HttpStatusCode.MethodNotAllowed)]
    [InlineData("POST", "/api/v1/nothing", HttpStatusCode.NotFound)]
    [InlineData("GET", "/api", HttpStatusCode.NotFound)]
    public async Task Other_addresses_and_methods_are_refused_in_the_same_form(string method, string path, HttpStatusCode status)
    {
        using var request = new HttpRequestMessage(new(method), path);
        using var answer = await site.Http.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("application/problem+json", answer.Content.Headers.ContentType?.MediaType);
    }

    static readonly string[] Strange =
    [
        "null", "true", "0", "-1", "1e308", "-0.0", "1e-300", "0.0001", "123456789012345678901234567890", "\"\"", "\"left\"", "\"\\u0000\"", "[]", "{}", "{\"a\":[1,null]}", "\"none\"", "45", "-45", "90",
    ];

    /// <summary>Any request, however it was bent: an answer or a refusal that names its reasons, never a failure of the host.</summary>
    [Fact]
    public async Task A_bent_request_is_answered_or_refused_and_never_breaks_the_host()
    {
        var written = ApiSite.With(request =>
        {
            request.Remove("airframeId");
            request["airframe"] = JsonNode.Parse(ApiSite.Airframe);
        });
        var (answered, refused) = (0, 0);
        await Gen.Select(Gen.Bool, Gen.Select(Gen.Int[0, 100_000], Gen.OneOf(Strange.Select(Gen.Const).ToArray())).Array[1, 3]).SampleAsync(async bent =>
        {
            var (inline, swaps) = bent;
            var json = swaps.Aggregate(inline ? written : ApiSite.Example, (text, swap) => Swapped(text, swap.Item1, swap.Item2));
            var (status, type, text) = await site.Post(json);
            if (status == HttpStatusCode.OK)
                Interlocked.Increment(ref answered);
            else if (status == HttpStatusCode.BadRequest && type == "application/problem+json" && JsonNode.Parse(text)!["errors"]!.AsArray().Count > 0)
                Interlocked.Increment(ref refused);
            else
                Assert.Fail($"{(int)status} for {json}: {text}");
        }, iter: 400, threads: 2);
        Assert.True(answered > 10 && refused > 10, $"{answered} answered, {refused} refused: the bending bends nothing, or everything.");
    }

    static string Swapped(string json, int which, string value)
    {
        var root = JsonNode.Parse(json)!;
        var nodes = Under(root).ToArray();
        nodes[which % nodes.Length].ReplaceWith(JsonNode.Parse(value));
        return root.ToJsonString();
    }

    static IEnumerable<JsonNode> Under(JsonNode node) => node switch
    {
        JsonObject fields => fields.Select(field => field.Value).OfType<JsonNode>().SelectMany(child => Under(child).Prepend(child)),
        JsonArray list => list.OfType<JsonNode>().SelectMany(child => Under(child).Prepend(child)),
        _ => [],
    };

    [Fact]
    public async Task More_readings_than_a_year_of_flying_brings_are_refused_by_their_number()
    {
        var (status, _, text) = await site.Post(ApiSite.With(request =>
        {
            var point = request["testPoints"]![0]!.AsObject();
            var reading = point["readings"]![0]!;
            point["readings"] = new JsonArray([.. Enumerable.Range(0, 100).Select(_ => reading.DeepClone())]);
            request["testPoints"] = new JsonArray([.. Enumerable.Range(0, 21).Select(_ => point.DeepClone())]);
        }));

        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.Contains("2100 readings in all", text, StringComparison.Ordinal);
        Assert.Contains("at most 2000", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_every_turn_is_taken_and_enough_wait_the_next_is_told_to_come_back()
    {
        var turns = site.Site.Services.GetRequiredService<AssessmentTurns>();
        var taken = Enumerable.Range(0, Limits.AssessmentsAtOnce + Limits.AssessmentsWaiting).Select(_ => turns.Take(TestContext.Current.CancellationToken).AsTask()).ToList();
        try
        {
            using var content = new StringContent(ApiSite.Example, Encoding.UTF8, "application/json");
            using var answer = await site.Http.PostAsync(new Uri(Path, UriKind.Relative), content, TestContext.Current.CancellationToken);

            Assert.Equal(HttpStatusCode.TooManyRequests, answer.StatusCode);
            Assert.True(answer.Headers.RetryAfter!.Delta > TimeSpan.Zero);
            Assert.Contains("urn:rigging:problem:busy", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        }
        finally
        {
            foreach (var turn in taken) (await turn).Dispose();
        }
        Assert.Equal(HttpStatusCode.OK, (await site.Post(ApiSite.Example)).Status);
    }

    const string Path = "/api/v1/assessments";
}
