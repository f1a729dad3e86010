using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.School;

namespace Rigging.Web.SignIn;

/// <summary>Checks passwords: at the door, and again at the moment of signing.</summary>
public sealed class Doorman(SignInManager<User> signIn, UserManager<User> users, IDbContextFactory<RiggingDb> databases, Reach reach)
{
    /// <summary>Published in the README: it counts on the loopback address only.</summary>
    public const string DemoPassword = "wings-level-2026";

    static readonly User Nobody = new();
    static readonly string NobodysHash = new PasswordHasher<User>().HashPassword(Nobody, DemoPassword);

    const string NotAdmitted = "This e-mail address and password do not go together. After five wrong tries an account rests for a few minutes.";

    /// <summary>Null when the person is signed in; else a sentence that gives nothing away.</summary>
    public async Task<string?> Admit(string? email, string? password)
    {
        if (await users.FindByNameAsync((email ?? "").Trim()) is not { } user)
        {
            // As slow as a wrong password: how long the answer takes must not tell which addresses are known.
            users.PasswordHasher.VerifyHashedPassword(Nobody, NobodysHash, password ?? "");
            return NotAdmitted;
        }
        if (!await IsTheirs(user, password)) return NotAdmitted;
        await signIn.SignInAsync(user, isPersistent: false);
        return null;
    }

    /// <summary>Whether the password is that person's, counting wrong tries.</summary>
    public async Task<bool> Confirms(PersonId person, string? password) =>
        await users.Users.SingleOrDefaultAsync(u => u.PersonId == person) is { } user && await IsTheirs(user, password);

    async Task<bool> IsTheirs(User user, string? password) =>
        !(user.Demo && !reach.LoopbackOnly) && (await signIn.CheckPasswordSignInAsync(user, password ?? "", lockoutOnFailure: true)).Succeeded;

    /// <summary>The invented school's accounts, for someone who asks from this machine; empty for a real school.</summary>
    public async Task<IReadOnlyList<DemoAccount>> DemoAccountsFor(HttpContext asking) =>
        asking.Connection.RemoteIpAddress is not { } from || IPAddress.IsLoopback(from) ? await DemoAccounts() : [];

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
