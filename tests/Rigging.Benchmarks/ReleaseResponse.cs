using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Benchmarks;

/// <summary>
/// What 20 seconds after letting go of everything bring, from held flight to bank and heading, nothing known beforehand, against one bare
/// 4 × 4 matrix exponential.
/// </summary>
public class ReleaseResponse
{
    const double Seconds = 20;

    static readonly Asymmetry Heavy = new(Rolling: -0.0004, Yawing: 0.0002, WeightNm: 30, RudderOffsetRad: 0.01, AileronFloatRad: 0.005);

    readonly LateralModel model = Example.Point.Model;
    readonly Matrix<double> matrix = Example.Point.Model.System * Seconds;
    readonly double[] byRows = (Example.Point.Model.System * Seconds).ToRowMajorArray();
    readonly double[] result = new double[16];

    [Benchmark(Baseline = true)]
    public double BareExponentialInPlainLoops()
    {
        BareExponential.Of(byRows, result);
        return result[0];
    }

    [Benchmark]
    public double BareExponentialWithTheLibrary() => BareExponential.Of(matrix)[0, 0];

    [Benchmark]
    public double ReleaseAll()
    {
        var held = new HeldFlight(model, 3.5).Level(Heavy);
        return new Release(model).After(Seconds, held, Heavy.AileronFloatRad, Heavy).BankRad;
    }
}

/// <summary>One reading predicted again and again, as an assessment does: no memory.</summary>
public class PredictedReading
{
    static readonly Asymmetry Heavy = new(Rolling: -0.0004, Yawing: 0.0002, WeightNm: 30);
    static readonly BankAfter Bank = new(10, -6);

    readonly FlightPoint point = Example.Point;

    [Benchmark]
    public double? BankAfterTenSeconds() => PilotReading.Predict(point, Manoeuvre.ReleaseWheel, Bank, Heavy);
}
