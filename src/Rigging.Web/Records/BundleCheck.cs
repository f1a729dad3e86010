using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Web.Records;

/// <summary>What came of checking a bundle: first what is wrong with entries, then with files.</summary>
public sealed record BundleReport(string Summary, IReadOnlyList<string> Faults);

/// <summary>Checks a bundle against itself: every file against the manifest, every chain, every seal. Needs no database.</summary>
public static class BundleCheck
{
    /// <param name="kept">A seal that was kept elsewhere; null when there is none.</param>
    public static BundleReport Verify(Stream bundle, Seal? kept = null)
    {
        var (files, faults) = Unpack(bundle);
        if (Parse<Manifest>(files, Bundle.ManifestName, faults) is not { } manifest || manifest.Form != Manifest.ThisForm)
            return new("Not a bundle that can be checked.", [.. faults, $"{Bundle.ManifestName}: says nothing of the form “{Manifest.ThisForm}”."]);

        List<string> entries = [];
        Dictionary<SquawkId, IReadOnlyList<byte[]>> hashes = [];
        var total = 0;
        foreach (var (name, _) in files.Where(file => file.Key.StartsWith(Bundle.Ledgers, StringComparison.Ordinal)).OrderBy(file => file.Key, StringComparer.Ordinal))
        {
            if (Parse<BundledLedger>(files, name, entries) is not { } ledger) continue;
            if (Chained(manifest, ledger, entries) is not { } chain) continue;
            hashes[new(ledger.Squawk)] = chain;
            total += chain.Count;
        }
        entries.AddRange(manifest.Ledgers.Where(head => !hashes.ContainsKey(new(head.Squawk)) && !entries.Exists(fault => fault.StartsWith($"S-{head.Number},", StringComparison.Ordinal)))
            .Select(head => $"S-{head.Number}, entry 1: the whole ledger is gone; the manifest remembers {head.Length} entries."));
        Sealed(manifest, files, hashes, kept, entries);
        Listed(manifest, files, faults);
        return new($"{manifest.Scope} of {manifest.School}, made {manifest.MadeAt}: {hashes.Count} ledgers with {total} entries, {files.Count} files; {entries.Count + faults.Count} faults.", [.. entries, .. faults]);
    }

    /// <summary>More files, or more bytes once unpacked, than any school's bundle has: such a file was made to fill a machine.</summary>
    /// <remarks>Records and pictures hardly shrink and JSON to a tenth; deflate at its best makes a thousand bytes of one.</remarks>
    const int MostFiles = 200_000, MostOfAByte = 100;
    const long MostBytes = 4L << 30, MostBytesOfOne = 256L << 20, AlwaysAllowed = 16L << 20;

    static (Dictionary<string, byte[]>, List<string>) Unpack(Stream bundle)
    {
        Dictionary<string, byte[]> files = [];
        List<string> faults = [];
        try
        {
            using var zip = new ZipArchive(bundle, ZipArchiveMode.Read);
            if (zip.Entries.Count > MostFiles)
                return (files, [$"The file holds {zip.Entries.Count} files; wanted: at most {MostFiles}."]);
            var left = Math.Min(MostBytes, AlwaysAllowed + MostOfAByte * bundle.Length);
            foreach (var entry in zip.Entries)
            {
                using var into = new MemoryStream();
                try
                {
                    using var from = entry.Open();
                    // What the file says of its own size is not believed.
                    if (!Copied(from, into, Math.Min(left, MostBytesOfOne)))
                        return (files, [.. faults, $"{entry.FullName}: unpacks to more than a bundle can hold; wanted: at most {MostBytesOfOne} bytes each, and {MostOfAByte} times the file's own size in all."]);
                }
                catch (Exception error) when (error is InvalidDataException or IOException)
                {
                    faults.Add($"{entry.FullName}: cannot be unpacked: {error.Message}");
                }
                left -= into.Length;
                if (!files.TryAdd(entry.FullName, into.ToArray())) faults.Add($"{entry.FullName}: is in it twice.");
            }
        }
        catch (Exception error) when (error is InvalidDataException or IOException)
        {
            faults.Add($"The file is not whole: {error.Message}");
        }
        return (files, faults);
    }

    /// <summary>False when there is more than that.</summary>
    static bool Copied(Stream from, MemoryStream into, long most)
    {
        var buffer = new byte[81_920];
        while (from.Read(buffer) is var read and > 0)
        {
            if (into.Length + read > most) return false;
            into.Write(buffer, 0, read);
        }
        return true;
    }

    static T? Parse<T>(Dictionary<string, byte[]> files, string name, List<string> faults) where T : class
    {
        if (!files.TryGetValue(name, out var bytes))
        {
            faults.Add($"{name}: is gone.");
            return null;
        }
        try
        {
            using var json = JsonDocument.Parse(bytes);
            if (EntryCodec.HoldsNothing(json.RootElement)) throw new JsonException("a list has a place with nothing in it");
            return json.Deserialize<T>(Bundle.Json) ?? throw new JsonException("empty");
        }
        catch (JsonException error)
        {
            faults.Add($"{name}: cannot be read: {error.Message}");
            return null;
        }
    }

    /// <summary>The ledger's hashes; null when its chain is broken.</summary>
    static List<byte[]>? Chained(Manifest manifest, BundledLedger ledger, List<string> faults)
    {
        IReadOnlyList<SealedEntry> chain;
        try
        {
            chain = ledger.Sealed();
        }
        catch (FormatException)
        {
            var bad = ledger.Entries.First(entry => !IsHash(entry.PreviousHash) || !IsHash(entry.Hash));
            faults.Add($"S-{ledger.Number}, entry {bad.Sequence}: a hash of it is none.");
            return null;
        }
        if (Chain.FirstBroken(manifest.Installation, chain) is { } broken)
        {
            faults.Add($"S-{ledger.Number}, entry {broken}: does not follow from the entries before it: it was changed, removed or put in by hand.");
            return null;
        }
        if (chain.Count == 0 || FirstReport(chain[0]) != ledger.Number)
            faults.Add($"S-{ledger.Number}, entry 1: is not the report of that squawk.");
        if (manifest.Ledgers.FirstOrDefault(head => head.Squawk == ledger.Squawk) is not { } known)
            faults.Add($"S-{ledger.Number}, entry 1: the manifest knows nothing of this ledger.");
        else if (known.Length > chain.Count)
            faults.Add($"S-{ledger.Number}, entry {chain.Count + 1}: is gone; the manifest remembers {known.Length} entries.");
        else if (known.Length < chain.Count || known.Number != ledger.Number || known.Head != Convert.ToHexStringLower(chain[^1].Hash))
            faults.Add($"S-{ledger.Number}, entry {Math.Min(known.Length + 1, chain.Count)}: is not the one that the manifest remembers.");
        return [.. chain.Select(entry => entry.Hash)];
    }

    static bool IsHash(string text) => text.Length == 64 && text.All(char.IsAsciiHexDigit);

    static int? FirstReport(SealedEntry first)
    {
        try
        {
            return first.Open().Fact is Squawks.Entries.Reported report ? report.Number : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    // A seal stands over all of a school's ledgers; only those that are in the bundle can be compared.
    static void Sealed(Manifest manifest, Dictionary<string, byte[]> files, Dictionary<SquawkId, IReadOnlyList<byte[]>> hashes, Seal? kept, List<string> faults)
    {
        List<Seal> seals = [];
        foreach (var (name, bytes) in files.Where(file => file.Key.StartsWith(Bundle.Seals, StringComparison.Ordinal)))
        {
            var (seal, fault) = Seal.Read(Encoding.UTF8.GetString(bytes));
            if (seal is null) faults.Add($"{name}: is no seal that holds: {fault}.");
            else if (seal.Installation != manifest.Installation) faults.Add($"{name}: is of another installation.");
            else seals.Add(seal);
        }
        if (kept is not null && kept.Installation != manifest.Installation)
            faults.Add($"The kept seal is of another installation ({kept.Installation}; the bundle says {manifest.Installation}).");
        else if (kept is not null)
            seals.Insert(0, kept);
        var within = seals.Select(seal => seal with { Heads = [.. seal.Heads.Where(head => hashes.ContainsKey(head.Squawk))] }).ToList();
        faults.AddRange(SealAudit.Broken(within, hashes).Select(broken => $"S-{broken.Head.Number}, entry {broken.Sequence}: {broken.What}"));
    }

    static void Listed(Manifest manifest, Dictionary<string, byte[]> files, List<string> faults)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(files[Bundle.ManifestName]));
        if (!files.TryGetValue(Bundle.ManifestHashName, out var said) || Encoding.ASCII.GetString(said) != $"{hash}  {Bundle.ManifestName}\n")
            faults.Add($"{Bundle.ManifestName}: is not the one whose hash is in {Bundle.ManifestHashName}.");
        foreach (var listed in manifest.Files)
        {
            if (!files.TryGetValue(listed.Name, out var bytes)) faults.Add($"{listed.Name}: is gone.");
            else if (bytes.Length != listed.Bytes || Convert.ToHexStringLower(SHA256.HashData(bytes)) != listed.Sha256) faults.Add($"{listed.Name}: was changed.");
        }
        foreach (var stranger in files.Keys.Except(manifest.Files.Select(file => file.Name)).Except([Bundle.ManifestName, Bundle.ManifestHashName]))
            faults.Add($"{stranger}: was put in.");
        foreach (var (name, bytes) in files.Where(file => file.Key.StartsWith(Bundle.Attachments, StringComparison.Ordinal)))
            if (!Path.GetFileName(name).StartsWith(Convert.ToHexStringLower(SHA256.HashData(bytes)), StringComparison.Ordinal)) faults.Add($"{name}: is not the picture that the entry names.");
    }
}
