using System.Text.Json;
using Microsoft.AspNetCore.Antiforgery;

namespace Rigging.Web.Desk;

static class DraftEndpoints
{
    public static void MapDrafts(this IEndpointRouteBuilder app)
    {
        app.MapGet("/drafts/{key}", async (string key, HttpContext http, Drafts drafts, CancellationToken ct) =>
            await drafts.Load(Actor.PersonOf(http.User)!.Value, key, ct) is { } json ? Results.Text(json, "application/json") : Results.NoContent())
            .RequireAuthorization().ExcludeFromDescription();

        app.MapPost("/drafts/{key}", async (string key, HttpContext http, Drafts drafts, IAntiforgery antiforgery, CancellationToken ct) =>
        {
            if (!await antiforgery.IsRequestValidAsync(http)) return Results.BadRequest();
            // A prepared signature is written by its step page only, never by whatever a script posts.
            if (key.Length > Drafts.MaxKeyLength || key.StartsWith("sign:", StringComparison.Ordinal)) return Results.BadRequest();
            if (http.Request.ContentLength is > Drafts.MaxLength) return Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
            using var reader = new StreamReader(http.Request.Body);
            var json = await reader.ReadToEndAsync(ct);
            if (json.Length > Drafts.MaxLength) return Results.StatusCode(StatusCodes.Status413PayloadTooLarge);
            try
            {
                using var _ = JsonDocument.Parse(json);
            }
            catch (JsonException)
            {
                return Results.BadRequest();
            }
            var person = Actor.PersonOf(http.User)!.Value;
            if (!await drafts.HasRoom(person, key, ct)) return Results.StatusCode(StatusCodes.Status507InsufficientStorage);
            await drafts.Save(person, key, json, ct);
            return Results.NoContent();
        }).RequireAuthorization().DisableAntiforgery().ExcludeFromDescription();
    }
}
