using NodaTime;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Paper;

namespace Rigging.Web.FlightCard;

static class CardEndpoints
{
    /// <summary><c>/squawks/12/card.pdf</c>, on half letter, or on A5 with <c>?size=a5</c>.</summary>
    public static void MapFlightCard(this IEndpointRouteBuilder app) =>
        app.MapGet("/squawks/{number:int}/card.pdf", async (int number, string? size, HttpContext http, Actor actor, SquawkDesk desk, IClock clock, CancellationToken ct) =>
        {
            if (size is not (null or "a5" or "half-letter")) return Results.BadRequest(Gaps.Fill(Texts.SizeWanted5OrHalf, size));
            actor.Is(http.User);
            if (await desk.Open(number, ct) is not { } file) return Results.NotFound();
            var sheet = CardSheet.Of(Card.Of(file), size == "a5" ? Stock.A5 : Stock.HalfLetter, clock.GetCurrentInstant().InZone(file.School.Zone));
            return Results.File(sheet.ToPdf(), "application/pdf");
        }).RequireAuthorization().ExcludeFromDescription();
}
