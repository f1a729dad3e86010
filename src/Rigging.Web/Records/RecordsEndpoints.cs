using Microsoft.AspNetCore.Components.Authorization;

namespace Rigging.Web.Records;

static class RecordsEndpoints
{
    public static void MapRecords(this IEndpointRouteBuilder app)
    {
        app.MapGet("/school/seals/{number:int}.txt", async (int number, HttpContext http, AuthenticationStateProvider signedIn, RecordsRoom records, CancellationToken ct) =>
        {
            Tell(signedIn, http);
            return await records.SealText(number, ct) is { } text ? Results.File(System.Text.Encoding.ASCII.GetBytes(text), "text/plain; charset=us-ascii", $"rigging-seal-{number}.txt") : Results.NotFound();
        }).RequireAuthorization().ExcludeFromDescription();
    }

    // The desk knows people by the pages' own provider; outside a page somebody has to tell it.
    static void Tell(AuthenticationStateProvider signedIn, HttpContext http) =>
        ((IHostEnvironmentAuthenticationStateProvider)signedIn).SetAuthenticationState(Task.FromResult(new AuthenticationState(http.User)));
}
