using Rigging.Mechanics.Air;

namespace Rigging.Mechanics.Tests.Air;

public class AtmosphereTests
{
    const double EarthRadiusM = 6356766;
    const double KnotMPerS = 1852.0 / 3600;

    [Fact]
    public void The_standard_day_matches_the_published_rows()
    {
        foreach (var row in Published.Table("atmosphere-published.csv"))
        {
            var geometricM = row.Number("geometricHeightM");
            var air = Atmosphere.Standard(EarthRadiusM * geometricM / (EarthRadiusM + geometricM));

            Near(row, "temperatureK", "temperatureTolerance", air.TemperatureK);
            Near(row, "pressurePa", "pressureTolerance", air.PressurePa);
            Near(row, "densityKgPerM3", "densityTolerance", air.DensityKgPerM3);
        }
    }

    [Fact]
    public void Pressure_by_height_in_feet_matches_the_published_table()
    {
        foreach (var row in Published.Table("pressure-feet-published.csv"))
        {
            var psia = Atmosphere.Standard(row.Number("feet") * 0.3048).PressurePa / 6894.757;
            Assert.True(Math.Abs(psia / row.Number("psia") - 1) < 2e-4, $"{row}: {psia}");
        }
    }

    [Fact]
    public void A_warm_day_keeps_the_pressure_and_thins_the_air()
    {
        var standard = Atmosphere.Standard(914.4);
        var warm = standard.WithDeviation(15);

        Assert.Equal(standard.PressurePa, warm.PressurePa);
        Assert.Equal(standard.DensityKgPerM3 * standard.TemperatureK / (standard.TemperatureK + 15), warm.DensityKgPerM3, 12);
    }

    /// <summary>
    /// Published relation (web copy of an aviation formulary): TAS = CAS/(1 − 6.8755856e-6·DA)^2.127940. It neglects
    /// compressibility, which at these speeds is worth less than 0.5 %.
    /// </summary>
    [Theory, InlineData(60, 0), InlineData(95, 3000), InlineData(100, 5000), InlineData(140, 10000)]
    public void True_airspeed_is_the_published_relation_within_half_a_percent(double casKt, double feet)
    {
        var published = casKt / Math.Pow(1 - 6.8755856e-6 * feet, 2.127940);

        var trueKt = Airspeed.TrueFromCalibrated(casKt * KnotMPerS, Atmosphere.Standard(feet * 0.3048)) / KnotMPerS;

        Assert.InRange(trueKt, published * 0.995, published + 1e-6);
    }

    [Fact]
    public void At_sea_level_on_a_standard_day_calibrated_is_true() =>
        Assert.Equal(50, Airspeed.TrueFromCalibrated(50, Atmosphere.SeaLevel), 9);

    static void Near(Published.Row row, string column, string tolerance, double actual) =>
        Assert.True(Math.Abs(actual - row.Number(column)) <= row.Number(tolerance) * 1.0001, $"{column} {row}: {actual}");
}
