using Rigging.Storage.Doors;
using Rigging.Web.Desk;
using Rigging.Web.Security;

namespace Rigging.Web.Records;

static class RecordsEndpoints
{
    public static void MapRecords(this IEndpointRouteBuilder app)
    {
        app.MapGet("/school/seals/{number:int}.txt", async (int number, HttpContext http, Actor actor, RecordsRoom records, CancellationToken ct) =>
        {
            actor.Is(http.User);
            return await records.SealText(number, ct) is { } text ? Results.File(System.Text.Encoding.ASCII.GetBytes(text), "text/plain; charset=us-ascii", $"rigging-seal-{number}.txt") : Results.NotFound();
        }).RequireAuthorization().ExcludeFromDescription();
        MapBundles(app);
        MapList(app, "/squawks.csv", Spreadsheet, (lists, ct) => lists.Squawks(ct));
        MapList(app, "/aircraft.csv", Spreadsheet, (lists, ct) => lists.Aircraft(ct));
        MapList(app, "/tools.csv", Spreadsheet, (lists, ct) => lists.Tools(ct));
        MapList(app, "/dates.ics", "text/calendar; charset=utf-8", (lists, ct) => lists.Dates(ct));
    }

    const string Spreadsheet = "text/csv; charset=utf-8";

    static void MapList(IEndpointRouteBuilder app, string address, string type, Func<Lists, CancellationToken, Task<string?>> list) =>
        app.MapGet(address, async (HttpContext http, Actor actor, Lists lists, CancellationToken ct) =>
        {
            actor.Is(http.User);
            return await list(lists, ct) is { } text ? Results.File(System.Text.Encoding.UTF8.GetBytes(text), type, $"rigging-{address[1..]}") : Results.Forbid();
        }).RequireAuthorization().ExcludeFromDescription();

    static void MapBundles(IEndpointRouteBuilder app)
    {
        app.MapGet("/squawks/{number:int}/bundle.zip", (int number, HttpContext http, Actor actor, RecordsRoom records, BundleMaker maker, Watch watch, CancellationToken ct) =>
            Send(new BundleScope.Squawk(number), $"S-{number}", http, actor, records, maker, watch, ct)).RequireAuthorization().ExcludeFromDescription();
        app.MapGet("/aircraft/{registration}/bundle.zip", (string registration, HttpContext http, Actor actor, RecordsRoom records, BundleMaker maker, Watch watch, CancellationToken ct) =>
            Send(new BundleScope.Aircraft(registration), registration, http, actor, records, maker, watch, ct)).RequireAuthorization().ExcludeFromDescription();
        app.MapGet("/school/bundle.zip", (HttpContext http, Actor actor, RecordsRoom records, BundleMaker maker, Watch watch, CancellationToken ct) =>
            Send(new BundleScope.Everything(), "everything", http, actor, records, maker, watch, ct)).RequireAuthorization().ExcludeFromDescription();
    }

    static async Task<IResult> Send(BundleScope scope, string name, HttpContext http, Actor actor, RecordsRoom records, BundleMaker maker, Watch watch, CancellationToken ct)
    {
        actor.Is(http.User);
        if (await records.Refused(ct) is { } refused) return Results.Text(refused.Sentence, statusCode: StatusCodes.Status403Forbidden);
        // On disk, not in memory: a whole school with its pictures may be large. It is gone as soon as it is sent.
        var file = new FileStream(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 1 << 16, FileOptions.DeleteOnClose | FileOptions.Asynchronous);
        http.Response.RegisterForDispose(file);
        if (await maker.Make(scope, file, ct) is null) return Results.NotFound();
        await watch.Note(SecurityEventKind.Exported, null, $"{scope.Words}, bundle", ct: ct);
        file.Position = 0;
        return Results.File(file, "application/zip", $"rigging-{name}.zip");
    }
}
