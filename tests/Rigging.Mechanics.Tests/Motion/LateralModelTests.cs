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

    [Fact]
    public void The_equations_match_the_published_matrix()
    {
        var system = Model(Published.Table("lateral-modes-published.csv").Single(r => r["set"] == "A")).System;
        foreach (var row in Published.Table("lateral-matrix-published.csv"))
        {
            var actual = system[(int)row.Number("row"), (int)row.Number("column")];
            Assert.True(Math.Abs(actual / row.Number("value") - 1) <= row.Number("tolerance"), $"{row}: {actual}");
        }
    }

    /// <summary>
    /// A four-seat low-wing light aeroplane (dimensional derivatives in SI, printed with a public course's dynamics example, commit
    /// 18a478686768693a8f891c9d53f0a2180a53741d): its text gives no roots but says roll and dutch roll die out and the spiral grows.
    /// </summary>
    [Fact]
    public void A_published_light_aeroplane_has_the_stability_its_text_says()
    {
        // State there is (v, p, r, φ): sideslip velocity, so β = v/V.
        const double v = 50;
        var system = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(new[,]
        {
            { -0.1444, 0, -1, 9.80665 / v },
            { -0.1166 * v, -2.283, 1.053, 0 },
            { 0.174 * v, -1.732, -1.029, 0 },
            { 0, 1, 0, 0 },
        });

        var modes = LateralModes.Of(system);

        Assert.True(modes.Roll.Real < -1);
        Assert.True(modes.DutchRoll.Real < 0 && modes.DutchRoll.Imaginary > 1);
        Assert.InRange(modes.Spiral.Real, 1e-3, 0.1);
    }

    [Fact]
    public void Feet_and_slugs_give_the_same_motion_as_metres_and_kilograms()
    {
        const double footM = 0.3048, slugKg = 14.593903;
        var row = Published.Table("lateral-modes-published.csv").Single(r => r["set"] == "A");
        var us = Model(row);
        double N(string column) => row.Number(column);
        var si = new LateralModel(us.Derivatives,
            new(N("weightLb") / N("gravity") * slugKg, N("ixx") * slugKg * footM * footM, N("izz") * slugKg * footM * footM, 0,
                N("areaFt2") * footM * footM, N("spanFt") * footM),
            N("speedFtPerS") * footM, N("density") * slugKg / (footM * footM * footM), N("gravity") * footM);

        Assert.True((us.System - si.System).InfinityNorm() < 1e-9 * us.System.InfinityNorm());
    }

    /// <summary>Exact: the roots do not care which wing is called the right one, nor which way is up.</summary>
    [Fact]
    public void A_product_of_inertia_couples_roll_into_yaw_and_back_alike()
    {
        var mass = new AirframeMass(640, 850, 1450, 120, 13.9, 9.64);
        var model = new LateralModel(new(-0.45, -0.085, -0.46, 0.1, 0.07, -0.045, -0.1), mass, 50, 1.1);

        var rolling = model.Accelerations(0, 1, 0);
        var yawing = model.Accelerations(0, 0, 1);

        Assert.Equal(rolling.YawRadPerS2, yawing.RollRadPerS2, 12);
        // Ixx·ṗ − Ixz·ṙ must be the rolling moment itself.
        Assert.Equal(model.MomentNm, 850 * rolling.RollRadPerS2 - 120 * rolling.YawRadPerS2, 6);
        Assert.Equal(0, 1450 * rolling.YawRadPerS2 - 120 * rolling.RollRadPerS2, 6);
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
