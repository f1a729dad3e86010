using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>Causes that leave the same trace in everything that was observed, and are credible enough to matter.</summary>
static class AlikeCauses
{
    const double TellsApart = 0.95;
    const double WorthNaming = 0.05;

    public static IReadOnlyList<IReadOnlyList<Cause>> In(Evidence evidence)
    {
        var credible = ModelledCause.All
            .Select((modelled, index) => (modelled.Cause, Trace: modelled.First, Index: index))
            .Where(c => evidence.Bears(c.Index) && evidence.Posterior.Probability(c.Index) >= WorthNaming)
            .ToList();
        var noise = new ObservationNoise(evidence.Observations, evidence.Posterior.MostCredible.Amplitudes, evidence.Practice.ModelError);
        double[] Gains(int trace) => [.. evidence.Observations.Select(observation => observation.Gains[trace])];
        double Product(int one, int other) => noise.Product(Gains(one), Gains(other));
        bool Alike(int one, int other) =>
            Math.Abs(Product(one, other)) > TellsApart * Math.Sqrt(Product(one, one) * Product(other, other));

        var groups = new List<IReadOnlyList<Cause>>();
        while (credible.Count > 0)
        {
            var group = credible.Where(c => Alike(credible[0].Trace, c.Trace)).Append(credible[0]).Distinct().ToList();
            if (group.Count > 1)
                groups.Add([.. group.Select(c => c.Cause).Order()]);
            credible.RemoveAll(group.Contains);
        }
        return groups;
    }
}
