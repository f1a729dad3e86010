using System.Globalization;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>What eccentrics that stand at their stops say: somebody has turned before, against something that turning does not cure.</summary>
static class Stops
{
    /// <summary>Nearer to a stop than this is at it, degrees: what a protractor on a head tells apart (common practice, no source).</summary>
    const double AtWithinDeg = 3;

    const string Survey = "Put both back to neutral and survey incidence and twist; more turning is not the cure.";

    /// <param name="evidence">With the settings as found.</param>
    /// <param name="mayMove">Nothing else stands in the way. One wing at its stop may still be turned back from it; both at opposite ones are never turned on.</param>
    public static IEnumerable<Refusal> Refusal(Evidence evidence, bool mayMove)
    {
        if (evidence.Aeroplane.Airframe.Eccentric is not { MaxAngleDeg: var furthest } || evidence.Request.Settings is not { } settings)
            yield break;
        var (left, right) = (End(settings.LeftEccentricDeg, furthest), End(settings.RightEccentricDeg, furthest));
        if (left * right < 0)
            yield return new("at-stops", $"The eccentrics stand at opposite stops, one panel as high and the other as low as they go. {Survey}");
        else if (!mayMove && left != 0 && right != 0)
            yield return new("at-stops", $"Both eccentrics stand at their stops. {Survey}");
        else if (!mayMove && left + right is var end and not 0)
            yield return new("at-stops", string.Create(CultureInfo.InvariantCulture,
                $"The {(left != 0 ? "left" : "right")} eccentric stands at its stop, the trailing edge as far {(end > 0 ? "down" : "up")} as it goes: somebody has turned it against something. {Survey}"));
    }

    /// <summary>1 at the stop that lowers the trailing edge, −1 at the other, 0 between.</summary>
    static int End(BushingAngles? found, double furthest) => found is null ? 0
        : Math.Min(found.Front, found.Rear) >= furthest - AtWithinDeg ? 1
        : Math.Max(found.Front, found.Rear) <= AtWithinDeg - furthest ? -1
        : 0;
}
