using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.Security;
using Rigging.Web.SignIn;

namespace Rigging.Web.Office;

/// <summary>A person's way in, once somebody has handed it over; null where something was wrong.</summary>
public sealed record WayIn(string? Link, IReadOnlyList<BrokenRule> Wrong)
{
    public static WayIn Refused(params IReadOnlyList<BrokenRule> wrong) => new(null, wrong);
}

/// <summary>Who comes in, and as what: the office's part. It hands out links, never passwords, and can neither read nor set one.</summary>
public sealed class Accounts(IDbContextFactory<RiggingDb> databases, UserManager<User> users, Actor actor, Badge badge, Sessions sessions, Invitations invitations, Watch watch, IClock clock)
{
    /// <summary>Null when the register has no such person, or whoever asks is not of the office.</summary>
    public async Task<PersonFile?> Show(int number, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.People.AsNoTracking().Include(row => row.Authorities).Include(row => row.Certificates).SingleOrDefaultAsync(row => row.Number == number, ct) is not { } person) return null;
        var signed = await db.Database.SqlQuery<SignedLine>($"""
            select s.number as "Squawk", e.sequence as "Sequence", e.kind as "Kind", e.payload_json->>'at' as "At"
            from ledger_entry e join squawk s on s.id = e.squawk_id
            where e.payload_json->'signature' is not null and e.payload_json->>'by' = {person.Id.Value.ToString()}
            order by e.payload_json->>'at' desc, s.number desc, e.sequence desc
            """).ToListAsync(ct);
        var guestOf = person.GuestOf is { } squawk ? await db.Squawks.Where(row => row.Id == squawk).Select(row => (int?)row.Number).SingleAsync(ct) : null;
        return new(await Registers.School(db, ct), person.Number, person.Name, person.Email, [.. person.Authorities.Select(held => held.Authority).Order()],
            guestOf, person.GuestUntil, person.LeftAt, person.ErasedAt, await sessions.Open(person.Id, ct), signed,
            await db.NameChanges.AsNoTracking().Where(change => change.PersonId == person.Id).OrderByDescending(change => change.At)
                .Select(change => new NameChange(change.At, change.FromName, change.ToName, change.Reason, db.People.Where(by => by.Id == change.ChangedBy).Select(by => by.Name).Single())).ToListAsync(ct));
    }

    public async Task<WayIn> Add(NewPerson person, CancellationToken ct = default)
    {
        if (!await badge.IsOffice(ct)) return WayIn.Refused(OfficeBooks.NotOffice);
        await using var db = await databases.CreateDbContextAsync(ct);
        var (id, wrong) = await (person with { Password = null }).Enter(db, users, ct);
        if (id is not { } entered) return WayIn.Refused(wrong);
        await watch.Note(SecurityEventKind.PersonAdded, entered, person.Visit is null ? "" : "as a guest", ct: ct);
        return await Link(entered, person.Visit?.Until, ct);
    }

    /// <summary>Asks in somebody from outside, for one squawk and no longer than until the end of that day.</summary>
    public async Task<WayIn> AskIn(NewPerson guest, int squawk, LocalDate lastDay, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Squawks.Where(row => row.Number == squawk).Select(row => (SquawkId?)row.Id).SingleOrDefaultAsync(ct) is not { } id)
            return WayIn.Refused(new BrokenRule("squawk-unknown", Gaps.Fill(Say.ThereIsNoSquawkS, squawk), "guest.squawk"));
        if (guest.Authorities.Contains(Authority.Office))
            return WayIn.Refused(new BrokenRule("guest-not-office", Say.GuestBelongsToHangarOrFlies, "guest.authorities"));
        var until = lastDay.PlusDays(1).AtStartOfDayInZone((await Registers.School(db, ct)).Zone).ToInstant();
        return until <= clock.GetCurrentInstant()
            ? WayIn.Refused(new BrokenRule("date-past", Gaps.Fill(Say.LastDayOfVisitIsOver, $"{lastDay:uuuu-MM-dd}"), "guest.until"))
            : await Add(guest with { Visit = new(id, until) }, ct);
    }

    /// <summary>Another way in for somebody who forgot the password. The old one counts until the new one is chosen.</summary>
    public Task<WayIn> Invite(int number, CancellationToken ct = default) => With(number, async (db, person) =>
        person.LeftAt is not null ? WayIn.Refused(new BrokenRule("person-left", Say.AccountIsClosedOpenItAgain)) : await Link(person.Id, person.GuestUntil, ct), WayIn.Refused, ct);

    public Task<IReadOnlyList<BrokenRule>> MayAct(int number, IReadOnlyList<Authority> authorities, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        if (person.GuestOf is not null && authorities.Contains(Authority.Office))
            return [new("guest-not-office", Say.GuestBelongsToHangarOrFlies, "authorities")];
        if (!authorities.Contains(Authority.Office) && await LastOfOffice(db, person.Id, ct) is { } last) return [last];
        person.Authorities.RemoveAll(held => !authorities.Contains(held.Authority));
        person.Authorities.AddRange(authorities.Where(wanted => !person.Authorities.Exists(held => held.Authority == wanted)).Select(wanted => new PersonAuthorityRow { Authority = wanted }));
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.AuthorityChanged, person.Id, Words.List(authorities), ct: ct);
        return [];
    }, ct);

    public Task<IReadOnlyList<BrokenRule>> EndSessions(int number, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        var ended = await sessions.End(person.Id, ct: ct);
        await watch.Note(SecurityEventKind.SessionEnded, person.Id, $"{ended}, by the office", ct: ct);
        return [];
    }, ct);

    /// <summary>The person left, or the visit is over: signed out everywhere, and nothing more is entered in their name. What they signed stands.</summary>
    public Task<IReadOnlyList<BrokenRule>> Close(int number, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        if (await LastOfOffice(db, person.Id, ct) is { } last) return [last];
        person.LeftAt = clock.GetCurrentInstant();
        await db.SaveChangesAsync(ct);
        await sessions.End(person.Id, ct: ct);
        await watch.Note(SecurityEventKind.AccountClosed, person.Id, "", ct: ct);
        return [];
    }, ct);

    public Task<IReadOnlyList<BrokenRule>> Reopen(int number, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        if (person.ErasedAt is not null) return [new("person-erased", Say.ErasedPersonDoesNot)];
        person.LeftAt = null;
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.AccountReopened, person.Id, "", ct: ct);
        return [];
    }, ct);

    /// <summary>A person's name as it is from now on. What was signed before stays under the name it was signed with.</summary>
    public Task<IReadOnlyList<BrokenRule>> Rename(int number, string? name, string? reason, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        if (person.ErasedAt is not null) return [new("person-erased", Say.ThisPersonIsErasedAlready, "newName")];
        if (name?.Trim() is not { Length: > 0 and <= LongestName } wanted) return [new("text-missing", Gaps.Fill(Say.NameWanted, LongestName), "newName")];
        if (wanted == person.Name) return [new("name-same", Gaps.Fill(Say.ThatIsTheNameOnFile, wanted), "newName")];
        if (reason?.Trim() is not { Length: > 0 } why) return [new("text-missing", Say.WhyNameChanges, "reason")];
        db.NameChanges.Add(new() { PersonId = person.Id, At = clock.GetCurrentInstant(), ChangedBy = await actor.Me(), FromName = person.Name, ToName = wanted, Reason = why });
        person.Name = wanted;
        await db.SaveChangesAsync(ct);
        await watch.Note(SecurityEventKind.PersonRenamed, person.Id, "", ct: ct);
        return [];
    }, ct);

    const int LongestName = 80;

    /// <summary>Takes name, contacts, certificate numbers, account and sessions out of the register for good. Entries and signatures stand, under a pseudonym, and every chain holds.</summary>
    /// <param name="typedName">The person's name, typed once more: it cannot be taken back.</param>
    public Task<IReadOnlyList<BrokenRule>> Erase(int number, string? typedName, CancellationToken ct = default) => With(number, async (db, person) =>
    {
        var wrong = await Erase(db, person, typedName, clock.GetCurrentInstant(), ct);
        if (wrong.Count == 0) await watch.Note(SecurityEventKind.PersonErased, person.Id, "", ct: ct);
        return wrong;
    }, ct);

    /// <summary>The same for whoever stands before the database itself.</summary>
    internal static async Task<IReadOnlyList<BrokenRule>> Erase(RiggingDb db, PersonRow person, string? typedName, Instant now, CancellationToken ct)
    {
        if (person.LeftAt is null) return [new("person-here", Say.CloseAccountFirst, "name")];
        if (person.ErasedAt is not null) return [new("person-erased", Say.ThisPersonIsErasedAlready, "name")];
        if (typedName?.Trim() != person.Name) return [new("name-differs", Gaps.Fill(Say.ThatIsNotNameWanted, typedName, person.Name), "name")];
        await using var transaction = await db.Database.BeginTransactionAsync(ct);
        (person.Name, person.Email, person.ErasedAt) = ($"person {person.Id.Value.ToString()[^6..]} (erased)", null, now);
        foreach (var held in person.Certificates) (held.Number, held.Ratings, held.RecentBecause) = ("(erased)", null, null);
        await db.SaveChangesAsync(ct);
        await db.NameChanges.Where(change => change.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await db.Users.Where(user => user.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await db.Drafts.Where(draft => draft.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await db.Notices.Where(notice => notice.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await db.Sessions.Where(session => session.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await db.Invitations.Where(invitation => invitation.PersonId == person.Id).ExecuteDeleteAsync(ct);
        await transaction.CommitAsync(ct);
        return [];
    }

    async Task<WayIn> Link(PersonId person, Instant? until, CancellationToken ct) =>
        new(Invitations.Address(await invitations.Make(person, await actor.Me(), until, ct)), []);

    /// <summary>A school whose office cannot be opened any more would be shut out of its own books.</summary>
    static async Task<BrokenRule?> LastOfOffice(RiggingDb db, PersonId person, CancellationToken ct) =>
        await db.People.AnyAsync(row => row.Id == person && row.Authorities.Any(held => held.Authority == Authority.Office), ct)
        && !await db.People.AnyAsync(row => row.Id != person && row.LeftAt == null && row.Authorities.Any(held => held.Authority == Authority.Office), ct)
            ? new("last-of-the-office", Say.NobodyElseBelongsToMaintenance)
            : null;

    Task<IReadOnlyList<BrokenRule>> With(int number, Func<RiggingDb, PersonRow, Task<IReadOnlyList<BrokenRule>>> act, CancellationToken ct) =>
        With(number, act, wrong => wrong, ct);

    async Task<T> With<T>(int number, Func<RiggingDb, PersonRow, Task<T>> act, Func<IReadOnlyList<BrokenRule>, T> refused, CancellationToken ct)
    {
        if (!await badge.IsOffice(ct)) return refused([OfficeBooks.NotOffice]);
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.People.Include(row => row.Authorities).Include(row => row.Certificates).SingleOrDefaultAsync(row => row.Number == number, ct) is { } person
            ? await act(db, person)
            : refused([new("person-unknown", Gaps.Fill(Say.ThereIsNoP, number))]);
    }
}

/// <param name="Signed">Everything this person signed, newest first.</param>
public sealed record PersonFile(
    SchoolOnFile School, int Number, string Name, string? Email, IReadOnlyList<Authority> Authorities, int? GuestOf, Instant? GuestUntil, Instant? LeftAt, Instant? ErasedAt,
    IReadOnlyList<OpenSession> Sessions, IReadOnlyList<SignedLine> Signed, IReadOnlyList<NameChange> NameChanges);

public sealed record NameChange(Instant At, string From, string To, string Reason, string By);

/// <param name="At">As in the entry: UTC.</param>
public sealed record SignedLine(int Squawk, int Sequence, string Kind, string At);
