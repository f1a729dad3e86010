using System.Text;
using System.Text.Encodings.Web;
using Rigging.Storage;

namespace Rigging.Web.Desk;

/// <summary>What a person gets when the database cannot be reached, or when the program itself failed: the plain truth, and everything they had typed.</summary>
static class AwayPage
{
    /// <summary>Outermost, so that whatever needs the database on the way in is covered too.</summary>
    public static void UseAwayPage(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        try
        {
            await next(http);
        }
        catch (Exception error) when (!http.Response.HasStarted && DatabaseAway.Is(error))
        {
            http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(AwayPage)).LogError("{Method} {Path}: {Reason} {Message}", http.Request.Method, http.Request.Path, DatabaseAway.Why(error), error.Message);
            await Answer(http, StatusCodes.Status503ServiceUnavailable, DatabaseAway.Why(error)!, "Nothing can be shown or recorded until it is back. It is not known here when that will be; whoever runs this installation can tell.");
        }
        catch (Exception error) when (!http.Response.HasStarted && error is not OperationCanceledException)
        {
            var status = error is BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError;
            http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(AwayPage)).LogError(error, "{Method} {Path}, {Trace}", http.Request.Method, http.Request.Path, http.TraceIdentifier);
            await Answer(http, status, status < 500 ? "That request cannot be read" : "Something went wrong here",
                status < 500 ? "It was cut off, too large, or not what this page sends. Nothing was recorded." : $"It is the program’s fault, not yours, and it was logged as {http.TraceIdentifier}; whoever runs this installation can look it up.");
        }
    });

    static async Task Answer(HttpContext http, int status, string why, string words)
    {
        http.Response.Clear();
        http.Response.StatusCode = status;
        if (status == StatusCodes.Status503ServiceUnavailable) http.Response.Headers.RetryAfter = "10";
        http.Response.Headers.CacheControl = "no-store";
        if (http.Request.Path.StartsWithSegments("/api") || http.Request.Path.StartsWithSegments("/drafts"))
        {
            await Results.Problem(why, statusCode: status).ExecuteAsync(http);
            return;
        }
        http.Response.ContentType = "text/html; charset=utf-8";
        await http.Response.WriteAsync(Page(why, words, http.Request.PathBase + http.Request.Path + http.Request.QueryString, HttpMethods.IsPost(http.Request.Method) ? await Sent(http) : null));
    }

    /// <summary>What came with the form, secrets and files aside; empty when it cannot be read.</summary>
    static async Task<List<(string Name, string Value)>> Sent(HttpContext http)
    {
        try
        {
            if (!http.Request.HasFormContentType) return [];
            return [.. (await http.Request.ReadFormAsync(http.RequestAborted)).Where(field => !Secret(field.Key))
                .SelectMany(field => field.Value.Select(value => (field.Key, value ?? "")))];
        }
        catch (Exception error) when (error is IOException or InvalidDataException or BadHttpRequestException)
        {
            return [];
        }
    }

    static string Page(string why, string words, string address, List<(string Name, string Value)>? sent)
    {
        var html = new StringBuilder();
        html.Append("""<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Not now · Rigging</title><link rel="stylesheet" href="/tokens.css"><link rel="stylesheet" href="/plain.css"></head><body><main>""");
        html.Append(null, $"<h1>{E(why)}</h1>");
        if (sent is null)
        {
            html.Append(null, $"""<p>{E(words)}</p><p><a class="button" href="{E(address)}">Try again</a></p>""");
        }
        else
        {
            html.Append(null, $"<p>{E(words)}</p>");
            html.Append("<p>What you sent is kept in this page: leave it open. As far as is known nothing was recorded. Only if the connection broke in the very moment of recording can it have been; sending it again tells, and records nothing twice.</p>");
            html.Append(null, $"""<form method="post" action="{E(address)}">""");
            foreach (var (name, value) in sent) html.Append(null, $"""<textarea name="{E(name)}" hidden>{"\n"}{E(value)}</textarea>""");
            html.Append("""<div class="acts"><button class="primary" type="submit">Send it again</button></div></form>""");
            if (sent.Where(field => Typed(field.Name) && field.Value.Length > 0).ToList() is { Count: > 0 } typed)
            {
                html.Append("<h2>What you typed</h2><dl class=\"facts\">");
                foreach (var (name, value) in typed) html.Append(null, $"<dt>{E(name)}</dt><dd>{E(value)}</dd>");
                html.Append("</dl>");
            }
        }
        return html.Append("</main></body></html>").ToString();
    }

    static bool Secret(string name) => name.Contains("password", StringComparison.OrdinalIgnoreCase) || name.Contains("credential", StringComparison.OrdinalIgnoreCase) || name is "passkey" or "current" or "wanted";

    static bool Typed(string name) => !name.StartsWith('_') && name != "lengthSeen" && !name.EndsWith("Sha256", StringComparison.Ordinal);

    static string E(string text) => HtmlEncoder.Default.Encode(text);
}
