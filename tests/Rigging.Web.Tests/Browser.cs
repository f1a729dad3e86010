using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Mvc.Testing.Handlers;
using Microsoft.AspNetCore.TestHost;

namespace Rigging.Web.Tests;

/// <summary>A person at plain pages: opens them, fills in forms, posts them as they stand. No JavaScript.</summary>
public sealed class Browser(TestServer server) : IDisposable
{
    static readonly Uri Site = new("http://localhost");

    readonly CookieContainer jar = new();
    HttpClient? http;

    public HttpClient Http => http ??= new(new CookieContainerHandler(jar) { InnerHandler = server.CreateHandler() }) { BaseAddress = Site };

    /// <summary>All that this browser would send.</summary>
    public string Cookies => jar.GetCookieHeader(Site);

    public async Task<Page> Open(string path) => await PageOf(path, await Http.GetAsync(new Uri(path, UriKind.Relative)));

    /// <summary>Posts a form with all that it holds, these fields changed.</summary>
    public async Task<Page> Submit(Page page, Dictionary<string, string> typed, string form = "main form")
    {
        var element = page.Document.QuerySelector(form) as IHtmlFormElement ?? throw new InvalidOperationException($"No form {form} on {page.Address}: {page.Text}");
        var fields = element.QuerySelectorAll("input, select, textarea")
            .Where(field => field.GetAttribute("name") is { Length: > 0 } && !typed.ContainsKey(field.GetAttribute("name")!))
            .Select(field => (Name: field.GetAttribute("name")!, Value: ValueOf(field)))
            .Where(field => field.Value is not null)
            .Select(field => KeyValuePair.Create(field.Name, field.Value!))
            .Concat(typed);
        var action = element.GetAttribute("action") is { Length: > 0 } given ? (given.StartsWith('/') ? given : "/" + given) : page.Address;
        using var body = new FormUrlEncodedContent(fields);
        return await PageOf(action, await Http.PostAsync(new Uri(action, UriKind.Relative), body));
    }

    /// <summary>Posts these fields and nothing else: what a foreign page could send.</summary>
    public async Task<Page> Post(string path, Dictionary<string, string> fields)
    {
        using var body = new FormUrlEncodedContent(fields);
        return await PageOf(path, await Http.PostAsync(new Uri(path, UriKind.Relative), body));
    }

    /// <summary>Where a redirect leads.</summary>
    public Task<Page> Follow(Page page) => Open(page.Location ?? throw new InvalidOperationException($"{page.Address} did not redirect: {page.Text}"));

    public void Dispose() => http?.Dispose();

    static string? ValueOf(IElement field) => field switch
    {
        IHtmlInputElement { Type: "checkbox" or "radio", IsChecked: false } => null,
        IHtmlInputElement { Type: "submit" or "button" or "file" } => null,
        IHtmlInputElement input => input.Value,
        IHtmlSelectElement select => select.Value,
        IHtmlTextAreaElement area => area.Value,
        _ => null,
    };

    static async Task<Page> PageOf(string address, HttpResponseMessage answer) =>
        new(address, answer.StatusCode, answer.Headers.Location, await new HtmlParser().ParseDocumentAsync(await answer.Content.ReadAsStringAsync()));
}

/// <param name="Address">What was asked for.</param>
/// <param name="Target">Of a redirect; null otherwise.</param>
public sealed record Page(string Address, HttpStatusCode Status, Uri? Target, IHtmlDocument Document)
{
    /// <summary>Path and query that a redirect leads to on this site.</summary>
    public string? Location => Target is null ? null : Target.IsAbsoluteUri && Target.Host == "localhost" ? Target.PathAndQuery : Target.OriginalString;

    /// <summary>What a person reads in the page's main part, one space between words.</summary>
    public string Text
    {
        get
        {
            var texts = (Document.QuerySelector("main") ?? Document.Body as IElement)?.Descendants<IText>().Select(text => text.Data) ?? [];
            return string.Join(' ', string.Join(' ', texts).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        }
    }
}
