using CsCheck;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Motion;

/// <summary>Every manoeuvre and every reading it can show: linear, additive, and the same in a mirror.</summary>
public class LinearityTests
{
    static readonly FlightPoint Point = new Aeroplane(Trainer.Airframe).Reference;
    static readonly FlightPoint InMirror = new Aeroplane(Mirror.Of(Trainer.Airframe)).Reference;

    static readonly Reading[] Readings =
    [
        new BankAfter(10, 0), new TimeToBank(10, 8), new RollRate(0), new HeadingRate(0), new HeadingChange(10, 0),
        new BallReading(0), new WheelAngle(0), new WheelForce(0), new FuelDifference(0),
    ];

    static readonly Gen<Asymmetry> Asymmetries = Gen.Double[-1, 1].Array[8].Select(a => new Asymmetry(
        0.002 * a[0], 0.001 * a[1], 0.001 * a[2], 100 * a[3], 0.01 * a[4], 0.01 * a[5], 0.02 * a[6], 0.3 * a[7]));

    static readonly Gen<(Manoeuvre Manoeuvre, Reading Reading)> Seen = Gen.Select(
        Gen.Int[0, 5], Gen.Int[0, Readings.Length - 1]).Select((manoeuvre, reading) => ((Manoeuvre)manoeuvre, Readings[reading]));

    [Fact]
    public void Two_asymmetries_together_read_what_they_read_one_by_one() => Gen.Select(Seen, Asymmetries, Asymmetries).Sample((seen, one, other) =>
        Read(Point, seen, one) is not { } a || Close(a + Read(Point, seen, other)!.Value, Read(Point, seen, one + other)!.Value));

    [Fact]
    public void So_many_times_the_asymmetry_reads_so_many_times() => Gen.Select(Seen, Asymmetries, Gen.Double[-3, 3]).Sample((seen, one, times) =>
        Read(Point, seen, one) is not { } a || Close(times * a, Read(Point, seen, times * one)!.Value));

    [Fact]
    public void In_a_mirror_everything_reads_the_other_way() => Gen.Select(Seen, Asymmetries).Sample((seen, one) =>
        Read(Point, seen, one) is not { } a || Close(-a, Read(InMirror, seen, -1.0 * one)!.Value));

    static readonly Gen<(double Slow, double Fast)> Speeds = Gen.Select(Gen.Double[60, 95], Gen.Double[5, 40]).Select((kt, more) => (kt, kt + more));

    [Fact]
    public void Incidence_rolls_faster_the_faster_it_flies_and_weight_slower() => Speeds.Sample(speeds =>
    {
        var (slow, fast) = (At(speeds.Slow), At(speeds.Fast));
        var heavy = new Asymmetry(WeightNm: 50);
        return Math.Abs(slow.RollTendencyDegPerS(0.002 * slow.PanelIncidence)) < Math.Abs(fast.RollTendencyDegPerS(0.002 * fast.PanelIncidence))
            && Math.Abs(slow.RollTendencyDegPerS(heavy)) > Math.Abs(fast.RollTendencyDegPerS(heavy));
    }, iter: 20);

    static readonly Aeroplane Aeroplane = new(Trainer.Airframe);

    static FlightPoint At(double casKt) => Aeroplane.At(Trainer.Point(Manoeuvre.ReleaseWheel, casKt));

    static double? Read(FlightPoint point, (Manoeuvre Manoeuvre, Reading Reading) seen, Asymmetry asymmetry) =>
        PilotReading.Predict(point, seen.Manoeuvre, seen.Reading, asymmetry);

    static bool Close(double one, double other) => Math.Abs(one - other) <= 1e-9 * Math.Max(1, Math.Max(Math.Abs(one), Math.Abs(other)));
}
