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

    Ledger(SquawkId id, ImmutableArray<Entry> entries, SquawkState state, byte[]? head) => (Id, Entries, State, Head) = (id, entries, state, head);

    /// <summary>As it is stored, its head with it.</summary>
    public static Ledger Of(SquawkId id, IReadOnlyList<SealedEntry> entries)
    {
        var ledger = new Ledger(id, entries.Select(entry => entry.Open()));
        return new(id, ledger.Entries, ledger.State, entries.Count == 0 ? Chain.Root : entries[^1].Hash);
    }

    public static Ledger Empty(SquawkId id) => Of(id, []);

    public SquawkId Id { get; }

    public ImmutableArray<Entry> Entries { get; }

    public int Length => Entries.Length;

    /// <summary>Hash of the last entry as it is stored, or the chain's root; null for entries that are not, or not all, of one stored chain.</summary>
    public byte[]? Head { get; }

    public SquawkState State { get; }

    /// <summary>Sequence of the first entry of the round now running, the one that opened it left out.</summary>
    public int FirstOfRound => (Entries.LastOrDefault(entry => entry.Fact is RoundOpened)?.Sequence ?? 0) + 1;

    /// <summary>Whether the server's clock stood earlier at this entry than at the one before it: the number, not the time, says which came first.</summary>
    public bool ClockWentBack(Entry entry) => entry.Sequence > 1 && entry.At < Entries[entry.Sequence - 2].At;

    /// <summary>As it stood before an entry.</summary>
    public Ledger Before(int sequence) => new(Id, Entries.TakeWhile(entry => entry.Sequence < sequence));

    /// <param name="head">The entry's own hash; null as long as it is not sealed.</param>
    public Ledger With(Entry entry, byte[]? head = null) => new(Id, Entries.Add(entry), State.With(entry), head);
}
