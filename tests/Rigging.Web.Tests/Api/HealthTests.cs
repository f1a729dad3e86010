using System.Net;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.Logging;
using Rigging.Storage.Tests;
using Rigging.Web.Commands;

namespace Rigging.Web.Tests.Api;

public sealed class HealthTests(Postgres postgres)
{
    [Fact]
    public async Task A_host_whose_database_answers_is_live_and_ready()
    {
        var database = await postgres.Create();

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), await Ask(database.App));
        await database.Drop();
    }

    [Fact]
    public async Task A_host_without_its_database_is_live_and_not_ready() =>
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable), await Ask("Host=/nowhere-at-all;Username=nobody;Database=none;Timeout=2"));

    static async Task<(HttpStatusCode Live, HttpStatusCode Ready)> Ask(string connection)
    {
        var options = Options.Read(["serve", "--port", "0", "--no-demo"]);
        var builder = Host.Builder(options);
        builder.WebHost.UseTestServer();
        builder.Logging.ClearProviders();
        await using var app = Host.Build(builder, options, connection);
        await app.StartAsync(TestContext.Current.CancellationToken);
        using var http = app.GetTestServer().CreateClient();
        return (await Status(http, "/health/live"), await Status(http, "/health/ready"));
    }

    static async Task<HttpStatusCode> Status(HttpClient http, string path)
    {
        using var answer = await http.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }
}
