using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage.Attachments;

namespace Rigging.Storage.Ledgers;

/// <summary>Verifies chains against the stored bytes and writes projections anew from ledgers.</summary>
public sealed class LedgerAudit(IDbContextFactory<RiggingDb> databases)
{
    /// <summary>Chains, projections, pictures and seals. One fault per squawk at most: what follows a bad entry proves nothing.</summary>
    /// <param name="kept">A seal that was kept elsewhere: the one kind of evidence that whoever owns the database could not rewrite.</param>
    public async Task<AuditReport> Verify(CancellationToken ct, Seal? kept = null)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        // One moment: what is added meanwhile is nobody's fault.
        await using var snapshot = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, ct);
        var installation = await db.Installations.AsNoTracking().Select(row => row.Id).SingleOrDefaultAsync(ct);
        var rows = await db.Squawks.AsNoTracking().ToDictionaryAsync(row => row.Id, ct);
        var (seals, sealFaults) = await SealsIn(db, installation, kept, ct);
        List<LedgerFault> faults = [];
        Dictionary<SquawkId, IReadOnlyList<byte[]>> hashes = [];
        HashSet<string> counted = [];
        await foreach (var (id, entries) in Ledgers(db, ct))
        {
            hashes.Add(id, [.. entries.Select(entry => entry.Hash)]);
            rows.Remove(id, out var row);
            if ((FaultIn(installation, entries, row) ?? await PictureFault(db, entries, counted, ct)) is var (sequence, what))
                faults.Add(new(id, row?.Number, sequence, what));
        }
        faults.AddRange(rows.Values.Select(row => new LedgerFault(row.Id, row.Number, 1, "the whole ledger is gone; the projection remembers it.")));
        var named = faults.Select(fault => fault.Squawk).ToHashSet();
        faults.AddRange(SealAudit.Broken(seals, hashes).Where(broken => !named.Contains(broken.Head.Squawk))
            .Select(broken => new LedgerFault(broken.Head.Squawk, broken.Head.Number, broken.Sequence, broken.What)));
        return new(hashes.Count, hashes.Values.Sum(ledger => ledger.Count), seals.Count, counted.Count, faults, sealFaults);
    }

    /// <summary>The seals that hold together, in order, and what is wrong with the others.</summary>
    static async Task<(List<Seal>, List<SealFault>)> SealsIn(RiggingDb db, Guid installation, Seal? kept, CancellationToken ct)
    {
        List<Seal> seals = [];
        List<SealFault> faults = [];
        var (expected, previous) = (1, Seal.Nothing);
        foreach (var row in await db.Seals.AsNoTracking().OrderBy(row => row.Number).ToListAsync(ct))
        {
            if (row.Number != expected) faults.Add(new(expected, "is gone."));
            var (seal, fault) = Seal.Read(row.Text);
            if (seal is null)
                faults.Add(new(row.Number, $"its text was changed: {fault}."));
            else if (!row.Hash.AsSpan().SequenceEqual(Seal.HashOf(row.Text)) || seal.Number != row.Number || seal.Text != row.Text)
                faults.Add(new(row.Number, "its text is not the one that was sealed."));
            else if (row.Number == expected && !seal.Previous.AsSpan().SequenceEqual(previous))
                faults.Add(new(row.Number, "does not follow from the seal before it."));
            else if (seal.Installation != installation)
                faults.Add(new(row.Number, $"is of another installation ({seal.Installation})."));
            else
                seals.Add(seal);
            (expected, previous) = (row.Number + 1, row.Hash);
        }
        if (kept is null) return (seals, faults);

        if (kept.Installation != installation)
            faults.Add(new(kept.Number, $"the kept one is of another installation ({kept.Installation}; this is {installation})."));
        else
        {
            if (seals.Find(seal => seal.Number == kept.Number) is not { } stored)
                faults.Add(new(kept.Number, "was kept elsewhere and is not stored here."));
            else if (stored.Text != kept.Text)
                faults.Add(new(kept.Number, "stored here says something else than the one that was kept."));
            seals = [kept, .. seals];
        }
        return (seals, faults);
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
            var unreadable = Read(id, entries, ledger =>
            {
                if (row is null)
                    db.Squawks.Add(SquawkRow.Of(ledger));
                else
                    row.Show(ledger);
                written++;
            });
            if (unreadable is not null) faults.Add(new(id, row?.Number, FirstUnreadable(entries), "cannot be read: " + unreadable));
        }
        db.Squawks.RemoveRange(rows.Values);
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return (written, faults);
    }

    /// <summary>
    /// Says anew what the ledgers of open squawks prove, in the words of this version of the program, and bars what it bars. A projection
    /// that is not in step with its ledger is left as it is: it is evidence.
    /// </summary>
    /// <returns>Each squawk that bars more than its projection said, in a sentence.</returns>
    public async Task<IReadOnlyList<string>> Reword(CancellationToken ct)
    {
        List<string> barred = [];
        await using var db = await databases.CreateDbContextAsync(ct);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await db.Database.ExecuteSqlAsync($"lock table squawk in share row exclusive mode", ct);
        var rows = await db.Squawks.Where(row => Stages.Open.Contains(row.Stage)).ToListAsync(ct);
        var installation = await db.Installations.AsNoTracking().Select(row => row.Id).SingleOrDefaultAsync(ct);
        foreach (var row in rows)
        {
            var entries = await Entries(db, row.Id, ct);
            // One that cannot be read keeps its old words; 'rigging rebuild' names it.
            if (OutOfStep(installation, entries, row) is null)
                Read(row.Id, entries, ledger =>
                {
                    var (differences, before) = (row.Differences(SquawkRow.Of(ledger)).ToList(), row.FlightStatus);
                    if (!differences.TrueForAll(difference => difference.Newer)) return;
                    row.Show(ledger);
                    if (row.FlightStatus > before) barred.Add($"S-{row.Number}: its ledger bars more than was shown; the ramp says {Words.Of(row.FlightStatus)} now, and said {Words.Of(before)}.");
                });
        }
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return barred;
    }

    static (int, string)? FaultIn(Guid installation, List<SealedEntry> entries, SquawkRow? row)
    {
        if (OutOfStep(installation, entries, row) is { } fault) return fault;
        List<string> differences = [];
        if (Read(row!.Id, entries, ledger => differences.AddRange(row.Differences(SquawkRow.Of(ledger)).Select(one => $"{one.What} '{one.Says}' instead of '{one.Proved}'"))) is { } unreadable)
            return (FirstUnreadable(entries), "cannot be read: " + unreadable);
        return differences.Count == 0 ? null : (entries.Count, $"the projection says otherwise than the ledger proves: {string.Join("; ", differences)}. The row was changed by hand; 'rigging rebuild' writes it anew.");
    }

    /// <summary>The first entry that names a picture which is not there, or is another one.</summary>
    static async Task<(int, string)?> PictureFault(RiggingDb db, List<SealedEntry> entries, HashSet<string> counted, CancellationToken ct)
    {
        foreach (var entry in entries)
        {
            foreach (var hash in AttachmentRow.NamedIn(entry.Payload))
            {
                var name = Convert.ToHexStringLower(hash);
                if (counted.Contains(name)) continue;
                var bytes = await db.Attachments.AsNoTracking().Where(row => row.Sha256 == hash).Select(row => row.Bytes).SingleOrDefaultAsync(ct);
                if (bytes is null) return (entry.Sequence, $"names a picture that is gone (SHA-256 {name}).");
                if (!SHA256.HashData(bytes).AsSpan().SequenceEqual(hash)) return (entry.Sequence, $"names a picture whose bytes were changed (SHA-256 {name}).");
                counted.Add(name);
            }
        }
        return null;
    }

    static (int, string)? OutOfStep(Guid installation, List<SealedEntry> entries, SquawkRow? row)
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
            yield return (id, await Entries(db, id, ct));
    }

    static async Task<List<SealedEntry>> Entries(RiggingDb db, SquawkId id, CancellationToken ct) =>
        [.. (await db.Entries.AsNoTracking().Where(row => row.SquawkId == id).OrderBy(row => row.Sequence).ToListAsync(ct)).Select(row => row.Sealed())];

    /// <summary>Shows a ledger's projection; returns why it cannot be read, null when it can.</summary>
    static string? Read(SquawkId id, List<SealedEntry> entries, Action<Ledger> show)
    {
        try
        {
            show(Ledger.Of(id, entries));
            return null;
        }
        catch (Exception error) when (error is JsonException or InvalidOperationException)
        {
            return error.Message;
        }
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
