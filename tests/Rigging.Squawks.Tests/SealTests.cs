using CsCheck;
using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Tests;

/// <summary>The text that a school keeps elsewhere: what it says, and that nothing in it can be changed unseen.</summary>
public class SealTests
{
    static readonly Guid Installation = Guid.Parse("00000000-0000-7000-8000-00000000f001");
    static readonly SquawkId First = new(Guid.Parse("00000000-0000-7000-8000-0000000000e1")), Second = new(Guid.Parse("00000000-0000-7000-8000-0000000000e2"));

    static byte[] H(int value) => [.. Enumerable.Repeat((byte)value, 32)];

    static readonly Seal Monday = new(1, Installation, new(2026, 3, 2), Instant.FromUtc(2026, 3, 3, 6, 0), Seal.Nothing, [new(First, 1, 2, H(12))]);
    static readonly Seal Tuesday = new(2, Installation, new(2026, 3, 3), Instant.FromUtc(2026, 3, 4, 6, 0), Monday.Hash, [new(First, 1, 4, H(14)), new(Second, 2, 1, H(21))]);

    static Dictionary<SquawkId, IReadOnlyList<byte[]>> Hashes(int[]? first = null, int[]? second = null) => new()
    {
        [First] = [.. (first ?? [11, 12, 13, 14, 15]).Select(H)],
        [Second] = [.. (second ?? [21, 22]).Select(H)],
    };

    /// <summary>The root was computed by another program: printf of the two lines into sha256sum.</summary>
    [Fact]
    public void A_seal_says_installation_day_counts_root_and_every_head() => Assert.Equal(
        $"""
        Rigging seal, form 1
        installation 00000000-0000-7000-8000-00000000f001
        seal 2
        day 2026-03-03
        sealed 2026-03-04T06:00:00.000Z
        previous {Convert.ToHexStringLower(Monday.Hash)}
        ledgers 2
        entries 5
        root dbf0e6cf3cccad5427d16875ab1958d47a94eb86aa8b1c7398f9609a2f79f068
        S-1 00000000-0000-7000-8000-0000000000e1 4 {string.Concat(Enumerable.Repeat("0e", 32))}
        S-2 00000000-0000-7000-8000-0000000000e2 1 {string.Concat(Enumerable.Repeat("15", 32))}

        """.ReplaceLineEndings("\n"), Tuesday.Text);

    [Fact]
    public void A_seal_is_read_as_it_was_written_whatever_the_line_ends()
    {
        Assert.Equal(Tuesday.Text, Seal.Read(Tuesday.Text).Seal!.Text);
        Assert.Equal(Tuesday.Text, Seal.Read(Tuesday.Text.Replace("\n", "\r\n", StringComparison.Ordinal)).Seal!.Text);
        Assert.Equal(Tuesday.Hash, Seal.Read(Tuesday.Text).Seal!.Hash);
    }

    /// <summary>Numbers and day stand outside the root, but not outside the hash that the next seal names.</summary>
    [Fact]
    public void Any_changed_character_is_refused_or_changes_the_hash() => Gen.Int[0, Tuesday.Text.Length - 2].Sample(at =>
    {
        var changed = Tuesday.Text[..at] + (char)(Tuesday.Text[at] ^ 1) + Tuesday.Text[(at + 1)..];
        var (seal, fault) = Seal.Read(changed);
        Assert.True(fault is { Length: > 0 } || !seal!.Hash.AsSpan().SequenceEqual(Tuesday.Hash), changed);
    }, iter: 1000);

    [Theory]
    [InlineData("Rigging seal, form 1", "Rigging seal, form 2", "line 1 is “Rigging seal, form 2”; wanted “Rigging seal, form 1”")]
    [InlineData("day 2026-03-03", "day tomorrow", "line 4 says day “tomorrow”, which cannot be read")]
    [InlineData("ledgers 2", "ledgers 3", "it says 3 ledgers and lists 2")]
    [InlineData("entries 5", "entries 6", "it says 6 entries and lists 5")]
    [InlineData("S-2 ", "T-2 ", "line 11 is “T-2 00000000-0000-7000-8000-0000000000e2 1 15151515151515151…”; wanted S-number, squawk, length and hash")]
    [InlineData("e1 4 ", "e1 3 ", "it says 5 entries and lists 4")]
    [InlineData("S-1 ", "S-3 ", "its root does not follow from its ledgers: the text was changed")]
    [InlineData("seal 2", "seel 2", "line 3 is “seel 2”; wanted “seal …”")]
    public void A_changed_text_is_refused_with_its_line(string from, string to, string fault)
    {
        Assert.Contains(from, Tuesday.Text, StringComparison.Ordinal);
        Assert.Equal(fault, Seal.Read(Tuesday.Text.Replace(from, to, StringComparison.Ordinal)).Fault);
    }

    [Fact]
    public void Ledgers_that_only_grew_agree_with_their_seals() => Assert.Empty(SealAudit.Broken([Monday, Tuesday], Hashes()));

    [Theory]
    [InlineData(new[] { 11, 12, 13, 99, 99 }, 3, "or one of the entries up to 4 was written anew since seal 2 of 2026-03-03.")]
    [InlineData(new[] { 11, 99, 99, 99, 99 }, 1, "or one of the entries up to 2 was written anew since seal 1 of 2026-03-02.")]
    [InlineData(new[] { 11, 12, 13 }, 4, "is gone; seal 2 of 2026-03-03 remembers 4 entries.")]
    [InlineData(new int[0], 1, "the whole ledger is gone; seal 1 of 2026-03-02 remembers 2 entries.")]
    public void A_ledger_rewritten_since_is_found_from_the_last_seal_that_agrees(int[] hashes, int sequence, string what)
    {
        var (head, at, said) = Assert.Single(SealAudit.Broken([Monday, Tuesday], Hashes(hashes)));
        Assert.Equal((First, sequence, what), (head.Squawk, at, said));
    }

    [Fact]
    public void A_single_entry_written_anew_is_named_exactly()
    {
        var (head, at, said) = Assert.Single(SealAudit.Broken([Monday, Tuesday], Hashes(second: [99, 22])));
        Assert.Equal((Second, 1, "was written anew since seal 2 of 2026-03-03."), (head.Squawk, at, said));
    }
}
