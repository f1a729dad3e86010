using System.Text.Json;
using CsCheck;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.Walks;
using Check = Rigging.Squawks.Entries.Check;

namespace Rigging.Squawks.Tests;

/// <summary>What must hold in every life of a squawk, however odd.</summary>
public class FoldTests
{
    const int Lives = 150;

    static void Always(Action<Moment> holds) => All.Sample(steps => { foreach (var moment in Walk(steps)) holds(moment); }, iter: Lives);

    /// <summary>Everything a state says, in a form that compares by value.</summary>
    static string Told(SquawkState state) => JsonSerializer.Serialize(state, Deep);

    static readonly JsonSerializerOptions Deep = new() { IncludeFields = true };

    [Fact]
    public void The_walks_reach_every_stage_and_end_squawks_in_every_way() =>
        Assert.Equal(Enum.GetValues<Stage>(), Same(400).SelectMany(Walk).Select(moment => moment.After.State.Stage).OfType<Stage>().Distinct().Order());

    [Fact]
    public void A_refusal_has_a_code_and_a_sentence_and_leaves_the_ledger_alone() => Always(moment =>
    {
        if (moment.Decision is not Decision.Refused { Broken: var broken }) return;
        Assert.NotEmpty(broken);
        Assert.All(broken, b => Assert.Matches("^[a-z]+(-[a-z]+)*$", b.Code));
        Assert.All(broken, b => Assert.EndsWith(".", b.Sentence, StringComparison.Ordinal));
        Assert.Same(moment.Before, moment.After);
    });

    [Fact]
    public void The_same_question_gets_the_same_answer() => Always(moment => Assert.Equal(Said(moment.Decision), Said(moment.Again())));

    static string Said(Decision decision) => decision switch
    {
        Decision.Accepted { Entry: var entry } => EntryCodec.Write(entry),
        Decision.Refused { Broken: var broken } => string.Join('\n', broken),
        _ => throw new ArgumentOutOfRangeException(nameof(decision)),
    };

    [Fact]
    public void An_accepted_entry_is_the_next_in_line_whole_in_milliseconds_signed_where_it_must_be_and_stored_as_it_reads() => Always(moment =>
    {
        if (moment.Decision is not Decision.Accepted { Entry: var entry }) return;
        Assert.Equal(moment.Before.Length + 1, entry.Sequence);
        Assert.Equal(entry.At, NodaTime.Instant.FromUnixTimeMilliseconds(entry.At.ToUnixTimeMilliseconds()));
        Assert.Equal(MoveTable.MustBeSigned(entry.Fact, moment.Before.State), entry.Signature is not null);
        Assert.Equal(EntryCodec.Write(entry), EntryCodec.Write(EntryCodec.Read(entry.Sequence, EntryCodec.KindOf(entry.Fact), 1, EntryCodec.Write(entry))));
    });

    [Fact]
    public void The_state_read_back_from_stored_bytes_is_the_state_that_was() => All.Sample(steps =>
    {
        var ledger = End(steps);
        var stored = ledger.Entries.Select(entry => (entry.Sequence, Kind: EntryCodec.KindOf(entry.Fact), Payload: EntryCodec.Write(entry)));

        var again = new Ledger(ledger.Id, stored.Select(s => EntryCodec.Read(s.Sequence, s.Kind, 1, s.Payload)));

        Assert.Equal(Told(ledger.State).Replace("-0,", "0,", StringComparison.Ordinal), Told(again.State).Replace("-0,", "0,", StringComparison.Ordinal));
        Assert.Equal(ledger.State.FlightStatus, again.State.FlightStatus);
    }, iter: Lives);

    /// <summary>An own account, from the entries alone, of how far the aircraft is from its last disturbance.</summary>
    static (bool Disturbed, bool Barred) Account(Ledger ledger) => ledger.Entries.Aggregate((Disturbed: false, Barred: false), (seen, entry) => entry.Fact switch
    {
        WorkStarted or WorkDone or Inspected => (true, false),
        Approved => (false, true),
        CheckFlown => (false, false),
        _ => seen,
    });

    [Fact]
    public void Nobody_flies_between_the_start_of_work_and_its_approval() => Always(moment =>
    {
        if (Account(moment.After).Disturbed) Assert.True(moment.After.State.FlightStatus >= FlightStatus.Held);
    });

    [Fact]
    public void Crew_only_is_what_an_approval_gives_and_nothing_else_does() => Always(moment =>
    {
        var (state, barred) = (moment.After.State, Account(moment.After).Barred);
        if (barred) Assert.True(state.FlightStatus is FlightStatus.CrewOnly or FlightStatus.Grounded);
        if (state.FlightStatus == FlightStatus.CrewOnly) Assert.True(barred);
    });

    [Fact]
    public void The_office_never_lets_an_aircraft_fly_that_could_not() => Always(moment =>
    {
        if (moment.Decision is Decision.Accepted { Entry.As: Authority.Office })
            Assert.True(moment.After.State.FlightStatus >= moment.Before.State.FlightStatus);
    });

    [Fact]
    public void A_red_flag_or_damage_grounds_until_a_damage_inspection_is_clear() => Always(moment =>
    {
        var cleared = moment.After.Entries.LastOrDefault(e => e.Fact is GroundChecked { Check: Check.DamageInspection, Clear: true })?.Sequence ?? 0;
        var flagged = moment.After.Entries.LastOrDefault(e => e.Fact is Reported { RedFlags.Count: > 0 } or GroundChecked { Check: Check.DamageInspection, Clear: false }
            || e.Fact is Inspected seen && seen.Observations.Any(o => o.Seen is not Seen.NotRecorded && o.Seen != o.Expected))?.Sequence ?? 0;
        if (flagged > cleared) Assert.Equal(FlightStatus.Grounded, moment.After.State.FlightStatus);
    });

    [Fact]
    public void No_approval_flight_or_ending_follows_upon_a_grounding() => Always(moment =>
    {
        if (moment.Decision is Decision.Accepted { Entry.Fact: Called { Call: Call.Grounded } })
            Assert.True(moment.After.State.FlightStatus >= FlightStatus.Held);
        if (moment.After.Entries is [.., { Fact: Called { Call: Call.Grounded } }, { Fact: Approved or CheckFlown or Closed or NoFaultFound or WithinLimits or HandedOver }])
            Assert.Fail($"{moment.Fact} over a grounding.");
    });

    [Fact]
    public void The_next_act_is_one_that_somebody_here_may_do() => Always(moment =>
    {
        if (NextAct.Of(moment.After.State) is not { } next) return;
        Assert.Contains(Cast, person => next.By.Any(person.May) && Squawk.WhatBlocks(next.Kind, moment.After, School.Facts(person)).Count == 0);
    });

    [Fact]
    public void An_aircraft_may_do_what_the_worst_of_its_squawks_allows() => Gen.Enum<FlightStatus>().Array[0, 6].Sample(others =>
    {
        var facts = School.Facts(School.Pilot) with { OtherSquawks = [.. others.Select((status, i) => new OtherSquawk(new(Guid.NewGuid()), i, status))] };
        var worst = others.Append(School.Called.State.FlightStatus).Max();

        Assert.Equal(others.Append(FlightStatus.MayFly).Max(), facts.OthersAllow);
        Assert.Equal(worst <= FlightStatus.Limits, Squawk.WhatBlocks<EvaluationFlown>(School.Called, facts).Count == 0);
        Assert.Equal(facts.OthersAllow <= FlightStatus.CrewOnly, Squawk.WhatBlocks<CheckFlown>(School.Approved, facts).Count == 0);
    }, iter: 300);
}
