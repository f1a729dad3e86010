using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Rigging.Storage.Tests;

namespace Rigging.Web.Tests.Api;

/// <summary>The site with one airframe on file in two versions, asked as a program asks it.</summary>
public sealed class ApiSite(Postgres postgres) : IAsyncLifetime
{
    public TestSite Site { get; private set; } = null!;
    public HttpClient Http { get; private set; } = null!;

    public static string Example { get; } = Data("contract/assessment-request.example.json");
    public static string Airframe { get; } = Data("airframes/st2.json");

    static string Data(string name) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", name));

    public async ValueTask InitializeAsync()
    {
        Site = await TestSite.Start(postgres);
        Http = Site.Browser().Http;
        await Site.AddSchool();
        await using var db = Site.OpenDatabase();
        var first = JsonNode.Parse(Airframe)!;
        first["name"] = "an earlier version";
        first["limits"] = null;
        db.Airframes.AddRange(
            new() { Id = "st2", Version = 1, Name = "ST-2", Json = first.ToJsonString(), EnteredAt = TestSite.Noon },
            new() { Id = "st2", Version = 2, Name = "ST-2", Json = Airframe, EnteredAt = TestSite.Noon });
        await db.SaveChangesAsync();
    }

    public async Task<(HttpStatusCode Status, string? Type, string Text)> Post(HttpContent content)
    {
        using var answer = await Http.PostAsync(new Uri("/api/v1/assessments", UriKind.Relative), content);
        return (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType, await answer.Content.ReadAsStringAsync());
    }

    public async Task<(HttpStatusCode Status, string? Type, string Text)> Post(string json)
    {
        using var content = new StringContent(json, Encoding.UTF8, "application/json");
        return await Post(content);
    }

    /// <summary>The example with something changed.</summary>
    public static string With(Action<JsonObject> change)
    {
        var request = JsonNode.Parse(Example)!.AsObject();
        change(request);
        return request.ToJsonString();
    }

    public async ValueTask DisposeAsync() => await Site.DisposeAsync();
}
