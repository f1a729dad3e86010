using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.School;

namespace Rigging.Web.Desk;

/// <summary>What the person who is signed in may do, read afresh every time it is asked.</summary>
public sealed class Badge(IDbContextFactory<RiggingDb> databases, Actor actor)
{
    /// <summary>Null when the register no longer knows the person.</summary>
    public async Task<Person?> Mine(CancellationToken ct = default)
    {
        var me = await actor.Me();
        await using var db = await databases.CreateDbContextAsync(ct);
        return await PersonReader.Read(db, me, ct);
    }

    public async Task<bool> IsOffice(CancellationToken ct = default) => IsOffice(await Mine(ct));

    /// <summary>Of the school's own people, as they are now.</summary>
    public static bool IsOffice(Person? person) => person is { Left: false, Visit: null } && person.May(Authority.Office);

    /// <summary>Whether addresses and certificate numbers of others are theirs to read: not for those who only fly or report.</summary>
    public static bool ReadsOthers(Person? person) => person is { Left: false, Visit: null }
        && person.Authorities.Any(held => held is Authority.Office or Authority.Mechanic or Authority.Inspector or Authority.Certifier);

    /// <summary>The squawk that is all a guest may see; null for the school's own people.</summary>
    public async Task<Visit?> Visit(CancellationToken ct = default) => (await Mine(ct))?.Visit;
}
