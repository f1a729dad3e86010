using CsCheck;
using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

public class LiftingLineTests
{
    [Fact]
    public void The_published_values_come_out()
    {
        foreach (var row in Published.Table("wing-published.csv"))
            Near(row, Quantity(row["quantity"], Planforms.Of(row), (int)row.Number("nodes")));
    }

    [Fact]
    public void The_published_ailerons_come_out()
    {
        foreach (var row in Published.Table("ailerons-published.csv"))
        {
            var wing = Planforms.Of(row);
            var line = new LiftingLine(wing, (int)row.Number("nodes"));
            var power = -line.Response(PublishedAilerons.On(wing, row.Number("inboardShare"), row.Number("outboardShare"))).RollingMomentCoefficient;
            Near(row, row["quantity"] == "aileron-power" ? power : power * Radians(row.Number("deflectionDeg")) / Damping(line, wing));
        }
    }

    [Fact]
    public void The_worked_example_of_four_points_comes_out()
    {
        var wing = Planform.OfStations([new(0, 3.048, Radians(5.5), 5.5), new(6.096, 1.524, Radians(3.5), 5.8)]);

        var terms = new LiftingLine(wing, 7).BuiltIn().Terms;

        foreach (var row in Published.Table("fourier-recalled.csv"))
            Assert.Equal(row.Number("value"), terms[(int)row.Number("term") - 1], row.Number("tolerance"));
    }

    static readonly Gen<Planform> Wings = Gen.Select(Gen.Double[4, 12], Gen.Double[0.3, 1], Gen.Double[5, 6.6])
        .Select((aspectRatio, taper, slope) => Planforms.Tapered(aspectRatio, taper, slope));

    /// <summary>Exact for any wing: twist that grows linearly to ±ε at the tips is the incidence of a roll rate pb/2V = ε.</summary>
    [Fact]
    public void Linear_twist_rolls_any_wing_at_the_rate_of_its_tips() => Wings.Sample(wing =>
    {
        var line = new LiftingLine(wing, 39);
        var twist = 2 * line.Response(IncidenceShape.TwistDifference(0, wing.SpanM / 2)).RollingMomentCoefficient;
        return Math.Abs(-twist / Damping(line, wing) - 1) < 1e-6;
    }, iter: 30);

    static double Quantity(string name, Planform wing, int nodes)
    {
        var line = new LiftingLine(wing, nodes);
        var lift = line.Response(IncidenceShape.Uniform(wing.SpanM));
        var efficiency = lift.LiftCoefficient * lift.LiftCoefficient / (Math.PI * wing.AspectRatio * lift.InducedDragCoefficient);
        var elliptic = 2 * Math.PI / (1 + 2 / wing.AspectRatio);
        double Panels() => -2 * line.Response(IncidenceShape.BandDifference(0, wing.SpanM / 2)).RollingMomentCoefficient;
        return name switch
        {
            "lift-slope" => lift.LiftCoefficient,
            "lift-slope-factor" => elliptic / lift.LiftCoefficient - 1,
            "induced-drag-factor" => 1 / efficiency - 1,
            "span-efficiency" => efficiency,
            "roll-damping" => Damping(line, wing),
            "panel-difference" => Panels(),
            "steady-roll-per-panel-difference" => Panels() / Damping(line, wing),
            _ => throw new ArgumentException(name),
        };
    }

    static double Damping(LiftingLine line, Planform wing) => -line.Response(IncidenceShape.RollRate(wing.SpanM)).RollingMomentCoefficient;

    static void Near(Published.Row row, double actual) =>
        Assert.True(Math.Abs(actual / row.Number("expected") - 1) <= row.Number("tolerance"), $"{row}: {actual}");

    static double Radians(double degrees) => degrees * Math.PI / 180;
}
