using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using UnitsNet;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;

namespace Rigging.Squawks.Evidence;

/// <summary>What one adjuster was set to, as what it added to the amplitude of its cause.</summary>
sealed record Moved(Control Control, KnownChange Change);

/// <summary>
/// What was moved after each flight of a ledger. A flight made before an eccentric, a strut fork, a flap rod or a tab was moved still speaks of
/// the aircraft as it stands now, the move said beside it; one made before anything else was moved, or when nobody wrote down how far, does not.
/// </summary>
sealed class TurnedSince
{
    readonly Lazy<Aeroplane> aeroplane;

    public TurnedSince(Ledger ledger, Airframe airframe)
    {
        aeroplane = new(() => new Aeroplane(airframe));
        List<(int, IReadOnlyList<Moved>?)> all = [];
        (CorrectionAgreed? correction, BushingAngles? found, Dictionary<Control, double> stood) = (null, null, []);
        foreach (var entry in ledger.Entries)
        {
            if (entry.Fact is CorrectionAgreed agreed) (correction, found, stood) = (agreed, null, []);
            if (entry.Fact is AsFound asFound)
            {
                found = asFound.Bushings.Over(found);
                foreach (var setting in asFound.Adjusters ?? []) stood[setting.Control] = setting.Value;
            }
            if (entry.Fact is WorkDone work)
            {
                all.Add((entry.Sequence, Moves(correction, found, stood, work, airframe)));
                foreach (var setting in work.AdjustersAsLeft ?? []) stood[setting.Control] = setting.Value;
            }
        }
        Works = all;
    }

    /// <summary>Each work by its entry, and what it moved; null as in <see cref="Since"/>.</summary>
    public IReadOnlyList<(int Sequence, IReadOnlyList<Moved>? Moves)> Works { get; }

    /// <summary>What was added to each cause since; null when something else was moved since, or nobody wrote down how far.</summary>
    public IReadOnlyList<KnownChange>? Since(int sequence)
    {
        var since = Works.Where(work => work.Sequence > sequence).ToList();
        return since.Any(work => work.Moves is null) ? null
            : [.. since.SelectMany(work => work.Moves!).GroupBy(move => move.Change.Cause).Select(same => new KnownChange(same.Key, same.Sum(move => move.Change.Amplitude)))];
    }

    List<Moved>? Moves(CorrectionAgreed? correction, BushingAngles? found, Dictionary<Control, double> stood, WorkDone work, Airframe airframe)
    {
        if (correction is null) return null;
        var controls = correction.Moves.Select(move => move.Control).Distinct().ToList();
        // Whoever turns one wing's eccentric may have left the other otherwise too: both are looked at.
        var eccentrics = controls.Any(control => control.IsEccentric()) ? (Control[])[Control.LeftEccentric, Control.RightEccentric] : [];
        List<Moved> moves = [];
        foreach (var control in eccentrics.Concat(controls.Where(control => !control.IsEccentric())))
        {
            var change = control.IsEccentric() ? Panel(control, found, work.AsLeft.Over(found), airframe) : Straight(control, stood, work);
            if (change is null) return null;
            moves.Add(new(control, change));
        }
        return moves;
    }

    static KnownChange? Panel(Control control, BushingAngles? found, BushingAngles left, Airframe airframe) =>
        found is not null && Eccentric.On(airframe).Value is { } eccentric
        && (found.Of(control), left.Of(control)) is (({ } front, { } rear), ({ } frontLeft, { } rearLeft)) && front == rear && frontLeft == rearLeft
            ? new(Cause.PanelIncidenceDifference,
                eccentric.IncidenceChange(Angle.FromDegrees(front), Angle.FromDegrees(frontLeft)).Degrees * (control == Control.RightEccentric ? 1 : -1))
            : null;

    KnownChange? Straight(Control control, Dictionary<Control, double> stood, WorkDone work) =>
        control.StandsAtANumber() && stood.TryGetValue(control, out var from)
        && work.AdjustersAsLeft?.LastOrDefault(setting => setting.Control == control) is { Value: var to }
        && Adjuster.On(control.OnFile(), aeroplane.Value) is { Ok: true, Value: var adjuster }
            ? new(adjuster.Cause, adjuster.AmplitudeChange(from, to))
            : null;
}
