using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.TestHost;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

public sealed class FaultPageTests
{
    static async Task<HttpResponseMessage> Ask(string path, HttpContent? post = null)
    {
        var builder = WebApplication.CreateBuilder();
        builder.WebHost.UseTestServer();
        await using var app = builder.Build();
        app.UseAwayPage();
        app.Map("/{**any}", string (HttpContext _) => throw new InvalidOperationException("secret inner words"));
        await app.StartAsync(TestContext.Current.CancellationToken);
        var client = app.GetTestClient();
        var answer = post is null ? await client.GetAsync(path, TestContext.Current.CancellationToken) : await client.PostAsync(path, post, TestContext.Current.CancellationToken);
        await answer.Content.LoadIntoBufferAsync(TestContext.Current.CancellationToken);
        return answer;
    }

    [Fact]
    public async Task A_fault_of_the_program_shows_a_page_that_says_so_and_keeps_what_was_typed()
    {
        var answer = await Ask("/squawks/7/call", new FormUrlEncodedContent([new("reason", "Looked it over."), new("password", "hunter2")]));
        var page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.InternalServerError, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
        Assert.Contains("Something went wrong here", page, StringComparison.Ordinal);
        Assert.Contains("Looked it over.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("hunter2", page, StringComparison.Ordinal);
        Assert.DoesNotContain("secret inner words", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_that_asks_gets_a_problem_it_can_read() =>
        Assert.Equal("application/problem+json", (await Ask("/api/v1/assessments")).Content.Headers.ContentType?.MediaType);
}
