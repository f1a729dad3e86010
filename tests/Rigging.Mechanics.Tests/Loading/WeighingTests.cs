using Rigging.Mechanics.Loading;

namespace Rigging.Mechanics.Tests.Loading;

public class WeighingTests
{
    const double Pound = 0.45359237, Inch = 0.0254;

    [Fact]
    public void The_published_weighing_comes_out()
    {
        Weight[] weights = [.. Published.Table("weighing-published.csv").Select(row => new Weight(row["what"], row.Number("lb") * Pound, row.Number("armIn") * Inch))];

        var balance = Balance.Of(weights).Value!;

        Assert.Equal(1331.5, balance.Kg / Pound, 0.05);
        Assert.Equal(50.1, balance.ArmM / Inch, 0.05);
    }

    /// <summary>By hand: scales 645 and 635 lb on a track of 2 m, nose 222.5 lb: 10·1/1502.5 = 6.66 mm to the left.</summary>
    [Fact]
    public void A_heavier_left_wheel_puts_the_mass_left_of_the_centreline() =>
        Assert.Equal(-0.006656, Balance.Across(645 * Pound, 635 * Pound, 222.5 * Pound, 2).Value!.ArmM, 1e-6);

    [Fact]
    public void Scales_that_show_nothing_are_refused() =>
        Assert.Equal("nothing-weighed", Assert.Single(Balance.Across(0, 0, 0, 2).Refusals).Code);
}
