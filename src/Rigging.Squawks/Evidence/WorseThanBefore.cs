using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Evidence;

/// <summary>Work that left the aircraft rolling more than it found it: something was put together otherwise than meant.</summary>
static class WorseThanBefore
{
    /// <summary>Null where how it rolled before the work, or now, is not on record.</summary>
    public static bool? Is(Ledger ledger, VerdictGiven verdict)
    {
        var worked = ledger.Entries.LastOrDefault(entry => entry.Fact is WorkStarted)?.Sequence ?? 0;
        var before = ledger.Entries.Where(entry => entry.Sequence < worked).Select(entry => Tendency(entry.Fact)).LastOrDefault(tendency => tendency is not null);
        return before is { } then && verdict.TendencyDegPerS is { } now ? verdict.Verdict == VerdictWord.AdjustAgain && Math.Abs(now) > Math.Abs(then) : null;
    }

    static double? Tendency(Fact fact) => fact switch
    {
        Assessed assessed => WithoutEffect.Tendency(assessed.Response),
        VerdictGiven verdict => verdict.TendencyDegPerS,
        _ => null,
    };
}
