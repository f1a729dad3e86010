using Microsoft.AspNetCore.Components.Authorization;
using NodaTime;
using Rigging.Web.Desk;
using Rigging.Web.Paper;

namespace Rigging.Web.SignOff;

static class RecordPdf
{
    /// <summary><c>/squawks/12/record.pdf</c>, on A4, or on letter with <c>?size=letter</c>; the last round with signed work, or <c>?round=1</c>.</summary>
    public static void MapRecord(this IEndpointRouteBuilder app) =>
        app.MapGet("/squawks/{number:int}/record.pdf", async (int number, string? size, int? round, HttpContext http, AuthenticationStateProvider signedIn, SquawkDesk desk, IClock clock, CancellationToken ct) =>
        {
            if (size is not (null or "a4" or "letter")) return Results.BadRequest($"size: {size}; wanted: a4 or letter.");
            // The desk knows people by the pages' own provider; outside a page somebody has to tell it.
            ((IHostEnvironmentAuthenticationStateProvider)signedIn).SetAuthenticationState(Task.FromResult(new AuthenticationState(http.User)));
            if (await desk.Open(number, ct) is not { } file) return Results.NotFound();
            var sheet = RecordSheet.Of(file, round, size == "letter" ? Stock.Letter : Stock.A4, clock.GetCurrentInstant().InZone(file.School.Zone));
            return sheet is null ? Results.NotFound() : Results.File(sheet.ToPdf(), "application/pdf");
        }).RequireAuthorization().ExcludeFromDescription();
}
