using Rigging.Mechanics.Cables;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Cables;

public class CableTests
{
    static readonly Published.Row Chart = Published.Table("tension-published.csv").Single(row => row["source"] == "chart");

    static readonly RiggedTension Rigged = new("aileron", Force.FromPoundsForce(Chart.Number("lbf")), Force.FromPoundsForce(5),
        Temperature.FromDegreesFahrenheit(Chart.Number("degF")), "rigging chart, the one point in its text");

    /// <summary>Invented stiffness: 250 kN per unit of stretch.</summary>
    static readonly CableExpansion Expansion = new(250_000, CableExpansion.CarbonSteel, CableExpansion.AluminiumAlloy);

    [Fact]
    public void At_the_temperature_on_file_the_published_point_is_wanted()
    {
        var wanted = WantedTension.At(Temperature.FromDegreesFahrenheit(Chart.Number("degF")), Rigged, expansion: null).Value!;

        Assert.Equal(Chart.Number("lbf"), wanted.Middle.PoundsForce, 1e-9);
        Assert.False(wanted.IsEstimate);
    }

    /// <summary>By hand: 250 000·(23.4 − 11.7)·10⁻⁶ = 2.925 N for each kelvin; 20 K colder takes 58.5 N off.</summary>
    [Fact]
    public void A_cold_hangar_wants_less()
    {
        var wanted = WantedTension.At(Temperature.FromKelvins(Rigged.Temperature.Kelvins - 20), Rigged, Expansion).Value!;

        Assert.Equal(Rigged.At.Newtons - 58.5, wanted.Middle.Newtons, 1e-6);
        Assert.True(wanted.IsEstimate);
    }

    [Fact]
    public void Without_the_cables_own_figures_another_temperature_is_refused() =>
        Assert.Equal("expansion-not-on-file", Assert.Single(WantedTension.At(Temperature.FromDegreesCelsius(10), Rigged, null).Refusals).Code);

    [Fact]
    public void Too_far_from_what_is_on_file_no_estimate_is_given() =>
        Assert.Equal("temperature-too-far", Assert.Single(WantedTension.At(Temperature.FromDegreesCelsius(-20), Rigged, Expansion).Refusals).Code);

    [Fact]
    public void A_cable_never_pushes() =>
        Assert.Equal(0, WantedTension.At(Temperature.FromKelvins(Rigged.Temperature.Kelvins - 39), Rigged, Expansion with { StiffnessN = 1e6 }).Value!.Least.Newtons);

    [Fact]
    public void Slack_and_tight_are_told_apart()
    {
        var wanted = WantedTension.At(Rigged.Temperature, Rigged, null).Value!;

        Assert.Contains("slack", wanted.Fault(Force.FromPoundsForce(64)), StringComparison.Ordinal);
        Assert.Contains("tight", wanted.Fault(Force.FromPoundsForce(76)), StringComparison.Ordinal);
        Assert.Null(wanted.Fault(Force.FromPoundsForce(74)));
    }

    /// <summary>By hand: 0.3 mm on 6 m is 5·10⁻⁵; of 250 kN that is 12.5 N.</summary>
    [Fact]
    public void A_little_longer_run_is_a_little_more_tension() =>
        Assert.Equal(12.5, Expansion.GainedBy(Length.FromMillimeters(0.3), Length.FromMeters(6)).Newtons, 1e-9);

    static Tensiometer Card(string source)
    {
        var row = Published.Table("tension-published.csv").Single(r => r["source"] == source);
        return new(source, [new(row["cable"], row["riser"], row.Number("reading"), Force.FromPoundsForce(row.Number("lbf"))), new("3/16", "2", 58, Force.FromPoundsForce(150))]);
    }

    [Fact]
    public void The_same_reading_is_another_tension_on_the_next_instrument()
    {
        double Pounds(string serial) => Card(serial).TensionOf(new(serial, "3/16", "2", 48)).Value!.Tension.PoundsForce;

        Assert.Equal(100, Pounds("instrument-a"), 1e-9);
        Assert.Equal(70, Pounds("instrument-b"), 1e-9);
    }

    [Theory]
    [InlineData("instrument-b", "3/16", "2", 48, "other-instrument")]
    [InlineData("instrument-a", "1/8", "2", 48, "not-on-card")]
    [InlineData("instrument-a", "3/16", "1", 48, "not-on-card")]
    [InlineData("instrument-a", "3/16", "2", 47, "off-card")]
    [InlineData("instrument-a", "3/16", "2", 59, "off-card")]
    public void Another_serial_or_what_is_not_on_the_card_is_refused(string serial, string cable, string riser, double reading, string code) =>
        Assert.Equal(code, Assert.Single(Card("instrument-a").TensionOf(new(serial, cable, riser, reading)).Refusals).Code);

    /// <summary>By hand: halfway between 100 and 150.</summary>
    [Fact]
    public void Between_two_rows_it_is_straight() =>
        Assert.Equal(125, Card("instrument-a").TensionOf(new("instrument-a", "3/16", "2", 53)).Value!.Tension.PoundsForce, 1e-9);
}
