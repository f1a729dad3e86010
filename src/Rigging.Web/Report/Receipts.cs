using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

/// <summary>A report's receipt by the id that was made with its form: who has it sent the report, or was shown it by whoever did.</summary>
public sealed class Receipts(IDbContextFactory<RiggingDb> databases, LedgerStore ledgers)
{
    /// <summary>Null when no report was filed under this id.</summary>
    public async Task<Receipt?> Of(SquawkId id, CancellationToken ct = default)
    {
        if (await ledgers.Look(id, ct) is not { } seen) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var aircraft = seen.Ledger.State.Report!.Aircraft;
        var registration = await db.Aircraft.AsNoTracking().Where(row => row.Id == aircraft).Select(row => row.Registration).SingleAsync(ct);
        return Receipt.Of(seen.Ledger, seen.Facts, registration, await Registers.School(db, ct));
    }
}
