using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Work, torque and what is left behind.</summary>
public partial class ForbiddenStories
{
    [Theory]
    [InlineData(Control.LeftEccentric, 15, "not-a-setting")]
    [InlineData(Control.CableTension, 30, "not-a-setting")]
    [InlineData(Control.LeftFlapRod, 51, "value-out-of-range")]
    [InlineData(Control.AileronTab, -91, "value-out-of-range")]
    [InlineData(Control.AileronTab, double.NaN, "value-out-of-range")]
    public void An_adjuster_stands_where_one_can(Control control, double value, string code)
    {
        Refused(code, TabInWork, Mechanic, new AsFound(new(null, null, null, null), "Left aileron tab 3° up.", Adjusters: [new(control, value)]));
        Refused(code, TabInWork.Do(Mechanic, new AsFound(new(null, null, null, null), "Left aileron tab 3° up.")), Mechanic, TabDone with { AdjustersAsLeft = [new(control, value)] });
    }

    [Fact]
    public void An_adjuster_is_named_once() =>
        Refused("named-twice", TabInWork, Mechanic, new AsFound(new(null, null, null, null), "Left aileron tab 3° up.", Adjusters: [new(Control.AileronTab, -3), new(Control.AileronTab, 3)]));

    [Fact]
    public void Work_starts_without_saying_how_the_wing_is_supported() => Refused("wing-support-missing", Agreed, Mechanic, new WorkStarted(" ", null));

    [Fact]
    public void Work_on_a_tab_starts_without_saying_how_the_surface_is_held()
    {
        Refused("wing-support-missing", TabAgreed, Mechanic, new WorkStarted(" ", null));
        // What is asked for is about what is moved: a tab has no wing to support.
        Assert.Equal("Write how the surface or the aircraft is held, or that it is not needed.", Assert.Single(Assert.IsType<Decision.Refused>(Try(TabAgreed, Mechanic, new WorkStarted(" ", null))).Broken).Sentence);
    }

    [Fact]
    public void Work_starts_before_a_correction_is_agreed() => Refused("wrong-stage", Checked, Mechanic, new WorkStarted("Padded stand.", null));

    [Fact]
    public void Work_is_signed_with_as_found_missing() => Refused("as-found-missing", InWork.Do(Mechanic, Torque), Mechanic, Done);

    [Fact]
    public void As_found_says_nothing_at_all() => Refused("as-found-missing", TabAgreed.Do(Mechanic, new WorkStarted("Not needed: no bolt is loosened.", null)), Mechanic,
        new AsFound(new(null, null, null, null), " "));

    [Fact]
    public void A_tab_is_bent_and_signed_with_as_found_missing() => Refused("as-found-missing", TabInWork, Mechanic, TabDone);

    [Fact]
    public void A_tab_is_bent_and_signed_with_as_left_missing() =>
        Refused("as-left-missing", TabInWork.Do(Mechanic, new AsFound(new(null, null, null, null), "Left aileron tab 3° up.")), Mechanic, TabDone with { OtherAsLeft = null });

    [Fact]
    public void As_found_was_looked_at_during_the_checks_but_not_at_the_bushings() =>
        Refused("bushings-missing", Checked.Do(Mechanic, new AsFound(new(null, null, 0, 0), "Fork threads shown: 6.")).Do(Mechanic, HalfAFlat)
            .Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, Torque).MeasuredAgain(), Mechanic, Done);

    [Fact]
    public void Only_one_bushing_is_recorded_as_found() => Refused("bushings-missing", InWork, Mechanic, Found with { Bushings = new(-15, null, 0, 0) });

    [Theory, InlineData(-15, 10, 0, 0), InlineData(-15, -15, 0, 30)]
    public void Front_and_rear_bushing_disagree_as_found_and_the_work_is_signed(double leftFront, double leftRear, double rightFront, double rightRear) =>
        Refused("bushings-disagree", InWork.Do(Mechanic, Found with { Bushings = new(leftFront, leftRear, rightFront, rightRear) }).Do(Mechanic, Torque).MeasuredAgain(), Mechanic, Done with { AsLeft = new(15, 15, 0, null), DiffersBecause = "Rear bushing seized." });

    [Theory, InlineData(15, 45, 0, 0), InlineData(15, 15, 0, 30)]
    public void Front_and_rear_bushing_are_left_apart(double leftFront, double leftRear, double rightFront, double rightRear) =>
        Refused("bushings-disagree", Torqued, Mechanic, Done with { AsLeft = new(leftFront, leftRear, rightFront, rightRear), DiffersBecause = "Rear bushing seized." });

    [Fact]
    public void Only_one_bushing_is_recorded_as_left() => Refused("bushings-missing", Torqued, Mechanic, Done with { AsLeft = new(15, null, 0, 0) });

    [Fact]
    public void The_eccentric_is_left_past_its_stop() => Refused("past-the-stop", Torqued, Mechanic, Done with { AsLeft = new(95, 95, 0, 0), DiffersBecause = "Still heavy." });

    [Fact]
    public void As_left_differs_from_the_plan_without_a_reason() => Refused("differs-needs-reason", Torqued, Mechanic, Done with { AsLeft = new(45, 45, 0, 0) });

    static WorkDone TwoDown => TabDone with { AsLeft = new(null, null, null, null), OtherAsLeft = null, AdjustersAsLeft = [new(Control.AileronTab, 2)] };

    static Ledger TwoDownInWork => Checked.Do(Mechanic, HalfAFlat with { Moves = [new(Control.AileronTab, 0, 2, "Aileron tab 2° down.")] })
        .Do(Mechanic, new WorkStarted("Not needed: no bolt is loosened.", null));

    static readonly AsFound Straight = new(new(null, null, null, null), null, Adjusters: [new(Control.AileronTab, 0)]);

    [Fact]
    public void A_tab_that_was_planned_in_degrees_is_measured_before_and_after()
    {
        Refused("as-found-missing", TwoDownInWork, Mechanic, new AsFound(new(null, null, null, null), "A little up."));
        Refused("as-left-missing", TwoDownInWork.Do(Mechanic, Straight), Mechanic, TwoDown with { OtherAsLeft = "Two degrees down.", AdjustersAsLeft = null });
        Assert.Equal(Stage.AwaitingInspection, TwoDownInWork.Do(Mechanic, Straight).Do(Mechanic, TwoDown).State.Stage);
    }

    [Fact]
    public void A_tab_that_is_left_otherwise_than_planned_without_a_reason()
    {
        Refused("differs-needs-reason", TwoDownInWork.Do(Mechanic, Straight), Mechanic, TwoDown with { AdjustersAsLeft = [new(Control.AileronTab, 4)] });
        Refused("differs-needs-reason", TwoDownInWork.Do(Mechanic, Straight with { Adjusters = [new(Control.AileronTab, -3)] }), Mechanic, TwoDown);
    }

    [Fact]
    public void The_plan_started_from_another_setting_than_was_found_without_a_reason() =>
        Refused("differs-needs-reason", InWork.Do(Mechanic, Found with { Bushings = new(0, 0, 0, 0) }).Do(Mechanic, Torque).MeasuredAgain(), Mechanic, Done);

    [Fact]
    public void The_other_wings_eccentric_was_turned_too_and_nobody_says_why() => Refused("differs-needs-reason", Torqued, Mechanic, Done with { AsLeft = new(15, 15, 30, 30) });

    [Fact]
    public void Cables_are_not_checked_after_the_eccentric_was_turned() => Refused("resets-missing", School.JustTorqued, Mechanic, Done);

    [Fact]
    public void Something_removed_is_not_refitted() => Refused("not-refitted", Torqued, Mechanic, Done with { EverythingRefitted = false });

    [Fact]
    public void Temporary_hardware_is_left_in() => Refused("temporary-hardware-left", Torqued, Mechanic, Done with { NoTemporaryHardware = false });

    [Fact]
    public void A_bolt_is_left_loose() => Refused("left-loose", Torqued, Mechanic, Done with { NothingLoose = false });

    [Fact]
    public void A_bolt_handed_over_loose_is_forgotten() =>
        Refused("left-loose", Torqued.Do(Mechanic, new WorkHandedOver("Bolt in, nut finger tight.", "left rear bolt LOOSE, do not move")), Mechanic, Done);

    [Fact]
    public void Nothing_says_what_was_disturbed() => Refused("disturbed-missing", Torqued, Mechanic, Done with { Disturbed = [] });

    [Fact]
    public void Nothing_says_which_surfaces_were_disturbed() => Refused("surfaces-missing", Torqued, Mechanic, Done with { Surfaces = null });

    [Fact]
    public void The_surface_that_the_plan_moves_is_said_to_be_undisturbed() =>
        Refused("surface-moved-by-the-plan", TabInWork.Do(Mechanic, new AsFound(new(null, null, null, null), "Tab straight.")), Mechanic, TabDone with { Surfaces = [ControlSurface.Rudder] });

    [Fact]
    public void What_was_disturbed_is_a_blank_line() => Refused("disturbed-missing", Torqued, Mechanic, Done with { Disturbed = ["left rear spar attachment", " "] });

    [Fact]
    public void The_bolt_was_loosened_and_no_torque_is_on_record() => Refused("torque-missing", InWork.Do(Mechanic, Found).MeasuredAgain(), Mechanic, Done);

    [Fact]
    public void Total_time_runs_backwards() => Refused("total-time-backwards", Torqued, Mechanic, Done with { TotalTimeH = 1199.9 });

    [Fact]
    public void Fewer_hours_are_no_forbidden_story_when_the_work_was_finished_on_an_earlier_day() =>
        Assert.Equal(Stage.AwaitingInspection, TorquedDaysAgo(1).Do(Mechanic, Done with { TotalTimeH = 1199.9, CompletedOn = Today.PlusDays(-1) }).State.Stage);

    [Fact]
    public void The_work_is_completed_in_the_future() => Refused("date-in-future", Torqued, Mechanic, Done with { CompletedOn = Today.PlusDays(1) });

    [Fact]
    public void A_wrench_a_day_out_of_calibration() => Refused("wrench-out-of-calibration", InWork, Mechanic, Torque with { Wrench = WrenchADayOut.Id });

    [Fact]
    public void A_wrench_that_was_in_calibration_on_the_day_is_no_forbidden_story_when_it_is_entered_late()
    {
        var late = Torque with { Wrench = WrenchADayOut.Id, HappenedAt = Noon - NodaTime.Duration.FromDays(1) };

        Assert.Equal(late with { WrenchCode = "TW-4", CalibrationDue = Today.PlusDays(-1) },
            Agreed.Do(Mechanic, new WorkStarted("Padded stand.", null, late.HappenedAt)).Do(Mechanic, late).Entries[^1].Fact);
    }

    [Fact]
    public void A_torque_that_was_looked_at_already_is_looked_at_again() =>
        Refused("no-such-torque", School.Closed.Do(Mechanic, SeenAgain), Mechanic, SeenAgain);

    [Fact]
    public void A_stripe_out_of_line_is_put_on_record_as_if_nothing_followed() => Refused("torque-did-not-hold", School.Closed, Mechanic, SeenAgain with { StripeInLine = false });

    [Fact]
    public void The_last_torque_on_each_fastener_is_looked_at_again_whatever_round_it_was_in()
    {
        Assert.Equal([School.JustTorqued.Length], School.Closed.State.StripesToSee.Select(seen => seen.Sequence));
        Assert.Empty(School.Closed.Do(Mechanic, SeenAgain).State.StripesToSee);
        Assert.Equal([Torqued.Length + 1], Torqued.Do(Mechanic, Torque with { Fastener = Torque.Fastener.ToUpperInvariant() }).State.StripesToSee.Select(seen => seen.Sequence));
    }

    static readonly TorqueRechecked SeenAgain = new(School.JustTorqued.Length, true, true, "Stripe in line, torque held at 190 in·lb.");

    [Fact]
    public void A_wrench_nobody_ever_calibrated() => Refused("wrench-out-of-calibration", InWork, Mechanic, Torque,
        facts => facts with { Tools = new Dictionary<People.ToolId, People.Tool> { [Wrench.Id] = Wrench with { CalibrationDue = null } } });

    [Fact]
    public void A_wrench_out_of_its_range() => Refused("wrench-out-of-range", InWork, Mechanic, Torque,
        facts => facts with { Tools = new Dictionary<People.ToolId, People.Tool> { [Wrench.Id] = Wrench with { High = 180 } } });

    [Fact]
    public void A_tensiometer_is_used_as_a_torque_wrench() => Refused("not-a-torque-wrench", InWork, Mechanic, Torque,
        facts => facts with { Tools = new Dictionary<People.ToolId, People.Tool> { [Wrench.Id] = Wrench with { Kind = People.ToolKind.Tensiometer } } });

    [Fact]
    public void Somebody_elses_wrench() => Refused("wrench-unknown", InWork, Mechanic, Torque with { Wrench = new(Guid.NewGuid()) });

    [Fact]
    public void A_torque_without_run_on() => Refused("run-on-missing", InWork, Mechanic, Torque with { RunOnInLb = null, NoRunOnBecause = "Not measured." });

    [Theory, InlineData(220), InlineData(174)]
    public void A_torque_outside_its_target(double reached) => Refused(reached > 200 ? "torque-above-limits" : "torque-outside-target", InWork, Mechanic, Torque with { SettingInLb = reached, ReachedInLb = reached });

    [Fact]
    public void The_run_on_was_not_added_to_the_target() => Refused("final-torque-wrong", InWork, Mechanic, Torque with { FinalMinInLb = 160, FinalMaxInLb = 190 });

    [Fact]
    public void The_arithmetic_of_the_extension_is_wrong() => Refused("setting-does-not-match", InWork, Mechanic, Torque with { ExtensionIn = 3 });

    [Fact]
    public void A_torque_from_nowhere() => Refused("torque-source-missing", InWork, Mechanic, Torque with { TargetSource = "" });

    [Fact]
    public void No_torque_stripe() => Refused("stripe-missing", InWork, Mechanic, Torque with { TorqueStripe = false });

    [Fact]
    public void A_pilot_turns_the_wrench() => Refused("no-authority", InWork, Pilot, Torque);

    static Ledger TabAgreed => Checked.Do(Mechanic, HalfAFlat with { Moves = [new(Control.AileronTab, null, null, "Left aileron tab: 2° down.")] });

    static Ledger TabInWork => TabAgreed.Do(Mechanic, new WorkStarted("Not needed: no bolt is loosened.", null));

    static readonly WorkDone TabDone = Done with
    {
        Description = "Left aileron tab bent 2° down.",
        AsLeft = new(null, null, null, null),
        OtherAsLeft = "Left aileron tab 1° up.",
        Disturbed = ["left aileron tab"],
        Resets = [],
    };
}
