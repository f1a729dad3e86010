using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Security;

namespace Rigging.Web.SignIn;

/// <summary>Who an invitation is for.</summary>
/// <param name="SquawkNumber">A guest's; null for the school's own people.</param>
public sealed record Invited(PersonId Person, string Name, string Email, int? SquawkNumber);

/// <summary>One-time ways in: the office hands over a link, the person chooses a password that nobody else ever knows.</summary>
public sealed class Invitations(IDbContextFactory<RiggingDb> databases, UserManager<User> users, Sessions sessions, Doorman doorman, Doorstep doorstep, Watch watch, IHttpContextAccessor http, IClock clock)
{
    public static readonly Duration Lasts = Duration.FromDays(7);

    public static string Address(string code) => $"invitation?code={code}";

    /// <summary>A new code; older ones of that person that nobody used stop counting.</summary>
    /// <param name="until">A guest's code ends with the visit.</param>
    public async Task<string> Make(PersonId person, PersonId by, Instant? until = null, CancellationToken ct = default)
    {
        var code = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(20));
        var now = clock.GetCurrentInstant();
        await using var db = await databases.CreateDbContextAsync(ct);
        await db.Invitations.Where(row => row.PersonId == person && row.UsedAt == null).ExecuteUpdateAsync(set => set.SetProperty(row => row.UsedAt, now), ct);
        db.Invitations.Add(new() { CodeSha256 = Hash(code), PersonId = person, MadeBy = by, MadeAt = now, ExpiresAt = until is { } end && end < now + Lasts ? end : now + Lasts });
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.InvitationMade, person, "", by, ct);
        return code;
    }

    /// <summary>Null when the code is not known, was used, or is too old.</summary>
    public async Task<Invited?> Find(string? code, CancellationToken ct = default)
    {
        if (string.IsNullOrEmpty(code) || code.Length > 100) return null;
        var (hash, now) = (Hash(code), clock.GetCurrentInstant());
        await using var db = await databases.CreateDbContextAsync(ct);
        var found = await db.Invitations.AsNoTracking().Where(row => row.CodeSha256 == hash && row.UsedAt == null && row.ExpiresAt > now)
            .Join(db.People, row => row.PersonId, person => person.Id, (row, person) => person)
            .Where(person => person.LeftAt == null && (person.GuestOf == null || person.GuestUntil > now))
            .Select(person => new { person.Id, person.Name, person.Email, Squawk = db.Squawks.Where(squawk => squawk.Id == person.GuestOf).Select(squawk => (int?)squawk.Number).FirstOrDefault() })
            .SingleOrDefaultAsync(ct);
        return found is null ? null : new(found.Id, found.Name, found.Email ?? "", found.Squawk);
    }

    /// <summary>Sets the password, signs the person in and spends the code. Empty when done.</summary>
    public async Task<IReadOnlyList<BrokenRule>> Use(string? code, string? password, CancellationToken ct = default)
    {
        var from = http.HttpContext?.Connection.RemoteIpAddress;
        if (doorstep.Wait(from) is var wait && wait > Duration.Zero)
            return [new("too-many-tries", Gaps.Fill(Say.TooManyWrongTries, $"{Math.Ceiling(wait.TotalSeconds):0}"))];
        if (await Find(code, ct) is not { } invited)
        {
            doorstep.Wrong(from);
            return [new("invitation-unknown", Say.ThisLinkWasUsedAlreadyIsToo)];
        }
        var user = await users.Users.SingleAsync(row => row.PersonId == invited.Person, ct);
        List<BrokenRule> weak = [];
        foreach (var validator in users.PasswordValidators)
            weak.AddRange((await validator.ValidateAsync(users, user, password)).Errors.Select(error => new BrokenRule("password-weak", error.Description, "password")));
        if (weak.Count > 0) return weak;

        var (hash, now) = (Hash(code!), clock.GetCurrentInstant());
        await using (var db = await databases.CreateDbContextAsync(ct))
            // Of two that come at once one finds it unspent.
            if (await db.Invitations.Where(row => row.CodeSha256 == hash && row.UsedAt == null).ExecuteUpdateAsync(set => set.SetProperty(row => row.UsedAt, now), ct) == 0)
                return [new("invitation-unknown", Say.ThisLinkWasUsedAlreadyMaintenance)];
        await users.RemovePasswordAsync(user);
        await users.AddPasswordAsync(user, password!);
        await users.SetLockoutEndDateAsync(user, null);
        await sessions.End(invited.Person, ct: ct);
        await watch.Note(SecurityEventKind.InvitationUsed, invited.Person, "a password was chosen", invited.Person, ct);
        return await doorman.Welcome(user, "invitation") is { } refused ? [new("not-admitted", refused)] : [];
    }

    static string Hash(string code) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(code)));
}
