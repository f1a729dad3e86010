using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Records;

/// <summary>What is done with the school's records as a whole: checking them, taking a seal or a bundle away. Asked afresh each time who may.</summary>
public sealed class RecordsRoom(IDbContextFactory<RiggingDb> databases, LedgerAudit audit, Badge badge)
{
    /// <summary>Who answers for records: everybody in the school but those who are pilots only.</summary>
    static readonly Authority[] Keepers = [Authority.Office, Authority.Mechanic, Authority.Inspector, Authority.Certifier];

    static BrokenRule NotAKeeper => new("no-authority", Gaps.Fill(Say.RecordsAreFor, Words.Any(Keepers)));

    /// <summary>Why this person may not take records away or check them; null when they may.</summary>
    public async Task<BrokenRule?> Refused(CancellationToken ct = default)
    {
        return await badge.Mine(ct) is { Left: false, Visit: null } me && Keepers.Any(me.May) ? null : NotAKeeper;
    }

    public async Task<(BrokenRule? Refused, CheckedRecords? Records)> Check(CancellationToken ct = default)
    {
        if (await Refused(ct) is { } refused) return (refused, null);
        var report = await audit.Verify(ct);
        await using var db = await databases.CreateDbContextAsync(ct);
        return (null, new(await Registers.School(db, ct), report,
            await db.Seals.AsNoTracking().OrderByDescending(seal => seal.Number)
                .Select(seal => new SealLine(seal.Number, seal.Day, seal.SealedAt, seal.Ledgers, seal.Entries, Convert.ToHexStringLower(seal.Hash))).ToListAsync(ct)));
    }

    /// <summary>Null when there is no such seal, or this person may not have it.</summary>
    public async Task<string?> SealText(int number, CancellationToken ct = default)
    {
        if (await Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Seals.AsNoTracking().Where(seal => seal.Number == number).Select(seal => seal.Text).SingleOrDefaultAsync(ct);
    }
}

/// <param name="Seals">Newest first.</param>
public sealed record CheckedRecords(SchoolOnFile School, AuditReport Report, IReadOnlyList<SealLine> Seals);

public sealed record SealLine(int Number, LocalDate Day, Instant SealedAt, int Ledgers, int Entries, string Hash);
