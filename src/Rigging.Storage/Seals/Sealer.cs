using System.Data;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Storage.Seals;

/// <summary>Seals all ledgers under one root, each day that something was added.</summary>
public sealed class Sealer(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    // Two hosts that wake at once take turns.
    const long SealLock = 0x5249_4753_4541_4c;

    /// <summary>Makes the seal of the day that ended last, unless it is made, or nothing was added since.</summary>
    public Task<Seal?> SealTheDay(CancellationToken ct) => Make((last, today) => last?.Day == today.PlusDays(-1) ? null : today.PlusDays(-1), ct);

    /// <summary>Makes a seal of everything up to now; null when the last one still says it all.</summary>
    public Task<Seal?> SealNow(CancellationToken ct) => Make((_, today) => today, ct);

    async Task<Seal?> Make(Func<SealRow?, LocalDate, LocalDate?> dayFor, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await using var transaction = await db.Database.BeginTransactionAsync(IsolationLevel.ReadCommitted, ct);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({SealLock})", ct);
        if (await db.Installations.AsNoTracking().SingleOrDefaultAsync(ct) is not { } installation) return null;

        var last = await db.Seals.AsNoTracking().OrderByDescending(seal => seal.Number).FirstOrDefaultAsync(ct);
        var now = Instant.FromUnixTimeMilliseconds(clock.GetCurrentInstant().ToUnixTimeMilliseconds());
        if (dayFor(last, now.InZone(DateTimeZoneProviders.Tzdb[installation.TimeZone]).Date) is not { } day) return null;
        var heads = await Heads(db, ct);
        // The number of entries only grows, whatever the clock does.
        if (heads.Sum(head => head.Length) <= (last?.Entries ?? 0)) return null;

        var seal = new Seal((last?.Number ?? 0) + 1, installation.Id, day, now, last?.Hash ?? Seal.Nothing, heads);
        db.Seals.Add(new() { Number = seal.Number, Day = day, SealedAt = now, Ledgers = heads.Count, Entries = seal.Entries, Text = seal.Text, Hash = seal.Hash });
        await db.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
        return seal;
    }

    // From the entries themselves, in one statement and so of one moment: the projection is not what is sealed.
    static async Task<List<SealedHead>> Heads(RiggingDb db, CancellationToken ct) =>
        [.. (await db.Database.SqlQuery<HeadRow>($"""
            select last.squawk_id, (first.payload_json -> 'fact' ->> 'number')::int as number, last.sequence, last.hash
            from (select distinct on (squawk_id) squawk_id, sequence, hash from ledger_entry order by squawk_id, sequence desc) last
            left join ledger_entry first on first.squawk_id = last.squawk_id and first.sequence = 1
            order by number, squawk_id
            """).ToListAsync(ct)).Select(row => new SealedHead(new SquawkId(row.SquawkId), row.Number ?? 0, row.Sequence, row.Hash))];

    sealed record HeadRow(Guid SquawkId, int? Number, int Sequence, byte[] Hash);
}
