using Microsoft.EntityFrameworkCore;
using Npgsql;
using Rigging.Storage;

namespace Rigging.Web.Api;

/// <summary>For whoever watches the host: whether the process answers, and whether it can do its work.</summary>
static class Health
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

    public static void MapHealth(this IEndpointRouteBuilder app)
    {
        app.MapGet("/health/live", () => Results.Json(new { status = "live" })).AllowAnonymous().ExcludeFromDescription();
        app.MapGet("/health/ready", Ready).AllowAnonymous().ExcludeFromDescription();
    }

    static async Task<IResult> Ready(IDbContextFactory<RiggingDb> databases, CancellationToken asked)
    {
        using var ct = CancellationTokenSource.CreateLinkedTokenSource(asked);
        ct.CancelAfter(Patience);
        try
        {
            await using var db = await databases.CreateDbContextAsync(ct.Token);
            await db.Installations.AsNoTracking().AnyAsync(ct.Token);
            return Results.Json(new { status = "ready" });
        }
        catch (Exception down) when (down is NpgsqlException or InvalidOperationException or OperationCanceledException && !asked.IsCancellationRequested)
        {
            return Problem.Of(StatusCodes.Status503ServiceUnavailable, "database", "Not ready", "The database does not answer.");
        }
    }
}
