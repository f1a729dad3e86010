using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// People say fives and halves, and whoever does so once does it always: of each kind of reading the coarsest usual step that everything
/// of that kind in a report is a multiple of, spread evenly.
/// </summary>
sealed class RoundingHabit
{
    readonly Dictionary<ReadingKind, double> steps;

    public RoundingHabit(AssessmentRequest request) => steps = request.TestPoints
        .SelectMany(point => point.Readings)
        .Where(reading => reading is not (Rolls or TimeToBank))
        .GroupBy(reading => reading.Kind, ReadingNoise.Value)
        .ToDictionary(kind => kind.Key, kind => StepOf(kind.Key, [.. kind.Where(value => value != 0)]));

    public double Variance(ReadingKind kind)
    {
        var step = steps.TryGetValue(kind, out var habit) ? habit : Fair(kind);
        return step * step / 12;
    }

    // Nought is a multiple of everything and says nothing of the step.
    static double StepOf(ReadingKind kind, double[] values) => values.Length == 0
        ? Fair(kind)
        : Usual(kind).FirstOrDefault(step => values.All(value => Math.Abs(value / step - Math.Round(value / step)) < 1e-6), Usual(kind)[^1]);

    static double Fair(ReadingKind kind) => Usual(kind)[1];

    static double[] Usual(ReadingKind kind) => kind switch
    {
        ReadingKind.BankAfter or ReadingKind.HeadingChange or ReadingKind.WheelAngle or ReadingKind.FuelDifference => [5, 1, 0.1],
        ReadingKind.Ball => [0.5, 0.25, 0.1, 0.01],
        ReadingKind.WheelForce => [5, 1, 0.1],
        _ => [0.5, 0.1, 0.01],
    };
}
