using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Which cause is behind what was seen: in every explanation the one of its causes that does most of it. What is present beside it
/// and does not show, such as a wheel out of centre when nobody held it there, is no part of that question, and a test that would
/// only find it tells nothing about the complaint.
/// </summary>
sealed class Diagnosis
{
    const int Nothing = 0;

    readonly Posterior posterior;
    readonly int[] behind;
    readonly double[] probability;

    public Diagnosis(Evidence evidence)
    {
        posterior = evidence.Posterior;
        var flown = evidence.Observations.Where(observation => observation.IsFlown).ToArray();
        // With nothing flown there is nothing to be behind; then each set of causes is an answer of its own.
        behind = [.. posterior.Explanations.Select((explanation, index) => flown.Length == 0 ? index : Behind(explanation, flown))];
        probability = new double[behind.Max() + 1];
        for (var e = 0; e < behind.Length; e++)
            probability[behind[e]] += posterior.Explanations[e].Weight;
    }

    /// <summary>That a cause is behind most of what was seen; nothing when nothing was flown.</summary>
    public double Probability(Cause cause) => probability.Length <= 1 + ModelledCause.All.Count && 1 + (int)cause < probability.Length ? probability[1 + (int)cause] : 0;

    /// <summary>What a number that is a straight line in the amplitudes would tell, bits.</summary>
    public double Bits(double known, IReadOnlyList<double> gains, Func<Explanation, double, double> extraVariance) =>
        new GroupedMixture(posterior.Explanations.Select((explanation, index) =>
        {
            var mean = known + explanation.Mean(gains);
            return new GroupedPart(behind[index], explanation.Weight, mean, Math.Sqrt(Math.Max(explanation.Variance(gains) + extraVariance(explanation, mean), 1e-18)));
        })).InformationBits();

    /// <summary>What a look for a cause would tell, which finds or does not find.</summary>
    public double BitsOfLook(Cause cause, double finds, double falseAlarm)
    {
        var found = new double[probability.Length];
        for (var e = 0; e < behind.Length; e++)
            found[behind[e]] += posterior.Explanations[e].Weight * (posterior.Explanations[e].Has((int)cause) ? finds : falseAlarm);
        var apart = 0.0;
        for (var g = 0; g < found.Length; g++)
            if (probability[g] > 0)
                apart += probability[g] * Binary(found[g] / probability[g]);
        return Math.Max(0, Binary(found.Sum()) - apart);
    }

    int Behind(Explanation explanation, Observation[] flown)
    {
        var (most, place) = (0.0, Nothing);
        foreach (var cause in explanation.Present)
        {
            var (first, count) = (ModelledCause.All[cause].First, ModelledCause.All[cause].Count);
            var friction = cause == (int)Cause.ControlFriction ? posterior.Friction(explanation) : 0;
            var share = 0.0;
            foreach (var observation in flown)
            {
                var part = Stuck(observation, explanation, observation.FrictionGain * friction);
                for (var trace = first; trace < first + count; trace++)
                    part += observation.Gains[trace] * explanation.Amplitudes[trace];
                share += part * part / observation.Variance;
            }
            if (share > most)
                (most, place) = (share, 1 + cause);
        }
        return place;
    }

    /// <summary>What friction, which may have left the wheel on either side, likely did of what the other causes leave.</summary>
    static double Stuck(Observation observation, Explanation explanation, double scatter) => scatter == 0 ? 0
        : (observation.Observed - observation.Predicted(explanation.Amplitudes)) * scatter * scatter / (scatter * scatter + observation.Variance);

    static double Binary(double p) => p is <= 0 or >= 1 ? 0 : -p * Math.Log2(p) - (1 - p) * Math.Log2(1 - p);
}
