using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Rigging.Squawks.People;

namespace Rigging.Web.Desk;

/// <summary>Who is signed in on this page or circuit. Only the pseudonym comes from the cookie; what the person may do, and whether the session was ended meanwhile, is read afresh every time.</summary>
public sealed class Actor(AuthenticationStateProvider signedIn, Sessions sessions)
{
    /// <summary>The claim that carries the person's id.</summary>
    public const string PersonClaim = "person";

    /// <exception cref="InvalidOperationException">Nobody is signed in: a page forgot to ask, or the session was ended while a circuit was open.</exception>
    public async Task<PersonId> Me()
    {
        var user = (await signedIn.GetAuthenticationStateAsync()).User;
        return PersonOf(user) is { } person && await sessions.IsOpen(user) ? person : throw new InvalidOperationException(Say.NobodyIsSignedIn);
    }

    /// <summary>Outside a page somebody has to say who asks: an endpoint does, before it turns to a use-case.</summary>
    public void Is(ClaimsPrincipal user) =>
        ((IHostEnvironmentAuthenticationStateProvider)signedIn).SetAuthenticationState(Task.FromResult(new AuthenticationState(user)));

    public static PersonId? PersonOf(ClaimsPrincipal user) =>
        Guid.TryParse(user.FindFirstValue(PersonClaim), out var id) ? new PersonId(id) : null;
}
