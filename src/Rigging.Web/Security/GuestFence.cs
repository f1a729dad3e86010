using System.Security.Claims;

namespace Rigging.Web.Security;

/// <summary>Keeps a guest on the pages of the one squawk, whatever pages there come to be. The rules below ask again.</summary>
static class GuestFence
{
    /// <summary>The number of a guest's squawk.</summary>
    public const string Claim = "guest-of";

    static readonly string[] OpenToGuests = ["/account", "/sign-in", "/sign-out", "/passkeys", "/drafts", "/_blazor", "/_framework", "/_content", "/not-found", "/invitation", "/health"];

    public static void UseGuestFence(this WebApplication app) => app.Use((http, next) =>
    {
        if (http.User.FindFirstValue(Claim) is not { } squawk || Admits(squawk, http.Request.Path) || IsAsset(http)) return next(http);
        if (http.Request.Path == "/" && HttpMethods.IsGet(http.Request.Method)) http.Response.Redirect($"/squawks/{squawk}");
        else http.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    });

    public static bool Admits(string squawk, PathString path) =>
        path.StartsWithSegments($"/squawks/{squawk}") || OpenToGuests.Any(open => path.StartsWithSegments(open));

    static bool IsAsset(HttpContext http) => http.GetEndpoint()?.Metadata.GetMetadata<Microsoft.AspNetCore.StaticAssets.StaticAssetDescriptor>() is not null;
}
