using Rigging.Mechanics.Loading;

namespace Rigging.Mechanics.Tests.Loading;

public class FuelDensityTests
{
    [Fact]
    public void Every_published_density_lies_where_its_digits_allow()
    {
        foreach (var row in Published.Table("fuel-published.csv"))
        {
            var density = FuelDensity.Of(Enum.Parse<FuelGrade>(row["grade"], ignoreCase: true), row.Number("degC")).Value!;
            Assert.True(Math.Abs(density.KgPerL - row.Number("kgPerL")) <= row.Number("tolerance"), $"{row}: {density.KgPerL}");
        }
    }

    [Fact]
    public void A_grade_without_a_published_density_is_refused_rather_than_guessed() =>
        Assert.Equal("density-not-on-file", Assert.Single(FuelDensity.Of(FuelGrade.UnleadedAvgas, 15).Refusals).Code);

    [Theory, InlineData(-41), InlineData(51), InlineData(double.NaN)]
    public void A_temperature_beyond_what_was_read_is_refused(double degC) =>
        Assert.Equal("temperature-out-of-range", Assert.Single(FuelDensity.Of(FuelGrade.Avgas, degC).Refusals).Code);

    [Fact]
    public void The_farther_from_fifteen_degrees_the_less_is_known() =>
        Assert.True(FuelDensity.Of(FuelGrade.Jet, 40).Value!.SdKgPerL > FuelDensity.Of(FuelGrade.Jet, 15).Value!.SdKgPerL);
}
