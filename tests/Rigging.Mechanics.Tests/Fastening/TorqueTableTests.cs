using Rigging.Mechanics.Fastening;

namespace Rigging.Mechanics.Tests.Fastening;

public sealed class TorqueTableTests
{
    [Fact]
    public void Every_row_is_as_published()
    {
        var rows = Published.Table("torque-table-published.csv");

        Assert.Equal(25, rows.Count);
        Assert.Equal(rows.Select(row => row["thread_size"]), TorqueTable.Threads);
        Assert.All(rows, row =>
        {
            var (tension, shear) = (TorqueTable.Find(row["thread_size"], NutLoad.Tension)!, TorqueTable.Find(row["thread_size"], NutLoad.Shear)!);
            Assert.Equal(row.Number("tension_nut_min_inlb"), tension.Least.PoundForceInches);
            Assert.Equal(row.Number("tension_nut_max_inlb"), tension.Greatest.PoundForceInches);
            Assert.Equal(row.Number("tension_nut_max_allowable_inlb"), tension.NeverMore.PoundForceInches);
            Assert.Equal(row.Number("shear_nut_min_inlb"), shear.Least.PoundForceInches);
            Assert.Equal(row.Number("shear_nut_max_inlb"), shear.Greatest.PoundForceInches);
            Assert.Equal(row.Number("shear_nut_max_allowable_inlb"), shear.NeverMore.PoundForceInches);
            Assert.Equal(row["shear_value_marked_estimated"] == "yes", shear.Estimated);
        });
    }

    [Fact]
    public void Every_least_prevailing_torque_is_as_published() => Assert.All(Published.Table("prevailing-torque-published.csv"), row =>
        Assert.Equal(row.Number("min_prevailing_torque_inlb_reused_selflocking_nut"), TorqueTable.LeastPrevailing(row["thread_size"])!.Value.PoundForceInches));

    /// <summary>A second publisher's copy of the shear values.</summary>
    [Fact]
    public void The_shear_values_agree_with_another_manual_s_copy() => Assert.All(Published.Table("run-on-examples-published.csv"), row =>
    {
        var shear = TorqueTable.Find(row["thread_size"], NutLoad.Shear)!;
        Assert.Equal(row.Number("table_shear_min_inlb"), shear.Least.PoundForceInches);
        Assert.Equal(row.Number("table_shear_max_inlb"), shear.Greatest.PoundForceInches);
    });

    [Theory]
    [InlineData("3/8-23")]
    [InlineData("")]
    [InlineData("M10")]
    public void A_thread_it_does_not_have_is_not_found(string thread) => Assert.Null(TorqueTable.Find(thread, NutLoad.Tension));

    [Fact]
    public void Small_sizes_have_no_published_prevailing_torque() => Assert.Null(TorqueTable.LeastPrevailing("3/8-24"));

    [Fact]
    public void It_names_its_source_and_condition()
    {
        Assert.Contains("AC 43.13-1B", TorqueTable.Source, StringComparison.Ordinal);
        Assert.Contains("oil-free", TorqueTable.Condition, StringComparison.Ordinal);
    }
}
