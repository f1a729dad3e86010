using System.Numerics;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Motion;

public class LateralModelTests
{
    public static TheoryData<string> Sets => ["A", "C"];

    [Theory, MemberData(nameof(Sets))]
    public void The_natural_modes_match_the_published_roots(string set)
    {
        var row = Published.Table("lateral-modes-published.csv").Single(r => r["set"] == set);

        var modes = Model(row).Modes();

        Near(row, "roll", "rollTolerance", modes.Roll.Real);
        Near(row, "spiral", "spiralTolerance", modes.Spiral.Real);
        Assert.Equal(0, modes.Roll.Imaginary);
        Assert.Equal(0, modes.Spiral.Imaginary);
        var published = new Complex(row.Number("dutchRollReal"), row.Number("dutchRollImaginary"));
        Assert.True((modes.DutchRoll - published).Magnitude <= row.Number("dutchRollTolerance"), $"{modes.DutchRoll}");
    }

    /// <summary>Exact: the roots do not care which wing is called the right one, nor which way is up.</summary>
    [Fact]
    public void A_product_of_inertia_couples_roll_into_yaw_and_back_alike()
    {
        var mass = new AirframeMass(640, 850, 1450, 120, 13.9, 9.64);
        var model = new LateralModel(new(-0.45, -0.085, -0.46, 0.1, 0.07, -0.045, -0.1), mass, 50, 1.1);

        var rolling = model.Forcing(0, 1, 0);
        var yawing = model.Forcing(0, 0, 1);

        Assert.Equal(rolling[LateralModel.YawRate], yawing[LateralModel.RollRate], 12);
        // Ixx·ṗ − Ixz·ṙ must be the rolling moment itself.
        Assert.Equal(model.MomentNm, 850 * rolling[LateralModel.RollRate] - 120 * rolling[LateralModel.YawRate], 6);
        Assert.Equal(0, 1450 * rolling[LateralModel.YawRate] - 120 * rolling[LateralModel.RollRate], 6);
    }

    static LateralModel Model(Published.Row row)
    {
        double N(string column) => row.Number(column);
        return new(
            new(N("cYBeta"), N("clBeta"), N("clP"), N("clR"), N("cnBeta"), N("cnP"), N("cnR")),
            new(N("weightLb") / N("gravity"), N("ixx"), N("izz"), 0, N("areaFt2"), N("spanFt")),
            N("speedFtPerS"), N("density"), N("gravity"));
    }

    static void Near(Published.Row row, string column, string tolerance, double actual) =>
        Assert.True(Math.Abs(actual - row.Number(column)) <= row.Number(tolerance), $"{column} {row}: {actual}");
}
