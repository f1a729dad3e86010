using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Total time grows by what the days hold and no more; a wrong one is put right by an entry, and what was signed stays as it was signed.</summary>
public class TotalTimeTests
{
    static Decision Sign(double hours, double? again, int daysSince) =>
        Try(Torqued, Mechanic, Done with { TotalTimeH = hours, TotalTimeAgainH = again }, facts => facts with { TotalTime = new(1200, Today.PlusDays(-daysSince)) });

    static BrokenRule? Refusal(Decision decision) => decision is Decision.Refused refused ? Assert.Single(refused.Broken) : null;

    [Theory]
    [InlineData(1224, 0)]
    [InlineData(1248, 1)]
    [InlineData(1200, 5)]
    public void What_the_days_hold_is_taken_at_once(double hours, int daysSince) => Assert.Null(Refusal(Sign(hours, null, daysSince)));

    [Theory]
    [InlineData(1224.1, 0, "24 h")]
    [InlineData(1248.1, 1, "48 h")]
    [InlineData(12100, 30, "744 h")]
    public void A_jump_is_asked_about_twice_with_the_last_value_and_its_day(double hours, int daysSince, string held)
    {
        var broken = Refusal(Sign(hours, null, daysSince))!;

        Assert.Equal(("total-time-jump", "totalTimeAgainH"), (broken.Code, broken.Field));
        Assert.Contains($"1200 h of {Today.PlusDays(-daysSince):uuuu-MM-dd}", broken.Sentence, StringComparison.Ordinal);
        Assert.Contains(held, broken.Sentence, StringComparison.Ordinal);
        Assert.Equal("total-time-read-differently", Refusal(Sign(hours, hours - 0.1, daysSince))!.Code);
        Assert.Null(Refusal(Sign(hours, hours, daysSince)));
    }

    [Fact]
    public void A_total_time_read_twice_says_so_above_the_signature() =>
        Assert.Contains("Total time 12100 h, read twice.", Squawk.TextToSign(Torqued, Done with { TotalTimeH = 12100, TotalTimeAgainH = 12100 }, Facts(Mechanic)), StringComparison.Ordinal);

    [Fact]
    public void It_does_not_run_backwards_and_the_refusal_names_the_last_value_its_day_and_the_way_out()
    {
        var broken = Refusal(Sign(1199.9, null, 3))!;

        Assert.Equal(("total-time-backwards", "totalTimeH"), (broken.Code, broken.Field));
        Assert.Contains("1200 h of 2026-02-27", broken.Sentence, StringComparison.Ordinal);
        Assert.Contains("correct it first", broken.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_work_that_was_completed_before_the_day_on_record_fewer_hours_are_no_surprise_and_more_are()
    {
        Decision Earlier(double hours) => Try(TorquedDaysAgo(2), Mechanic, Done with { TotalTimeH = hours, CompletedOn = Today.PlusDays(-2) }, facts => facts with { TotalTime = new(1200, Today) });

        Assert.Null(Refusal(Earlier(1198)));
        Assert.Equal("total-time-jump", Refusal(Earlier(1200.1))!.Code);
    }

    static readonly TotalTimeCorrected Correction = new(1210.4, "Two figures were exchanged; the log says 1210.4.");

    static Ledger WronglySigned => Torqued.Do(Mechanic, Done with { TotalTimeH = 1240.1 });

    [Fact]
    public void A_correction_counts_from_then_on_and_the_certifier_signs_it_with_its_reason()
    {
        var approved = WronglySigned.Do(Inspector, Inspection).Do(Office, Correction).Do(Certifier, Approval);

        Assert.Equal(1210.4, approved.State.TotalTimeH);
        Assert.Equal(1210.4, approved.State.Approval!.Value.Fact.TotalTimeH);
        Assert.Equal(1240.1, approved.State.WorkDone!.Value.Fact.TotalTimeH);
        Assert.Contains($"Total time 1210.4 h, corrected by {SignedText.Token(Office.Id)} from the 1240.1 h signed with the work, because: Two figures were exchanged; the log says 1210.4.",
            approved.State.Approval.Value.Entry.Signature!.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_correction_keeps_what_stood_on_record_leaves_the_signature_alone_and_moves_nothing_on()
    {
        var corrected = WronglySigned.Do(Office, Correction);

        Assert.Equal(Correction with { WasH = 1200 }, corrected.Entries[^1].Fact);
        Assert.Equal((Stage.AwaitingInspection, WronglySigned.Entries[^1].Signature), (corrected.State.Stage!.Value, corrected.Entries[^2].Signature));
    }

    [Fact]
    public void Work_signed_again_has_its_own_total_time()
    {
        var again = WronglySigned.Do(Office, Correction).Do(Inspector, Inspection with { Passed = false }).Do(Mechanic, Done with { TotalTimeH = 1210.5 });

        Assert.Equal(1210.5, again.State.TotalTimeH);
    }

    [Fact]
    public void A_correction_says_why_and_corrects_something()
    {
        BrokenRule Refused(TotalTimeCorrected correction) => Refusal(Try(WronglySigned, Office, correction))!;

        Assert.Equal(("text-missing", "reason"), (Refused(Correction with { Reason = " " }).Code, Refused(Correction with { Reason = " " }).Field));
        Assert.Equal(("nothing-to-correct", "totalTimeH"), (Refused(Correction with { TotalTimeH = 1200 }).Code, Refused(Correction with { TotalTimeH = 1200 }).Field));
        Assert.Equal(("value-out-of-range", "totalTimeH"), (Refused(Correction with { TotalTimeH = -1 }).Code, Refused(Correction with { TotalTimeH = -1 }).Field));
    }
}
