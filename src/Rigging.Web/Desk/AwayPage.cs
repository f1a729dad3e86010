using System.Text;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.StaticAssets;
using Rigging.Storage;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>What a person gets when the database cannot be reached, or when the program itself failed: the plain truth, and everything they had typed.</summary>
static class AwayPage
{
    /// <summary>Outermost, so that whatever needs the database on the way in is covered too.</summary>
    public static void UseAwayPage(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        try
        {
            await (NeedsDatabase(http) ? WhileItAnswers(http, next) : next(http));
        }
        catch (Exception error) when (!http.Response.HasStarted && DatabaseAway.Is(error))
        {
            http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(AwayPage)).LogError("{Method} {Path}: {Reason} {Message}", http.Request.Method, http.Request.Path, DatabaseAway.Why(error), error.Message);
            // Told at once, so that whoever asks next is not handed another dead connection.
            await http.RequestServices.GetRequiredService<DatabaseWatch>().Ask(AskAgain);
            await Answer(http, StatusCodes.Status503ServiceUnavailable, DatabaseAway.Why(error)!, Say.NothingCanBeShownOrRecorded);
        }
        catch (Exception error) when (!http.Response.HasStarted && error is not OperationCanceledException)
        {
            var status = error is BadHttpRequestException bad ? bad.StatusCode : StatusCodes.Status500InternalServerError;
            http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(AwayPage)).LogError(error, "{Method} {Path}, {Trace}", http.Request.Method, http.Request.Path, http.TraceIdentifier);
            await Answer(http, status, status < 500 ? Say.ThatRequestCannotBeRead : Say.SomethingWentWrongHere,
                status < 500 ? Say.ItWasCutOffTooLarge : Gaps.Fill(Say.ItIsProgramsFaultNotYours, http.TraceIdentifier));
        }
    });

    /// <summary>After the check of forms: one that another person opened in this browser is not taken, and what was typed in it is shown.</summary>
    public static void UseForeignFormPage(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (http.Features.Get<IAntiforgeryValidationFeature>() is not { IsValid: false }) return next(http);
        // The form is read to be shown, never to be acted on; while the verdict stands the framework lets nobody read it.
        http.Features.Set<IAntiforgeryValidationFeature>(null);
        return Answer(http, StatusCodes.Status400BadRequest, Say.FormOfAnotherSignIn, Say.FormOfAnotherSignInWords, sendAgain: false);
    });

    /// <summary>PostgreSQL holds no text with a zero byte, so nothing on file can have such an address.</summary>
    public static void UseReadableAddress(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (!http.Request.Query.Any(field => field.Value.Any(value => value?.Contains('\0') is true)))
            return next(http);
        // In a path the server refuses it by itself.
        http.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    });

    /// <summary>Live pages tell what they know themselves; assets and health need no database.</summary>
    static bool NeedsDatabase(HttpContext http) =>
        !http.Request.Path.StartsWithSegments("/health") && !http.Request.Path.StartsWithSegments("/_blazor") && http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is null;

    /// <summary>A frozen server never answers, and never says so: then the person is told at once, not when whatever was asked of it gives up.</summary>
    static async Task WhileItAnswers(HttpContext http, RequestDelegate next)
    {
        var watch = http.RequestServices.GetRequiredService<DatabaseWatch>();
        if (watch.Away is not null && await watch.Ask(AskAgain) is { } still)
        {
            await Answer(http, StatusCodes.Status503ServiceUnavailable, still, Say.NothingCanBeShownOrRecorded);
            return;
        }
        var work = next(http);
        var gone = watch.Gone;
        if (await Task.WhenAny(work, gone) == work || work.IsCompleted || http.Response.HasStarted || await watch.Ask(AskAgain) is not { } why || work.IsCompleted || http.Response.HasStarted)
        {
            await work;
            return;
        }
        // The work may hang on for as long as the server does, and with it this connection.
        await Answer(http, StatusCodes.Status503ServiceUnavailable, why, Say.NothingCanBeShownOrRecorded, last: true);
        await http.Response.CompleteAsync();
        try
        {
            await work;
        }
        catch (Exception error) when (error is not OutOfMemoryException)
        {
            http.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger(typeof(AwayPage)).LogError("{Method} {Path}, answered before: {Message}", http.Request.Method, http.Request.Path, error.Message);
        }
    }

    static readonly TimeSpan AskAgain = TimeSpan.FromSeconds(1);

    /// <param name="last">Nothing more is answered on this connection.</param>
    static async Task Answer(HttpContext http, int status, string why, string words, bool sendAgain = true, bool last = false)
    {
        http.Response.Clear();
        if (last) http.Response.Headers.Connection = "close";
        http.Response.StatusCode = status;
        if (status == StatusCodes.Status503ServiceUnavailable) http.Response.Headers.RetryAfter = "10";
        http.Response.Headers.CacheControl = "no-store";
        if (http.Request.Path.StartsWithSegments("/api") || http.Request.Path.StartsWithSegments("/drafts"))
        {
            await Results.Problem(why, statusCode: status).ExecuteAsync(http);
            return;
        }
        http.Response.ContentType = "text/html; charset=utf-8";
        await http.Response.WriteAsync(Page(why, words, http.Request.PathBase + http.Request.Path + http.Request.QueryString, HttpMethods.IsPost(http.Request.Method) ? await Sent(http) : null, sendAgain));
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

    static string Page(string why, string words, string address, List<(string Name, string Value)>? sent, bool sendAgain)
    {
        var html = new StringBuilder();
        html.Append(null, $"""<!DOCTYPE html><html lang="{E(Texts.LanguageCode)}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>{E(Say.NotNow)} · Rigging</title><link rel="stylesheet" href="/tokens.css"><link rel="stylesheet" href="/plain.css"></head><body><main>""");
        html.Append(null, $"<h1>{E(why)}</h1>");
        if (sent is null)
        {
            html.Append(null, $"""<p>{E(words)}</p><p><a class="button" href="{E(address)}">{E(Say.TryAgain)}</a></p>""");
        }
        else
        {
            html.Append(null, $"<p>{E(words)}</p>");
            if (sendAgain)
            {
                html.Append(null, $"<p>{E(Say.WhatYouSentIsKept)}</p>");
                html.Append(null, $"""<form method="post" action="{E(address)}">""");
                foreach (var (name, value) in sent) html.Append(null, $"""<textarea name="{E(name)}" hidden>{"\n"}{E(value)}</textarea>""");
                html.Append(null, $"""<div class="acts"><button class="primary" type="submit">{E(Say.SendItAgain)}</button></div></form>""");
            }
            else
            {
                html.Append(null, $"""<p><a class="button" href="{E(address)}">{E(Say.OpenThePageAnew)}</a></p>""");
            }
            if (sent.Where(field => Typed(field.Name) && field.Value.Length > 0).ToList() is { Count: > 0 } typed)
            {
                html.Append(null, $"<h2>{E(Say.WhatYouTyped)}</h2><dl class=\"facts\">");
                foreach (var (name, value) in typed) html.Append(null, $"<dt>{E(name)}</dt><dd>{E(value)}</dd>");
                html.Append("</dl>");
            }
        }
        return html.Append("</main></body></html>").ToString();
    }

    static bool Secret(string name) => name.Contains("password", StringComparison.OrdinalIgnoreCase) || name.Contains("credential", StringComparison.OrdinalIgnoreCase) || name is "passkey" or "current" or "wanted";

    static bool Typed(string name) => !name.StartsWith('_') && !name.EndsWith("Sha256", StringComparison.Ordinal);

    static string E(string text) => HtmlEncoder.Default.Encode(text);
}
