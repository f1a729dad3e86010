using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Web.Look;
using Rigging.Web.Paper;

namespace Rigging.Web.Report;

static class CockpitEndpoints
{
    /// <summary>Where an aircraft's code leads. The id cannot be guessed and stands nowhere in the open: who has it has sat in the aircraft.</summary>
    public static string Path(AircraftId aircraft) => $"/cockpit/{aircraft}";

    public static void MapCockpit(this IEndpointRouteBuilder app) =>
        app.MapGet("/aircraft/{registration}/placard.pdf", async (string registration, string? size, HttpContext http, IDbContextFactory<RiggingDb> databases, CockpitNews news, CockpitPin pin, IClock clock, CancellationToken ct) =>
        {
            if (size is not (null or "a5" or "half-letter")) return Results.BadRequest(Gaps.Fill(Texts.SizeWanted5OrHalf, size));
            await using var db = await databases.CreateDbContextAsync(ct);
            if (await db.Aircraft.AsNoTracking().Where(row => row.Registration == registration).Select(row => (AircraftId?)row.Id).SingleOrDefaultAsync(ct) is not { } id
                || await news.Of(id, ct) is not { } aircraft) return Results.NotFound();
            var address = $"{http.Request.Scheme}://{http.Request.Host}{http.Request.PathBase}{Path(id)}";
            var sheet = PlacardSheet.Of(aircraft, address, await pin.IsSet(ct), size == "a5" ? Stock.A5 : Stock.HalfLetter, clock.GetCurrentInstant().InZone(aircraft.School.Zone));
            return Results.File(sheet.ToPdf(), "application/pdf");
        }).RequireAuthorization().ExcludeFromDescription();
}
