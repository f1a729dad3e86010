using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Storage.Notices;

/// <summary>Who should hear of an entry: filed or grounded, your turn, back in service, and afterwards whether it is cured. One notice a person, the weightiest.</summary>
static class NoticeWriter
{
    static readonly Authority[] OfficeAndHangar = [Authority.Office, Authority.Mechanic, Authority.Inspector];

    /// <param name="before">The ledger without the entry.</param>
    /// <param name="after">The ledger with it.</param>
    public static async Task<IEnumerable<NoticeRow>> Write(RiggingDb db, Ledger before, Ledger after, Facts facts, CancellationToken ct)
    {
        var entry = after.Entries[^1];
        var state = after.State;
        var (was, now) = (Allowed(before, facts), Allowed(after, facts));
        var next = NextAct.Of(state);
        var turned = next is not null && next.Kind != NextAct.Of(before.State)?.Kind;
        // A guest hears of the one squawk only.
        var people = await db.People.AsNoTracking().Include(person => person.Authorities)
            .Where(person => person.LeftAt == null && (person.GuestOf == null || (person.GuestOf == after.Id && person.GuestUntil > facts.Now))).OrderBy(person => person.Number).ToListAsync(ct);
        var registration = await db.Aircraft.Where(row => row.Id == state.Report!.Aircraft).Select(row => row.Registration).SingleAsync(ct);

        return from person in people
               where person.Id != entry.By
               let held = person.Authorities.Select(row => row.Authority).ToList()
               let kind = KindFor(person.Id, held)
               where kind is not null
               select new NoticeRow
               {
                   SquawkId = after.Id,
                   Sequence = entry.Sequence,
                   Kind = kind.Value,
                   PersonId = person.Id,
                   Subject = $"S-{state.Report!.Number} {registration}: {Words(kind.Value)}",
                   Body = string.Join('\n', Body(kind.Value)),
                   CreatedAt = entry.At,
               };

        NoticeKind? KindFor(PersonId person, List<Authority> held) =>
            now == FlightStatus.Grounded && was != FlightStatus.Grounded && (person == state.Reporter || held.Intersect(OfficeAndHangar).Any()) ? NoticeKind.Grounded
            : before.Length == 0 && held.Intersect(OfficeAndHangar).Any() ? NoticeKind.Filed
            : before.Length > 0 && person == state.Reporter && was > FlightStatus.Limits && now <= FlightStatus.Limits ? NoticeKind.BackInService
            : entry.Fact is Closed && person == state.Reporter ? NoticeKind.AskedAgain
            : turned && held.Intersect(next!.By).Any() && IsTheirs(person) ? NoticeKind.YourTurn
            : null;

        // Whoever had a hand in the work cannot be the second pair of eyes on it.
        bool IsTheirs(PersonId person) => next!.Kind != typeof(Inspected) || !state.Workers.Contains(person);

        string Words(NoticeKind kind) => kind switch
        {
            NoticeKind.Filed => "a squawk was filed",
            NoticeKind.Grounded => "grounded",
            NoticeKind.YourTurn => "your turn",
            NoticeKind.AskedAgain => "closed: after three flights, say how it flies",
            _ => now == FlightStatus.Limits ? "back in service, with limits" : "back in service",
        };

        IEnumerable<string> Body(NoticeKind kind)
        {
            yield return $"The pilot wrote: {state.Report!.Words}";
            if (kind == NoticeKind.AskedAgain) yield return "When you have flown it three times, say how it flies now: in a note to this squawk if it is straight, in a new report if it is not.";
            if (kind == NoticeKind.Filed) yield return "Nobody flies it until the airworthiness call is made.";
            if (now == FlightStatus.Limits && state.Call?.Limits is { } limits) yield return $"Limits: {limits}";
            if (next is not null) yield return $"Next: {next.Sentence}";
        }
    }

    static FlightStatus Allowed(Ledger ledger, Facts facts) => ledger.State.FlightStatus > facts.OthersAllow ? ledger.State.FlightStatus : facts.OthersAllow;
}
