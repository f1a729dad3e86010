using NodaTime;
using Rigging.Storage.Doors;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Paper;
using Rigging.Web.Security;

namespace Rigging.Web.SignOff;

static class RecordPdf
{
    /// <summary><c>/squawks/12/record.pdf</c>, on A4, on letter with <c>?size=letter</c>, or as a logbook sticker with <c>?size=sticker</c>; the last round with signed work, or <c>?round=1</c>.</summary>
    public static void MapRecord(this IEndpointRouteBuilder app) =>
        app.MapGet("/squawks/{number:int}/record.pdf", async (int number, string? size, int? round, HttpContext http, Actor actor, SquawkDesk desk, Watch watch, IClock clock, CancellationToken ct) =>
        {
            if (size is not (null or "a4" or "letter" or "sticker")) return Results.BadRequest(Gaps.Fill(Say.SizeWanted4Letter, size));
            actor.Is(http.User);
            if (await desk.Open(number, ct) is not { } file) return Results.NotFound();
            var now = clock.GetCurrentInstant().InZone(file.School.Zone);
            var sheet = size == "sticker" ? RecordSheet.Sticker(file, round, now) : RecordSheet.Of(file, round, size == "letter" ? Stock.Letter : Stock.A4, now);
            if (sheet is null) return Results.NotFound();
            await watch.Note(SecurityEventKind.Exported, null, $"S-{number}, maintenance record, PDF", ct: ct);
            return Results.File(sheet.ToPdf(), "application/pdf");
        }).RequireAuthorization().ExcludeFromDescription();
}
