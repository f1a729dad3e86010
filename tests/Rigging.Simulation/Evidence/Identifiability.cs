using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Motion;

namespace Rigging.Simulation.Evidence;

/// <summary>
/// Whether one cause can be singled out from what was written down, decided by the evidence's design and never by an answer.
/// <para>The true cause's expected readings (the aeroplane as filed) must miss those of every single rival, at the amplitude that fits them best,
/// and those of an aeroplane with nothing wrong, by three standard deviations in all (root of the sum of squares). A deviation holds
/// the reading's own error, its rounding, and 15 % of what is expected, for the aeroplane is not as filed; where only geometry is on file, also what
/// each figure that is not changes when it is out by its accuracy. Unreported fuel is held to the
/// gauges' 8 L. A contour survey that finds something singles out the contour; one that finds nothing holds the rival contour to what would be seen.</para>
/// </summary>
public static class Identifiability
{
    const double Deviations = 3;
    const double ModelShare = 0.15;
    const double GaugeL = 8;

    public static bool Single(AirframeFile file, string cause, double amplitude, Logbook log, Bench bench)
    {
        double[] nothing = [.. log.Written.Select(written => Seen(new(file, Departures.None, Faults.None), written))];
        // Each reading and check, in order, per unit of a cause, for the aeroplane as filed.
        double[] Expected(string of)
        {
            var one = new Aeroplane(file, Departures.None, Faults.Of(of, 1));
            return [.. log.Written.Select((written, i) => Seen(one, written) - nothing[i]), .. bench.Measured.Select(measured => measured.Cause == of ? 1.0 : 0)];
        }
        double[] truth = [.. Expected(cause).Select(x => x * amplitude)];
        double[] deviations =
        [
            .. log.Written.Select((written, i) => Math.Sqrt(
                Square(written.Deviation) + Square(ModelShare * truth[i]) + OfFile(file, cause, amplitude, written))),
            .. bench.Measured.Select(measured => measured.Deviation),
        ];
        var threshold = Deviations * Deviations;
        return Sum(truth, deviations) >= threshold && Faults.Proportional.Where(rival => rival != cause).All(rival =>
            (cause == Faults.Contour && bench.ContourClear == false) || Missed(Expected(rival), Held(rival, bench), truth, deviations) >= threshold);
    }

    /// <summary>A control that stays where it was last put is known by two releases, after left and after right, that differ.</summary>
    public static bool Friction(Logbook log)
    {
        var left = log.Written.Where(x => x.Point.LastInput < 0 && x.Quantity.Kind == "bank-after").ToArray();
        var right = log.Written.Where(x => x.Point.LastInput > 0 && x.Quantity.Kind == "bank-after").ToArray();
        return left.Length > 0 && right.Length > 0
            && Math.Abs(left.Average(x => x.Value) - right.Average(x => x.Value)) >= Deviations * double.Hypot(left.Max(x => x.Deviation), right.Max(x => x.Deviation));
    }

    static double Missed(double[] unit, double held, double[] truth, double[] deviations)
    {
        var (cross, square) = (0.0, held);
        for (var i = 0; i < unit.Length; i++)
        {
            cross += unit[i] * truth[i] / (deviations[i] * deviations[i]);
            square += unit[i] * unit[i] / (deviations[i] * deviations[i]);
        }
        return Sum(truth, deviations) - (square > 0 ? cross * cross / square : 0);
    }

    /// <summary>One over the square of what the rival is held to without a number on the sheet.</summary>
    static double Held(string rival, Bench bench) => rival switch
    {
        Faults.Fuel => 1 / (GaugeL * GaugeL),
        Faults.Contour when bench.ContourClear == true => 1 / (Bench.SeenInSurveyDeg * Bench.SeenInSurveyDeg),
        _ => 0,
    };

    // A time to a bank is no proportion of anything; the bank at the time that was read is.
    static double Seen(Aeroplane aeroplane, Written written) => Instruments.Shows(aeroplane, written.Point,
        written.Quantity.Kind == "time-to-bank" ? new("bank-after", written.Value) : written.Quantity)!.Value;

    /// <summary>Variance by the figures that are not on file, one out at a time.</summary>
    static double OfFile(AirframeFile file, string cause, double amplitude, Written written)
    {
        if (file.Accuracies.Count == 0)
            return 0;
        var (fault, asUsual) = (Faults.Of(cause, amplitude), Seen(new(file, Departures.None, Faults.Of(cause, amplitude)), written));
        return file.Accuracies.Sum(figure => Square(Seen(new(file, Departures.None.With(figure.Key, 1 + figure.Value), fault), written) - asUsual));
    }

    static double Square(double value) => value * value;

    static double Sum(double[] truth, double[] deviations) => truth.Zip(deviations, (t, d) => t / d).Sum(x => x * x);
}
