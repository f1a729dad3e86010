using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Assessment;

/// <summary>Requests for checks.</summary>
static class Reports
{
    public static AssessmentRequest Of(params TestPoint[] points) => new(
        "st2", null, new(new(0), new(0)), null, [], null, Autopilot.Off, points, []);

    /// <summary>The request of the contract's example, word for word.</summary>
    public static AssessmentRequest Example { get; } = Read("assessment-request.example.json");

    public static AssessmentRequest Read(string name)
    {
        var read = ContractReader.ReadRequest(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "contract", name)));
        Assert.Empty(read.Faults);
        return read.Value!;
    }

    /// <summary>What the motion model itself would read, so that a check can put a known cause in.</summary>
    public static TestPoint Flown(Airframe airframe, TestPoint point, Func<FlightPoint, Asymmetry> asymmetry)
    {
        var flight = new Aeroplane(airframe).At(point);
        return point with { Readings = [.. point.Readings.Select(reading => Read(flight, point, reading, asymmetry(flight)))] };
    }

    static Reading Read(FlightPoint flight, TestPoint point, Reading reading, Asymmetry asymmetry)
    {
        var value = PilotReading.Predict(flight, point.Manoeuvre, reading, asymmetry + flight.Of(point.Load) + flight.Slipstream)!.Value;
        return reading switch
        {
            BankAfter bank => bank with { Deg = Math.Round(value) },
            BallReading ball => ball with { Widths = Math.Round(value, 1) },
            HeadingRate rate => rate with { DegPerS = Math.Round(value, 1) },
            WheelForce force => force with { N = Math.Round(value) },
            FuelDifference fuel => fuel with { L = Math.Round(value) },
            _ => throw new ArgumentException($"No such reading here: {reading.Kind}"),
        };
    }

    static readonly Gen<Reading> Readings = Gen.OneOf<Reading>(
        Gen.Double[-20, 20].Select(deg => (Reading)new BankAfter(10, deg) { Method = ReadingMethod.StopwatchHorizon }),
        Gen.Double[1, 20].Select(seconds => (Reading)new TimeToBank(seconds > 10 ? 10 : -10, seconds)),
        Gen.Double[-4, 4].Select(rate => (Reading)new RollRate(rate)),
        Gen.Double[-1, 1].Select(widths => (Reading)new BallReading(widths)),
        Gen.Double[-2, 2].Select(rate => (Reading)new HeadingRate(rate)),
        Gen.Double[-30, 30].Select(newtons => (Reading)new WheelForce(newtons)),
        Gen.Select(Gen.Enum<RollSide>(), Gen.Enum<RollStrength>())
            .Select((side, strength) => (Reading)new Rolls(side, side == RollSide.None ? null : strength)));

    static readonly Gen<TestPoint> Points = Gen.Select(
        Gen.Enum<Manoeuvre>(), Gen.Double[60, 110], Readings.List[1, 3], Gen.Double[0, 110], Gen.Double[5, 40], Gen.Enum<AirState>(), Gen.Double[0, 100],
        (manoeuvre, casKt, readings, rightKg, rightL, air, power) => Trainer.Point(manoeuvre, casKt, [.. readings]) with
        {
            Load = Trainer.Aboard(80, rightKg, 22, rightL),
            Air = air,
            PowerPercent = power,
        });

    static readonly GroundCheckKind[] Angles =
    [
        GroundCheckKind.PanelIncidenceDifference, GroundCheckKind.FlapDifference, GroundCheckKind.AileronFloat,
        GroundCheckKind.TipIncidenceDifference, GroundCheckKind.AileronNeutralOffset,
    ];

    static readonly Gen<GroundCheck> Checks = Gen.Select(
        Gen.Int[0, Angles.Length - 1].Select(index => Angles[index]),
        Gen.Double[-0.6, 0.6],
        (kind, deg) => (GroundCheck)new AngleCheck(kind, deg));

    public static Gen<AssessmentRequest> Any { get; } = Gen.Select(
        Points.List[0, 4], Checks.List[0, 3], Gen.Enum<EventKind>().List[0, 2], Gen.Double[-90, 90], Gen.Double[-90, 90],
        (points, checks, events, left, right) => Of([.. points]) with
        {
            GroundChecks = [.. checks],
            Events = [.. events.Where(kind => kind != EventKind.CorrectionWithoutEffect).Select(kind => new PastEvent(kind))],
            Settings = new(new(left), new(right)),
        });

    public static CauseEstimate Of(this AssessmentResponse response, Cause cause) => response.Causes.Single(c => c.Cause == cause);

    public static AssessmentResponse Assess(this AssessmentRequest request) => Assessor.Assess(request, Trainer.Airframe);
}
