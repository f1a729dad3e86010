using Rigging.Mechanics.Contract;
using Rigging.Simulation;
using Rigging.Simulation.Aeroplanes;
using Airframe = Rigging.Mechanics.Contract.Airframe;

namespace Rigging.Mechanics.Tests.Simulated;

/// <summary>Simulated aeroplanes of which nobody filed more than what can be measured and weighed.</summary>
public class GeometryFilesTests
{
    public static TheoryData<string> Files => [.. AirframeFile.ByGeometry.Select(file => file.Id)];

    /// <summary>One round of the catalogue, built once for all that look at it.</summary>
    static readonly Lazy<IReadOnlyList<Scenario>> Round = new(() => [.. Scenarios.ByGeometry(Scenarios.Round)]);

    static AirframeFile File(string id) => AirframeFile.ByGeometry.Single(file => file.Id == id);

    static Airframe Read(AirframeFile file)
    {
        var read = ContractReader.ReadAirframe(file.Filed.ToJsonString());
        Assert.Empty(read.Faults);
        return read.Value!;
    }

    [Theory, MemberData(nameof(Files))]
    public void Nothing_but_geometry_weights_and_limits_is_told(string id)
    {
        var (file, filed) = (File(id), File(id).Filed);

        Assert.False(filed.ContainsKey("derivatives") || filed.ContainsKey("estimated"));
        Assert.Equal(["referenceKg"], filed["mass"]!.AsObject().Select(field => field.Key));
        Assert.Equal(file.Accuracies.Count, Read(file).Estimated!.Count);
    }

    /// <summary>
    /// The generator has figures of its own. What a file is completed with lies within half of what it is said to be good to, and is said to be as
    /// good as these aeroplanes are scattered, within a fifth.
    /// </summary>
    [Theory, MemberData(nameof(Files))]
    public void What_is_usual_for_them_is_what_a_textbook_says_and_as_uncertain(string id)
    {
        var (file, usual) = (File(id), File(id).Json);
        foreach (var figure in Read(file).Estimated!)
        {
            var name = NameOf(figure.Figure);
            var value = (double)(usual["derivatives"]![name] ?? usual["mass"]![name])!;
            Assert.InRange(figure.Value / value, 1 - figure.AccuracyPercent / 200, 1 + figure.AccuracyPercent / 200);
            Assert.InRange(file.Accuracies[name] * 100 / figure.AccuracyPercent, 0.8, 1.2);
        }
    }

    /// <summary>Some are drawn again, for nobody would fly them, and the tails are cut: three quarters of the scatter is left at least.</summary>
    [Fact]
    public void Each_departs_from_it_by_as_much()
    {
        var all = Round.Value.Select(scenario => scenario.Aeroplane).Where(aeroplane => aeroplane.File == AirframeFile.ByGeometry[0]).ToArray();
        var (file, usual) = (all[0].File, all[0].File.Derivatives);
        void Scattered(string figure, Func<Derivatives, double> of)
        {
            double[] factors = [.. all.Select(aeroplane => of(aeroplane.D) / of(usual))];
            var mean = factors.Average();
            Assert.InRange(Math.Sqrt(factors.Average(factor => (factor - mean) * (factor - mean))) / file.Accuracies[figure], 0.75, 1.2);
            Assert.InRange(mean, 1 - file.Accuracies[figure] / 2, 1 + file.Accuracies[figure] / 2);
        }
        Scattered("cYBeta", d => d.CyBeta);
        Scattered("clBeta", d => d.ClBeta);
        Scattered("cnBeta", d => d.CnBeta);
        Scattered("cnP", d => d.CnP);
        Scattered("cnRudder", d => d.CnRudder);
        Scattered("cnAileron", d => d.CnAileron);
    }

    [Fact]
    public void Every_request_is_of_the_contract() => Assert.All(Round.Value, scenario =>
        Assert.Empty(ContractReader.ReadRequest(scenario.Request.ToJsonString()).Faults));

    static string NameOf(EstimableFigure figure) => figure switch
    {
        EstimableFigure.RollInertia => "ixxKgM2",
        EstimableFigure.YawInertia => "izzKgM2",
        _ => char.ToLowerInvariant($"{figure}"[0]) + $"{figure}"[1..],
    };
}
