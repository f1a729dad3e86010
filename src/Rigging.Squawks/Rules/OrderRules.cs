using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

/// <summary>
/// Dates and times follow each other: what is entered late, and the day on which work is said to be completed, has its place among what is on record.
/// </summary>
/// <remarks>What is entered as it happens comes after everything on record by itself.</remarks>
static class OrderRules
{
    const string When = "happenedOn";

    public static IEnumerable<BrokenRule> Of(Fact fact, Ledger ledger, Facts facts)
    {
        var round = new Round(ledger);
        return fact switch
        {
            WorkStarted started => SinceTheLastWork(started, ledger, facts, inThisRound: false),
            GroundChecked check => SinceTheLastWork(check, ledger, facts, inThisRound: true),
            AsFound found => [.. SinceTheLastWork(found, ledger, facts, inThisRound: false), .. BeforeTheMove(found, round, facts), .. NotWhileSigned(found, round, facts)],
            TorqueApplied torque => [.. SinceTheStart(torque, round, facts), .. Torqued(torque, round, facts), .. NotWhileSigned(torque, round, facts)],
            WorkHandedOver handover => [.. SinceTheStart(handover, round, facts), .. NotWhileSigned(handover, round, facts)],
            TorqueRechecked again => Rechecked(again, ledger, facts),
            WorkDone done => [.. Completed(done, round, facts), .. TightSince(round, ledger.State)],
            _ => [],
        };
    }

    static bool IsAfter(Entry one, Entry other) => one.Moment() == other.Moment() ? one.Sequence > other.Sequence : one.Moment() > other.Moment();

    static Instant Moment(IMayComeLate fact, Facts facts) => fact.HappenedAt ?? facts.Now;

    /// <summary>A reading from before the last work tells of the aircraft as it stood then, and would be taken for what it left.</summary>
    static IEnumerable<BrokenRule> SinceTheLastWork(IMayComeLate fact, Ledger ledger, Facts facts, bool inThisRound)
    {
        if (ledger.Entries.LastOrDefault(entry => entry.Fact is WorkDone && (inThisRound || entry.Sequence < ledger.FirstOfRound)) is { Fact: WorkDone last } && facts.DayOf(fact) < last.CompletedOn)
            yield return new("before-the-last-work", $"{Day(facts.DayOf(fact))} is before the last work was completed, on {Day(last.CompletedOn)}: what was so before it is no longer. A note can say it.", When);
    }

    static IEnumerable<BrokenRule> SinceTheStart(IMayComeLate fact, Round round, Facts facts)
    {
        if (round.Started is { } started && Moment(fact, facts) < started)
            yield return new("before-the-work-started", $"The work was started {At(started, facts)}: nothing of it was done before that. Correct the time.", When);
    }

    static IEnumerable<BrokenRule> BeforeTheMove(AsFound found, Round round, Facts facts)
    {
        if (round.Torques.Select(entry => entry.Moment()).DefaultIfEmpty(Instant.MaxValue).Min() is var first && Moment(found, facts) > first)
            yield return new("as-found-after-the-move", $"A torque is on record {At(first, facts)}: as found is how it stood before it was moved. Give the time at which it was read, as a late entry.", When);
    }

    static IEnumerable<BrokenRule> Torqued(TorqueApplied torque, Round round, Facts facts)
    {
        var moment = Moment(torque, facts);
        if (round.AsFound is { } found && moment < found)
            yield return new("torqued-before-as-found", $"As found was read {At(found, facts)}: the move, and the torque after it, came later. Correct the time.", When);
        if (round.Loose is { } handover && moment < handover.Moment())
            yield return new("torqued-before-loose", $"The handover of {At(handover.Moment(), facts)} says: {((WorkHandedOver)handover.Fact).Loose} A torque from before it does not hold. Torque it now and record that.", When);
    }

    /// <summary>Between the mechanic's signature and the inspection that sends the work back nothing is moved.</summary>
    static IEnumerable<BrokenRule> NotWhileSigned(IMayComeLate fact, Round round, Facts facts)
    {
        foreach (var (signed, sentBack) in round.Signed)
            if (Moment(fact, facts) > signed && Moment(fact, facts) < sentBack)
                yield return new("after-the-work-was-signed", $"The work was signed {At(signed, facts)} and sent back {At(sentBack, facts)}: nothing is moved in between. Correct the time.", When);
    }

    static IEnumerable<BrokenRule> Rechecked(TorqueRechecked again, Ledger ledger, Facts facts)
    {
        if (ledger.Entries.FirstOrDefault(entry => entry.Sequence == again.TorqueEntry && entry.Fact is TorqueApplied) is { } torque && Moment(again, facts) < torque.Moment())
            yield return new("rechecked-before-torqued", $"It was torqued {At(torque.Moment(), facts)}: nobody can have looked at it again before that. Correct the time.", When);
    }

    static IEnumerable<BrokenRule> Completed(WorkDone done, Round round, Facts facts)
    {
        IEnumerable<(Instant? Moment, string What)> before =
        [
            (round.Started, "the work was started"),
            (round.AsFound, "as found was read"),
            (round.LastTorque, "a fastener was torqued"),
            (round.Loose is { } loose ? loose.Moment() : null, "something was left loose"),
        ];
        if (before.Where(known => known.Moment is { } moment && facts.DayOf(moment) > done.CompletedOn).Select(known => (Moment: known.Moment!.Value, known.What)).ToList() is { Count: > 0 } later)
            yield return new("completed-too-early", $"Completed on {Day(done.CompletedOn)}, but {later[^1].What} {At(later[^1].Moment, facts)}. Correct the day.", "completedOn");
    }

    /// <summary>A nut that was left loose holds nothing by an earlier torque.</summary>
    static IEnumerable<BrokenRule> TightSince(Round round, SquawkState state)
    {
        if (round.Loose is { Fact: WorkHandedOver handover } entry && state.Plans(Controls.MovesIncidence) && !round.Torques.Any(torque => IsAfter(torque, entry)))
            yield return new("torqued-before-loose", $"A handover says: {handover.Loose} No torque is on record since. Torque it and record that.", "torques");
    }

    static string Day(LocalDate day) => day.ToString("uuuu-MM-dd", null);

    static string At(Instant moment, Facts facts) => $"on {moment.InZone(facts.Zone).ToString("uuuu-MM-dd 'at' HH:mm", null)}";

    /// <summary>What is on record of the round now running.</summary>
    sealed class Round
    {
        public Round(Ledger ledger)
        {
            Entry[] entries = [.. ledger.Entries.Where(entry => entry.Sequence >= ledger.FirstOfRound)];
            Started = entries.FirstOrDefault(entry => entry.Fact is WorkStarted) is { } start ? start.Moment() : null;
            AsFound = entries.LastOrDefault(entry => entry.Fact is AsFound) is { } found ? found.Moment() : null;
            Torques = [.. entries.Where(entry => entry.Fact is TorqueApplied)];
            Loose = entries.Where(entry => entry.Fact is WorkHandedOver { Loose: not null }).MaxBy(entry => entry.Moment());
            Signed =
            [
                .. from signed in entries
                   where signed.Fact is WorkDone
                   let sentBack = entries.FirstOrDefault(entry => entry.Sequence > signed.Sequence && entry.Fact is Inspected { Passed: false })
                   where sentBack is not null
                   select (signed.At, sentBack.At),
            ];
        }

        public Instant? Started { get; }

        /// <summary>The one in force: what was read before and recorded again is history.</summary>
        public Instant? AsFound { get; }

        public IReadOnlyList<Entry> Torques { get; }

        /// <summary>Of what holds each fastener now: an application recorded again, with its own time, stands for the one before.</summary>
        public Instant? LastTorque => Torques.Count == 0 ? null
            : Torques.GroupBy(entry => ((TorqueApplied)entry.Fact).Fastener.Trim().ToUpperInvariant()).Max(same => same.Last().Moment());

        /// <summary>The last handover, by the time it speaks of, that left something loose.</summary>
        public Entry? Loose { get; }

        /// <summary>Each time the work was signed and sent back.</summary>
        public IReadOnlyList<(Instant At, Instant SentBack)> Signed { get; }
    }
}
