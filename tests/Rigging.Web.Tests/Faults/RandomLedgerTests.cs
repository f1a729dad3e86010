using CsCheck;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;
using Rigging.Storage.Tests.Faults;

namespace Rigging.Web.Tests.Faults;

/// <summary>Random lives of squawks through the store: what is stored as their state is what their entries prove, by the fold and by the table on paper.</summary>
[Collection(InTheHangar.Name)]
public sealed class RandomLedgerTests(Hangar hangar)
{
    [Fact]
    public async Task The_stored_state_is_what_the_entries_prove()
    {
        var store = hangar.Site.Services.GetRequiredService<LedgerStore>();
        // Two of the walks' people are not in this school's register.
        foreach (var (person, name) in Walks.Cast[6..].Zip((string[])["Edda Everything", "Frank Frontdesk"]))
            await hangar.Site.AddPerson(name, $"{name.Split(' ')[0]}@school.example", [.. person.Authorities], id: person.Id,
                certificates: person.Certificates.Select(held => new CertificateRow { Id = held.Id, Kind = held.Kind, Number = "INV", ValidUntil = held.ValidUntil, RecentUntil = held.RecentUntil, RecentBecause = "The same as in the walks." }));
        HashSet<Stage> reached = [];
        // Of each stage the ledger that got there latest in its life: random lives mostly stay near their beginning.
        var latest = Walks.Same(400).SelectMany(life => Walks.Walk(life).Select(moment => moment.After).Where(ledger => ledger.Length > 0).GroupBy(ledger => ledger.State.Stage, (_, there) => there.Last()));
        foreach (var walked in latest.GroupBy(ledger => ledger.State.Stage).SelectMany(there => there.OrderByDescending(ledger => ledger.Length).Take(Rounds.Of(1))))
        {
            var number = await hangar.Squawk(new Ledger(walked.Id, walked.Entries.Take(1)));
            var id = (await hangar.Ledger(number)).Id;
            foreach (var entry in walked.Entries.Skip(1))
            {
                var (ledger, facts) = (await store.Look(id, entry.By, CancellationToken.None))!.Value;
                var hash = SignedText.Sha256(Squawk.TextToSign(ledger, entry.Fact, facts));
                await store.Append(id, ledger.Length, entry.By, entry.Fact, new("password", facts.Now, hash, hash), CancellationToken.None);
            }

            await using var db = hangar.Site.OpenDatabase();
            var row = await db.Squawks.AsNoTracking().SingleAsync(squawk => squawk.Id == id);
            var stored = await db.Entries.AsNoTracking().Where(entry => entry.SquawkId == id).OrderBy(entry => entry.Sequence).ToListAsync();
            var proved = Ledger.Of(id, [.. stored.Select(entry => entry.Sealed())]);
            Assert.Equivalent(SquawkRow.Of(proved), row, strict: true);
            Assert.Equal(OnPaper(proved), row.Stage);
            reached.Add(row.Stage);
        }
        // The squawk that the walks join to is not in this school.
        Assert.Equal(Enum.GetValues<Stage>().Except([Stage.Joined]), reached.Order());
    }

    /// <summary>The stage by the table that people wrote down, entry by entry.</summary>
    static Stage? OnPaper(Ledger ledger) => ledger.Entries.Aggregate((Stage?)null, (stage, entry) =>
    {
        var name = entry.Fact is Inspected { Passed: false } ? "independent-inspection, failed" : EntryCodec.KindOf(entry.Fact);
        return MovesOnPaper.Cells.Single(cell => cell.Entry == name && cell.At == stage).To ?? throw new InvalidOperationException($"{name} has no place at {stage}.");
    });
}
