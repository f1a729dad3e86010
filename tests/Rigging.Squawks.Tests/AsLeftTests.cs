using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>What was left otherwise than planned: said, foreseen anew, and followed from then on.</summary>
public class AsLeftTests
{
    static Ledger InWork(params PlannedMove[] moves) => Checked.Do(Mechanic, HalfAFlat with { Moves = moves }).Do(Mechanic, new WorkStarted("Padded stand under the strut fitting.", null));

    static readonly PlannedMove RodOneIn = new(Control.LeftFlapRod, null, null, "Left flap rod one turn in.", 1, 0);
    static readonly PlannedMove TabDown = new(Control.AileronTab, 0, 2, "Aileron tab 2° down.");

    static readonly AsFound OneOut = new(new(null, null, null, null), null, Adjusters: [new(Control.LeftFlapRod, 1)]);

    static readonly WorkDone RodDone = Done with { AsLeft = new(null, null, null, null), AdjustersAsLeft = [new(Control.LeftFlapRod, 0)] };

    [Fact]
    public void Left_as_planned_nothing_differs() => Assert.Empty(AsLeft.Differences(Torqued.State, Done));

    [Fact]
    public void A_turned_eccentric_that_ends_elsewhere_differs() =>
        Assert.Equal("The left wing eccentric is left neutral; the plan said 15° trailing edge down.", Assert.Single(AsLeft.Differences(Torqued.State, Done with { AsLeft = new(0, 0, 0, 0) })));

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.1, 0)]   // read off a thread, it is the same
    [InlineData(0.5, 1)]
    public void A_rod_differs_by_more_than_a_thread_shows(double left, int differences) =>
        Assert.Equal(differences, AsLeft.Differences(InWork(RodOneIn).Do(Mechanic, OneOut).State, RodDone with { AdjustersAsLeft = [new(Control.LeftFlapRod, left)] }).Count());

    [Fact]
    public void What_the_plan_started_from_and_what_is_not_in_it_are_looked_at_too()
    {
        var state = InWork(TabDown).Do(Mechanic, new AsFound(new(null, null, null, null), null, Adjusters: [new(Control.AileronTab, -3), new(Control.RightFlapRod, 0)])).State;

        Assert.Equal(
        [
            "The aileron tab was found 3° trailing edge up; the plan started from straight.",
            "The right flap rod is not left as it was found, and is not in the plan.",
        ], AsLeft.Differences(state, RodDone with { AdjustersAsLeft = [new(Control.AileronTab, 2), new(Control.RightFlapRod, 1)] }));
    }

    [Fact]
    public void Words_alone_differ_from_no_number() =>
        Assert.Empty(AsLeft.Differences(InWork(RodOneIn with { FromTurns = null, ToTurns = null }).Do(Mechanic, OneOut with { Other = "Rod one turn out." }).State, RodDone with { AdjustersAsLeft = [new(Control.LeftFlapRod, 3)] }));

    /// <summary>Half of a planned turn does half of what the whole would, about neutral: sin 15° = 0.2588.</summary>
    [Fact]
    public void Half_of_the_turn_leaves_half_of_the_change_undone()
    {
        var outlook = LedgerAssessment.Of(Torqued, School.Airframe).Elsewhere!;

        var planned = outlook.After(new SetTo(AdjustableControl.LeftEccentric, -15, 15)).Value!;
        var half = AsLeft.Foreseen(outlook, Torqued.State, Done with { AsLeft = new(0, 0, 0, 0) }).Value!;
        var whole = AsLeft.Foreseen(outlook, Torqued.State, Done).Value!;

        Assert.Equal(planned.After.Mean, whole.After.Mean, 1e-9);
        Assert.Equal((planned.Before.Mean + planned.After.Mean) / 2, half.After.Mean, 0.005);   // the arc tangent of the incidence is not quite a straight line
    }

    [Fact]
    public void Both_wings_turned_where_one_was_planned_are_both_foreseen()
    {
        var outlook = LedgerAssessment.Of(Torqued, School.Airframe).Elsewhere!;

        var both = AsLeft.Foreseen(outlook, Torqued.State, Done with { AsLeft = new(15, 15, -15, -15) }).Value!;

        Assert.Equal(outlook.After(new SetTo(AdjustableControl.LeftEccentric, -15, 15), new SetTo(AdjustableControl.RightEccentric, 0, -15)).Value!.After, both.After);
        Assert.Contains(both.Cautions, caution => caution.StartsWith("More than one thing", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_agreed_on_without_numbers_is_not_foreseen()
    {
        var outlook = LedgerAssessment.Of(Torqued, School.Airframe).Elsewhere!;
        var state = InWork(new PlannedMove(Control.RepairOrReplace, null, null, "New fairing.")).Do(Mechanic, Found with { Other = "Fairing cracked." }).State;

        Assert.Equal("not-in-numbers", Assert.Single(AsLeft.Foreseen(outlook, state, Done).Refusals).Code);
    }

    /// <summary>A failed inspection sends it back, and the second signing says where it stands: the way from the first place to the second, not the whole way twice.</summary>
    [Fact]
    public void Work_signed_again_after_a_failed_inspection_counts_from_where_it_stood()
    {
        var again = Torqued.Do(Mechanic, Done with { AsLeft = new(0, 0, 0, 0), DiffersBecause = "Only half." })
            .Do(Inspector, Inspection with { Passed = false, AcceptsDifference = false })
            .Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done);

        var moved = EvidenceRequest.Of(again, School.Airframe).Read().TestPoints[0].MovedSince!;
        var once = EvidenceRequest.Of(Torqued.Do(Mechanic, Done), School.Airframe).Read().TestPoints[0].MovedSince!;

        Assert.Equal(Assert.Single(once).Amplitude, Assert.Single(moved).Amplitude, 1e-9);
    }

    /// <summary>The marks are looked at during the checks, before anything is agreed: what they said still stands when the bolt is loosened.</summary>
    [Fact]
    public void Marks_recorded_during_the_checks_say_how_it_was_found()
    {
        var work = Checked.Do(Mechanic, Found).Do(Mechanic, HalfAFlat).Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done);

        Assert.NotNull(EvidenceRequest.Of(work, School.Airframe).Read().TestPoints[0].MovedSince);
    }

    [Fact]
    public void The_signed_text_says_what_is_expected_of_it_as_left()
    {
        static string Record(WorkDone done) => MaintenanceRecord.Compose(Torqued.Do(Mechanic, done), RuleSets.RuleSet.Shipped["united-states"], null, Certifier.Id);

        Assert.Contains($"Expected as left (estimate): not known which way, nine times in ten between {Directions.RollRate(-0.9)} and {Directions.RollRate(0.1)}.",
            Record(Done with { AsLeft = new(0, 0, 0, 0), DiffersBecause = "Only half.", PredictedDegPerS = -0.4, PredictedLowDegPerS = -0.9, PredictedHighDegPerS = 0.1 }), StringComparison.Ordinal);
        Assert.DoesNotContain("Expected as left", Record(Done), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_expected_after_the_work_is_what_it_was_left_as_and_of_the_plan_only_where_that_is_the_same()
    {
        Assert.Equal((-0.1, -0.4, 0.2), Torqued.Do(Mechanic, Done).State.Expected);
        var half = Done with { AsLeft = new(0, 0, 0, 0), DiffersBecause = "Only half." };
        Assert.Equal((-0.4, -0.9, 0.1), Torqued.Do(Mechanic, half with { PredictedDegPerS = -0.4, PredictedLowDegPerS = -0.9, PredictedHighDegPerS = 0.1 }).State.Expected);
        Assert.Null(Torqued.Do(Mechanic, half).State.Expected);
    }

    [Fact]
    public void The_inspector_signs_under_what_differs_and_what_is_expected_of_it()
    {
        static string Text(WorkDone done, bool? accepts) => Squawk.TextToSign(Torqued.Do(Mechanic, done), Inspection with { AcceptsDifference = accepts }, School.Facts(Inspector));
        var half = Done with { AsLeft = new(0, 0, 0, 0), DiffersBecause = "Only half.", PredictedDegPerS = -0.4, PredictedLowDegPerS = -0.9, PredictedHighDegPerS = 0.1 };

        Assert.Contains("As left differs from the plan (Only half.): accepted.\nThe left wing eccentric is left neutral; the plan said 15° trailing edge down.\n" +
            $"Expected as left (estimate): {Directions.Expected(-0.4, -0.9, 0.1)}.\n", Text(half, true), StringComparison.Ordinal);
        Assert.DoesNotContain("Expected", Text(half with { PredictedDegPerS = null }, true), StringComparison.Ordinal);
        Assert.DoesNotContain("the plan said", Text(Done, null), StringComparison.Ordinal);
    }
}
