using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>
/// What ground checks still say after work. What an eccentric, a fork or a rod did by a known amount to what was measured is added to it, and a
/// tab stands where it was left; what was moved otherwise overtakes the check.
/// </summary>
public sealed class CheckedSince
{
    readonly TurnedSince turned;

    internal CheckedSince(TurnedSince turned) => this.turned = turned;

    /// <param name="onFile">Null: nothing is known by how much it was moved.</param>
    public static CheckedSince Of(Ledger ledger, AirframeOnFile? onFile) =>
        new(new TurnedSince(ledger, onFile is null ? null : new(() => new Aeroplane(onFile.Read()))));

    /// <summary>Whether work after it overtook a check.</summary>
    public bool IsOvertaken(Entry check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Fact is GroundChecked { NotApplicableReason: null } measured && Now(measured, check.Sequence) is null;
    }

    /// <summary>The check as it holds now; null when it was overtaken.</summary>
    internal GroundChecked? Now(GroundChecked check, int sequence)
    {
        foreach (var work in turned.Works.Where(work => work.Sequence > sequence && !work.MeasuredAfter.Contains(sequence)))
        {
            if (CarriedOn(check.Check) is { } cause && work.Moves is { } moves)
                check = check with { Value = check.Value + moves.Where(move => move.Change.Cause == cause).Sum(move => move.Change.Amplitude) };
            else if (work.Moves?.LastOrDefault(move => Angle(check.Check) == move.Setting.Control) is { Setting.To: var left })
                check = check with { Value = left };
            else if (work.Planned.Any(control => Overtakes(control, check.Check)))
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

    /// <summary>The adjuster whose own angle the check is.</summary>
    static AdjustableControl? Angle(Check check) => check switch
    {
        Check.AileronTab => AdjustableControl.AileronTab,
        Check.RudderTab => AdjustableControl.RudderTab,
        _ => null,
    };

    /// <summary>Whether moving the control changes what the check measures. A repair may change anything but the load and the ball.</summary>
    static bool Overtakes(Control control, Check check) => control switch
    {
        Control.LeftEccentric or Control.RightEccentric => check == Check.PanelIncidenceDifference,
        Control.LeftStrutFork or Control.RightStrutFork => check is Check.PanelIncidenceDifference or Check.TipIncidenceDifference,
        Control.LeftFlapRod or Control.RightFlapRod => check == Check.FlapDifference,
        Control.AileronNeutral => check is Check.AileronNeutralOffset or Check.ControlTravel,
        Control.AileronTab => check is Check.AileronTab or Check.AileronFloat,
        Control.RudderTab => check == Check.RudderTab,
        Control.CableTension => check is Check.CableTension or Check.AileronNeutralOffset or Check.ControlTravel,
        Control.RepairOrReplace => check is not (Check.FuelAndSeats or Check.BallOffset or Check.DamageInspection),
        _ => false,
    };
}
