using CsCheck;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Fastening;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Fastening;

public sealed class FinalTorqueTests
{
    // The examples are printed to the tenth of an inch-pound.
    const double HalfATenth = 0.05 + 1e-9;

    [Fact]
    public void Published_examples_of_new_dry_nuts_come_out() => Assert.All(Published.Table("run-on-examples-published.csv").Where(row => row["new_nut_final_inlb"] != ""), row =>
    {
        var target = TorqueTarget.FromTable("the example itself", row["thread_size"], NutLoad.Shear).Value!;
        var final = FinalTorque.For(target, Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(row.Number("new_nut_dry_runon_inlb"))).Value!;

        Assert.Equal(row.Number("new_nut_final_inlb"), final.Middle.PoundForceInches, HalfATenth);
    });

    [Fact]
    public void Published_examples_of_reused_lubricated_nuts_come_out() => Assert.All(Published.Table("run-on-examples-published.csv"), row =>
    {
        var target = Hardware.Manual(row.Number("table_shear_min_inlb"), row.Number("table_shear_max_inlb"), lubrication: Lubrication.Lubricated);
        var final = FinalTorque.For(target, Lubrication.Lubricated, TurnedPart.Nut, Hardware.RunOn(row.Number("reused_nut_lubricated_runon_inlb"))).Value!;

        Assert.Equal(row.Number("reused_nut_final_inlb"), final.Middle.PoundForceInches, HalfATenth);
    });

    [Fact]
    public void Nothing_is_added_to_a_figure_that_includes_prevailing_torque()
    {
        var target = Hardware.Manual(160, 190, includesPrevailing: true);

        Assert.Equal(190, FinalTorque.For(target, Lubrication.Dry, TurnedPart.Nut, null).Value!.Greatest.PoundForceInches);
        Assert.Equal(190, FinalTorque.For(target, Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(20)).Value!.Greatest.PoundForceInches);
    }

    [Fact]
    public void Without_a_measured_run_on_there_is_no_final_torque() =>
        Assert.Equal(["run-on-missing"], Hardware.Codes(FinalTorque.For(Hardware.Manual(160, 190), Lubrication.Dry, TurnedPart.Nut, null).Refusals));

    [Fact]
    public void A_dry_figure_is_not_used_on_lubricated_threads() =>
        Assert.Equal(["lubrication-differs"], Hardware.Codes(FinalTorque.For(Hardware.Manual(160, 190), Lubrication.Lubricated, TurnedPart.Nut, Hardware.RunOn(15)).Refusals));

    [Fact]
    public void Turning_the_head_for_a_nut_s_figure_wants_the_run_on_of_the_head()
    {
        var target = Hardware.Manual(160, 190);

        Assert.Equal(215, FinalTorque.For(target, Lubrication.Dry, TurnedPart.Head, Hardware.RunOn(25, TurnedPart.Head)).Value!.Greatest.PoundForceInches, 1e-9);
        Assert.Equal(["run-on-of-other-part"], Hardware.Codes(FinalTorque.For(target, Lubrication.Dry, TurnedPart.Head, Hardware.RunOn(15)).Refusals));
    }

    [Fact]
    public void Another_part_is_not_turned_when_nobody_can_say_what_that_adds()
    {
        Assert.Equal(["turned-part-differs"], Hardware.Codes(FinalTorque.For(Hardware.Manual(160, 190, includesPrevailing: true), Lubrication.Dry, TurnedPart.Head, null).Refusals));
        Assert.Equal(["turned-part-differs"], Hardware.Codes(FinalTorque.For(Hardware.Manual(160, 190, turned: TurnedPart.Head), Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(15)).Refusals));
    }

    [Theory]
    [InlineData(-1)]
    [InlineData(190)]
    [InlineData(500)]
    public void A_run_on_that_cannot_be_is_refused(double inLb) =>
        Assert.Equal(["run-on-out-of-range"], Hardware.Codes(FinalTorque.For(Hardware.Manual(160, 190), Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(inLb)).Refusals));

    /// <summary>Tension 3/8-24 with 15 in·lb of run-on: from 160 + 15 to 190 + 15.</summary>
    [Theory]
    [InlineData(174, "torque-below-target")]
    [InlineData(175, null)]
    [InlineData(205, null)]
    [InlineData(206, "torque-above-target")]
    public void A_castle_nut_is_pinned_only_between_least_and_greatest_plus_run_on(double linesUpAt, string? code)
    {
        var final = FinalTorque.For(TorqueTarget.FromTable("Manual", "3/8-24", NutLoad.Tension).Value!, Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(15)).Value!;

        Assert.Equal(code is null ? [] : [code], Hardware.Codes(final.JudgeCastleNut(Hardware.InLb(linesUpAt))));
        Assert.Equal(code is null ? [] : [code], Hardware.Codes(final.Judge(Hardware.InLb(linesUpAt))));
    }

    [Fact]
    public void A_castle_nut_out_of_its_window_gets_another_washer_or_nut() =>
        Assert.Contains("change the washer or the nut", Hardware.Final(160, 190).JudgeCastleNut(Hardware.InLb(195))[0].Sentence, StringComparison.Ordinal);

    [Fact]
    public void The_limit_typed_in_newton_metres_is_still_inside() =>
        Assert.Empty(Hardware.Final(160, 190).Judge(Torque.FromNewtonMeters(Hardware.InLb(190).NewtonMeters)));

    /// <summary>Table 7-2 gives 10 in·lb for 1/2-20.</summary>
    [Theory]
    [InlineData("1/2-20", 10, null)]
    [InlineData("1/2-20", 9, "nut-worn")]
    [InlineData("3/8-24", 30, "nut-not-in-table")]
    public void A_locking_nut_used_again_must_still_grip(string thread, double runOn, string? code) =>
        Assert.Equal(code is null ? [] : [code], Hardware.Codes(FinalTorque.JudgeReusedLockingNut(thread, Hardware.RunOn(runOn))));

    [Fact]
    public void The_run_on_moves_the_whole_window() => Gen.Select(Gen.Double[10, 500], Gen.Double[0, 100], Gen.Double[0, 9]).Sample((least, width, runOn) =>
    {
        var final = FinalTorque.For(Hardware.Manual(least, least + width), Lubrication.Dry, TurnedPart.Nut, Hardware.RunOn(runOn)).Value!;
        return Math.Abs(final.Least.PoundForceInches - least - runOn) < 1e-9 && Math.Abs(final.Greatest.PoundForceInches - least - width - runOn) < 1e-9;
    });
}
