using System.Security.Claims;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.Doors;

namespace Rigging.Web.Desk;

/// <summary>Who is signed in where. A cookie counts only while its session here is open: ended here, it is ended everywhere at once.</summary>
public sealed class Sessions(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    /// <summary>The claim that carries the session's id.</summary>
    public const string Claim = "session";

    /// <summary>A working day.</summary>
    public static readonly Duration Longest = Duration.FromHours(12);

    public static readonly Duration LongestIdle = Duration.FromHours(4);

    const int MostOfDevice = 200;

    public async Task<Guid> Begin(PersonId person, string method, string? address, string? device, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var now = clock.GetCurrentInstant();
        var session = new SessionRow
        {
            PersonId = person,
            StartedAt = now,
            SeenAt = now,
            Method = method,
            Address = address,
            Device = device is { Length: > MostOfDevice } ? device[..MostOfDevice] : device,
        };
        db.Sessions.Add(session);
        await db.SaveChangesAsync(ct);
        return session.Id;
    }

    /// <summary>Whether the cookie's session is open, the person still belongs here, and a guest's visit still lasts.</summary>
    public async Task<bool> IsOpen(ClaimsPrincipal user, CancellationToken ct = default)
    {
        if (Actor.PersonOf(user) is not { } person || Of(user) is not { } id) return false;
        var now = clock.GetCurrentInstant();
        var (begun, seen) = (now - Longest, now - LongestIdle);
        await using var db = await databases.CreateDbContextAsync(ct);
        var open = await db.Sessions.AsNoTracking()
            .Where(session => session.Id == id && session.PersonId == person && session.EndedAt == null && session.StartedAt > begun && session.SeenAt > seen)
            .Where(session => db.People.Any(row => row.Id == person && row.LeftAt == null && (row.GuestOf == null || row.GuestUntil > now)))
            .Select(session => new { session.SeenAt }).SingleOrDefaultAsync(ct);
        if (open is not null && now - open.SeenAt >= Duration.FromMinutes(1))
            await db.Sessions.Where(session => session.Id == id).ExecuteUpdateAsync(set => set.SetProperty(session => session.SeenAt, now), ct);
        return open is not null;
    }

    /// <param name="only">One session; null for all of the person's.</param>
    /// <param name="except">The one that goes on.</param>
    /// <returns>How many were open.</returns>
    public async Task<int> End(PersonId person, Guid? only = null, Guid? except = null, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var now = clock.GetCurrentInstant();
        return await db.Sessions
            .Where(session => session.PersonId == person && session.EndedAt == null && (only == null || session.Id == only) && (except == null || session.Id != except))
            .ExecuteUpdateAsync(set => set.SetProperty(session => session.EndedAt, now), ct);
    }

    /// <summary>Where a person is signed in now, newest first.</summary>
    public async Task<IReadOnlyList<OpenSession>> Open(PersonId person, CancellationToken ct = default)
    {
        var now = clock.GetCurrentInstant();
        var (begun, seen) = (now - Longest, now - LongestIdle);
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Sessions.AsNoTracking()
            .Where(session => session.PersonId == person && session.EndedAt == null && session.StartedAt > begun && session.SeenAt > seen)
            .OrderByDescending(session => session.StartedAt)
            .Select(session => new OpenSession(session.Id, session.StartedAt, session.SeenAt, session.Method, session.Address, session.Device)).ToListAsync(ct);
    }

    public static Guid? Of(ClaimsPrincipal user) => Guid.TryParse(user.FindFirstValue(Claim), out var id) ? id : null;
}

public sealed record OpenSession(Guid Id, Instant StartedAt, Instant SeenAt, string Method, string? Address, string? Device);
