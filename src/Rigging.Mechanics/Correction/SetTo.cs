using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using UnitsNet;

namespace Rigging.Mechanics.Correction;

/// <summary>
/// One adjuster set from here to there: degrees for an eccentric, a tab or the aileron neutral (right wing down positive), turns for a strut
/// fork or a flap rod.
/// </summary>
public sealed record SetTo(AdjustableControl Control, double From, double To)
{
    public bool IsEccentric => Control is AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric;

    /// <summary>What it adds to the amplitude of its cause; refused where the adjuster's data are not on file.</summary>
    public Answer<KnownChange> On(Aeroplane aeroplane)
    {
        ArgumentNullException.ThrowIfNull(aeroplane);
        if (Control == AdjustableControl.AileronNeutral) return new KnownChange(Cause.AileronNeutralOffset, To - From);
        if (IsEccentric)
        {
            var eccentric = Eccentric.On(aeroplane.Airframe);
            return eccentric.Ok
                ? new KnownChange(Cause.PanelIncidenceDifference,
                    eccentric.Value.IncidenceChange(Angle.FromDegrees(From), Angle.FromDegrees(To)).Degrees * (Control == AdjustableControl.RightEccentric ? 1 : -1))
                : eccentric.Refusals.ToList();
        }
        var adjuster = Adjuster.On(Control, aeroplane);
        return adjuster.Ok ? new KnownChange(adjuster.Value.Cause, adjuster.Value.AmplitudeChange(From, To)) : adjuster.Refusals.ToList();
    }
}
