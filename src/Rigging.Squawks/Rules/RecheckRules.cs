using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Squawks.Rules;

/// <summary>One thing to be measured again because of what was moved.</summary>
/// <param name="Part">Which cable or surface, as <see cref="GroundChecked.Part"/>; null for any, where the file names none.</param>
/// <param name="Name">In words.</param>
/// <param name="Last">What was measured since the move, or why it does not apply; null when nothing is on record.</param>
public sealed record Recheck(Check Check, string? Part, string Name, GroundChecked? Last)
{
    /// <summary>On record since the move, and inside its limits.</summary>
    public bool IsDone => Last is not null && !Last.OutOfLimits().Any();
}

/// <summary>What a move asks to be measured again, with numbers, before the work can be signed.</summary>
/// <remarks>Moving a wing changes the length of the cable runs in it (owners' and mechanics' accounts of rigging; common practice, no source).</remarks>
public static class RecheckRules
{
    public static IReadOnlyList<Recheck> Asked(SquawkState state, AirframeOnFile? onFile)
    {
        ArgumentNullException.ThrowIfNull(state);
        List<Recheck> asked = [];
        if (state.Plans(control => control.MovesIncidence() || control is Control.CableTension or Control.AileronNeutral))
        {
            var cables = FileLimits.Cables(onFile?.Read());
            asked.AddRange(cables.Count == 0 ? [Of(Check.CableTension, null, "cable tension")] : cables.Select(cable => Of(Check.CableTension, cable, $"tension, {cable}")));
            foreach (var side in (Side[])[Side.Left, Side.Right])
                asked.Add(Of(Check.ControlTravel, SquawkState.PartOf(ControlSurface.Ailerons, side), $"travel, {Words.Of(side)} aileron"));
        }
        if (state.Plans(Controls.IsFlapRod)) asked.Add(Of(Check.FlapDifference, null, "flaps at their up stop"));
        return asked;

        Recheck Of(Check check, string? part, string name) => new(check, part, name, state.SinceMoved(check, part));
    }

    internal static IEnumerable<BrokenRule> Of(SquawkState state, Facts facts)
    {
        var asked = Asked(state, facts.Airframe);
        if (asked.Where(recheck => recheck.Last is null).ToList() is { Count: > 0 } missing)
            yield return new("resets-missing", $"What was moved changes these: measure them again, with a tool of the list, and record them: {string.Join("; ", missing.Select(recheck => recheck.Name))}.", "resets");
        foreach (var limit in asked.SelectMany(recheck => recheck.Last?.OutOfLimits() ?? []).DistinctBy(limit => limit.What))
            yield return new("left-out-of-limits", $"{Words.Capital(Words.Against(limit))} Rig it again, measure it again and record it.", "resets");
    }
}
