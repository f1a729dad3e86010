using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>What must be on record before incidence may be moved, in the trade's order.</summary>
public static class Prerequisites
{
    /// <summary>Those that the request does not show.</summary>
    public static IReadOnlyList<Prerequisite> Missing(AssessmentRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return [.. Enum.GetValues<Prerequisite>().Where(prerequisite => !IsOnRecord(prerequisite, request))];
    }

    static bool IsOnRecord(Prerequisite prerequisite, AssessmentRequest request)
    {
        bool Checked(params GroundCheckKind[] kinds) => request.GroundChecks.Any(check => kinds.Contains(check.Kind));
        return prerequisite switch
        {
            // A test point cannot be reported without its load; whoever assumed one has to say so.
            Prerequisite.FuelAndSeats => request.FuelAndSeatsMeasured ?? request.TestPoints.Count > 0,
            Prerequisite.Ball => Checked(GroundCheckKind.BallOffset),
            Prerequisite.Damage => IsDamageCleared(request),
            Prerequisite.Flaps => Checked(GroundCheckKind.FlapDifference),
            Prerequisite.Ailerons => Checked(GroundCheckKind.AileronFloat, GroundCheckKind.AileronNeutralOffset),
            Prerequisite.Cables => request.Airframe?.Cables is { Count: > 0 } cables
                ? cables.All(cable => request.GroundChecks.OfType<CableTensionCheck>().Any(check => check.Cable == cable.Name))
                : Checked(GroundCheckKind.CableTension),
            Prerequisite.Rudder => Checked(GroundCheckKind.RudderTab),
            _ => false,
        };
    }

    /// <summary>Somebody looked, and nobody found anything.</summary>
    internal static bool IsDamageCleared(AssessmentRequest request)
    {
        var looks = request.GroundChecks.OfType<ClearanceCheck>().Where(check => check.Kind == GroundCheckKind.DamageInspection).ToArray();
        return looks.Length > 0 && looks.All(look => look.Clear);
    }
}
