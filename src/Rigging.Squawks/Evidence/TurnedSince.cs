using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using UnitsNet;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;

namespace Rigging.Squawks.Evidence;

/// <summary>
/// What was turned after each flight of a ledger. A flight made before an eccentric was turned still speaks of the aircraft as it stands
/// now, the turn said beside it; one made before anything else was moved does not.
/// </summary>
sealed class TurnedSince
{
    public TurnedSince(Ledger ledger, Airframe airframe)
    {
        List<(int, double?)> all = [];
        (CorrectionAgreed? correction, BushingAngles? found) = (null, null);
        foreach (var entry in ledger.Entries)
        {
            if (entry.Fact is CorrectionAgreed agreed) (correction, found) = (agreed, null);
            if (entry.Fact is AsFound asFound) found = asFound.Bushings.Over(found);
            if (entry.Fact is WorkDone work) all.Add((entry.Sequence, PanelDeg(correction, found, work.AsLeft.Over(found), airframe)));
        }
        Works = all;
    }

    /// <summary>Each work by its entry, and the panel incidence difference it added, degrees, right minus left; null as in <see cref="Since"/>.</summary>
    public IReadOnlyList<(int Sequence, double? PanelDeg)> Works { get; }

    /// <summary>Panel incidence difference added since, degrees, right minus left; null when something else was moved since, or nobody wrote down how far.</summary>
    public double? Since(int sequence) =>
        Works.Where(work => work.Sequence > sequence).Aggregate((double?)0, (sum, work) => sum + work.PanelDeg);

    static double? PanelDeg(CorrectionAgreed? correction, BushingAngles? found, BushingAngles left, Airframe airframe)
    {
        if (found is null || correction?.Moves.All(move => move.Control.IsEccentric()) != true || Eccentric.On(airframe).Value is not { } eccentric) return null;
        double? Change(Control control) => (found.Of(control), left.Of(control)) switch
        {
            (({ } front, { } rear), ({ } frontLeft, { } rearLeft)) when front == rear && frontLeft == rearLeft =>
                eccentric.IncidenceChange(Angle.FromDegrees(front), Angle.FromDegrees(frontLeft)).Degrees,
            _ => null,
        };
        return Change(Control.RightEccentric) - Change(Control.LeftEccentric);
    }
}
