using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Ledgers;

/// <summary>An entry as it is stored: the exact payload text, and where it hangs in the squawk's hash chain.</summary>
public sealed record SealedEntry(SquawkId Squawk, int Sequence, string Kind, int Version, string Payload, byte[] PreviousHash, byte[] Hash)
{
    public Entry Open() => EntryCodec.Read(Sequence, Kind, Version, Payload);
}

/// <summary>SHA-256 over previous hash, installation, squawk, sequence, kind, version and payload, each with its length before it.</summary>
/// <remarks>The chain shows a change to any entry but the last few to someone who kept an earlier hash. Whoever owns the database can rewrite a whole chain.</remarks>
public static class Chain
{
    /// <summary>What comes before the first entry.</summary>
    public static byte[] Root => new byte[32];

    public static SealedEntry Seal(byte[] previousHash, Guid installation, SquawkId squawk, Entry entry)
    {
        var (kind, version, payload) = (EntryCodec.KindOf(entry.Fact), EntryCodec.VersionOf(entry.Fact), EntryCodec.Write(entry));
        return new(squawk, entry.Sequence, kind, version, payload, previousHash,
            Hash(previousHash, installation, squawk, entry.Sequence, kind, version, payload));
    }

    /// <summary>The sequence of the first entry that does not follow from the one before; null when the chain holds.</summary>
    public static int? FirstBroken(Guid installation, IEnumerable<SealedEntry> entries)
    {
        var (previous, sequence) = (Root, 1);
        foreach (var entry in entries)
        {
            var expected = Hash(previous, installation, entry.Squawk, sequence, entry.Kind, entry.Version, entry.Payload);
            if (entry.Sequence != sequence || !entry.PreviousHash.AsSpan().SequenceEqual(previous) || !entry.Hash.AsSpan().SequenceEqual(expected))
                return sequence;
            (previous, sequence) = (entry.Hash, sequence + 1);
        }
        return null;
    }

    static byte[] Hash(byte[] previous, Guid installation, SquawkId squawk, int sequence, string kind, int version, string payload)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> number = stackalloc byte[4];
        foreach (var part in (ReadOnlySpan<byte[]>)[previous, installation.ToByteArray(bigEndian: true), squawk.Value.ToByteArray(bigEndian: true),
            Bytes(sequence), Encoding.UTF8.GetBytes(kind), Bytes(version), Encoding.UTF8.GetBytes(payload)])
        {
            BinaryPrimitives.WriteInt32BigEndian(number, part.Length);
            hash.AppendData(number);
            hash.AppendData(part);
        }
        return hash.GetHashAndReset();
    }

    static byte[] Bytes(int value)
    {
        var bytes = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        return bytes;
    }
}
