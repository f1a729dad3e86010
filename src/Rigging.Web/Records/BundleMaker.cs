using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Storage;
using Rigging.Storage.Attachments;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;
using Rigging.Web.Desk;
using Rigging.Web.Paper;
using Rigging.Web.SignOff;

namespace Rigging.Web.Records;

/// <summary>Whose ledgers to take along.</summary>
public abstract record BundleScope
{
    public sealed record Squawk(int Number) : BundleScope;

    public sealed record Aircraft(string Registration) : BundleScope;

    public sealed record Everything : BundleScope;

    public string Words => this switch
    {
        Squawk squawk => $"squawk S-{squawk.Number}",
        Aircraft aircraft => $"aircraft {aircraft.Registration}",
        _ => "everything",
    };
}

/// <summary>Puts ledgers, records and what explains them into one file that needs nothing else.</summary>
public sealed partial class BundleMaker(IDbContextFactory<RiggingDb> databases, LedgerStore ledgers, IClock clock)
{
    /// <returns>How many ledgers are in it; null when there is no such squawk or aircraft, and then nothing was written.</returns>
    public async Task<int?> Make(BundleScope scope, Stream into, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        // One moment: entries, heads, records and pictures belong together whatever is added meanwhile.
        await using var snapshot = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, ct);
        var squawks = await Squawks(db, scope, ct);
        if (squawks is null) return null;
        var installation = await db.Installations.AsNoTracking().SingleAsync(ct);
        var now = clock.GetCurrentInstant();

        using var zip = new ZipArchive(into, ZipArchiveMode.Create, leaveOpen: true);
        var files = new List<ManifestFile>();
        HashSet<Guid> named = [];
        List<ManifestLedger> heads = [];
        foreach (var (id, number) in squawks)
        {
            var entries = (await db.Entries.AsNoTracking().Where(row => row.SquawkId == id).OrderBy(row => row.Sequence).ToListAsync(ct)).ConvertAll(row => row.Sealed());
            heads.Add(new(id.Value, number, entries.Count, Convert.ToHexStringLower(entries[^1].Hash)));
            Add($"{Bundle.Ledgers}S-{number}.json", JsonSerializer.SerializeToUtf8Bytes(BundledLedger.Of(number, entries), Bundle.Json));
            foreach (var entry in entries) named.UnionWith(Ids().Matches(entry.Payload).Select(match => Guid.Parse(match.Value)));
            foreach (var (round, pdf) in await Records(db, id, now, ct)) Add($"{Bundle.Records}S-{number}-round-{round}.pdf", pdf);
            foreach (var picture in await Pictures(db, entries, ct))
                Add($"{Bundle.Attachments}{Convert.ToHexStringLower(picture.Sha256)}{Extension(picture.MediaType)}", picture.Bytes);
        }
        Add(Bundle.RegisterName, JsonSerializer.SerializeToUtf8Bytes(await Extract(db, named, ct), Bundle.Json));
        if (await db.Seals.AsNoTracking().OrderByDescending(seal => seal.Number).FirstOrDefaultAsync(ct) is { } seal)
            Add($"{Bundle.Seals}seal-{seal.Number}.txt", Encoding.UTF8.GetBytes(seal.Text));
        Add(Bundle.ReadMeName, Encoding.UTF8.GetBytes(Bundle.ReadMe));
        var manifest = JsonSerializer.SerializeToUtf8Bytes(new Manifest(Manifest.ThisForm, installation.Id, installation.SchoolName, scope.Words, now, heads, [.. files]), Bundle.Json);
        Add(Bundle.ManifestName, manifest);
        Add(Bundle.ManifestHashName, Encoding.ASCII.GetBytes($"{Convert.ToHexStringLower(SHA256.HashData(manifest))}  {Bundle.ManifestName}\n"));
        return squawks.Count;

        void Add(string name, byte[] bytes)
        {
            if (files.Any(file => file.Name == name)) return;   // a picture that two squawks name
            using (var entry = zip.CreateEntry(name).Open()) entry.Write(bytes);
            files.Add(new(name, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes))));
        }
    }

    static async Task<List<(SquawkId Id, int Number)>?> Squawks(RiggingDb db, BundleScope scope, CancellationToken ct)
    {
        var rows = db.Squawks.AsNoTracking();
        if (scope is BundleScope.Aircraft { Registration: var registration })
        {
            if (await db.Aircraft.Where(aircraft => aircraft.Registration == registration).Select(aircraft => (AircraftId?)aircraft.Id).SingleOrDefaultAsync(ct) is not { } aircraft) return null;
            rows = rows.Where(row => row.AircraftId == aircraft);
        }
        if (scope is BundleScope.Squawk { Number: var number }) rows = rows.Where(row => row.Number == number);
        var found = await rows.OrderBy(row => row.Number).Select(row => new { row.Id, row.Number }).ToListAsync(ct);
        return scope is BundleScope.Squawk && found.Count == 0 ? null : found.ConvertAll(row => (row.Id, row.Number));
    }

    async Task<List<(int Round, byte[] Pdf)>> Records(RiggingDb db, SquawkId id, Instant now, CancellationToken ct)
    {
        var (ledger, facts) = (await ledgers.LookIn(db, id, ct))!.Value;
        var file = await SquawkDesk.FileOf(db, ledger, facts, ct);
        return [.. from round in Enumerable.Range(1, ledger.State.Round)
                   let sheet = RecordSheet.Of(file, round, Stock.A4, now.InZone(file.School.Zone))
                   where sheet is not null
                   select (round, sheet.ToPdf())];
    }

    static async Task<List<AttachmentRow>> Pictures(RiggingDb db, List<SealedEntry> entries, CancellationToken ct)
    {
        var hashes = entries.SelectMany(entry => AttachmentRow.NamedIn(entry.Payload)).ToList();
        return hashes.Count == 0 ? [] : await db.Attachments.AsNoTracking().Where(row => hashes.Contains(row.Sha256)).ToListAsync(ct);
    }

    static async Task<RegisterExtract> Extract(RiggingDb db, HashSet<Guid> named, CancellationToken ct)
    {
        var people = await db.People.AsNoTracking().OrderBy(person => person.Number).ToListAsync(ct);
        var earlier = (await db.NameChanges.AsNoTracking().OrderBy(change => change.At).ThenBy(change => change.Id).ToListAsync(ct)).ToLookup(change => change.PersonId, change => new ExtractEarlierName(change.FromName, change.At));
        var certificates = await db.Set<CertificateRow>().AsNoTracking().OrderBy(certificate => certificate.Id).ToListAsync(ct);
        var tools = await db.Tools.AsNoTracking().OrderBy(tool => tool.Code).ToListAsync(ct);
        var aircraft = (await db.Aircraft.AsNoTracking().OrderBy(row => row.Registration).ToListAsync(ct)).FindAll(row => named.Contains(row.Id.Value));
        var airframes = await db.Airframes.AsNoTracking().OrderBy(row => row.Id).ThenBy(row => row.Version).ToListAsync(ct);
        return new(
            [.. people.Where(person => named.Contains(person.Id.Value)).Select(person => new ExtractPerson(person.Id.Value, person.Number, person.Name, earlier.Contains(person.Id) ? [.. earlier[person.Id]] : null))],
            [.. certificates.Where(held => named.Contains(held.Id.Value)).Select(held => new ExtractCertificate(held.Id.Value, held.PersonId.Value, held.Kind, held.Number, held.ValidUntil))],
            [.. tools.Where(tool => named.Contains(tool.Id.Value)).Select(tool => new ExtractTool(tool.Id.Value, tool.Code, tool.Kind, tool.Description, tool.Serial, tool.CalibratedOn, tool.CalibrationDue))],
            [.. aircraft.Select(row => new ExtractAircraft(row.Id.Value, row.Registration, row.Serial, row.AirframeId, row.AirframeVersion, row.TotalTimeTenths / 10.0))],
            // Every version: an assessment names the one it was made with.
            [.. airframes.Where(row => aircraft.Exists(owner => owner.AirframeId == row.Id)).Select(row => new ExtractAirframe(row.Id, row.Version, row.Name, row.Json))]);
    }

    static string Extension(string mediaType) => mediaType == "image/png" ? ".png" : ".jpg";

    // Whatever identifier stands anywhere in an entry, in a field or as a token in a text, is one the register may explain.
    [GeneratedRegex("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}")]
    private static partial Regex Ids();
}
