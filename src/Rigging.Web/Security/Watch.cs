using Rigging.Squawks.People;
using Rigging.Storage.Doors;
using Rigging.Web.Desk;

namespace Rigging.Web.Security;

/// <summary>Notes security events with who asked and from where.</summary>
public sealed class Watch(SecurityBook book, IHttpContextAccessor http)
{
    public string? Address => http.HttpContext?.Connection.RemoteIpAddress?.ToString();

    /// <param name="by">Whoever is signed in, when left out.</param>
    public Task Note(SecurityEventKind kind, PersonId? whom, string about, PersonId? by = null, CancellationToken ct = default) =>
        book.Note(kind, whom, by ?? (http.HttpContext is { } asking ? Actor.PersonOf(asking.User) : null), Address, about, ct);
}
