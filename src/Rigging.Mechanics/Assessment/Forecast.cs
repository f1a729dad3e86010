using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>What would be read at any test point, by everything one request says: the line and the band that readings are drawn against.</summary>
public sealed class Forecast
{
    readonly Evidence evidence;

    Forecast(Evidence evidence) => this.evidence = evidence;

    /// <returns>Null when this airframe's figures lead to no numbers, or when nothing is observed yet.</returns>
    public static Forecast? Of(AssessmentRequest request, Airframe airframe, Practice practice)
    {
        var evidence = new Evidence(request, new Aeroplane(airframe), practice);
        return evidence is { IsComputable: true, Observations.Count: > 0 } ? new(evidence) : null;
    }

    /// <summary>
    /// Mean and 90 % interval of what such a reading would show in the reading's own unit, the model's error included and the error of reading it
    /// left out; null where the manoeuvre cannot show it. The value that the reading carries does not matter.
    /// </summary>
    public Estimate? Of(TestPoint point, Reading reading)
    {
        if (evidence.Observe(point, evidence.Aeroplane.At(point), reading) is not { } shown)
            return null;
        var error = evidence.Practice.ModelError;
        var predicted = evidence.Posterior.Predict(shown.Known, shown.Gains, (explanation, mean) =>
            error * error * mean * mean + Math.Pow(evidence.Posterior.Friction(explanation) * shown.FrictionGain, 2));
        return predicted.IsFinite ? predicted.Estimate(UnitOf(reading)) : null;
    }

    /// <summary>Half the width in which a reading lies about the truth nine times in ten, in the reading's own unit; null where the manoeuvre cannot show it or no number was read.</summary>
    public double? GiveOf(TestPoint point, Reading reading) =>
        evidence.Observe(point, evidence.Aeroplane.At(point), reading) is { Range: null, Variance: var variance } ? NineInTen * Math.Sqrt(variance) : null;

    // Standard deviations either side of the mean that hold 90 % of a normal distribution.
    const double NineInTen = 1.645;

    static string UnitOf(Reading reading) => reading switch
    {
        RollRate or Rolls or HeadingRate => "deg/s",
        BallReading => "widths",
        WheelForce => "N",
        FuelDifference => "L",
        _ => "deg",
    };
}
