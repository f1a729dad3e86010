using Microsoft.AspNetCore.StaticAssets;

namespace Rigging.Web.Security;

/// <summary>What every answer tells the browser not to do.</summary>
static class SecureHeaders
{
    /// <summary>Scripts come from files of this site only.</summary>
    /// <remarks>
    /// Styles may stand in the page: the component library writes its theme into a style element and positions into style
    /// attributes, and drawings carry sizes there. A style can at worst deface; a script could sign.
    /// </remarks>
    public const string Policy =
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; "
        + "manifest-src 'self'; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    public static void UseSecureHeaders(this WebApplication app) => app.Use((http, next) =>
    {
        http.Response.OnStarting(() =>
        {
            var headers = http.Response.Headers;
            headers.ContentSecurityPolicy = Policy;
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "DENY";
            headers["Referrer-Policy"] = "same-origin";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(self), microphone=(), geolocation=(), payment=(), usb=(), publickey-credentials-get=(self), publickey-credentials-create=(self)";
            if (http.Request.IsHttps) headers.StrictTransportSecurity = "max-age=31536000";
            // Shared tablets: what one person read must not come back from the cache for the next.
            if (http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is null) headers.CacheControl = "no-store";
            return Task.CompletedTask;
        });
        return next(http);
    });
}
