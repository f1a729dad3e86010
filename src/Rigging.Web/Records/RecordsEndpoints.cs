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
        MapBundles(app);
    }

    static void MapBundles(IEndpointRouteBuilder app)
    {
        app.MapGet("/squawks/{number:int}/bundle.zip", (int number, HttpContext http, AuthenticationStateProvider signedIn, RecordsRoom records, BundleMaker maker, CancellationToken ct) =>
            Send(new BundleScope.Squawk(number), $"S-{number}", http, signedIn, records, maker, ct)).RequireAuthorization().ExcludeFromDescription();
        app.MapGet("/aircraft/{registration}/bundle.zip", (string registration, HttpContext http, AuthenticationStateProvider signedIn, RecordsRoom records, BundleMaker maker, CancellationToken ct) =>
            Send(new BundleScope.Aircraft(registration), registration, http, signedIn, records, maker, ct)).RequireAuthorization().ExcludeFromDescription();
        app.MapGet("/school/bundle.zip", (HttpContext http, AuthenticationStateProvider signedIn, RecordsRoom records, BundleMaker maker, CancellationToken ct) =>
            Send(new BundleScope.Everything(), "everything", http, signedIn, records, maker, ct)).RequireAuthorization().ExcludeFromDescription();
    }

    static async Task<IResult> Send(BundleScope scope, string name, HttpContext http, AuthenticationStateProvider signedIn, RecordsRoom records, BundleMaker maker, CancellationToken ct)
    {
        Tell(signedIn, http);
        if (await records.Refused(ct) is { } refused) return Results.Text(refused.Sentence, statusCode: StatusCodes.Status403Forbidden);
        // On disk, not in memory: a whole school with its pictures may be large. It is gone as soon as it is sent.
        var file = new FileStream(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        http.Response.RegisterForDispose(file);
        if (await maker.Make(scope, file, ct) is null) return Results.NotFound();
        file.Position = 0;
        return Results.File(file, "application/zip", $"rigging-{name}.zip");
    }

    // The desk knows people by the pages' own provider; outside a page somebody has to tell it.
    static void Tell(AuthenticationStateProvider signedIn, HttpContext http) =>
        ((IHostEnvironmentAuthenticationStateProvider)signedIn).SetAuthenticationState(Task.FromResult(new AuthenticationState(http.User)));
}
