using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage.Ledgers;

namespace Rigging.Storage.Tests.Ledgers;

public sealed class LedgerStoreTests(Postgres postgres) : IAsyncLifetime
{
    readonly SchoolHouse school = new(postgres);

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => school.InitializeAsync();

    public ValueTask DisposeAsync() => school.DisposeAsync();

    [Fact]
    public async Task A_report_opens_a_squawk_with_the_next_number()
    {
        var first = await school.Walk();
        var second = await school.Walk();

        Assert.Equal((1, 2), (first.State.Report!.Number, second.State.Report!.Number));
        Assert.Equal(Stage.Reported, second.State.Stage);
    }

    [Fact]
    public async Task A_ledger_is_read_back_as_it_was_written()
    {
        var written = await school.Walk((school.Mechanic, SchoolHouse.Call));

        var read = (await school.Ledgers.Load(written.Id, Ct))!;

        Assert.Equal(written.Entries.Select(EntryCodec.Write), read.Entries.Select(EntryCodec.Write));
    }

    [Fact]
    public async Task Counted_adjusters_are_read_back_as_they_were_counted()
    {
        var found = new AsFound(new(null, null, null, null), null, Adjusters: [new(Control.LeftFlapRod, -1.5), new(Control.RightFlapRod, 0)]);
        var written = await school.Walk((school.Mechanic, SchoolHouse.Call), (school.Mechanic, found));

        var read = (await school.Ledgers.Load(written.Id, Ct))!;

        Assert.Equal(new Dictionary<Control, double> { [Control.LeftFlapRod] = -1.5, [Control.RightFlapRod] = 0 }, read.State.Adjusters);
    }

    [Fact]
    public async Task An_entry_says_who_and_when_to_the_millisecond()
    {
        school.Clock.Reset(SchoolHouse.Noon + Duration.FromNanoseconds(1_234_567));

        var ledger = await school.Walk();

        Assert.Equal(SchoolHouse.Noon + Duration.FromMilliseconds(1), ledger.Entries[0].At);
        Assert.Equal(school.Pilot, ledger.Entries[0].By);
    }

    [Fact]
    public async Task A_clock_that_jumps_back_and_forth_leaves_order_state_and_chain_alone()
    {
        var ledger = await school.Walk();
        foreach (var days in (int[])[-2, 400, -1, 0])
        {
            school.Clock.Reset(SchoolHouse.Noon + Duration.FromDays(days));
            var call = new Called(days == 400 ? Call.Grounded : Call.NoRiggingHold, $"{days} days off.", null);
            ledger = Assert.IsType<Outcome.Appended>(await school.Ledgers.Append(ledger.Id, ledger.Length, school.Mechanic, call, null, Ct)).Ledger;
        }

        var stored = (await school.Ledgers.Load(ledger.Id, Ct))!;

        Assert.Equal([1, 2, 3, 4, 5], stored.Entries.Select(entry => entry.Sequence));
        Assert.Equal([2, 4], stored.Entries.Where(stored.ClockWentBack).Select(entry => entry.Sequence));
        Assert.Equal("0 days off.", stored.State.Call!.Reason);
        Assert.True((await school.Audit.Verify(Ct)).Holds);
    }

    [Fact]
    public async Task A_stale_append_is_refused_shows_what_is_new_and_writes_nothing()
    {
        var seen = await school.Walk();
        var call = Assert.IsType<Outcome.Appended>(await school.Ledgers.Append(seen.Id, seen.Length, school.Mechanic, SchoolHouse.Call, null, Ct));

        var late = await school.Ledgers.Append(seen.Id, seen.Length, school.Inspector, SchoolHouse.Call with { Reason = "Mine." }, null, Ct);

        var stale = Assert.IsType<Outcome.Stale>(late);
        Assert.Equal([call.Entry.Sequence], stale.New.Select(entry => entry.Sequence));
        Assert.Equal(2, stale.Now.Length);
        Assert.Equal(2, await Entries(seen.Id));
    }

    [Fact]
    public async Task Of_appends_at_the_same_moment_exactly_one_wins()
    {
        var seen = await school.Walk();

        var outcomes = await Task.WhenAll(Enumerable.Range(1, 8).Select(n =>
            school.Ledgers.Append(seen.Id, seen.Length, school.Mechanic, new Noted($"Remark {n}", null), null, Ct)));

        Assert.Single(outcomes.OfType<Outcome.Appended>());
        Assert.Equal(7, outcomes.OfType<Outcome.Stale>().Count());
        Assert.Equal(2, await Entries(seen.Id));
    }

    [Fact]
    public async Task A_form_sent_twice_at_the_same_moment_is_one_squawk()
    {
        var id = SquawkId.Next();

        var outcomes = await Task.WhenAll(Enumerable.Range(1, 4).Select(_ => school.Ledgers.File(school.Pilot, id, school.Report(), Ct)));

        Assert.All(outcomes, outcome => Assert.Equal(1, Assert.IsType<Outcome.Appended>(outcome).Ledger.State.Report!.Number));
        Assert.Equal(1, await Entries(id));
    }

    [Fact]
    public async Task A_form_sent_again_with_other_words_is_refused_and_names_the_squawk()
    {
        var id = SquawkId.Next();
        await school.Ledgers.File(school.Pilot, id, school.Report(), Ct);

        var again = Assert.IsType<Outcome.Refused>(await school.Ledgers.File(school.Pilot, id, school.Report("Rolls left, and the ball is out."), Ct));
        var others = Assert.IsType<Outcome.Refused>(await school.Ledgers.File(school.Mechanic, id, school.Report(), Ct));

        Assert.Equal("already-filed", again.Broken[0].Code);
        Assert.Contains("S-1", again.Broken[0].Sentence, StringComparison.Ordinal);
        Assert.Equal("already-filed", others.Broken[0].Code);
        Assert.Equal(1, await Entries(id));
    }

    [Fact]
    public async Task A_report_without_an_account_is_stored_once_its_name_in_the_register_and_its_sender_unconfirmed()
    {
        var id = SquawkId.Next();

        var outcomes = await Task.WhenAll(Enumerable.Range(1, 3).Select(_ => school.Ledgers.FileUnconfirmed("Sam in the cockpit", id, school.Report(), Ct)));

        var entries = outcomes.Select(outcome => Assert.IsType<Outcome.Appended>(outcome).Entry).DistinctBy(entry => entry.By).ToList();
        var filed = Assert.Single(entries);
        await using var db = school.CreateDbContext();
        var person = Assert.Single(await db.People.Include(row => row.Authorities).Where(row => row.Name == "Sam in the cockpit").ToListAsync(Ct));
        Assert.Equal((Authority.Reporter, person.Id), (filed.As, filed.By));
        Assert.Equal([Authority.Reporter], person.Authorities.Select(held => held.Authority));
        Assert.DoesNotContain("Sam", EntryCodec.Write(filed), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_report_without_an_account_leaves_no_name_behind()
    {
        Assert.IsType<Outcome.Refused>(await school.Ledgers.FileUnconfirmed("Nobody stays", SquawkId.Next(), school.Report() with { CasKt = 900 }, Ct));

        await using var db = school.CreateDbContext();
        Assert.False(await db.People.AnyAsync(row => row.Name == "Nobody stays", Ct));
    }

    [Fact]
    public async Task Reports_filed_at_the_same_moment_get_numbers_without_a_gap()
    {
        var outcomes = await Task.WhenAll(Enumerable.Range(1, 8).Select(_ => school.Ledgers.File(school.Pilot, school.Report(), Ct)));

        var numbers = outcomes.Cast<Outcome.Appended>().Select(outcome => outcome.Ledger.State.Report!.Number).Order();
        Assert.Equal(Enumerable.Range(1, 8), numbers);
    }

    [Fact]
    public async Task What_the_rules_refuse_is_not_written()
    {
        var ledger = await school.Walk();

        var outcome = await school.Ledgers.Append(ledger.Id, ledger.Length, school.Pilot, SchoolHouse.Call, null, Ct);

        Assert.NotEmpty(Assert.IsType<Outcome.Refused>(outcome).Broken);
        Assert.Equal(1, await Entries(ledger.Id));
    }

    [Fact]
    public async Task An_unknown_squawk_aircraft_or_person_is_said_to_be_unknown()
    {
        var ledger = await school.Walk();
        var nobody = new PersonId(Guid.CreateVersion7());

        var squawk = await school.Ledgers.Append(SquawkId.Next(), 1, school.Mechanic, SchoolHouse.Call, null, Ct);
        var aircraft = await school.Ledgers.File(school.Pilot, school.Report() with { Aircraft = new(Guid.CreateVersion7()) }, Ct);
        var person = await school.Ledgers.Append(ledger.Id, 1, nobody, SchoolHouse.Call, null, Ct);

        Assert.IsType<Outcome.Unknown>(squawk);
        Assert.Equal("aircraft-unknown", Assert.Single(Assert.IsType<Outcome.Refused>(aircraft).Broken).Code);
        Assert.Equal("person-unknown", Assert.Single(Assert.IsType<Outcome.Refused>(person).Broken).Code);
        Assert.Null(await school.Ledgers.Load(SquawkId.Next(), Ct));
    }

    [Fact]
    public async Task Any_text_a_person_can_print_is_kept()
    {
        // The pair of the aeroplane sign sits where the summary is cut.
        var words = "Quote \" backslash \\u0000 tab \t line\nfeed é € ".PadRight(158, 'x') + "🛩 and on it goes.";

        var outcome = await school.Ledgers.File(school.Pilot, school.Report(words), Ct);

        var ledger = Assert.IsType<Outcome.Appended>(outcome).Ledger;
        Assert.Equal(words, (await school.Ledgers.Load(ledger.Id, Ct))!.State.Report!.Words);
        Assert.Empty((await school.Audit.Verify(Ct)).Faults);
        await using var db = school.CreateDbContext();
        Assert.Equal(words[..158] + "…", (await db.Squawks.SingleAsync(Ct)).Summary);
    }

    [Fact]
    public async Task A_text_that_cannot_be_stored_is_refused_not_an_error()
    {
        var nul = await school.Ledgers.File(school.Pilot, school.Report("NUL \0 here"), Ct);
        var half = await school.Ledgers.File(school.Pilot, school.Report("half a pair \ud83d here"), Ct);

        Assert.IsType<Outcome.Refused>(nul);
        Assert.IsType<Outcome.Refused>(half);
    }

    [Fact]
    public async Task The_rules_know_which_other_squawk_of_the_aircraft_asks_for_a_damage_inspection()
    {
        var ledger = await school.Walk();
        var called = await school.Walk((school.Mechanic, new Called(Call.Grounded, "Rolls too fast.", null)));
        var hard = await school.Walk((school.Mechanic, new Called(Call.Grounded, "The hirer rang.", null, [], [Happening.HardLanding])));

        var (_, facts) = (await school.Ledgers.Look(ledger.Id, school.Inspector, Ct))!.Value;

        Assert.Contains((called.Id, false), facts.OtherSquawks.Select(other => (other.Id, other.DamageSuspected)));
        Assert.Contains((hard.Id, true), facts.OtherSquawks.Select(other => (other.Id, other.DamageSuspected)));
    }

    [Fact]
    public async Task The_rules_rest_on_the_registers()
    {
        var ledger = await school.Walk();
        var other = await school.Walk((school.Mechanic, new Called(Call.Grounded, "Both hands needed.", null)));

        var (_, facts) = (await school.Ledgers.Look(ledger.Id, school.Inspector, Ct))!.Value;

        Assert.Equal([Authority.Inspector, Authority.Certifier], facts.Who.Authorities);
        Assert.Equal(["mechanic-airframe"], facts.Who.Certificates.Select(certificate => certificate.Kind));
        Assert.Equal([(other.Id, FlightStatus.Grounded)], facts.OtherSquawks.Select(o => (o.Id, o.Allows)));
        Assert.Equal((90, true), (facts.Airframe!.EccentricMaxAngleDeg, facts.Airframe.RigidPanel));
        Assert.Equal(1234.5, facts.TotalTime!.Hours);
        Assert.Equal(new(2026, 3, 2), facts.Today);
        // 25 N·m = 221.27 in·lb (1 in·lb = 0.112 985 N·m).
        Assert.Equal(221.27, Assert.Single(facts.Tools.Values).High!.Value, 0.005);
    }

    [Fact]
    public async Task Today_is_the_schools_day()
    {
        school.Clock.Reset(Instant.FromUtc(2026, 3, 2, 3, 0)); // the evening before in Chicago
        var ledger = await school.Walk();

        var (_, facts) = (await school.Ledgers.Look(ledger.Id, school.Pilot, Ct))!.Value;

        Assert.Equal(new(2026, 3, 1), facts.Today);
    }

    async Task<int> Entries(SquawkId id)
    {
        await using var db = school.CreateDbContext();
        return await db.Entries.CountAsync(entry => entry.SquawkId == id, Ct);
    }
}
