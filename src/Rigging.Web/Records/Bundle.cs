using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;

namespace Rigging.Web.Records;

/// <summary>What a bundle says of itself: whose ledgers it holds, how far they reach, and the hash of every other file in it.</summary>
/// <param name="Scope">In words: "squawk S-12", "aircraft Q-TEST", "everything".</param>
sealed record Manifest(string Form, Guid Installation, string School, string Scope, Instant MadeAt, IReadOnlyList<ManifestLedger> Ledgers, IReadOnlyList<ManifestFile> Files)
{
    public const string ThisForm = "Rigging bundle, form 1";
}

/// <param name="Head">Hash of the last entry, hexadecimal.</param>
sealed record ManifestLedger(Guid Squawk, int Number, int Length, string Head);

sealed record ManifestFile(string Name, long Bytes, string Sha256);

/// <summary>One ledger with the exact text that was hashed.</summary>
sealed record BundledLedger(Guid Squawk, int Number, IReadOnlyList<BundledEntry> Entries)
{
    public static BundledLedger Of(int number, IReadOnlyList<SealedEntry> entries) => new(entries[0].Squawk.Value, number,
        [.. entries.Select(entry => new BundledEntry(entry.Sequence, entry.Kind, entry.Version, entry.Payload, Convert.ToHexStringLower(entry.PreviousHash), Convert.ToHexStringLower(entry.Hash)))]);

    /// <exception cref="FormatException">A hash is not one.</exception>
    public IReadOnlyList<SealedEntry> Sealed() =>
        [.. Entries.Select(entry => new SealedEntry(new SquawkId(Squawk), entry.Sequence, entry.Kind, entry.Version, entry.Payload, Convert.FromHexString(entry.PreviousHash), Convert.FromHexString(entry.Hash)))];
}

sealed record BundledEntry(int Sequence, string Kind, int Version, string Payload, string PreviousHash, string Hash);

/// <summary>As much of the registers as the ledgers name, as it stands on the day of the export. It explains the ledgers; no hash of theirs covers it.</summary>
sealed record RegisterExtract(
    IReadOnlyList<ExtractPerson> People, IReadOnlyList<ExtractCertificate> Certificates, IReadOnlyList<ExtractTool> Tools,
    IReadOnlyList<ExtractAircraft> Aircraft, IReadOnlyList<ExtractAirframe> Airframes);

/// <param name="EarlierNames">Names before, the earliest first: an entry made before such a moment was made under that name. Null where there were none, and in bundles of before.</param>
sealed record ExtractPerson(Guid Id, int Number, string Name, IReadOnlyList<ExtractEarlierName>? EarlierNames = null);

sealed record ExtractEarlierName(string Name, Instant Until);

sealed record ExtractCertificate(Guid Id, Guid Person, string Kind, string Number, LocalDate? ValidUntil);

sealed record ExtractTool(Guid Id, string Code, string Kind, string Description, string? Serial, LocalDate? CalibratedOn, LocalDate? CalibrationDue);

sealed record ExtractAircraft(Guid Id, string Registration, string Serial, string Airframe, int AirframeVersion, double TotalTimeH);

sealed record ExtractAirframe(string Id, int Version, string Name, string Json);

/// <summary>The names of a bundle's files, and how its JSON is written.</summary>
static class Bundle
{
    public const string ManifestName = "manifest.json";
    public const string ManifestHashName = "manifest.sha256";
    public const string RegisterName = "register.json";
    public const string ReadMeName = "README.txt";
    public const string Ledgers = "ledgers/", Records = "records/", Seals = "seals/", Attachments = "attachments/";

    public static JsonSerializerOptions Json { get; } = new JsonSerializerOptions(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    }.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);

    public const string ReadMe = """
        This is an export of maintenance ledgers, complete in itself.

        records/     each round of work as a maintenance record entry, to read and print
        ledgers/     every entry of every squawk: "payload" is the exact text that was hashed
        register.json  names, certificates, tools, aircraft and airframes behind the identifiers, as on the day of the export
        attachments/ pictures that entries name by their SHA-256
        seals/       the newest seal that stood over these ledgers
        manifest.json  what is in here, with the SHA-256 of every file; manifest.sha256 is its own

        To check it with the program: rigging verify FILE. No database is needed.
        To check it with any other: an entry's hash is SHA-256 over seven parts, each preceded by its length in bytes as a
        32-bit big-endian number: the previous entry's hash (32 zero bytes before the first), the installation's id and the
        squawk's id (16 bytes each, as their hexadecimal digits read), the sequence (32-bit big-endian), the kind (UTF-8), the
        version (32-bit big-endian), the payload (UTF-8).

        What it proves: that nothing was changed by accident or in part. Whoever makes up a whole bundle can make one that holds;
        a seal or a printed record that was kept elsewhere is what would show that.
        """;
}
