using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Evidence;

/// <summary>What one adjuster was set to, and what that added to the amplitude of its cause.</summary>
sealed record Moved(SetTo Setting, KnownChange Change);

/// <summary>One work that was signed.</summary>
/// <param name="Planned">The controls that were agreed on.</param>
/// <param name="MeasuredAfter">Sequences of what was measured again before it was signed, so that it moved nothing of that.</param>
/// <param name="Moves">What it moved; null when something else was moved, or nobody wrote down how far, or knows what that does.</param>
sealed record Work(int Sequence, IReadOnlyList<Control> Planned, IReadOnlyList<int> MeasuredAfter, IReadOnlyList<Moved>? Moves);

/// <summary>
/// What was moved after each flight of a ledger. A flight made before an eccentric, a strut fork, a flap rod or a tab was moved still speaks of
/// the aircraft as it stands now, the move said beside it; one made before anything else was moved, or when nobody wrote down how far, does not.
/// </summary>
sealed class TurnedSince
{
    /// <param name="aeroplane">Solved only where something was moved; null when none is on file, so that nobody knows what a move does.</param>
    public TurnedSince(Ledger ledger, Lazy<Aeroplane>? aeroplane)
    {
        List<Work> all = [];
        var state = SquawkState.Nothing;
        foreach (var entry in ledger.Entries)
        {
            if (entry.Fact is WorkDone work)
                all.Add(new(entry.Sequence, [.. state.Correction?.Moves.Select(move => move.Control) ?? []], [.. MeasuredAfter(ledger, entry, state)], aeroplane is null ? null : Moves(state, work, aeroplane)));
            state = state.With(entry);
        }
        Works = all;
    }

    public IReadOnlyList<Work> Works { get; }

    /// <summary>What was added to each cause since; null when something else was moved since, or nobody wrote down how far.</summary>
    public IReadOnlyList<KnownChange>? Since(int sequence)
    {
        var since = Works.Where(work => work.Sequence > sequence).ToList();
        return since.Any(work => work.Moves is null) ? null
            : [.. since.SelectMany(work => work.Moves!).GroupBy(move => move.Change.Cause).Select(same => new KnownChange(same.Key, same.Sum(move => move.Change.Amplitude)))];
    }

    static IEnumerable<int> MeasuredAfter(Ledger ledger, Entry work, SquawkState before) => ledger.Entries
        .Where(entry => entry.Sequence < work.Sequence && entry.Fact is GroundChecked { Check: Check.CableTension or Check.ControlTravel or Check.FlapDifference } check
            && before.IsSinceMoved(new(check.HappenedAt ?? entry.At, entry.Sequence)))
        .Select(entry => entry.Sequence);

    static List<Moved>? Moves(SquawkState before, WorkDone work, Lazy<Aeroplane> aeroplane)
    {
        if (AsLeft.Moves(before, work) is not { } settings) return null;
        var moves = settings.Select(setting => (Setting: setting, Change: setting.On(aeroplane.Value))).ToList();
        return moves.All(move => move.Change.Ok) ? [.. moves.Select(move => new Moved(move.Setting, move.Change.Value!))] : null;
    }
}
