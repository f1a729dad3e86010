namespace Rigging.Mechanics.Assessment;

/// <param name="Group">Parts of one group answer the question alike.</param>
readonly record struct GroupedPart(int Group, double Weight, double Mean, double Sd);

/// <summary>A weighted sum of normal distributions in groups: what is expected of a number before it is read.</summary>
sealed class GroupedMixture
{
    readonly GroupedPart[] parts;
    readonly int groups;

    public GroupedMixture(IEnumerable<GroupedPart> parts)
    {
        var all = parts.ToArray();
        // What weighs a thousandth of the heaviest tells nobody what to look at.
        var heaviest = all.Max(part => part.Weight);
        var kept = all.Where(part => part.Weight > 1e-3 * heaviest).ToArray();
        var total = kept.Sum(part => part.Weight);
        var places = kept.Select(part => part.Group).Distinct().ToArray();
        groups = places.Length;
        this.parts = [.. kept.Select(part => part with { Weight = part.Weight / total, Group = Array.IndexOf(places, part.Group) })];
    }

    /// <summary>False when an airframe's figures led to no number at all.</summary>
    public bool IsFinite => parts.All(part => double.IsFinite(part.Mean) && double.IsFinite(part.Sd));

    /// <summary>What reading the number tells about which group it is: the information that the two share.</summary>
    public double InformationBits()
    {
        if (!IsFinite)
            return 0;
        var (from, to) = (parts.Min(p => p.Mean - 5 * p.Sd), parts.Max(p => p.Mean + 5 * p.Sd));
        // The sharpest part must still be seen by the grid.
        var steps = (int)Math.Clamp((to - from) / (parts.Min(p => p.Sd) / 2), 60, 400);
        var width = (to - from) / steps;
        var density = new double[groups * steps];
        foreach (var (group, weight, mean, sd) in parts)
        {
            var (first, last) = ((int)Math.Max(0, (mean - 6 * sd - from) / width), (int)Math.Min(steps - 1, (mean + 6 * sd - from) / width));
            var height = weight * width / (sd * Math.Sqrt(2 * Math.PI));
            for (var i = first; i <= last; i++)
            {
                var away = (from + (i + 0.5) * width - mean) / sd;
                density[group * steps + i] += height * Math.Exp(-away * away / 2);
            }
        }
        // What the grid did not catch of a part sharper than a step is lost alike for the sum and for its group.
        var bits = 0.0;
        var whole = new double[steps];
        for (var g = 0; g < groups; g++)
            for (var i = 0; i < steps; i++)
                whole[i] += density[g * steps + i];
        for (var g = 0; g < groups; g++)
        {
            var share = 0.0;
            for (var i = 0; i < steps; i++)
                share += density[g * steps + i];
            for (var i = 0; i < steps; i++)
                if (density[g * steps + i] is var p and > 0)
                    bits += p * Math.Log2(p / (share * whole[i]));
        }
        return Math.Max(0, bits);
    }
}
