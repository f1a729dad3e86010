using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Rigging.Squawks.People;

namespace Rigging.Web.Desk;

/// <summary>Who is signed in on this page or circuit. Only the pseudonym comes from the cookie; what the person may do is read afresh every time.</summary>
public sealed class Actor(AuthenticationStateProvider signedIn)
{
    /// <summary>The claim that carries the person's id.</summary>
    public const string PersonClaim = "person";

    /// <exception cref="InvalidOperationException">Nobody is signed in: a page forgot to ask.</exception>
    public async Task<PersonId> Me() => PersonOf((await signedIn.GetAuthenticationStateAsync()).User)
        ?? throw new InvalidOperationException("Nobody is signed in.");

    public static PersonId? PersonOf(ClaimsPrincipal user) =>
        Guid.TryParse(user.FindFirstValue(PersonClaim), out var id) ? new PersonId(id) : null;
}
