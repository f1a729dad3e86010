using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>What one entry means for those that follow.</summary>
public class ConsequenceTests
{
    [Fact]
    public void Nothing_can_go_on_that_does_not_wait() => Assert.Equal(["not-waiting"],
        Assert.IsType<Decision.Refused>(Try(School.Called, Office, new Resumed("Parts are here."))).Broken.Select(b => b.Code));

    [Fact]
    public void An_inspector_who_finds_a_loose_bolt_may_fail_it_without_moving_a_control()
    {
        var failed = Worked.Do(Inspector, Inspection with { Passed = false, Observations = [], Findings = "Rear bolt loose by hand." });

        Assert.Equal((Stage.InWork, false, FlightStatus.Held), (failed.State.Stage!.Value, failed.State.RedFlagged, failed.State.FlightStatus));
    }

    [Fact]
    public void A_control_seen_to_move_the_wrong_way_grounds_until_damage_is_ruled_out()
    {
        var wrong = Worked.Do(Inspector, Inspection with { Passed = false, Observations = [.. Inspection.Observations.Select(o => o with { Seen = Seen.Down })] });

        Assert.Equal((Stage.InWork, FlightStatus.Grounded), (wrong.State.Stage!.Value, wrong.State.FlightStatus));
        Assert.Equal(FlightStatus.Held, wrong.Do(Inspector, Checks.Single(c => c.Check == Check.DamageInspection)).State.FlightStatus);
    }

    [Fact]
    public void Whoever_lifts_a_grounding_signs_what_was_reported_and_found_as_an_inspector()
    {
        var cleared = Empty.Do(Pilot, Report with { RedFlags = [RedFlag.Bang, RedFlag.BothHands] }).Do(Inspector, Checks.Single(c => c.Check == Check.DamageInspection));

        Assert.Equal((FlightStatus.Held, Authority.Inspector), (cleared.State.FlightStatus, cleared.Entries[^1].As));
        Assert.Contains("Damage inspection: clear. This lifts the grounding.\nReported: a bang, both hands needed.\nFindings: Attach fittings, struts, skins: no damage.\n", cleared.Entries[^1].Signature!.Text, StringComparison.Ordinal);
        // Where nothing grounds it, the same look is one of the checks.
        Assert.Null(School.Called.Do(Mechanic, Checks.Single(c => c.Check == Check.DamageInspection)).Entries[^1].Signature);
    }

    [Fact]
    public void A_bolt_turned_again_after_a_failed_inspection_is_torqued_again()
    {
        var again = Worked.Do(Inspector, Inspection with { Passed = false, Findings = "Trailing edge too low." });
        var other = Done with { AsLeft = new(0, 0, 0, 0), DiffersBecause = "Half as far." };

        Assert.Equal(["torque-missing"], Assert.IsType<Decision.Refused>(Try(again, Mechanic, other.Proved(again))).Broken.Select(b => b.Code));
        Assert.Equal(Stage.AwaitingInspection, again.Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, other).State.Stage);
        Assert.Equal(Stage.AwaitingInspection, again.Do(Mechanic, Done with { Resets = [new("cable guard", "refitted")] }).State.Stage);
    }

    [Fact]
    public void Both_eccentrics_turned_take_two_torques()
    {
        var both = HalfAFlat with { Moves = [HalfAFlat.Moves[0], new(Control.RightEccentric, 0, -15, "Right wing: trailing edge up, a quarter flat.")] };
        var found = Checked.Do(Mechanic, both).Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, Found).Do(Mechanic, Torque).MeasuredAgain();
        var done = Done with { AsLeft = new(15, 15, -15, -15) };

        Assert.Equal(["torque-missing"], Assert.IsType<Decision.Refused>(Try(found, Mechanic, done.Proved(found))).Broken.Select(b => b.Code));
        Assert.Equal(Stage.AwaitingInspection, found.Do(Mechanic, Torque with { Fastener = "right rear spar attach bolt 3/8-24" }).MeasuredAgain().Do(Mechanic, done).State.Stage);
    }

    [Fact]
    public void Work_on_a_tab_does_not_forget_how_the_eccentrics_stand()
    {
        var tab = HalfAFlat with { Moves = [new(Control.AileronTab, null, null, "Left aileron tab: 2° down.")] };
        var ledger = Checked.Do(Mechanic, Found).Do(Mechanic, tab).Do(Mechanic, new WorkStarted("Not needed.", null))
            .Do(Mechanic, new AsFound(new(null, null, null, null), "Tab straight."))
            .Do(Mechanic, Done with { AsLeft = new(null, null, null, null), OtherAsLeft = "Tab 2° down.", Resets = [] });

        Assert.Equal(Found.Bushings, ledger.State.Settings);
    }

    [Fact]
    public void A_grounding_after_approval_stands_until_another_call()
    {
        var grounded = School.Approved.Do(Office, new Called(Call.Grounded, "Fuel smell.", null));
        var freed = grounded.Do(Mechanic, new Called(Call.NoRiggingHold, "Drain was weeping; cured.", null));

        Assert.Equal((FlightStatus.Grounded, FlightStatus.CrewOnly), (grounded.State.FlightStatus, freed.State.FlightStatus));
        Assert.Equal(typeof(Called), NextAct.Of(grounded.State)!.Kind);
        Assert.Equal(FlightStatus.MayFly, freed.Do(Pilot, Flight).State.FlightStatus);
    }

    [Fact]
    public void A_second_inspection_takes_an_approval_back()
    {
        var again = School.Approved.Do(Inspector, Inspection);

        Assert.Equal((Stage.AwaitingApproval, FlightStatus.Held, true), (again.State.Stage!.Value, again.State.FlightStatus, again.State.Approval is null));
    }

    [Fact]
    public void Whoever_closes_reads_which_limits_that_lifts()
    {
        var limited = Judged.Do(Mechanic, new Called(Call.MayFlyWithLimits, "Still a little heavy.", "Two up only."));

        Assert.Contains("lifts the limits it flies with: Two up only.", Squawk.TextToSign(limited, new Closed("Explained."), Facts(Inspector)), StringComparison.Ordinal);
        Assert.DoesNotContain("lifts the limits", Squawk.TextToSign(Judged, new Closed("Explained."), Facts(Inspector)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_round_after_a_flight_that_was_not_satisfactory_starts_on_the_ground()
    {
        var round = School.Approved.Do(Pilot, Flight with { Satisfactory = false }).Do(Mechanic, new RoundOpened("Rolls right now."));

        Assert.Equal((Stage.InChecks, 2, FlightStatus.Grounded), (round.State.Stage!.Value, round.State.Round, round.State.FlightStatus));
        Assert.Null(round.State.AsFound);
        Assert.Empty(round.State.Workers);
    }

    [Fact]
    public void A_withdrawn_correction_is_back_in_the_checks_with_no_plan_and_another_may_be_agreed()
    {
        var withdrawn = School.Agreed.Do(School.Inspector, new CorrectionWithdrawn("The fork is seized."));

        Assert.Equal((Stage.InChecks, null), (withdrawn.State.Stage!.Value, withdrawn.State.Correction));
        Assert.Equal(Stage.CorrectionAgreed, withdrawn.Do(School.Mechanic, School.HalfAFlat).State.Stage);
    }
}
