using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Evidence;

namespace Rigging.Simulation;

/// <summary>The truth that an assessment is held against.</summary>
static class Answer
{
    /// <summary>A tendency from the limit to half as much again may honestly be taken for either side of it.</summary>
    const double ClearlyBeyondLimit = 1.5;

    /// <summary>What the eccentrics must have in hand, for the true throw is not the filed one.</summary>
    const double InReach = 0.85;

    public static Truth Of(Aeroplane aeroplane, IReadOnlyList<string> present, (double Left, double Right) settings, Campaign campaign)
    {
        var tendency = aeroplane.TendencyDegPerS;
        var sensitivity = aeroplane.With(aeroplane.Faults.Plus(Faults.Panel, 1)).TendencyDegPerS - tendency;
        var ideal = -tendency / sensitivity;
        var identifiable = present.Count == 1 && present[0] switch
        {
            Faults.Friction => Identifiability.Friction(campaign.Log),
            Faults.Damage => campaign.Bench.DamageClear == false,
            var cause => Identifiability.Single(aeroplane.File, cause, aeroplane.Faults[cause], campaign.Log, campaign.Bench),
        };
        var warranted = identifiable && present[0] == Faults.Panel
            && Math.Abs(tendency) >= ClearlyBeyondLimit * aeroplane.File.AcceptableDegPerS ? Move(aeroplane, settings, ideal) : null;
        return new(aeroplane.Faults.Amplitudes, present, tendency, ideal, sensitivity, identifiable, warranted);
    }

    static IncidenceMove? Move(Aeroplane aeroplane, (double Left, double Right) settings, double ideal)
    {
        var file = aeroplane.File;
        var way = Math.Sign(ideal);
        // A larger difference: right up, left down. How far each wing can still go that way, on the true throw.
        var stop = way * file.MaxEccentricDeg;
        var reach = Math.Abs(aeroplane.EccentricDeg(true, stop) - aeroplane.EccentricDeg(true, settings.Right))
            + Math.Abs(aeroplane.EccentricDeg(false, -stop) - aeroplane.EccentricDeg(false, settings.Left));
        if (Math.Abs(ideal) > InReach * reach)
            return null;
        var halfFlat = Math.Atan(file.Throw * Math.Sin(Math.PI / file.HeadFlats) / file.SparSpacing) * 180 / Math.PI;
        var (leftOff, rightOff) = (settings.Left * way > 0, settings.Right * way < 0);
        return new(ideal, halfFlat, leftOff == rightOff ? null : leftOff ? "left" : "right");
    }
}
