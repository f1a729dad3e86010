using System.Collections.Immutable;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Ledgers;

/// <summary>A squawk's entries in order, and what they prove. The only truth about a squawk.</summary>
public sealed class Ledger
{
    public Ledger(SquawkId id, IEnumerable<Entry> entries)
    {
        (Id, Entries) = (id, [.. entries]);
        State = Entries.Aggregate(SquawkState.Nothing, (state, entry) => state.With(entry));
    }

    Ledger(SquawkId id, ImmutableArray<Entry> entries, SquawkState state) => (Id, Entries, State) = (id, entries, state);

    public static Ledger Empty(SquawkId id) => new(id, []);

    public SquawkId Id { get; }

    public ImmutableArray<Entry> Entries { get; }

    public int Length => Entries.Length;

    public SquawkState State { get; }

    public Ledger With(Entry entry) => new(Id, Entries.Add(entry), State.With(entry));
}
