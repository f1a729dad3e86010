using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Fastening;
using Rigging.Mechanics.Tests.Contract;

namespace Rigging.Mechanics.Tests.Fastening;

public sealed class TorqueTargetTests
{
    [Fact]
    public void The_manual_s_figure_is_taken_with_its_conditions()
    {
        var target = TorqueTarget.FromManual("Manual 57-10", Hardware.InLb(160), Hardware.InLb(190), false, Lubrication.Dry, TurnedPart.Nut).Value!;

        Assert.Equal((160d, 190d), (target.Least.PoundForceInches, target.Greatest.PoundForceInches));
        Assert.Equal("Manual 57-10", target.Source);
    }

    [Fact]
    public void Every_unanswered_question_is_named()
    {
        var refused = TorqueTarget.FromManual(" ", Hardware.InLb(190), Hardware.InLb(160), null, null, null);

        Assert.Equal(
            ["manual-not-cited", "torque-range-wrong", "prevailing-not-answered", "lubrication-not-answered", "turned-part-not-answered"],
            Hardware.Codes(refused.Refusals));
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(-5, 10)]
    [InlineData(10, 9)]
    [InlineData(10, 30_000)]
    public void A_range_that_cannot_be_is_refused(double least, double greatest) =>
        Assert.Equal(
            ["torque-range-wrong"],
            Hardware.Codes(TorqueTarget.FromManual("Manual", Hardware.InLb(least), Hardware.InLb(greatest), true, Lubrication.Dry, TurnedPart.Nut).Refusals));

    [Fact]
    public void The_table_is_closed_until_the_manual_s_silence_is_cited()
    {
        Assert.Equal(["manual-silence-not-cited"], Hardware.Codes(TorqueTarget.FromTable(null, "3/8-24", NutLoad.Tension).Refusals));
        Assert.Equal(["manual-silence-not-cited", "thread-not-in-table"], Hardware.Codes(TorqueTarget.FromTable("", "3/8-23", NutLoad.Tension).Refusals));
    }

    [Fact]
    public void The_table_s_figure_is_for_dry_threads_and_without_prevailing_torque()
    {
        var target = TorqueTarget.FromTable("Manual 20-10, revision B", "#10-32", NutLoad.Shear).Value!;

        Assert.Equal((12d, 15d), (target.Least.PoundForceInches, target.Greatest.PoundForceInches));
        Assert.Equal((false, Lubrication.Dry, TurnedPart.Nut), (target.IncludesPrevailing, target.Lubrication, target.Turned));
        Assert.EndsWith("table 7-1; read in three independent copies that agree, 10-32, shear nut; no value in Manual 20-10, revision B", target.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_the_table_marks_as_estimated_says_so() =>
        Assert.Contains("estimated", TorqueTarget.FromTable("Manual", "1-14", NutLoad.Shear).Value!.Source, StringComparison.Ordinal);

    [Fact]
    public void An_airframe_s_fastener_gives_its_own_target()
    {
        var airframe = ContractReader.ReadAirframe(Examples.Airframe).Value!;
        var fastener = airframe.Eccentric!.Fastener!;

        Assert.Equal(190, TorqueTarget.OnFile(fastener, airframe.ApprovedData).Value!.Greatest.PoundForceInches);
        Assert.Equal(["manual-not-cited"], Hardware.Codes(TorqueTarget.OnFile(fastener, null).Refusals));
        Assert.Equal(["manual-gives-no-value"], Hardware.Codes(TorqueTarget.OnFile(fastener with { TorqueInLb = null }, "Manual").Refusals));
        Assert.Equal(["lubrication-not-answered"], Hardware.Codes(TorqueTarget.OnFile(fastener with { Lubrication = null }, "Manual").Refusals));
    }
}
