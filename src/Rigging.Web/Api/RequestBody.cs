using System.Text;
using Microsoft.Net.Http.Headers;

namespace Rigging.Web.Api;

/// <summary>A request's JSON text, or the problem that stands in its place.</summary>
sealed record RequestBody(string? Json, IResult? Problem)
{
    /// <summary>More than any real complaint needs; the reader's own limits on lists are reached well before.</summary>
    public const int MostBytes = 1024 * 1024;

    static readonly UTF8Encoding StrictUtf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static async Task<RequestBody> Read(HttpRequest request, CancellationToken ct)
    {
        if (!IsJson(request))
            return Refused(StatusCodes.Status415UnsupportedMediaType, "not-json", "Send JSON",
                $"Content-Type {(request.ContentType is { } type ? $"“{type}”" : "nothing")} given; wanted application/json in UTF-8, not compressed.");
        if (request.ContentLength > MostBytes) return TooLarge;

        using var bytes = new MemoryStream();
        var buffer = new byte[16 * 1024];
        try
        {
            while (await request.Body.ReadAsync(buffer, ct) is var read and > 0)
            {
                if (bytes.Length + read > MostBytes) return TooLarge;
                bytes.Write(buffer, 0, read);
            }
        }
        catch (BadHttpRequestException broken)
        {
            // The server's own limits, or a body cut short: whoever sent it hears so, it is no fault of the host.
            return broken.StatusCode == StatusCodes.Status413PayloadTooLarge ? TooLarge
                : Refused(broken.StatusCode, "body-unreadable", "The body could not be read", "The body ended early or was not sent as HTTP wants it.");
        }
        try
        {
            return new(StrictUtf8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length).TrimStart('\uFEFF'), null);
        }
        catch (DecoderFallbackException)
        {
            return new(null, Api.Problem.Faulty("$", null, "text in valid UTF-8"));
        }
    }

    static RequestBody TooLarge => Refused(StatusCodes.Status413PayloadTooLarge, "too-large", "The request is too large",
        $"Wanted at most {MostBytes} bytes.");

    static RequestBody Refused(int status, string code, string title, string detail) => new(null, Api.Problem.Of(status, code, title, detail));

    static bool IsJson(HttpRequest request) =>
        MediaTypeHeaderValue.TryParse(request.ContentType, out var type)
        && type.MediaType.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        && (!type.Charset.HasValue || type.Charset.Value!.Trim('"').Equals("utf-8", StringComparison.OrdinalIgnoreCase))
        && request.Headers.ContentEncoding is [] or ["identity"];
}
