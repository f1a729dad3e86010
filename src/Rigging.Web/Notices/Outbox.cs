using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Storage;
using Rigging.Storage.Notices;

namespace Rigging.Web.Notices;

/// <summary>A notice that is to leave by e-mail, and to whom.</summary>
public sealed record Letter(Guid Notice, string Name, string Email, int Squawk, string Subject, string Body, int Attempts);

/// <summary>The notices that nobody has mailed yet. They were written with the entries they are about; here they are only read and marked.</summary>
public sealed class Outbox(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    /// <summary>So often a mail is tried before it is given up.</summary>
    public const int MostAttempts = 8;

    /// <summary>What is older than this is no news: a mail server that is set up today does not send last year's.</summary>
    public static readonly Duration News = Duration.FromDays(2);

    // Two hosts on one database take turns, so that nobody is told twice.
    const long TurnLock = 0x5249_474d_41_494c;

    /// <summary>Does something while no other host is sending; false when one is.</summary>
    public async Task<bool> InTurn(Func<Task> send, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await db.Database.OpenConnectionAsync(ct);
        if (!await db.Database.SqlQuery<bool>($"select pg_try_advisory_lock({TurnLock}) as \"Value\"").SingleAsync(ct)) return false;
        try
        {
            await send();
            return true;
        }
        finally
        {
            await db.Database.ExecuteSqlAsync($"select pg_advisory_unlock({TurnLock})", CancellationToken.None);
        }
    }

    /// <summary>Oldest first. What was read on the screen already, and what is for the invented school's people, stays.</summary>
    public async Task<List<Letter>> Due(CancellationToken ct)
    {
        var since = clock.GetCurrentInstant() - News;
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Notices.AsNoTracking()
            .Where(notice => notice.SentAt == null && notice.ReadAt == null && notice.Attempts < MostAttempts && notice.CreatedAt > since)
            .Join(db.People.Where(person => person.Email != null && !db.Users.Any(user => user.PersonId == person.Id && user.Demo)),
                notice => notice.PersonId, person => person.Id, (notice, person) => new { Notice = notice, Person = person })
            .Join(db.Squawks, row => row.Notice.SquawkId, squawk => squawk.Id, (row, squawk) => new { row.Notice, row.Person, squawk.Number })
            .OrderBy(row => row.Notice.CreatedAt).ThenBy(row => row.Notice.Id)
            .Select(row => new Letter(row.Notice.Id, row.Person.Name, row.Person.Email!, row.Number, row.Notice.Subject, row.Notice.Body, row.Notice.Attempts))
            .ToListAsync(ct);
    }

    public Task Sent(Letter letter, CancellationToken ct) => Mark(letter, notice => notice.SentAt = clock.GetCurrentInstant(), ct);

    public Task Failed(Letter letter, CancellationToken ct) => Mark(letter, notice => notice.Attempts++, ct);

    /// <summary>No further try makes it better.</summary>
    public Task GiveUp(Letter letter, CancellationToken ct) => Mark(letter, notice => notice.Attempts = MostAttempts, ct);

    async Task Mark(Letter letter, Action<NoticeRow> mark, CancellationToken ct)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Notices.SingleOrDefaultAsync(notice => notice.Id == letter.Notice, ct) is not { } notice) return;
        mark(notice);
        await db.SaveChangesAsync(ct);
    }
}
