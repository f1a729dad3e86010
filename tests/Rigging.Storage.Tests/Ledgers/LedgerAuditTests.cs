using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Storage.Ledgers;

namespace Rigging.Storage.Tests.Ledgers;

public sealed class LedgerAuditTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);
    Ledger ledger = null!;

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        await school.InitializeAsync();
        await school.Walk();
        ledger = await school.Walk((school.Mechanic, SchoolHouse.Call), (school.Pilot, new Noted("It did it again.", null)));
    }

    public ValueTask DisposeAsync() => school.DisposeAsync();

    [Fact]
    public async Task Untouched_ledgers_verify()
    {
        var (ledgers, faults) = await school.Audit.Verify(Ct);

        Assert.Equal(2, ledgers);
        Assert.Empty(faults);
    }

    // One byte of each thing that is hashed, changed by someone who owns the database.
    [Theory]
    [InlineData("payload = overlay(payload placing ' ' from 1 for 0)")]
    [InlineData("payload = replace(payload, 'Mild', 'mild')")]
    [InlineData("kind = 'note'")]
    [InlineData("version = version + 1")]
    [InlineData("previous_hash = set_byte(previous_hash, 0, get_byte(previous_hash, 0) # 1)")]
    [InlineData("hash = set_byte(hash, 31, get_byte(hash, 31) # 1)")]
    public async Task One_byte_changed_by_the_owner_breaks_the_chain_and_names_the_entry(string change)
    {
        await AsOwner($"update ledger_entry set {change} where squawk_id = '{ledger.Id}' and sequence = 2");

        var (_, faults) = await school.Audit.Verify(Ct);

        var fault = Assert.Single(faults);
        Assert.Equal((ledger.Id, 2, 2), (fault.Squawk, fault.Number, fault.Sequence));
        Assert.StartsWith("S-2, entry 2: ", fault.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("delete from ledger_entry where squawk_id = '{0}' and sequence = 1", 1)]
    [InlineData("delete from ledger_entry where squawk_id = '{0}' and sequence = 2", 2)]
    [InlineData("delete from ledger_entry where squawk_id = '{0}' and sequence = 3", 3)]
    [InlineData("delete from ledger_entry where squawk_id = '{0}'", 1)]
    public async Task A_removed_entry_is_missed(string sql, int sequence)
    {
        await AsOwner(string.Format(null, sql, ledger.Id));

        var fault = Assert.Single((await school.Audit.Verify(Ct)).Faults);

        Assert.Equal((ledger.Id, sequence), (fault.Squawk, fault.Sequence));
    }

    [Fact]
    public async Task An_entry_of_another_squawk_does_not_fit()
    {
        await AsOwner($"update ledger_entry set squawk_id = '{ledger.Id}', sequence = 4 where squawk_id <> '{ledger.Id}'");

        var faults = (await school.Audit.Verify(Ct)).Faults;

        Assert.Contains(faults, fault => fault.Squawk == ledger.Id && fault.Sequence == 4);
    }

    [Fact]
    public async Task Every_projection_is_the_fold_of_its_ledger()
    {
        await school.Walk((school.Mechanic, new Called(Call.MayFlyWithLimits, "Until the weekend.", "No solo students.")));

        await using var db = school.CreateDbContext();
        foreach (var row in await db.Squawks.AsNoTracking().ToListAsync(Ct))
        {
            var folded = SquawkRow.Of((await school.Ledgers.Load(row.Id, Ct))!);
            Assert.Equivalent(folded, row, strict: true);
        }
    }

    /// <summary>What the ramp shows comes from the row: a row that somebody changed by SQL clears an aircraft.</summary>
    [Theory]
    [InlineData("flight_status = 'grounded'", "flight status 'Grounded' instead of 'MayFly'")]
    [InlineData("stage = 'closed'", "stage 'Closed' instead of 'Called'")]
    [InlineData("number = 77", "number '77' instead of '2'")]
    [InlineData("aircraft_id = gen_random_uuid()", "aircraft '")]
    [InlineData("reporter_id = gen_random_uuid()", "reporter '")]
    [InlineData("round = 2", "round '2' instead of '1'")]
    [InlineData("summary = 'Flies like a dream.'", "summary 'Flies like a dream.' instead of 'Rolls left hands off.'")]
    [InlineData("next_authorities = '{pilot}'", "whose turn it is 'Pilot' instead of 'Mechanic'")]
    public async Task A_row_changed_by_hand_is_named_and_what_it_says_with_it(string change, string named)
    {
        await Postgres.Execute(school.Database.Admin, $"update squawk set {change} where id = '{ledger.Id}'");

        var fault = Assert.Single((await school.Audit.Verify(Ct)).Faults);

        Assert.Equal(ledger.Id, fault.Squawk);
        Assert.Contains(named, fault.What, StringComparison.Ordinal);
        await school.Audit.Rebuild(Ct);
        Assert.Empty((await school.Audit.Verify(Ct)).Faults);
    }

    [Fact]
    public async Task What_a_ledger_bars_by_this_version_and_an_older_one_let_pass_is_barred_at_the_upgrade_and_told()
    {
        await Postgres.Execute(school.Database.Admin, "update squawk set flight_status = 'may-fly' where number = 1");

        var told = await school.Audit.Reword(Ct);

        Assert.Equal("S-1: its ledger bars more than was shown; the ramp says held now, and said no rigging hold.", Assert.Single(told));
        Assert.Empty((await school.Audit.Verify(Ct)).Faults);
    }

    [Fact]
    public async Task A_row_that_bars_more_than_its_ledger_is_evidence_and_is_not_put_right_in_passing()
    {
        await Postgres.Execute(school.Database.Admin, $"update squawk set flight_status = 'grounded', next_act = 'As it used to be put.' where id = '{ledger.Id}'");

        await school.Audit.Reword(Ct);

        Assert.Contains("flight status", Assert.Single((await school.Audit.Verify(Ct)).Faults).What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, null)]
    [InlineData("delete from attachment", "names a picture that is gone")]
    [InlineData("alter table attachment drop constraint ck_attachment_sha256; update attachment set bytes = 'forged'", "names a picture whose bytes were changed")]
    public async Task A_picture_that_an_entry_names_must_be_there_and_the_same(string? sql, string? fault)
    {
        var bytes = "a picture"u8.ToArray();
        var hash = SHA256.HashData(bytes);
        await using (var db = school.CreateDbContext())
        {
            db.Attachments.Add(new() { Sha256 = hash, MediaType = "image/jpeg", Bytes = bytes });
            await db.SaveChangesAsync(Ct);
        }
        var shown = Assert.IsType<Outcome.Appended>(await school.Ledgers.File(school.Pilot, school.Report() with { Photos = [new(Convert.ToHexStringLower(hash))] }, Ct)).Ledger;
        if (sql is not null) await Postgres.Execute(school.Database.Admin, $"alter table attachment disable trigger all; {sql}");

        var report = await school.Audit.Verify(Ct);

        Assert.Equal(sql is null ? 1 : 0, report.Pictures);
        if (fault is null) Assert.Empty(report.Faults);
        else Assert.Contains(fault, Assert.Single(report.Faults, found => found.Squawk == shown.Id && found.Sequence == 1).What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_ledger_carries_the_hash_of_its_own_last_entry_and_a_part_of_it_carries_none()
    {
        await using var db = school.CreateDbContext();
        var row = await db.Squawks.SingleAsync(squawk => squawk.Id == ledger.Id, Ct);

        Assert.Equal(row.HeadHash, (await school.Ledgers.Load(ledger.Id, Ct))!.Head);
        Assert.Equal(row.HeadHash, ledger.Head);
        Assert.Null(ledger.Before(2).Head);
    }

    [Fact]
    public async Task Rebuilding_restores_every_projection()
    {
        var before = await Projections();
        await Postgres.Execute(school.Database.Admin, "update squawk set stage = 'closed', summary = '', length = 9 where number = 1; delete from squawk where number = 2");

        var (written, faults) = await school.Audit.Rebuild(Ct);

        Assert.Equal(2, written);
        Assert.Empty(faults);
        Assert.Equal(before, await Projections());
        Assert.Empty((await school.Audit.Verify(Ct)).Faults);
    }

    [Fact]
    public async Task What_an_older_version_said_is_said_anew_and_a_projection_that_is_evidence_is_left()
    {
        await Postgres.Execute(school.Database.Admin, "update squawk set next_act = 'As it used to be put.'");
        await AsOwner($"delete from ledger_entry where squawk_id = '{ledger.Id}' and sequence = {ledger.Length}");

        await school.Audit.Reword(Ct);

        await using var db = school.CreateDbContext();
        var rows = await db.Squawks.AsNoTracking().ToListAsync(Ct);
        Assert.Equal("As it used to be put.", rows.Single(row => row.Id == ledger.Id).NextAct);
        Assert.Equal("Make the airworthiness call.", rows.Single(row => row.Id != ledger.Id).NextAct);
        Assert.Equal(ledger.Length, Assert.Single((await school.Audit.Verify(Ct)).Faults).Sequence);
    }

    [Fact]
    public async Task A_ledger_that_cannot_be_read_is_named_and_the_others_are_rebuilt()
    {
        await AsOwner($"update ledger_entry set payload = '[]' where squawk_id = '{ledger.Id}' and sequence = 2");

        var (written, faults) = await school.Audit.Rebuild(Ct);

        Assert.Equal(1, written);
        Assert.Equal(2, Assert.Single(faults).Sequence);
    }

    Task AsOwner(string sql) => Postgres.Execute(school.Database.Owner, $"alter table ledger_entry disable trigger ledger_entry_append_only; {sql}");

    Task<object?> Projections() => Postgres.Ask(school.Database.Admin, "select string_agg(s::text, ';' order by number) from squawk s");
}
