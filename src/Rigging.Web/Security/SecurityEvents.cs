using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Web.Desk;

namespace Rigging.Web.Security;

/// <summary>One line of the list, names in place.</summary>
public sealed record SecurityLine(long Number, Instant At, string Event, string Whom, string By, string Address, string About);

/// <summary>One page of the list.</summary>
public sealed record SecurityList(SchoolOnFile School, IReadOnlyList<SecurityLine> Lines);

/// <summary>The list of security events, for the maintenance office.</summary>
public sealed class SecurityEvents(SecurityBook book, Badge badge, IDbContextFactory<RiggingDb> databases, Watch watch)
{
    public const int PageSize = 200;
    const int MostInFile = 100_000;

    /// <summary>Newest first; null for whoever is not of the office.</summary>
    public async Task<SecurityList?> Show(long? before, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        return new(await Registers.School(db, ct), await Lines(db, PageSize, before, ct));
    }

    /// <summary>As a file; null for whoever is not of the office.</summary>
    public async Task<string?> Csv(CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return null;
        await watch.Note(SecurityEventKind.Exported, null, "security events, CSV", ct: ct);
        await using var db = await databases.CreateDbContextAsync(ct);
        return Records.Csv.Of(await Lines(db, MostInFile, null, ct));
    }

    async Task<IReadOnlyList<SecurityLine>> Lines(RiggingDb db, int most, long? before, CancellationToken ct)
    {
        var register = await Registers.Names(db, ct);
        return [.. (await book.Newest(most, before, ct)).Select(row => new SecurityLine(row.Id, row.At, Words(row.Kind),
            row.Whom is { } whom ? register.Name(whom) : "", row.By is { } by ? register.Name(by) : "", row.Address ?? "", row.About))];
    }

    static string Words(SecurityEventKind kind) =>
        string.Concat(kind.ToString().Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? " " : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}

static class SecurityCsv
{
    public static void MapSecurityCsv(this IEndpointRouteBuilder app) =>
        app.MapGet("/security.csv", async (HttpContext http, Actor actor, SecurityEvents events, CancellationToken ct) =>
        {
            actor.Is(http.User);
            return await events.Csv(ct) is { } csv ? Results.File(System.Text.Encoding.UTF8.GetBytes(csv), "text/csv; charset=utf-8", "security-events.csv") : Results.Forbid();
        }).RequireAuthorization().ExcludeFromDescription();
}
