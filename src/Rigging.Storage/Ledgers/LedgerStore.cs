using System.Data;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;
using NodaTime;
using Npgsql;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage.Attachments;
using Rigging.Storage.Notices;
using Rigging.Storage.School;

namespace Rigging.Storage.Ledgers;

/// <summary>Reads and extends ledgers. Nothing else writes entries.</summary>
/// <remarks>
/// An append is one transaction: the aircraft's squawks are locked, the registers read, the rules asked,
/// then entry, projection and notices written together, or nothing at all.
/// </remarks>
public sealed class LedgerStore(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    /// <summary>Every listener of <see cref="LedgerListener"/> hears a squawk's id here.</summary>
    public const string Channel = "rigging";

    // Any constant will do, as long as everybody who gives out numbers takes the same.
    const long NumberLock = 0x5155_4157_4b;

    /// <summary>Null when there is no such squawk.</summary>
    public async Task<Ledger?> Load(SquawkId id, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var entries = await Sealed(db, id, ct);
        return entries.Count == 0 ? null : Ledger.Of(id, entries);
    }

    /// <summary>The ledger as it stands and what the rules would rest on for this person now: what a page asks before it offers a step.</summary>
    public Task<(Ledger Ledger, Facts Facts)?> Look(SquawkId id, PersonId who, CancellationToken ct) => Look(id, db => PersonReader.Read(db, who, ct), ct);

    /// <summary>The same for somebody who has no part in it, such as whoever prints or exports records.</summary>
    public Task<(Ledger Ledger, Facts Facts)?> Look(SquawkId id, CancellationToken ct) => Look(id, Nobody, ct);

    /// <summary>The same in the caller's transaction, so that everything it reads is of one moment.</summary>
    public Task<(Ledger Ledger, Facts Facts)?> LookIn(RiggingDb snapshot, SquawkId id, CancellationToken ct) => Look(snapshot, id, Nobody, ct);

    static Task<Person?> Nobody(RiggingDb db) => Task.FromResult<Person?>(new(new(Guid.Empty), [], []));

    async Task<(Ledger Ledger, Facts Facts)?> Look(SquawkId id, Func<RiggingDb, Task<Person?>> whoever, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await using var snapshot = await db.Database.BeginTransactionAsync(IsolationLevel.RepeatableRead, ct);
        return await Look(db, id, whoever, ct);
    }

    async Task<(Ledger Ledger, Facts Facts)?> Look(RiggingDb db, SquawkId id, Func<RiggingDb, Task<Person?>> whoever, CancellationToken ct)
    {
        if (await Sealed(db, id, ct) is not { Count: > 0 } entries || await whoever(db) is not { } person) return null;
        var ledger = Ledger.Of(id, entries);
        var installation = await db.Installations.AsNoTracking().SingleAsync(ct);
        return (ledger, await FactReader.Read(db, installation, ledger.State.Report!.Aircraft, id, person, clock.GetCurrentInstant(), ct));
    }

    /// <summary>Files a report: opens a squawk and gives it the school's next number.</summary>
    public Task<Outcome> File(PersonId who, Reported report, CancellationToken ct) => File(who, SquawkId.Next(), report, ct);

    /// <summary>Files a report under an id that travelled with the form: sent twice, it is stored once, and the second sending is answered like the first.</summary>
    public Task<Outcome> File(PersonId who, SquawkId id, Reported report, CancellationToken ct) => File(who, null, id, report, ct);

    /// <summary>A report by somebody without an account: the name as given goes into the register, in the same transaction, as that of a reporter whose identity nobody has confirmed.</summary>
    public Task<Outcome> FileUnconfirmed(string name, SquawkId id, Reported report, CancellationToken ct) => File(new(Guid.CreateVersion7()), name, id, report, ct);

    /// <param name="unconfirmedName">Null for a person who is in the register.</param>
    async Task<Outcome> File(PersonId who, string? unconfirmedName, SquawkId id, Reported report, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        await db.Database.ExecuteSqlAsync($"select pg_advisory_xact_lock({NumberLock})", ct);
        if (await Sealed(db, id, ct) is { Count: > 0 } filed)
            return SentAgain(Ledger.Of(id, filed), unconfirmedName is null ? who : null, report);
        if (!await db.Aircraft.AnyAsync(row => row.Id == report.Aircraft, ct))
            return new Outcome.Refused("aircraft-unknown", "This aircraft is not in the fleet; choose one that is.", "aircraft");

        if (unconfirmedName is not null)
        {
            db.People.Add(new()
            {
                Id = who,
                Number = (await db.People.MaxAsync(row => (int?)row.Number, ct) ?? 0) + 1,
                Name = unconfirmedName,
                Authorities = [new() { Authority = Authority.Reporter }],
            });
            await db.SaveChangesAsync(ct);
        }
        var number = (await db.Squawks.MaxAsync(row => (int?)row.Number, ct) ?? 0) + 1;
        var ledger = Ledger.Empty(id);
        var place = new Place(db, transaction, ledger, null, report.Aircraft);
        return await Write(place, who, report with { Number = number }, null, ct);
    }

    /// <param name="who">Null: somebody without an account, known by the form alone.</param>
    static Outcome SentAgain(Ledger ledger, PersonId? who, Reported report)
    {
        var (number, first) = (ledger.State.Report!.Number, ledger.Entries[0]);
        return (who is { } person ? first.By == person : first.As == Authority.Reporter) && EntryCodec.WriteFact(first.Fact) == EntryCodec.WriteFact(report with { Number = number })
            ? new Outcome.Appended(ledger, first)
            : new Outcome.Refused("already-filed", $"This form was filed before, as S-{number}, and what it says now differs. Add what is new to S-{number} as a note, or send it once more to file it as another report.");
    }

    /// <summary>Adds an entry, if the ledger still has the length the page saw and the rules allow it.</summary>
    public async Task<Outcome> Append(SquawkId id, int lengthSeen, PersonId who, Fact fact, Affirmation? affirmation, CancellationToken ct)
    {
        try
        {
            await using var db = await databases.CreateDbContextAsync(ct);
            await using var transaction = await db.Database.BeginTransactionAsync(ct);
            if (await Lock(db, id, ct) is not { } row)
                return new Outcome.Unknown();
            var entries = await Sealed(db, id, ct);
            var ledger = Ledger.Of(id, entries);
            if (ledger.Length != lengthSeen)
                return Stale(ledger, lengthSeen);
            var place = new Place(db, transaction, ledger, row, row.AircraftId);
            return await Write(place, who, fact, affirmation, ct);
        }
        catch (DbUpdateException error) when (error.InnerException is PostgresException
        {
            SqlState: PostgresErrorCodes.UniqueViolation, ConstraintName: EntryTable.Key,
        })
        {
            return Stale((await Load(id, ct))!, lengthSeen);
        }
    }

    /// <param name="Row">Null when the squawk is yet to be opened.</param>
    sealed record Place(RiggingDb Db, IDbContextTransaction Transaction, Ledger Ledger, SquawkRow? Row, AircraftId Aircraft);

    async Task<Outcome> Write(Place place, PersonId who, Fact fact, Affirmation? affirmation, CancellationToken ct)
    {
        var (db, transaction, ledger, row, aircraft) = place;
        var installation = await db.Installations.AsNoTracking().SingleAsync(ct);
        var facts = await FactReader.Read(db, installation, aircraft, ledger.Id, who, clock.GetCurrentInstant(), ct);
        if (facts is null)
            return new Outcome.Refused("person-unknown", "You are not in the school's register; the maintenance office can enter you.");
        facts = facts with { Affirmation = affirmation };

        switch (Squawk.Decide(ledger, fact, facts))
        {
            case Decision.Refused refused:
                return new Outcome.Refused(refused.Broken);

            case Decision.Accepted { Entry: var entry }:
                var link = Chain.Seal(ledger.Head!, installation.Id, ledger.Id, entry);
                // What verification would miss later is refused now.
                foreach (var picture in AttachmentRow.NamedIn(link.Payload))
                    if (!await db.Attachments.AnyAsync(kept => kept.Sha256 == picture, ct))
                        return new Outcome.Refused("picture-missing", "The entry names a picture that is not kept here; choose the picture again.", "photo");
                var grown = ledger.With(entry, link.Hash);
                db.Entries.Add(EntryRow.Of(link));
                if (row is null)
                    db.Squawks.Add(SquawkRow.Of(grown));
                else
                    row.Show(grown);
                db.Notices.AddRange(await NoticeWriter.Write(db, ledger, grown, facts, ct));
                await db.SaveChangesAsync(ct);
                await Aged(db, aircraft, entry.Fact, facts.Today, ct);
                await db.Database.ExecuteSqlAsync($"select pg_notify({Channel}, {ledger.Id.Value.ToString()})", ct);
                await transaction.CommitAsync(ct);
                return new Outcome.Appended(grown, entry);

            case var other:
                throw new InvalidOperationException($"A decision of kind {other.GetType().Name} is not known here.");
        }
    }

    // The register follows what was signed, and a correction whichever way it goes. Down to the tenth: the same hours may be signed again.
    static Task<int> Aged(RiggingDb db, AircraftId aircraft, Fact fact, LocalDate today, CancellationToken ct)
    {
        if (fact is not (WorkDone or TotalTimeCorrected)) return Task.FromResult(0);
        var (hours, on) = fact is WorkDone done ? (done.TotalTimeH, done.CompletedOn) : (((TotalTimeCorrected)fact).TotalTimeH, today);
        var (tenths, corrects) = ((int)Math.Floor((hours * 10) + 1e-6), fact is TotalTimeCorrected);
        return db.Aircraft.Where(row => row.Id == aircraft && (corrects || row.TotalTimeTenths < tenths || (row.TotalTimeTenths == tenths && (row.TotalTimeOn == null || row.TotalTimeOn < on))))
            .ExecuteUpdateAsync(set => set.SetProperty(row => row.TotalTimeTenths, tenths).SetProperty(row => row.TotalTimeOn, on), ct);
    }

    // All of the aircraft's squawks, in one order: what the others allow must not change under the decision, and no two appends can deadlock.
    static async Task<SquawkRow?> Lock(RiggingDb db, SquawkId id, CancellationToken ct)
    {
        var rows = await db.Squawks.FromSql(
            $"select * from squawk where aircraft_id = (select aircraft_id from squawk where id = {id.Value}) order by id for update").ToListAsync(ct);
        return rows.Find(row => row.Id == id);
    }

    static async Task<List<SealedEntry>> Sealed(RiggingDb db, SquawkId id, CancellationToken ct) =>
        [.. (await db.Entries.AsNoTracking().Where(row => row.SquawkId == id).OrderBy(row => row.Sequence).ToListAsync(ct)).Select(row => row.Sealed())];

    internal static async Task<Ledger> Open(RiggingDb db, SquawkId id, CancellationToken ct) => Ledger.Of(id, await Sealed(db, id, ct));

    static Outcome.Stale Stale(Ledger ledger, int lengthSeen) => new(ledger, [.. ledger.Entries.Skip(lengthSeen)]);
}
