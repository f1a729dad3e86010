using CsCheck;
using Rigging.Mechanics.Fastening;
using UnitsNet;
using UnitsNet.Units;

namespace Rigging.Mechanics.Tests.Fastening;

public sealed class TorqueWrenchTests
{
    [Fact]
    public void Published_examples_with_an_extension_come_out_to_the_printed_digit() => Assert.All(Published.Table("torque-extension-published.csv"), row =>
    {
        var unit = row["unit"] == "ft-lb" ? TorqueUnit.PoundForceFoot : TorqueUnit.PoundForceInch;
        var wrench = Hardware.Wrench(row.Number("lever_in"));

        var setting = wrench.SettingFor(Torque.From(row.Number("wanted"), unit), Hardware.Extension(row.Number("extension_in"), row.Number("angle_deg")));

        Assert.Equal(row.Number("published"), setting!.Value.As(unit), row.Number("last_digit") / 2 + 1e-9);
    });

    /// <summary>Rule in print: a square extension changes nothing. By hand at 45°: 135·10 / (10 + 1.5·0.70711) = 122.05.</summary>
    [Theory]
    [InlineData(90, 135, 1e-9)]
    [InlineData(270, 135, 1e-9)]
    [InlineData(45, 122.05, 0.005)]
    public void At_an_angle_only_the_part_along_the_wrench_counts(double deg, double setting, double tolerance) =>
        Assert.Equal(setting, Hardware.Wrench().SettingFor(Hardware.InLb(135), Hardware.Extension(1.5, deg))!.Value.PoundForceInches, tolerance);

    /// <summary>By hand: 70 + 8 = 78, × 10 / 11.5 = 67.83. The run-on is added before the extension is allowed for.</summary>
    [Fact]
    public void The_run_on_is_added_first_and_the_extension_allowed_for_after()
    {
        var final = FinalTorque.For(
            TorqueTarget.FromTable("Manual", "1/4-28", NutLoad.Tension).Value!, Mechanics.Contract.Lubrication.Dry, Mechanics.Contract.TurnedPart.Nut, Hardware.RunOn(8)).Value!;

        var setting = Hardware.Wrench(fullScaleInLb: 100).Set(final, Hardware.Extension(1.5, 0), Hardware.Day).Value!;

        Assert.Equal(67.83, setting.Greatest.PoundForceInches, 0.005);
    }

    [Fact]
    public void Setting_the_reading_puts_the_wanted_torque_on_the_fastener() => Gen.Select(Gen.Double[1, 600], Gen.Double[6, 24], Gen.Double[0, 5], Gen.Double[-360, 360]).Sample((wanted, lever, length, deg) =>
    {
        var (wrench, extension) = (Hardware.Wrench(lever), Hardware.Extension(length, deg));
        var reading = wrench.SettingFor(Hardware.InLb(wanted), extension)!.Value;
        return Math.Abs(wrench.AtFastener(reading, extension)!.Value.PoundForceInches - wanted) < 1e-9;
    });

    [Theory]
    [InlineData(12, 180)]
    [InlineData(10, 180)]
    [InlineData(-1, 0)]
    public void An_extension_back_to_the_grip_is_refused(double inches, double deg)
    {
        Assert.Null(Hardware.Wrench().SettingFor(Hardware.InLb(100), Hardware.Extension(inches, deg)));
        Assert.Equal(["extension-wrong"], Hardware.Codes(Hardware.Wrench().Set(Hardware.Final(160, 190), Hardware.Extension(inches, deg), Hardware.Day).Refusals));
    }

    /// <summary>Full scale 250: good from 50 to 250 unless stated otherwise.</summary>
    [Theory]
    [InlineData(50, 250, true)]
    [InlineData(49, 60, false)]
    [InlineData(240, 251, false)]
    public void A_wrench_is_good_from_a_fifth_of_full_scale(double least, double greatest, bool ok)
    {
        var set = Hardware.Wrench(fullScaleInLb: 250).Set(Hardware.Final(least, greatest), Extension.None, Hardware.Day);

        Assert.Equal(ok ? [] : ["wrench-out-of-range"], Hardware.Codes(set.Refusals));
    }

    [Fact]
    public void A_stated_range_counts_instead()
    {
        var wrench = Hardware.Wrench() with { StatedRange = (Hardware.InLb(30), Hardware.InLb(200)) };

        Assert.True(wrench.Set(Hardware.Final(30, 40), Extension.None, Hardware.Day).Ok);
        Assert.False(wrench.Set(Hardware.Final(190, 210), Extension.None, Hardware.Day).Ok);
    }

    [Fact]
    public void What_counts_is_the_setting_not_the_torque_at_the_fastener() =>
        Assert.True(Hardware.Wrench(fullScaleInLb: 200).Set(Hardware.Final(200, 220), Hardware.Extension(1.5, 0), Hardware.Day).Ok);

    [Theory]
    [InlineData("2026-04-17", null)]
    [InlineData("2026-04-16", "wrench-out-of-calibration")]
    [InlineData(null, "wrench-out-of-calibration")]
    public void A_wrench_is_good_to_the_end_of_the_day_its_calibration_is_due(string? due, string? code)
    {
        var wrench = Hardware.Wrench() with { CalibrationDue = due is null ? null : DateOnly.ParseExact(due, "yyyy-MM-dd", null) };

        Assert.Equal(code is null ? [] : [code], Hardware.Codes(wrench.Set(Hardware.Final(160, 190), Extension.None, Hardware.Day).Refusals));
    }

    [Fact]
    public void A_calibration_made_afterwards_says_nothing_about_the_day() =>
        Assert.Equal(["wrench-calibrated-later"], Hardware.Codes((Hardware.Wrench() with { CalibratedOn = Hardware.Day.AddDays(1) }).CalibrationOn(Hardware.Day)));

    [Fact]
    public void Every_reason_is_named_at_once()
    {
        var wrench = Hardware.Wrench(fullScaleInLb: 100) with { CalibrationDue = Hardware.Day.AddDays(-1) };

        Assert.Equal(["wrench-out-of-calibration", "wrench-out-of-range"], Hardware.Codes(wrench.Set(Hardware.Final(160, 190), Extension.None, Hardware.Day).Refusals));
    }
}
