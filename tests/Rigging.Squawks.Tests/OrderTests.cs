using CsCheck;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Dates and times follow each other, whatever is entered late.</summary>
public class OrderTests
{
    static Instant Ago(double hours) => Noon - Duration.FromHours(hours);

    static void Refused(string code, Ledger ledger, Person who, Fact fact)
    {
        var refused = Assert.IsType<Decision.Refused>(Try(ledger, who, fact));
        Assert.Equal([code], refused.Broken.Select(rule => rule.Code).Distinct());
        Assert.All(refused.Broken, rule => Assert.True(rule.Field is not null && rule.Sentence.EndsWith('.'), rule.Sentence));
    }

    static Ledger StartedAgo(double hours) => Agreed.Do(Mechanic, new WorkStarted("Padded stand.", null, Ago(hours)));

    static readonly WorkHandedOver LeftLoose = new("Bolt in, nut finger tight.", "left rear bolt LOOSE, do not move.");

    [Fact]
    public void Nothing_is_done_before_the_work_started()
    {
        Refused("before-the-work-started", StartedAgo(3), Mechanic, Torque with { HappenedAt = Ago(4) });
        Refused("before-the-work-started", StartedAgo(3), Mechanic, LeftLoose with { HappenedAt = Ago(4) });
        Assert.Equal(Ago(2), ((TorqueApplied)StartedAgo(3).Do(Mechanic, Torque with { HappenedAt = Ago(2) }).Entries[^1].Fact).HappenedAt);
    }

    [Fact]
    public void How_it_was_found_may_have_been_read_before_the_work_started() =>
        Assert.NotNull(StartedAgo(3).Do(Mechanic, Found with { HappenedAt = Ago(4) }).State.AsFound);

    [Fact]
    public void As_found_is_not_after_the_move()
    {
        Refused("as-found-after-the-move", StartedAgo(3).Do(Mechanic, Torque with { HappenedAt = Ago(2) }), Mechanic, Found);
        Refused("as-found-after-the-move", StartedAgo(3).Do(Mechanic, Torque with { HappenedAt = Ago(2) }), Mechanic, Found with { HappenedAt = Ago(1) });
        Refused("torqued-before-as-found", StartedAgo(3).Do(Mechanic, Found with { HappenedAt = Ago(1) }), Mechanic, Torque with { HappenedAt = Ago(2) });
        Assert.NotNull(StartedAgo(3).Do(Mechanic, Torque with { HappenedAt = Ago(2) }).Do(Mechanic, Found with { HappenedAt = Ago(2.5) }).State.AsFound);
    }

    [Fact]
    public void A_nut_on_record_as_loose_was_not_torqued_before()
    {
        var loose = StartedAgo(5).Do(Mechanic, Found with { HappenedAt = Ago(4) }).Do(Mechanic, LeftLoose with { HappenedAt = Ago(2) });
        Refused("torqued-before-loose", loose, Mechanic, Torque with { HappenedAt = Ago(3) });
        Assert.Single(loose.Do(Mechanic, Torque with { HappenedAt = Ago(1) }).State.Torques);
    }

    [Fact]
    public void A_nut_that_was_left_loose_after_its_torque_is_torqued_again_before_the_work_is_signed()
    {
        var tightByWordsAlone = Torqued.Do(Mechanic, LeftLoose).Do(Mechanic, new WorkHandedOver("All tight again.", null));
        Refused("torqued-before-loose", tightByWordsAlone, Mechanic, Done);
        Assert.Equal(Stage.AwaitingInspection, tightByWordsAlone.Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done).State.Stage);
    }

    [Fact]
    public void A_handover_that_is_entered_late_does_not_tighten_what_a_later_one_left_loose()
    {
        var loose = StartedAgo(5).Do(Mechanic, LeftLoose with { HappenedAt = Ago(1) });

        Assert.Equal(LeftLoose.Loose, loose.Do(Mechanic, new WorkHandedOver("All tight.", null, Ago(2))).State.Loose);
        Assert.Null(loose.Do(Mechanic, new WorkHandedOver("All tight.", null)).State.Loose);
    }

    [Fact]
    public void Work_is_not_completed_before_what_is_on_record_of_it()
    {
        Refused("completed-too-early", Torqued, Mechanic, Done with { CompletedOn = Today.PlusDays(-1) });
        Refused("completed-too-early", TorquedDaysAgo(2).Do(Mechanic, Torque).MeasuredAgain(), Mechanic, Done with { CompletedOn = Today.PlusDays(-1) });
        // The same fastener again, with the time that the first entry lacked.
        Assert.Equal(Stage.AwaitingInspection,
            TorquedDaysAgo(2).Do(Mechanic, Torque).Do(Mechanic, Torque with { HappenedAt = Ago(48) }).MeasuredAgain().Do(Mechanic, Done with { CompletedOn = Today.PlusDays(-1) }).State.Stage);
    }

    [Fact]
    public void The_refusal_says_what_is_on_record_and_when()
    {
        var refused = Assert.IsType<Decision.Refused>(Try(Torqued, Mechanic, Done with { CompletedOn = Today.PlusDays(-1) }));

        Assert.Equal("Completed on 2026-03-01, but a fastener was torqued on 2026-03-02 at 12:00. Correct the day.", Assert.Single(refused.Broken).Sentence);
    }

    static Ledger SentBack(double signedAgo, double sentBackAgo)
    {
        var torqued = StartedAgo(9).Do(Mechanic, Found with { HappenedAt = Ago(8) }).Do(Mechanic, Torque with { HappenedAt = Ago(7) }).MeasuredAgain(Ago(6.5));
        return DoneAgo(sentBackAgo, DoneAgo(signedAgo, torqued, Mechanic, Done), Inspector, Inspection with { Passed = false });
    }

    static Ledger DoneAgo(double hours, Ledger ledger, Person who, Fact fact) =>
        ledger.With(Assert.IsType<Decision.Accepted>(Try(ledger, who, fact, facts => facts with { Now = Ago(hours) })).Entry);

    [Fact]
    public void Nothing_is_moved_between_the_signature_and_the_inspection_that_sends_it_back()
    {
        var again = SentBack(signedAgo: 5, sentBackAgo: 3);

        Refused("after-the-work-was-signed", again, Mechanic, Torque with { HappenedAt = Ago(4) });
        Refused("after-the-work-was-signed", again, Mechanic, LeftLoose with { HappenedAt = Ago(4) });
        Assert.Equal(Stage.InWork, again.Do(Mechanic, Torque with { HappenedAt = Ago(2) }).State.Stage);
    }

    [Fact]
    public void A_torque_from_before_the_signature_is_none_since_it()
    {
        var again = SentBack(signedAgo: 5, sentBackAgo: 3);

        Assert.False(again.Do(Mechanic, Torque with { HappenedAt = Ago(6) }).State.TorqueSinceSigned);
        Assert.True(again.Do(Mechanic, Torque with { HappenedAt = Ago(2) }).State.TorqueSinceSigned);
    }

    [Fact]
    public void A_reading_from_before_the_last_work_does_not_count_after_it()
    {
        Refused("before-the-last-work", Worked, Mechanic, Measured(Entries.Check.RudderTab, 0) with { HappenedAt = Ago(24) });
        var secondRound = Flown.Do(Mechanic, Verdict(VerdictWord.AdjustAgain)).Do(Mechanic, new RoundOpened("Still heavy."));
        Refused("before-the-last-work", secondRound, Mechanic, Found with { HappenedAt = Ago(24) });
        Refused("before-the-last-work", secondRound.Do(Mechanic, HalfAFlat with { Moves = [new(Control.LeftEccentric, 15, 30, "Left wing: trailing edge down.")] }), Mechanic, new WorkStarted("Padded stand.", null, Ago(24)));
    }

    [Fact]
    public void A_torque_is_not_looked_at_again_before_it_was_applied() =>
        Refused("rechecked-before-torqued", School.Closed, Mechanic, new TorqueRechecked(JustTorqued.Length, true, true, "Stripe in line.", Ago(1)));

    // Whatever is tried, at whatever time it is said to have happened.

    sealed record Tried(int Kind, int Hours, int? LateMinutes, int CompletedDaysAgo);

    static readonly Gen<Tried[]> Tries = Gen.Select(Gen.Int[0, 13], Gen.Int[0, 20], Gen.Frequency((2, Gen.Const((int?)null)), (3, Gen.Int[-200, 4000].Select(minutes => (int?)minutes))), Gen.Int[-1, 3],
        (kind, hours, late, completed) => new Tried(kind, hours, late, completed)).Array[10, 60];

    static (Person Who, Fact Fact) FactOf(Tried step, Instant now)
    {
        Instant? happened = step.LateMinutes is { } minutes ? now - Duration.FromMinutes(minutes) : null;
        var completedOn = now.InUtc().Date.PlusDays(-step.CompletedDaysAgo);
        return step.Kind switch
        {
            0 => (Mechanic, new WorkStarted("Padded stand.", null, happened)),
            1 or 2 => (Mechanic, Found with { HappenedAt = happened }),
            3 or 4 => (Mechanic, Torque with { HappenedAt = happened }),
            5 => (Mechanic, LeftLoose with { HappenedAt = happened }),
            6 => (Mechanic, new WorkHandedOver("All tight.", null, happened)),
            7 or 8 => (Mechanic, Done with { CompletedOn = completedOn }),
            9 => (Inspector, Inspection with { Passed = false }),
            10 => (Inspector, Inspection),
            11 => (Mechanic, Checks[step.Hours % Checks.Length] with { HappenedAt = happened }),
            12 => (Mechanic, new Noted("Seen.", null, happened)),
            _ => (Certifier, Approval),
        };
    }

    static (Ledger Ledger, List<string> Codes) Live(Tried[] steps)
    {
        var (ledger, now, codes) = (Agreed, Noon, new List<string>());
        foreach (var step in steps)
        {
            now += Duration.FromHours(step.Hours);
            var (who, fact) = FactOf(step, now);
            Decision Try(Ledger at, Person by, Fact what) =>
                School.Try(at, by, what, facts => facts with { Now = now, Tools = facts.Tools.ToDictionary(tool => tool.Key, tool => tool.Value with { CalibrationDue = LocalDate.MaxIsoValue }) });
            // Whoever signs has measured again what the move changed.
            if (fact is WorkDone && ledger.State.Stage == Stage.InWork)
                foreach (var recheck in RecheckRules.Asked(ledger.State, School.Airframe).Where(recheck => !recheck.IsDone))
                    if (Try(ledger, Mechanic, Again(recheck)) is Decision.Accepted again) ledger = ledger.With(again.Entry);
            switch (Try(ledger, who, fact))
            {
                case Decision.Accepted accepted: ledger = ledger.With(accepted.Entry); break;
                case Decision.Refused refused: codes.AddRange(refused.Broken.Select(rule => rule.Code)); break;
            }
        }
        return (ledger, codes);
    }

    static Instant Of(Entry entry) => entry.Fact is IMayComeLate { HappenedAt: { } happened } ? happened : entry.At;

    static void IsInOrder(Ledger ledger)
    {
        Assert.All(ledger.Entries, entry => Assert.True(Of(entry) <= entry.At, $"{entry.Sequence} has not happened yet"));
        var start = ledger.Entries.FirstOrDefault(entry => entry.Fact is WorkStarted);
        List<Entry> work = [.. ledger.Entries.Where(entry => entry.Fact is TorqueApplied or WorkHandedOver)];
        Assert.All(work, entry => Assert.True(Of(entry) >= Of(start!), $"{entry.Sequence} is before the start"));
        Entry[] torques = [.. work.Where(entry => entry.Fact is TorqueApplied)];
        foreach (var found in ledger.Entries.Where(entry => entry.Fact is AsFound))
            Assert.All(torques.Where(torque => torque.Sequence < found.Sequence), torque => Assert.True(Of(torque) >= Of(found), $"{found.Sequence} was found after the move {torque.Sequence}"));
        foreach (var torque in torques)
        {
            if (ledger.Entries.LastOrDefault(entry => entry.Fact is AsFound && entry.Sequence < torque.Sequence) is { } found) Assert.True(Of(torque) >= Of(found));
            Assert.All(ledger.Entries.Where(entry => entry.Sequence < torque.Sequence && entry.Fact is WorkHandedOver { Loose: not null }), loose => Assert.True(Of(torque) >= Of(loose), $"{torque.Sequence} was loose"));
        }
        foreach (var signed in ledger.Entries.Where(entry => entry.Fact is WorkDone))
        {
            var completed = ((WorkDone)signed.Fact).CompletedOn;
            Assert.True(completed <= signed.At.InUtc().Date, $"{signed.Sequence} is signed before it was completed");
            Assert.True(completed >= Of(start!).InUtc().Date);
            // One fastener: its last application is the one that holds.
            Assert.True(torques.Last(torque => torque.Sequence < signed.Sequence) is var held && completed >= Of(held).InUtc().Date, $"{signed.Sequence} was completed before {held.Sequence}");
            var loose = work.Where(entry => entry.Sequence < signed.Sequence && entry.Fact is WorkHandedOver { Loose: not null }).ToList();
            Assert.All(loose, entry => Assert.Contains(torques, torque => torque.Sequence < signed.Sequence && Of(torque) >= Of(entry)));
            if (ledger.Entries.FirstOrDefault(entry => entry.Sequence > signed.Sequence && entry.Fact is Inspected { Passed: false }) is { } back)
                Assert.DoesNotContain(work, entry => entry.Sequence > back.Sequence && Of(entry) > signed.At && Of(entry) < back.At);
            Assert.DoesNotContain(ledger.Entries, entry => entry.Sequence > signed.Sequence && entry.Fact is GroundChecked && Of(entry).InUtc().Date < completed);
        }
    }

    [Fact]
    public void No_ledger_that_was_accepted_has_facts_out_of_order() => Tries.Sample(steps => IsInOrder(Live(steps).Ledger), iter: 400);

    [Fact]
    public void Every_rule_of_order_is_met_and_work_is_signed_on_the_way()
    {
        var lives = Tries.Array[400].Single(_ => true, "0000KOIPJaf0").Select(Live).ToList();

        Assert.Superset(
            new HashSet<string> { "date-in-future", "before-the-work-started", "as-found-after-the-move", "torqued-before-as-found", "torqued-before-loose", "after-the-work-was-signed", "completed-too-early", "before-the-last-work" },
            lives.SelectMany(life => life.Codes).ToHashSet());
        Assert.True(lives.Count(life => life.Ledger.Entries.Any(entry => entry.Fact is WorkDone)) > 40);
        Assert.True(lives.Count(life => life.Ledger.Entries.Any(entry => entry.Fact is TorqueApplied { HappenedAt: not null })) > 40);
    }
}
