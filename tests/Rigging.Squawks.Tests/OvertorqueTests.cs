using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>A fastener that was pulled too far is on record as that, and nothing is signed until it is right.</summary>
public class OvertorqueTests
{
    static readonly TorqueApplied TooFar = Torque with { SettingInLb = 230, ReachedInLb = 230, TorqueStripe = false, OutOfLimitsDone = "Bolt and nut replaced, hole looked at." };

    static Ledger Pulled => InWork.Do(Mechanic, Found).Do(Mechanic, TooFar);

    [Fact]
    public void It_is_recorded_with_what_was_done_about_it_and_counts_as_no_torque()
    {
        Assert.Empty(Pulled.State.Torques);
        Assert.Empty(Pulled.State.StripesToSee);
        Assert.Equal([230], Pulled.State.OutOfLimits.Select(torque => torque.ReachedInLb));
    }

    [Fact]
    public void The_work_is_not_signed_until_the_same_fastener_is_within_its_limits()
    {
        string[] Codes(Ledger ledger) => School.Try(ledger.MeasuredAgain(), Mechanic, Done) is Decision.Refused { Broken: var broken } ? [.. broken.Select(rule => rule.Code)] : [];

        Assert.Contains("fastener-out-of-limits", Codes(Pulled));
        Assert.Contains("fastener-out-of-limits", Codes(Pulled.Do(Mechanic, Torque with { Fastener = "right rear spar attach bolt 3/8-24" })));
        Assert.Empty(Codes(Pulled.Do(Mechanic, Torque with { Fastener = $" {Torque.Fastener.ToUpperInvariant()} " })));
        Assert.Contains("fastener-out-of-limits", Codes(JustTorqued.Do(Mechanic, TooFar)));
    }

    [Fact]
    public void The_record_and_the_text_to_sign_tell_both()
    {
        var ledger = Pulled.Do(Mechanic, Torque).MeasuredAgain();

        var text = Squawk.TextToSign(ledger, Done, School.Facts(Mechanic));

        Assert.Contains("Torque above its limits: left rear spar attach bolt 3/8-24, reached 230 in·lb, at most 205 with wrench TW-3. Done about it: Bolt and nut replaced, hole looked at.", text, StringComparison.Ordinal);
        Assert.Contains("reached 190 in·lb", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_asked_about_is_recorded_with_its_answer()
    {
        var none = Torque with { RunOnInLb = 0, FinalMinInLb = 160, FinalMaxInLb = 190, SettingInLb = 180, ReachedInLb = 180, NoRunOnBecause = "New nut, felt at 0; ordered another." };
        var head = Torque with { Turned = TurnedPart.BoltHead, OtherPartBecause = "No room for a wrench at the nut; run-on measured at the head." };

        var text = Squawk.TextToSign(InWork.Do(Mechanic, Found).Do(Mechanic, none).Do(Mechanic, head).MeasuredAgain(), Done, School.Facts(Mechanic));

        Assert.Contains("No run-on torque, because: New nut, felt at 0; ordered another.", text, StringComparison.Ordinal);
        Assert.Contains("The figure is for the nut; the other was turned, because: No room for a wrench at the nut", text, StringComparison.Ordinal);
    }
}
