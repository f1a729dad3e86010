using Rigging.Squawks.People;

namespace Rigging.Squawks.Ledgers;

/// <summary>Compares ledgers with what seals remember of them.</summary>
public static class SealAudit
{
    /// <summary>What no longer is as it was sealed, one finding per squawk, with the first entry that can be bad.</summary>
    /// <param name="seals">In order of their numbers.</param>
    /// <param name="hashes">Every ledger's entry hashes, in order.</param>
    public static IEnumerable<(SealedHead Head, int Sequence, string What)> Broken(
        IReadOnlyList<Seal> seals, IReadOnlyDictionary<SquawkId, IReadOnlyList<byte[]>> hashes) =>
        seals.SelectMany(seal => seal.Heads.Select(head => (seal, head))).GroupBy(pair => pair.head.Squawk)
            .Select(squawk => Finding([.. squawk], hashes.GetValueOrDefault(squawk.Key, [])))
            .OfType<(SealedHead, int, string)>();

    static (SealedHead, int, string)? Finding(IReadOnlyList<(Seal Seal, SealedHead Head)> remembered, IReadOnlyList<byte[]> hashes)
    {
        var good = 0;
        foreach (var (seal, head) in remembered)
        {
            var by = $"seal {seal.Number} of {seal.Day:uuuu-MM-dd}";
            if (hashes.Count == 0)
                return (head, 1, $"the whole ledger is gone; {by} remembers {head.Length} entries.");
            if (hashes.Count < head.Length)
                return (head, hashes.Count + 1, $"is gone; {by} remembers {head.Length} entries.");
            if (!hashes[head.Length - 1].AsSpan().SequenceEqual(head.Hash))
                return (head, good + 1, good + 1 == head.Length
                    ? $"was written anew since {by}."
                    : $"or one of the entries up to {head.Length} was written anew since {by}.");
            good = Math.Max(good, head.Length);
        }
        return null;
    }
}
