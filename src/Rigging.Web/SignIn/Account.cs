using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Security;

namespace Rigging.Web.SignIn;

/// <summary>What people keep of their own: password, passkeys, sessions.</summary>
public sealed class Account(Actor actor, Sessions sessions, Doorman doorman, Passkeys passkeys, UserManager<User> users, IDbContextFactory<RiggingDb> databases, Watch watch, IHttpContextAccessor http)
{
    /// <summary>The session of this browser.</summary>
    Guid? Mine => http.HttpContext is { } asking ? Sessions.Of(asking.User) : null;

    public async Task<AccountView> Show(CancellationToken ct = default)
    {
        var me = await actor.Me();
        await using var db = await databases.CreateDbContextAsync(ct);
        var person = await db.People.AsNoTracking().Where(row => row.Id == me).Select(row => new { row.Name, row.Email, row.GuestUntil }).SingleAsync(ct);
        return new(person.Name, person.Email, await Registers.School(db, ct), person.GuestUntil, await sessions.Open(me, ct), Mine, await passkeys.Of(await MyUser(me, ct)));
    }

    /// <summary>A new password ends every other session: whoever knew the old one is out.</summary>
    public async Task<IReadOnlyList<BrokenRule>> ChangePassword(string? current, string? wanted, CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (!await doorman.Confirms(me, current)) return [new("password-wrong", Say.YourPresentPasswordWasNot, "current")];
        var user = await MyUser(me, ct);
        var changed = await users.ChangePasswordAsync(user, current!, wanted ?? "");
        if (!changed.Succeeded) return [.. changed.Errors.Select(error => new BrokenRule("password-weak", error.Description, "wanted"))];
        var ended = await sessions.End(me, except: Mine, ct: ct);
        await watch.Note(SecurityEventKind.PasswordChanged, me, $"other sessions ended: {ended}", ct: ct);
        return [];
    }

    /// <summary>Another way in is as good as the password, so whoever adds one types it.</summary>
    public async Task<IReadOnlyList<BrokenRule>> AddPasskey(string? password, string? credential, string? name, CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (!await doorman.Confirms(me, password)) return [new("password-wrong", Say.YourPasswordWasNotAccepted, "password")];
        if (!await passkeys.Add(await MyUser(me, ct), credential, name)) return [new("passkey-refused", Say.BrowsersPasskeyWasNotAccepted, "passkey")];
        await watch.Note(SecurityEventKind.PasskeyAdded, me, "", ct: ct);
        return [];
    }

    public async Task RemovePasskey(string id, CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (await passkeys.Remove(await MyUser(me, ct), id)) await watch.Note(SecurityEventKind.PasskeyRemoved, me, "", ct: ct);
    }

    Task<User> MyUser(PersonId me, CancellationToken ct) => users.Users.SingleAsync(row => row.PersonId == me, ct);

    /// <param name="session">One of this person's own; somebody else's is not found.</param>
    public async Task EndSession(Guid session, CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (await sessions.End(me, session, ct: ct) > 0) await watch.Note(SecurityEventKind.SessionEnded, me, "one, by its owner", ct: ct);
    }

    public async Task EndOthers(CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (await sessions.End(me, except: Mine, ct: ct) is > 0 and var ended) await watch.Note(SecurityEventKind.SessionEnded, me, $"{ended}, by their owner", ct: ct);
    }
}

/// <param name="Here">The session of the browser that asks.</param>
public sealed record AccountView(string Name, string? Email, SchoolOnFile School, Instant? GuestUntil, IReadOnlyList<OpenSession> Sessions, Guid? Here, IReadOnlyList<PasskeyLine> Passkeys);
