using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Storage.Ledgers;

/// <summary>Something in the stored ledgers that cannot be right.</summary>
/// <param name="Number">The squawk's number, as far as it is known.</param>
/// <param name="Sequence">The first bad entry.</param>
public sealed record LedgerFault(SquawkId Squawk, int? Number, int Sequence, string What)
{
    public override string ToString() => $"{(Number is { } number ? $"S-{number}" : Squawk)}, entry {Sequence}: {What}";
}

/// <summary>Verifies chains against the stored bytes and writes projections anew from ledgers.</summary>
public sealed class LedgerAudit(IDbContextFactory<RiggingDb> databases)
{
    /// <summary>One fault per squawk at most: what follows a bad entry proves nothing.</summary>
    public async Task<(int Ledgers, IReadOnlyList<LedgerFault> Faults)> Verify(CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var installation = await db.Installations.AsNoTracking().Select(row => row.Id).SingleOrDefaultAsync(ct);
        var rows = await db.Squawks.AsNoTracking().ToDictionaryAsync(row => row.Id, ct);
        List<LedgerFault> faults = [];
        var ledgers = 0;
        await foreach (var (id, entries) in Ledgers(db, ct))
        {
            ledgers++;
            rows.Remove(id, out var row);
            if (FaultIn(installation, entries, row) is var (sequence, what))
                faults.Add(new(id, row?.Number, sequence, what));
        }
        faults.AddRange(rows.Values.Select(row => new LedgerFault(row.Id, row.Number, 1, "the whole ledger is gone; the projection remembers it.")));
        return (ledgers, faults);
    }

    /// <summary>Makes every projection row equal to the fold of its ledger. A ledger that cannot be read keeps its old row and is named.</summary>
    public async Task<(int Written, IReadOnlyList<LedgerFault> Faults)> Rebuild(CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await db.Database.ExecuteSqlAsync($"lock table squawk in share row exclusive mode", ct);
        var rows = await db.Squawks.ToDictionaryAsync(row => row.Id, ct);
        List<LedgerFault> faults = [];
        var written = 0;
        await foreach (var (id, entries) in Ledgers(db, ct))
        {
            rows.Remove(id, out var row);
            try
            {
                var ledger = new Ledger(id, entries.Select(entry => entry.Open()));
                if (row is null)
                    db.Squawks.Add(SquawkRow.Of(ledger, entries[^1].Hash));
                else
                    row.Show(ledger, entries[^1].Hash);
                written++;
            }
            catch (Exception error) when (error is JsonException or InvalidOperationException)
            {
                faults.Add(new(id, row?.Number, FirstUnreadable(entries), "cannot be read: " + error.Message));
            }
        }
        db.Squawks.RemoveRange(rows.Values);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return (written, faults);
    }

    static (int, string)? FaultIn(Guid installation, List<SealedEntry> entries, SquawkRow? row)
    {
        if (Chain.FirstBroken(installation, entries) is { } broken)
            return (broken, "does not follow from the entries before it: it was changed, removed or put in by hand.");
        if (row is null)
            return (1, "has no projection; run 'rigging rebuild'.");
        if (row.Length > entries.Count)
            return (entries.Count + 1, $"is gone; the projection remembers {row.Length} entries.");
        if (row.Length < entries.Count)
            return (row.Length + 1, $"is unknown to the projection; run 'rigging rebuild'.");
        return row.HeadHash.AsSpan().SequenceEqual(entries[^1].Hash) ? null : (entries.Count, "is not the one that the projection remembers.");
    }

    // One ledger in memory at a time.
    static async IAsyncEnumerable<(SquawkId, List<SealedEntry>)> Ledgers(
        RiggingDb db, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken ct)
    {
        var ids = await db.Entries.AsNoTracking().Select(row => row.SquawkId).Distinct().OrderBy(id => id).ToListAsync(ct);
        foreach (var id in ids)
            yield return (id, [.. (await db.Entries.AsNoTracking().Where(row => row.SquawkId == id).OrderBy(row => row.Sequence).ToListAsync(ct)).Select(row => row.Sealed())]);
    }

    static int FirstUnreadable(List<SealedEntry> entries)
    {
        foreach (var entry in entries)
        {
            try
            {
                entry.Open();
            }
            catch (JsonException)
            {
                return entry.Sequence;
            }
        }
        return 1;
    }
}
