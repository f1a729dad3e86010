using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Rigging.Storage.School;
using Rigging.Web.Desk;

namespace Rigging.Web.SignIn;

/// <summary>Passkeys, as the framework makes and checks them: this only says whose they are.</summary>
public sealed class Passkeys(SignInManager<User> signIn, UserManager<User> users)
{
    /// <summary>Null when the browser's answer does not hold, whatever is wrong with it.</summary>
    public async Task<User?> Owner(string? credential)
    {
        if (string.IsNullOrEmpty(credential)) return null;
        try
        {
            var shown = await signIn.PerformPasskeyAssertionAsync(credential);
            if (!shown.Succeeded) return null;
            await users.AddOrUpdatePasskeyAsync(shown.User, shown.Passkey);   // the device's counter moved on
            return shown.User;
        }
        catch (InvalidOperationException)
        {
            return null;   // nobody asked for it, or too long ago
        }
    }

    /// <summary>Whether the browser's new passkey was taken in.</summary>
    public async Task<bool> Add(User user, string? credential, string? name)
    {
        if (string.IsNullOrEmpty(credential)) return false;
        try
        {
            var made = await signIn.PerformPasskeyAttestationAsync(credential);
            if (!made.Succeeded || made.UserEntity.Id != user.Id.ToString()) return false;
            made.Passkey.Name = string.IsNullOrWhiteSpace(name) ? "passkey" : name.Trim()[..Math.Min(name.Trim().Length, 60)];
            return (await users.AddOrUpdatePasskeyAsync(user, made.Passkey)).Succeeded;
        }
        catch (InvalidOperationException)
        {
            return false;
        }
    }

    public async Task<IReadOnlyList<PasskeyLine>> Of(User user) =>
        [.. (await users.GetPasskeysAsync(user)).OrderBy(passkey => passkey.CreatedAt).Select(passkey => new PasskeyLine(Convert.ToHexStringLower(passkey.CredentialId), passkey.Name ?? "passkey", NodaTime.Instant.FromDateTimeOffset(passkey.CreatedAt)))];

    public async Task<bool> Remove(User user, string id) =>
        (await users.GetPasskeysAsync(user)).FirstOrDefault(passkey => Convert.ToHexStringLower(passkey.CredentialId) == id) is { } passkey
        && (await users.RemovePasskeyAsync(user, passkey.CredentialId)).Succeeded;

    /// <summary>What the browser needs before it asks its owner: a challenge, kept in a protected cookie for the answer.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/passkeys/new", async (HttpContext http, SignInManager<User> signIn, UserManager<User> users, IAntiforgery antiforgery, CancellationToken ct) =>
        {
            if (!await antiforgery.IsRequestValidAsync(http)) return Results.BadRequest();
            var user = await Mine(http, users, ct);
            return user is null ? Results.Unauthorized() : Json(await signIn.MakePasskeyCreationOptionsAsync(new() { Id = user.Id.ToString(), Name = user.UserName!, DisplayName = http.User.Identity?.Name ?? user.UserName! }));
        }).RequireAuthorization().DisableAntiforgery().ExcludeFromDescription();

        // At the door nobody is known yet: the browser offers what it has for this site.
        app.MapPost("/passkeys/ask", async (HttpContext http, SignInManager<User> signIn, UserManager<User> users, IAntiforgery antiforgery, CancellationToken ct) =>
            await antiforgery.IsRequestValidAsync(http) ? Json(await signIn.MakePasskeyRequestOptionsAsync(await Mine(http, users, ct))) : Results.BadRequest())
            .DisableAntiforgery().ExcludeFromDescription();
    }

    static IResult Json(string options) => Results.Text(options, "application/json");

    static async Task<User?> Mine(HttpContext http, UserManager<User> users, CancellationToken ct) =>
        Actor.PersonOf(http.User) is { } me ? await users.Users.SingleOrDefaultAsync(row => row.PersonId == me, ct) : null;
}

/// <param name="Id">The credential's own, hexadecimal.</param>
public sealed record PasskeyLine(string Id, string Name, NodaTime.Instant CreatedAt);
