using CsCheck;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Tests;

/// <summary>Whatever is changed in a stored ledger, the chain breaks there and says where.</summary>
public class ChainTests
{
    static readonly Guid Installation = Guid.Parse("00000000-0000-7000-8000-00000000f001");
    static readonly SealedEntry[] Sealed = [.. Seal(School.Closed)];

    static IEnumerable<SealedEntry> Seal(Ledger ledger)
    {
        var previous = Chain.Root;
        foreach (var entry in ledger.Entries)
        {
            var done = Chain.Seal(previous, Installation, ledger.Id, entry);
            yield return done;
            previous = done.Hash;
        }
    }

    static byte[] Flip(byte[] bytes, int at) => [.. bytes.Select((b, i) => i == at % bytes.Length ? (byte)(b ^ 1) : b)];

    static SealedEntry[] Change(int index, Func<SealedEntry, SealedEntry> how) => [.. Sealed.Select((entry, i) => i == index ? how(entry) : entry)];

    static readonly Gen<int> AnyEntry = Gen.Int[0, Sealed.Length - 1];

    [Fact]
    public void An_untouched_chain_holds_and_every_entry_opens()
    {
        Assert.Null(Chain.FirstBroken(Installation, Sealed));
        Assert.Null(Chain.FirstBroken(Installation, []));
        Assert.Equal(School.Closed.Entries.Select(EntryCodec.Write), Sealed.Select(s => EntryCodec.Write(s.Open())));
    }

    [Fact]
    public void Every_life_of_a_squawk_makes_a_chain_that_holds() =>
        Walks.All.Sample(steps => Chain.FirstBroken(Installation, Seal(Walks.End(steps))) is null, iter: 200);

    [Fact]
    public void One_changed_bit_of_a_payload_names_its_entry() => Gen.Select(AnyEntry, Gen.Int[0, 100_000]).Sample((index, at) =>
    {
        var changed = Change(index, entry => entry with { Payload = string.Concat(entry.Payload.Select((c, i) => i == at % entry.Payload.Length ? (char)(c ^ 1) : c)) });
        Assert.Equal(index + 1, Chain.FirstBroken(Installation, changed));
    });

    public static TheoryData<string> Changes => ["kind", "version", "sequence", "squawk", "previous hash", "hash", "a space at the end", "a letter moved from the kind into the payload"];

    [Theory, MemberData(nameof(Changes))]
    public void Any_other_change_names_its_entry(string change)
    {
        for (var index = 0; index < Sealed.Length; index++)
        {
            var changed = Change(index, entry => change switch
            {
                "kind" => entry with { Kind = entry.Kind == "note" ? "waiting" : "note" },
                "version" => entry with { Version = entry.Version + 1 },
                "sequence" => entry with { Sequence = entry.Sequence + 1 },
                "squawk" => entry with { Squawk = School.Other },
                "previous hash" => entry with { PreviousHash = Flip(entry.PreviousHash, 7) },
                "hash" => entry with { Hash = Flip(entry.Hash, 31) },
                "a space at the end" => entry with { Payload = entry.Payload + " " },
                _ => entry with { Kind = entry.Kind[..^1], Payload = entry.Kind[^1] + entry.Payload },
            });
            Assert.Equal(index + 1, Chain.FirstBroken(Installation, changed));
        }
    }

    [Fact]
    public void Another_installation_s_ledger_does_not_pass_for_ours() =>
        Assert.Equal(1, Chain.FirstBroken(Guid.Parse("00000000-0000-7000-8000-00000000f002"), Sealed));

    [Fact]
    public void A_missing_entry_is_noticed_where_it_was() => AnyEntry.Where(index => index < Sealed.Length - 1).Sample(index =>
        Chain.FirstBroken(Installation, [.. Sealed[..index], .. Sealed[(index + 1)..]]) == index + 1);

    [Fact]
    public void Two_entries_that_changed_places_are_noticed_at_the_first() => AnyEntry.Where(index => index < Sealed.Length - 1).Sample(index =>
        Chain.FirstBroken(Installation, [.. Sealed[..index], Sealed[index + 1], Sealed[index], .. Sealed[(index + 2)..]]) == index + 1);

    [Fact]
    public void An_entry_rewritten_with_a_fitting_hash_breaks_the_next_one() => AnyEntry.Where(index => index < Sealed.Length - 1).Sample(index =>
    {
        var forged = School.Closed.Entries[index] with { At = School.Noon.Minus(NodaTime.Duration.FromHours(1)) };
        var changed = Change(index, entry => Chain.Seal(entry.PreviousHash, Installation, entry.Squawk, forged));
        Assert.Equal(index + 2, Chain.FirstBroken(Installation, changed));
    });

    [Fact]
    public void A_cut_off_end_is_not_noticed_without_an_earlier_hash() => Assert.Null(Chain.FirstBroken(Installation, Sealed[..^1]));
}
