using System.Net;
using System.Security.Claims;
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

/// <summary>Checks passwords and passkeys: at the door, and again at the moment of signing.</summary>
public sealed class Doorman(
    SignInManager<User> signIn, UserManager<User> users, IDbContextFactory<RiggingDb> databases, Reach reach, Sessions sessions, Doorstep doorstep, Passkeys passkeys, Watch watch, IHttpContextAccessor http, IClock clock)
{
    /// <summary>Published in the README: it counts on the loopback address only.</summary>
    public const string DemoPassword = "wings-level-2026";

    static readonly User Nobody = new();
    static readonly string NobodysHash = new PasswordHasher<User>().HashPassword(Nobody, DemoPassword);

    /// <summary>Hashing a book would keep the processor busy.</summary>
    public const int MostOfPassword = 200;

    static string NotAdmitted => Say.ThisEMailAddressAndPassword;

    IPAddress? From => http.HttpContext?.Connection.RemoteIpAddress;

    /// <summary>Null when the person is signed in; else a sentence that gives nothing away.</summary>
    public async Task<string?> Admit(string? email, string? password)
    {
        if (MustWait() is { } wait) return wait;
        if (await users.FindByNameAsync((email ?? "").Trim()) is not { } user)
        {
            // As slow as a wrong password: how long the answer takes must not tell which addresses are known.
            users.PasswordHasher.VerifyHashedPassword(Nobody, NobodysHash, Short(password));
            doorstep.Wrong(From);
            await watch.Note(SecurityEventKind.SignInFailed, null, "no such account");
            return NotAdmitted;
        }
        if (!await IsTheirs(user, password, SecurityEventKind.SignInFailed)) return NotAdmitted;
        if (await OnlyByPasskey(user))
        {
            await watch.Note(SecurityEventKind.SignInFailed, user.PersonId, "a passkey is demanded");
            return Say.PasskeyIsDemanded;
        }
        return await Welcome(user, "password");
    }

    /// <summary>The same with a passkey. Wrong passwords of others do not keep its owner out.</summary>
    public async Task<string?> AdmitByPasskey(string? credential)
    {
        if (MustWait() is { } wait) return wait;
        if (await passkeys.Owner(credential) is { } user && !Published(user)) return await Welcome(user, "passkey");
        doorstep.Wrong(From);
        await watch.Note(SecurityEventKind.SignInFailed, null, "passkey not accepted");
        return Say.PasskeyWasNotAcceptedTry;
    }

    /// <summary>Signs in whoever has shown who they are. Null when done; else why not.</summary>
    public async Task<string?> Welcome(User user, string method)
    {
        if (await WhyNot(user.PersonId) is { } reason)
        {
            await watch.Note(SecurityEventKind.SignInFailed, user.PersonId, reason.About);
            return reason.Sentence;
        }
        var asking = http.HttpContext!;
        // A cookie that was here before belongs to a session that ends with it.
        if (Actor.PersonOf(asking.User) is { } before && Sessions.Of(asking.User) is { } old) await sessions.End(before, old);
        var session = await sessions.Begin(user.PersonId, method, From?.ToString(), asking.Request.Headers.UserAgent.ToString());
        await signIn.SignInWithClaimsAsync(user, isPersistent: false, [new Claim(Sessions.Claim, session.ToString())]);
        await watch.Note(SecurityEventKind.SignedIn, user.PersonId, method, by: user.PersonId);
        return null;
    }

    /// <summary>Whether the password is that person's, counting wrong tries.</summary>
    public async Task<bool> Confirms(PersonId person, string? password) =>
        MustWait() is null
        && await users.Users.SingleOrDefaultAsync(u => u.PersonId == person) is { } user && await IsTheirs(user, password, SecurityEventKind.SigningFailed);

    /// <summary>Whether the passkey is that person's.</summary>
    public async Task<bool> ConfirmsByPasskey(PersonId person, string credential)
    {
        if (MustWait() is not null) return false;
        if (await passkeys.Owner(credential) is { } user && user.PersonId == person && !Published(user)) return true;
        doorstep.Wrong(From);
        await watch.Note(SecurityEventKind.SigningFailed, person, "passkey not accepted");
        return false;
    }

    /// <summary>Whoever has no passkey yet comes in to add one.</summary>
    async Task<bool> OnlyByPasskey(User user)
    {
        await using var db = await databases.CreateDbContextAsync();
        return await db.Installations.AnyAsync(row => row.PasskeysOnly) && (await users.GetPasskeysAsync(user)).Count > 0;
    }

    /// <summary>Accounts of the invented school are for this machine alone.</summary>
    bool Published(User user) => user.Demo && !reach.LoopbackOnly;

    async Task<bool> IsTheirs(User user, string? password, SecurityEventKind otherwise)
    {
        if (Published(user)) return false;
        var rested = await users.IsLockedOutAsync(user);
        var result = await signIn.CheckPasswordSignInAsync(user, Short(password), lockoutOnFailure: true);
        if (result.Succeeded) return true;
        doorstep.Wrong(From);
        await watch.Note(otherwise, user.PersonId, rested ? "the account rests" : "wrong password");
        if (result.IsLockedOut && !rested) await watch.Note(SecurityEventKind.AccountLocked, user.PersonId, "five wrong tries");
        return false;
    }

    string? MustWait() => doorstep.Wait(From) is var wait && wait > Duration.Zero
        ? Gaps.Fill(Say.TooManyWrongTriesCame, $"{Math.Ceiling(wait.TotalSeconds):0}")
        : null;

    async Task<(string About, string Sentence)?> WhyNot(PersonId person)
    {
        await using var db = await databases.CreateDbContextAsync();
        var row = await db.People.AsNoTracking().SingleAsync(p => p.Id == person);
        return row.LeftAt is not null ? ("the account is closed", NotAdmitted)
            : row.GuestOf is not null && !(row.GuestUntil > clock.GetCurrentInstant()) ? ("the visit has ended", Say.YourVisitHasEnded)
            : null;
    }

    static string Short(string? password) => password is { Length: <= MostOfPassword } ? password : "";

    /// <summary>The invented school's accounts, for someone who asks from this machine; empty for a real school.</summary>
    public async Task<IReadOnlyList<DemoAccount>> DemoAccountsFor(HttpContext asking) =>
        Doorstep.IsHere(asking.Connection.RemoteIpAddress) ? await DemoAccounts() : [];

    /// <summary>The invented school's accounts; empty for a real school, and off loopback.</summary>
    public async Task<IReadOnlyList<DemoAccount>> DemoAccounts()
    {
        if (!reach.LoopbackOnly) return [];
        await using var db = await databases.CreateDbContextAsync();
        var rows = await db.Users.Where(user => user.Demo)
            .Join(db.People.Include(person => person.Authorities), user => user.PersonId, person => person.Id, (user, person) => new { user.Email, Person = person })
            .OrderBy(row => row.Person.Number).ToListAsync();
        return [.. rows.Select(row => new DemoAccount(row.Person.Name, row.Email!, Words.List([.. row.Person.Authorities.Select(a => a.Authority).Order()])))];
    }

    /// <summary>Where to go after signing in: a path of this site, or the ramp.</summary>
    public static string LocalOnly(string? returnUrl) =>
        // Browsers read "/\" as "//", and leave out tabs and line ends wherever they stand.
        returnUrl is ['/', ..] and not ['/', '/' or '\\', ..] && !returnUrl.Any(char.IsControl) ? returnUrl : "/";
}

public sealed record DemoAccount(string Name, string Email, string ActsAs);

/// <summary>Whether this host answers on the loopback address only.</summary>
public sealed record Reach(bool LoopbackOnly);
