using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation;

/// <summary>What the office knows of the aeroplane's past. Half of the time nothing was done that could explain it; invented, no source.</summary>
static class History
{
    static readonly Dictionary<string, string[]> After = new()
    {
        [Faults.Panel] = ["wing-removed"],
        [Faults.Tip] = ["repaint", "storm-parking"],
        [Faults.Flap] = ["control-replaced"],
        [Faults.Contour] = ["repaint", "storm-parking"],
        [Faults.Float] = ["control-replaced", "repaint"],
        [Faults.Neutral] = ["cables-adjusted"],
        [Faults.Rudder] = ["control-replaced", "cables-adjusted"],
        [Faults.Friction] = ["cables-adjusted", "storm-parking"],
        [Faults.Damage] = ["hard-landing", "ground-strike", "sudden-onset", "flap-overspeed"],
    };

    public static (IReadOnlyList<string> Events, bool? StraightBefore) Of(Recipe recipe, Chance chance)
    {
        var cause = recipe.Causes.FirstOrDefault(cause => After.ContainsKey(cause));
        if (cause == Faults.Damage)
            return ([chance.Pick(After[cause])], true);
        if (cause is null || recipe.Evidence == "vague" || chance.Once(0.5))
            return ([], null);
        return ([chance.Pick(After[cause])], chance.Once(0.5) ? true : null);
    }
}
