using Rigging.Mechanics.Verification;
using Rigging.Simulation;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Quality;

/// <summary>Everything that is counted over a set of simulated aeroplanes.</summary>
sealed class Quality(IReadOnlyList<Judged> all)
{
    public static IReadOnlyList<string> Causes { get; } =
    [
        Faults.Fuel, Faults.Panel, Faults.Tip, Faults.Flap, Faults.Contour, Faults.Float, Faults.Neutral, Faults.Rudder, Faults.Slipstream, Faults.Friction, Faults.Ball, Faults.Damage,
    ];

    /// <summary>So many rounds of the catalogue, on each airframe.</summary>
    public static int Round => Scenarios.Round;

    /// <param name="first">Rounds to leave out before the first that counts.</param>
    /// <param name="rounds">How many count.</param>
    public static Quality OfRounds(int first, int rounds) =>
        new([.. Scenarios.Of((first + rounds) * Scenarios.Round).Skip(first * Scenarios.Round).AsParallel().AsOrdered().Select(Judged.Of)]);

    public int Count => all.Count;

    public IReadOnlyList<Judged> All => all;

    public IEnumerable<Judged> Identifiable => all.Where(one => one.Truth.Identifiable);

    /// <summary>The same of aeroplanes of which only the geometry is on file.</summary>
    public static Quality ByGeometry(int first, int rounds) =>
        new([.. Scenarios.ByGeometry((first + rounds) * Scenarios.Round).Skip(first * Scenarios.Round).AsParallel().AsOrdered().Select(Judged.Of)]);

    public Share TopCauseRight => Share.Where(Identifiable, one => one.TopCause == one.Truth.Present[0]);

    public Share TopCauseRightOf(string cause) => Share.Where(Identifiable.Where(one => one.Truth.Present[0] == cause), one => one.TopCause == cause);

    /// <summary>Aeroplanes that have the cause: does its interval hold the true amplitude?</summary>
    public Share Covered(string cause) => Share.Where(
        all.Where(one => one.Truth.Present.Contains(cause)).Select(one => one.Holds(cause)).OfType<bool>(), held => held);

    public Share TendencyCovered => Share.Where(all.Where(one => one.Tendency is not null), one => Inside(one.Tendency!.Value, one.Truth.RollTendencyDegPerS));

    public Share IdealMove => Share.Where(all.Where(one => one.Truth.Warranted is not null), one => one.IsIdealMove(one.Truth.Warranted!));

    /// <summary>Aeroplanes whose panels are alike: an eccentric turned there is turned for another's fault.</summary>
    public Share EccentricForOthers => Share.Where(all.Where(one => !one.Truth.Present.Contains(Faults.Panel)), one => one.TurnsAnEccentric);

    public Share Lessens => Share.Where(all.Select(one => one.Lessens()).OfType<bool>(), lessens => lessens);

    public Share PredictionHolds => Share.Where(all.Where(one => one.Predicted is not null), one => Inside(one.Predicted!.Value, one.TendencyAfter!.Value));

    /// <summary>Check flights after an eccentric was turned.</summary>
    IEnumerable<Judged> Flown => all.Where(one => one.TendencyByVerdict is not null);

    public Share VerdictCovered => Share.Where(Flown, one => Inside(one.TendencyByVerdict!.Value, one.TendencyAfter!.Value));

    public Share AssessedAfterCovered => Share.Where(all.Where(one => one.AssessedAfter is not null), one => Inside(one.AssessedAfter!.Value, one.TendencyAfter!.Value));

    public Share AcceptedAndInside => Share.Where(Flown.Where(one => one.Verdict!.Verdict == Verdict.Accepted), one => Math.Abs(one.TendencyAfter!.Value) <= one.Limit);

    public Share AgainAndOutside => Share.Where(Flown.Where(one => one.Verdict!.Verdict == Verdict.AdjustAgain), one => Math.Abs(one.TendencyAfter!.Value) > one.Limit);

    /// <summary>By three releases.</summary>
    public Share Settled => Share.Where(Flown, one => one.Verdict!.Verdict != Verdict.NotEnoughEvidence);

    /// <summary>Middle width of the 90 % interval of the tendency where the evidence is full, °/s.</summary>
    public double MedianWidth => Median(all.Where(one => one.Scenario.Is("full")).Select(one => one.Tendency).OfType<(double Low, double High)>().Select(tendency => tendency.High - tendency.Low));

    public double HighestWhenVague => all.Where(one => one.Scenario.Is("vague")).Select(one => one.HighestProbability).DefaultIfEmpty(double.NaN).Max();

    public Share DamageHeld => Share.Where(all.Where(one => one.Scenario.Is("damage")), one => one.Refusals.Contains("damage-not-ruled-out"));

    /// <summary>Of what is called so likely, how much is there?</summary>
    public Share ThereWhenCalled(double from, double to) => Share.Where(
        all.SelectMany(one => Causes.Select(cause => (There: one.Truth.Present.Contains(cause), Called: one.Probability(cause)))).Where(cause => cause.Called >= from && cause.Called < to),
        cause => cause.There);

    public int Confused(string truth, string top) => Identifiable.Count(one => one.Truth.Present[0] == truth && one.TopCause == top);

    static bool Inside((double Low, double High) interval, double value) => interval.Low <= value && value <= interval.High;

    static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted[sorted.Length / 2];
    }
}
