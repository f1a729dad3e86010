using Microsoft.AspNetCore.Components.Authorization;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Paper;

namespace Rigging.Web.Work;

/// <summary>The tag that hangs on the control wheel while something is loose.</summary>
static class LooseTag
{
    /// <returns>Null when nothing is loose.</returns>
    public static Sheet? Of(SquawkFile file, Stock stock, ZonedDateTime printedAt) =>
        file.State.Loose is { } loose && file.Ledger.Entries.LastOrDefault(entry => entry.Fact is WorkHandedOver) is { Fact: WorkHandedOver handover } left
            ? new Sheet(Say.LOOSE, file.School.Name, Gaps.Fill(Texts.SquawkS, file.Number, file.Aircraft.Registration), file.HeadHash, printedAt,
            [
                new Shout(Say.DONOTMOVE),
                new Shout(file.Aircraft.Registration, 30),
                new Paragraph(loose, Strong: true),
                new Paper.Facts(
                [
                    (Say.HowItStands, handover.State),
                    (Say.LeftBy, file.Register.Name(left.By)),
                    (Say.On, file.When(left.At)),
                ]),
                new Paper.Caution(Say.ControlsNotToBeMovedAircraft, Say.UntilThen),
            ], stock)
            : null;

    /// <summary><c>/squawks/12/loose-tag.pdf</c>, on A5, or on half letter with <c>?size=half-letter</c>.</summary>
    public static void MapLooseTag(this IEndpointRouteBuilder app) =>
        app.MapGet("/squawks/{number:int}/loose-tag.pdf", async (int number, string? size, HttpContext http, AuthenticationStateProvider signedIn, SquawkDesk desk, IClock clock, CancellationToken ct) =>
        {
            if (size is not (null or "a5" or "half-letter")) return Results.BadRequest(Gaps.Fill(Texts.SizeWanted5OrHalf, size));
            // The desk knows people by the pages' own provider; outside a page somebody has to tell it.
            ((IHostEnvironmentAuthenticationStateProvider)signedIn).SetAuthenticationState(Task.FromResult(new AuthenticationState(http.User)));
            if (await desk.Open(number, ct) is not { } file) return Results.NotFound();
            var sheet = Of(file, size == "half-letter" ? Stock.HalfLetter : Stock.A5, clock.GetCurrentInstant().InZone(file.School.Zone));
            return sheet is null ? Results.NotFound() : Results.File(sheet.ToPdf(), "application/pdf");
        }).RequireAuthorization().ExcludeFromDescription();
}
