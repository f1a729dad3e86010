using Microsoft.EntityFrameworkCore;
using Rigging.Storage;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>The school's name over every page. It changes once in a school's life, so it is read at the start and after the set-up.</summary>
public sealed class SchoolSign(IDbContextFactory<RiggingDb> databases)
{
    /// <summary>Null while there is no school yet.</summary>
    public School? Current { get; private set; }

    public async Task Read(CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        Current = await db.Installations.Select(row => row.SchoolName).SingleOrDefaultAsync(ct) is { } name ? new School(name) : null;
    }
}
