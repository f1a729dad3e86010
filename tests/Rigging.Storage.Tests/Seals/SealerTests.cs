using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Storage.Seals;
using Rigging.Storage.Tests.Ledgers;

namespace Rigging.Storage.Tests.Seals;

public sealed class SealerTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);
    Ledger ledger = null!;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    Sealer Sealer => new(school, school.Clock);

    public async ValueTask InitializeAsync()
    {
        await school.InitializeAsync();
        await school.Walk();
        ledger = await school.Walk((school.Mechanic, SchoolHouse.Call), (school.Pilot, new Noted("It did it again.", null)));
    }

    public ValueTask DisposeAsync() => school.DisposeAsync();

    [Fact]
    public async Task A_day_is_sealed_once_when_it_has_ended_and_only_if_something_was_added()
    {
        var first = await Sealer.SealTheDay(Ct);
        var again = await Sealer.SealTheDay(Ct);
        school.Clock.AdvanceDays(1);
        var quiet = await Sealer.SealTheDay(Ct);
        await school.Walk();
        var second = await Sealer.SealTheDay(Ct);

        Assert.Equal((1, new LocalDate(2026, 3, 1), 2, 4), (first!.Number, first.Day, first.Heads.Count, first.Entries));
        Assert.Null(again);
        Assert.Null(quiet);
        Assert.Equal((2, new LocalDate(2026, 3, 2), 3, 5), (second!.Number, second.Day, second.Heads.Count, second.Entries));
        Assert.Equal(first.Hash, second.Previous);
        var report = await school.Audit.Verify(Ct);
        Assert.True(report.Holds, string.Join('\n', report.Lines));
        Assert.Equal((3, 5, 2), (report.Ledgers, report.Entries, report.Seals));
    }

    [Fact]
    public async Task Two_hosts_that_seal_at_once_make_one_seal()
    {
        var seals = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Sealer.SealNow(Ct)));

        Assert.Single(seals, seal => seal is not null);
        await using var db = school.CreateDbContext();
        Assert.Equal(1, await db.Seals.CountAsync(Ct));
    }

    [Fact]
    public async Task A_clock_that_goes_back_stops_neither_ledgers_nor_seals()
    {
        await Sealer.SealNow(Ct);
        school.Clock.Reset(SchoolHouse.Noon - Duration.FromDays(400));
        ledger = Assert.IsType<Storage.Ledgers.Outcome.Appended>(await school.Ledgers.Append(ledger.Id, ledger.Length, school.Pilot, new Noted("And again.", null), null, Ct)).Ledger;

        var seal = await Sealer.SealTheDay(Ct);

        Assert.True(ledger.Entries[^1].At < ledger.Entries[^2].At);
        Assert.Equal((2, 5), (seal!.Number, seal.Entries));
        Assert.True((await school.Audit.Verify(Ct)).Holds);
        Assert.Empty((await school.Audit.Rebuild(Ct)).Faults);
        Assert.Equal(ledger.State.Stage, (await school.Ledgers.Load(ledger.Id, Ct))!.State.Stage);
    }

    /// <summary>Whoever owns the database rewrites a chain so that it holds again, projection and all: only a seal shows it.</summary>
    [Fact]
    public async Task A_chain_rewritten_by_the_owner_holds_again_and_is_still_found()
    {
        await Sealer.SealNow(Ct);
        await Rewrite(ledger, 2, " Forged.");

        var report = await school.Audit.Verify(Ct);

        var fault = Assert.Single(report.Faults);
        Assert.Equal((ledger.Id, 2, 1), (fault.Squawk, fault.Number, fault.Sequence));
        Assert.Contains("up to 3 was written anew since seal 1 of 2026-03-02", fault.What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_rewritten_seal_too_is_found_by_the_one_that_was_kept_elsewhere()
    {
        var kept = (await Sealer.SealNow(Ct))!;
        await Rewrite(ledger, 2, " Forged.");
        await AsOwner("alter table seal disable trigger all; delete from seal");
        await Sealer.SealNow(Ct);

        Assert.True((await school.Audit.Verify(Ct)).Holds);
        var report = await school.Audit.Verify(Ct, kept);

        Assert.Equal(ledger.Id, Assert.Single(report.Faults).Squawk);
        Assert.Equal("Seal 1: stored here says something else than the one that was kept.", Assert.Single(report.SealFaults).ToString());
    }

    [Theory]
    [InlineData("update seal set text = replace(text, 'entries 4', 'entries 5') where number = 1", "Seal 1: its text was changed: it says 5 entries and lists 4.")]
    [InlineData("update seal set text = replace(text, 'day 2026-03-02', 'day 2026-03-01') where number = 1", "Seal 1: its text is not the one that was sealed.")]
    [InlineData("update seal set hash = sha256('x') where number = 1", "Seal 1: its text is not the one that was sealed.")]
    [InlineData("update seal set text = replace(text, 'day 2026-03-02', 'day 2026-03-01'), hash = sha256(replace(text, 'day 2026-03-02', 'day 2026-03-01')::bytea) where number = 1", "Seal 2: does not follow from the seal before it.")]
    [InlineData("delete from seal where number = 1", "Seal 1: is gone.")]
    public async Task A_seal_changed_by_the_owner_is_named(string sql, string fault)
    {
        await Sealer.SealNow(Ct);
        await school.Walk();
        await Sealer.SealNow(Ct);
        await AsOwner("alter table seal disable trigger all; " + sql);

        Assert.Equal(fault, (await school.Audit.Verify(Ct)).SealFaults[0].ToString());
    }

    [Fact]
    public async Task A_seal_of_another_school_proves_nothing_here()
    {
        var kept = (await Sealer.SealNow(Ct))! with { Installation = Guid.Empty };

        var fault = Assert.Single((await school.Audit.Verify(Ct, kept)).SealFaults);

        Assert.Contains("another installation", fault.What, StringComparison.Ordinal);
    }

    async Task Rewrite(Ledger from, int sequence, string forgery)
    {
        await using var db = school.CreateDbContext();
        var installation = (await db.Installations.SingleAsync(Ct)).Id;
        var previous = Chain.Root;
        var sql = "alter table ledger_entry disable trigger all; ";
        foreach (var entry in from.Entries)
        {
            var forged = entry.Sequence == sequence && entry.Fact is Called call ? entry with { Fact = call with { Reason = call.Reason + forgery } } : entry;
            var link = Chain.Seal(previous, installation, from.Id, forged);
            sql += $"update ledger_entry set payload = '{link.Payload.Replace("'", "''", StringComparison.Ordinal)}', previous_hash = '\\x{Convert.ToHexString(previous)}', hash = '\\x{Convert.ToHexString(link.Hash)}' where squawk_id = '{from.Id}' and sequence = {entry.Sequence}; ";
            previous = link.Hash;
        }
        await AsOwner(sql + $"update squawk set head_hash = '\\x{Convert.ToHexString(previous)}' where id = '{from.Id}'");
    }

    Task AsOwner(string sql) => Postgres.Execute(school.Database.Owner, sql);
}
