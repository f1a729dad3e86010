using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Storage.Ledgers;

/// <summary>What came of an append. Only <see cref="Appended"/> wrote anything.</summary>
public abstract record Outcome
{
    public sealed record Appended(Ledger Ledger, Entry Entry) : Outcome;

    public sealed record Refused(IReadOnlyList<BrokenRule> Broken) : Outcome
    {
        public Refused(string code, string sentence, string? field = null) : this([new BrokenRule(code, sentence, field)]) { }
    }

    /// <summary>The ledger grew since the page was shown.</summary>
    /// <param name="New">What was added meanwhile, oldest first.</param>
    public sealed record Stale(Ledger Now, IReadOnlyList<Entry> New) : Outcome;

    /// <summary>There is no such squawk.</summary>
    public sealed record Unknown : Outcome;
}
