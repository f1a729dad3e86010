using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// What to look at next: for each check or test point that can be done, the expected loss of entropy over which causes are
/// present, in bits, best value for the minutes first. Never a point outside the airframe's speeds.
/// </summary>
static class NextTests
{
    const int Most = 6;
    const double WorthDoingBits = 0.02;

    public static IReadOnlyList<NextTest> For(Evidence evidence) =>
    [
        // Listed in the trade's order, which a stable sort keeps where two are worth the same.
        .. Fuel(evidence).Concat(GroundChecks(evidence)).Concat(Flights(evidence))
            .Where(test => test.Bits >= WorthDoingBits)
            .OrderByDescending(test => Math.Round(test.Bits / test.Minutes, 6))
            .Take(Most),
    ];

    static IEnumerable<NextTest> Fuel(Evidence evidence)
    {
        var measured = evidence.Practice.FuelMeasured;
        yield return OfAmplitude(evidence, "measure:fuel-and-seats", Cause.FuelAndLoading, measured.Sd, measured.Minutes);
    }

    static IEnumerable<NextTest> GroundChecks(Evidence evidence) =>
        evidence.Practice.GroundChecks.Select(check => OfAmplitude(
            evidence,
            $"ground-check:{Wire.Word(check.Check)}",
            ModelledCause.All.Single(modelled => modelled.MeasuredBy == check.Check).Cause,
            check.Sd,
            check.Minutes));

    static NextTest OfAmplitude(Evidence evidence, string name, Cause cause, double sd, double minutes)
    {
        var gains = new double[ModelledCause.All.Count];
        gains[ModelledCause.IndexOf(cause)] = 1;
        return new(name, Bits(evidence.Posterior.Predict(0, gains, _ => sd * sd)), minutes);
    }

    static IEnumerable<NextTest> Flights(Evidence evidence)
    {
        var airframe = evidence.Aeroplane.Airframe;
        var reference = airframe.Reference;
        foreach (var casKt in Speeds(airframe))
            yield return Flown(Manoeuvre.ReleaseWheel, casKt, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon });
        yield return Flown(Manoeuvre.HoldNeutral, reference.CasKt, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon });
        yield return Flown(Manoeuvre.HoldLevel, reference.CasKt, new BallReading(0));

        NextTest Flown(Manoeuvre manoeuvre, double casKt, Reading reading)
        {
            var point = new TestPoint(manoeuvre, casKt, reference.PressureAltitudeFt, TestPoint.StandardOatC(reference.PressureAltitudeFt),
                null, 0, reference.Load, AirState.Smooth, null, null, [reading]);
            var observation = evidence.Observe(point, evidence.Aeroplane.At(point), reading)!;
            var outcome = evidence.Posterior.Predict(observation.Known, observation.Gains,
                mean => observation.Variance + Math.Pow(evidence.Practice.ModelError * mean, 2));
            return new(
                $"test-point:{Wire.Word(manoeuvre)}@{casKt.ToString("0", CultureInfo.InvariantCulture)}kt",
                outcome.IsFinite ? Bits(outcome) : 0,
                evidence.Practice.EvaluationPoint.Minutes);
        }
    }

    /// <summary>A slow and a fast one well inside the limits, in fives; only the reference where no limits are on file.</summary>
    static IEnumerable<double> Speeds(Airframe airframe)
    {
        if (airframe.SpeedsKt is not { } limits)
            return [airframe.Reference.CasKt];
        var slow = 5 * Math.Ceiling(1.5 * limits.StallClean / 5);
        var fast = 5 * Math.Floor(0.97 * limits.MaxStructuralCruise / 5);
        return slow < fast ? [slow, fast] : [];
    }

    static double Bits(NormalMixture outcome) => Math.Round(outcome.InformationBits(), 3);
}
