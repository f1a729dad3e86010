using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Motion;
using Loaded = Rigging.Simulation.Motion.Load;
using Point = Rigging.Mechanics.Contract.TestPoint;
using Flown = Rigging.Simulation.Aeroplanes.Aeroplane;
using Solved = Rigging.Mechanics.Motion.Aeroplane;

namespace Rigging.Mechanics.Tests.Simulated;

/// <summary>Two programs written apart from the same contract, on the same aeroplane, say the same.</summary>
public class SecondOpinionTests
{
    const double RadPerDeg = Math.PI / 180;

    public static TheoryData<string, string> Cases =>
        [.. AirframeFile.All.SelectMany(file => Faults.Proportional.Select(cause => new TheoryDataRow<string, string>(file.Id, cause)))];

    /// <summary>An amplitude of each cause that a pilot would notice, so that a share of the reading is a share of something.</summary>
    static double Noticed(string cause) => cause switch
    {
        Faults.Fuel => 20,
        Faults.Panel or Faults.Contour or Faults.Float or Faults.Neutral => 0.2,
        Faults.Tip or Faults.Ball => 0.4,
        Faults.Flap or Faults.Slipstream => 1,
        _ => 2,
    };

    static Asymmetry ByTheMechanics(FlightPoint point, Airframe airframe, string cause, double amplitude) => cause switch
    {
        Faults.Fuel => new(WeightNm: amplitude * LateralLoad.MomentPerLitreNm(airframe, Rigging.Mechanics.Contract.Load.UsualFuelKgPerL)),
        Faults.Panel or Faults.Contour => amplitude * RadPerDeg * point.PanelIncidence,
        Faults.Tip => amplitude * RadPerDeg * point.TipIncidence,
        Faults.Flap => amplitude * RadPerDeg * point.FlapDifference,
        Faults.Float => new(AileronFloatRad: amplitude * RadPerDeg),
        Faults.Neutral => new(AileronNeutralRad: amplitude * RadPerDeg),
        Faults.Rudder => new(RudderOffsetRad: amplitude * RadPerDeg),
        Faults.Slipstream => amplitude * point.Slipstream,
        _ => new(BallOffsetWidths: amplitude),
    };

    static readonly (string Word, Manoeuvre Manoeuvre, Quantity Quantity, Reading Reading)[] Readings =
    [
        ("release-wheel", Manoeuvre.ReleaseWheel, new("bank-after", 10), new BankAfter(10, 0)),
        ("release-wheel", Manoeuvre.ReleaseWheel, new("bank-after", 4), new BankAfter(4, 0)),
        ("release-wheel", Manoeuvre.ReleaseWheel, new("roll-rate"), new RollRate(0)),
        ("release-wheel", Manoeuvre.ReleaseWheel, new("heading-change", 8), new HeadingChange(8, 0)),
        ("release-all", Manoeuvre.ReleaseAll, new("bank-after", 10), new BankAfter(10, 0)),
        ("release-all", Manoeuvre.ReleaseAll, new("heading-change", 8), new HeadingChange(8, 0)),
        ("release-all", Manoeuvre.ReleaseAll, new("ball"), new BallReading(0)),
        ("hold-neutral", Manoeuvre.HoldNeutral, new("bank-after", 10), new BankAfter(10, 0)),
        ("hold-level", Manoeuvre.HoldLevel, new("ball"), new BallReading(0)),
        ("hold-level", Manoeuvre.HoldLevel, new("heading-rate"), new HeadingRate(0)),
        ("hold-level", Manoeuvre.HoldLevel, new("wheel-angle"), new WheelAngle(0)),
        ("hold-level", Manoeuvre.HoldLevel, new("wheel-force"), new WheelForce(0)),
        ("hold-straight", Manoeuvre.HoldStraight, new("wheel-angle"), new WheelAngle(0)),
        ("hold-straight", Manoeuvre.HoldStraight, new("wheel-force"), new WheelForce(0)),
    ];

    // 2 %: two lattices of different grids. The floor is a tenth of what a reading of that kind is good to.
    static double Tolerance(double expected, Quantity quantity) =>
        0.02 * Math.Abs(expected) + quantity.Kind switch { "bank-after" or "heading-change" => 0.1, "wheel-angle" => 0.2, "wheel-force" => 0.2, "ball" => 0.012, _ => 0.01 };

    [Theory, MemberData(nameof(Cases))]
    public void Every_reading_agrees(string id, string cause)
    {
        var file = AirframeFile.Named(id);
        var airframe = ContractReader.ReadAirframe(file.Json.ToJsonString()).Value!;
        var mechanics = new Solved(airframe);
        var simulated = new Flown(file, Departures.None, Faults.Of(cause, Noticed(cause)));
        var load = Loaded.Of(file.ReferenceLoad);
        foreach (var (knots, power) in new[] { (file.ReferenceKt, 0.65), (file.ReferenceKt - 22, 1), (file.ReferenceKt + 10, 0.3) })
        {
            var there = mechanics.At(new Point(
                Manoeuvre.HoldLevel, knots, 4000, 12, power * 100, 0, airframe.Reference.Load, AirState.Smooth, null, null, []));
            var asymmetry = there.Slipstream + ByTheMechanics(there, airframe, cause, Noticed(cause));
            Assert.All(Readings, reading =>
            {
                var ours = PilotReading.Predict(there, reading.Manoeuvre, reading.Reading, asymmetry)!.Value;
                var theirs = Instruments.Shows(simulated, new(reading.Word, knots, 4000, 12, power, load), reading.Quantity)!.Value;
                Assert.Equal(theirs, ours, Tolerance(theirs, reading.Quantity));
            });
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_tendency_agrees(string id, string cause)
    {
        // What was not reported, and a ball that shows wrong, are no part of the simulator's tendency.
        if (cause is Faults.Fuel or Faults.Ball)
            return;
        var file = AirframeFile.Named(id);
        var airframe = ContractReader.ReadAirframe(file.Json.ToJsonString()).Value!;
        var reference = new Solved(airframe).Reference;
        var ours = reference.RollTendencyDegPerS(ByTheMechanics(reference, airframe, cause, Noticed(cause)));
        var theirs = new Flown(file, Departures.None, Faults.Of(cause, Noticed(cause))).TendencyDegPerS;
        Assert.Equal(theirs, ours, 0.02 * Math.Abs(theirs) + 0.001);
    }

    [Theory, MemberData(nameof(Cases))]
    public void The_fuel_that_balances_agrees(string id, string cause)
    {
        var file = AirframeFile.Named(id);
        var airframe = ContractReader.ReadAirframe(file.Json.ToJsonString()).Value!;
        var there = new Solved(airframe).At(new Point(
            Manoeuvre.BalanceFuel, file.ReferenceKt - 15, 4000, 12, 65, 0, airframe.Reference.Load, AirState.Smooth, null, null, []));
        var ours = PilotReading.Predict(there, Manoeuvre.BalanceFuel, new FuelDifference(0), there.Slipstream + ByTheMechanics(there, airframe, cause, Noticed(cause)))!.Value;
        var theirs = Instruments.Shows(
            new(file, Departures.None, Faults.Of(cause, Noticed(cause))),
            new("balance-fuel", file.ReferenceKt - 15, 4000, 12, 0.65, Loaded.Of(file.ReferenceLoad)), new("fuel-difference"))!.Value;
        Assert.Equal(theirs, ours, 0.02 * Math.Abs(theirs) + 0.1);
    }
}
