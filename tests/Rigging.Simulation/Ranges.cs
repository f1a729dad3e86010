using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation;

/// <summary>
/// How far wrong an aeroplane of these scenarios is, per cause, in the contract's units; invented to roll at 0.3 to 3 °/s where the cause rolls.
/// </summary>
static class Ranges
{
    static readonly Dictionary<string, (double From, double To)> All = new()
    {
        [Faults.Fuel] = (8, 30),
        [Faults.Panel] = (0.05, 0.24),
        [Faults.Tip] = (0.2, 0.9),
        [Faults.Flap] = (0.3, 1.8),
        [Faults.Contour] = (0.08, 0.35),
        [Faults.Float] = (0.08, 0.5),
        [Faults.Neutral] = (0.1, 0.6),
        [Faults.Rudder] = (0.6, 3.5),
        [Faults.Slipstream] = (0.5, 2.5),
        [Faults.Friction] = (1.5, 5),
        [Faults.Ball] = (0.15, 0.6),
        [Faults.Damage] = (0.6, 1.6),
    };

    public static double Draw(string cause, bool plain, Chance chance)
    {
        var (from, to) = All[cause];
        var size = chance.Between(plain ? from + 0.5 * (to - from) : from, to);
        return cause == Faults.Friction ? size : chance.Sign() * size;
    }
}
