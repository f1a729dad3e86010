using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>
/// What ground checks still say after work. What an eccentric, a fork or a rod did by a known amount to what was measured is added to it; what
/// was moved otherwise overtakes the check.
/// </summary>
public sealed class CheckedSince
{
    readonly TurnedSince turned;
    readonly List<(int Sequence, IReadOnlyList<Control> Planned)> works = [];

    internal CheckedSince(Ledger ledger, TurnedSince turned)
    {
        this.turned = turned;
        CorrectionAgreed? correction = null;
        foreach (var entry in ledger.Entries)
        {
            if (entry.Fact is CorrectionAgreed agreed) correction = agreed;
            if (entry.Fact is WorkDone) works.Add((entry.Sequence, [.. correction?.Moves.Select(move => move.Control) ?? []]));
        }
    }

    /// <summary>Whether work after it overtook a check; without an airframe on file nothing is known by how much.</summary>
    public static bool IsOvertaken(Ledger ledger, AirframeOnFile? onFile, Entry check)
    {
        ArgumentNullException.ThrowIfNull(ledger);
        ArgumentNullException.ThrowIfNull(check);
        return check.Fact is GroundChecked { NotApplicableReason: null } measured
            && new CheckedSince(ledger, new(ledger, new(() => new Aeroplane(onFile!.Read())), isOnFile: onFile is not null)).Now(measured, check.Sequence) is null;
    }

    /// <summary>The check as it holds now; null when it was overtaken.</summary>
    internal GroundChecked? Now(GroundChecked check, int sequence)
    {
        foreach (var (work, planned) in works.Where(work => work.Sequence > sequence))
        {
            var moves = turned.Works.Single(one => one.Sequence == work).Moves;
            if (CarriedOn(check.Check) is { } cause && moves is not null)
                check = check with { Value = check.Value + moves.Where(move => move.Change.Cause == cause).Sum(move => move.Change.Amplitude) };
            else if (planned.Any(control => Overtakes(control, check.Check)))
                return null;
        }
        return check;
    }

    static Cause? CarriedOn(Check check) => check switch
    {
        Check.PanelIncidenceDifference => Cause.PanelIncidenceDifference,
        Check.TipIncidenceDifference => Cause.TipIncidenceDifference,
        Check.FlapDifference => Cause.FlapDifference,
        _ => null,
    };

    /// <summary>Whether moving the control changes what the check measures. A repair may change anything but the load and the ball.</summary>
    static bool Overtakes(Control control, Check check) => control switch
    {
        Control.LeftEccentric or Control.RightEccentric => check == Check.PanelIncidenceDifference,
        Control.LeftStrutFork or Control.RightStrutFork => check is Check.PanelIncidenceDifference or Check.TipIncidenceDifference,
        Control.LeftFlapRod or Control.RightFlapRod => check == Check.FlapDifference,
        Control.AileronNeutral => check == Check.AileronNeutralOffset,
        Control.AileronTab => check is Check.AileronTab or Check.AileronFloat,
        Control.RudderTab => check == Check.RudderTab,
        Control.CableTension => check is Check.CableTension or Check.AileronNeutralOffset,
        Control.RepairOrReplace => check is not (Check.FuelAndSeats or Check.BallOffset or Check.DamageInspection),
        _ => false,
    };
}
