using Rigging.Mechanics;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;

namespace Rigging.Squawks.Evidence;

/// <summary>What work really moved: each adjuster from how it stood to how it was left, whatever the plan said.</summary>
public static class AsLeft
{
    /// <summary>Nearer than this is the same setting: what is read off a thread, and off a tab with a protractor (common practice, no source).</summary>
    const double SameTurns = 0.2, SameTabDeg = 0.5;

    static readonly Control[] Eccentrics = [Control.LeftEccentric, Control.RightEccentric];

    /// <summary>
    /// Everything that was agreed on and whatever else is on record as moved; null when something that was agreed on has no number, before or after.
    /// A joint whose front and rear bushing do not agree stands at none.
    /// </summary>
    /// <param name="before">As it stood before this work was signed.</param>
    public static IReadOnlyList<SetTo>? Moves(SquawkState before, WorkDone work)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(work);
        if (before.Correction is not { } correction) return null;
        var left = work.AsLeft.Over(before.Settings);
        var needed = correction.Moves.Select(move => move.Control).Distinct().ToList();
        // Whoever turns one wing's eccentric may have left the other otherwise too: both are looked at.
        if (needed.Any(control => control.IsEccentric())) needed = [.. needed.Union(Eccentrics)];
        List<SetTo> moves = [];
        foreach (var control in needed.Union(Eccentrics).Union((work.AdjustersAsLeft ?? []).Select(setting => setting.Control)))
        {
            if ((From(control), To(control)) is not ({ } from, { } to))
            {
                if (needed.Contains(control)) return null;
            }
            else if (from != to || needed.Contains(control)) moves.Add(new(control.OnFile(), from, to));
        }
        return moves;

        double? From(Control control) => StandsAt(before, control);
        double? To(Control control) => control.IsEccentric() ? Alike(left.Of(control)) : work.AdjustersAsLeft.Of(control);
    }

    /// <summary>How one adjuster stands as far as that is one number on record.</summary>
    public static double? StandsAt(SquawkState state, Control control)
    {
        ArgumentNullException.ThrowIfNull(state);
        return control.IsEccentric() ? Alike(state.Settings?.Of(control)) : state.Adjusters.TryGetValue(control, out var value) ? value : null;
    }

    /// <summary>The roll tendency expected with it. Refused as <c>not-in-numbers</c> when <see cref="Moves"/> is null, and where something moved is not on file.</summary>
    /// <param name="outlook">Of the ledger before this work was signed.</param>
    /// <param name="before">As in <see cref="Moves"/>.</param>
    public static Answer<Foreseen> Foreseen(Outlook outlook, SquawkState before, WorkDone work)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        return Moves(before, work)?.Where(move => move.From != move.To || !move.IsEccentric).ToList() is { } moves
            ? outlook.After(moves)
            : new Refusal("not-in-numbers", "What it does as left cannot be computed: not everything that was agreed on is on record in numbers, as found and as left.");
    }

    /// <summary>Where what was found or left is not what the plan said, in sentences; empty when it is, or when the plan said no number.</summary>
    /// <param name="before">As in <see cref="Moves"/>.</param>
    public static IEnumerable<string> Differences(SquawkState before, WorkDone work)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(work);
        if (before is not { Correction: { } correction, AsFound: { } found }) yield break;
        foreach (var move in correction.Moves)
        {
            if (FoundOtherwise(before, move) is { } otherwise) yield return otherwise;
            var to = move.Numbers().To;
            var now = move.Control.IsEccentric() ? work.AsLeft.Of(move.Control).Front : work.AdjustersAsLeft.Of(move.Control);
            if (!Same(move.Control, now, to))
                yield return $"The {Words.Of(move.Control)} is left {Words.Stands(move.Control, now!.Value)}; the plan said {Words.Stands(move.Control, to!.Value)}.";
        }
        var counted = (work.AdjustersAsLeft ?? []).Where(left => !Same(left.Control, left.Value, found.Adjusters.Of(left.Control))).Select(left => left.Control);
        foreach (var other in Turned(found.Bushings, work.AsLeft).Concat(counted).Except(correction.Moves.Select(move => move.Control)))
            yield return $"The {Words.Of(other)} is not left as it was found, and is not in the plan.";
    }

    /// <summary>Where a planned move was to start and where it was found to stand, when that is not the same; null when it is.</summary>
    public static string? FoundOtherwise(SquawkState state, PlannedMove move)
    {
        ArgumentNullException.ThrowIfNull(state);
        ArgumentNullException.ThrowIfNull(move);
        var was = move.Control.IsEccentric() ? state.AsFound?.Bushings.Of(move.Control).Front : state.AsFound?.Adjusters.Of(move.Control);
        return Same(move.Control, was, move.Numbers().From) ? null
            : $"The {Words.Of(move.Control)} was found {Words.Stands(move.Control, was!.Value)}; the plan started from {Words.Stands(move.Control, move.Numbers().From!.Value)}.";
    }

    /// <summary>The eccentrics that do not stand alike in both.</summary>
    internal static IEnumerable<Control> Turned(BushingAngles from, BushingAngles to) => Eccentrics.Where(control =>
        (from.Of(control), to.Of(control)) is var ((front, rear), (frontNow, rearNow)) && !(Same(control, front, frontNow) && Same(control, rear, rearNow)));

    /// <summary>What nobody recorded is not taken for different.</summary>
    internal static bool Same(Control control, double? one, double? other) => one is not { } a || other is not { } b
        || Math.Abs(a - b) <= ReadTo(control);

    /// <summary>How closely anybody reads where it stands, in its own unit.</summary>
    internal static double ReadTo(Control control) => control.IsEccentric() ? FoundSetting.AgreeWithinDeg : control.IsTab() ? SameTabDeg : SameTurns;

    static double? Alike((double? Front, double? Rear)? bushings) => bushings is ({ } front, { } rear) ? FoundSetting.AngleOf(new(front, rear)) : null;
}
