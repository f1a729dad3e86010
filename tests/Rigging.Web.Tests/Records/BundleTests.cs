using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Tests;
using Rigging.Storage.Seals;
using Rigging.Storage.Tests;
using Rigging.Web.Records;

namespace Rigging.Web.Tests.Records;

/// <summary>A bundle holds by itself, and whatever is changed in it is found and named.</summary>
public sealed class BundleTests(BundleTests.Made made) : IClassFixture<BundleTests.Made>
{
    /// <summary>A closed squawk and an open one, sealed, exported once; every test tampers with a copy.</summary>
    public sealed class Made(Postgres postgres) : IAsyncLifetime
    {
        internal Hangar Hangar { get; } = new(postgres);
        internal byte[] Zip { get; private set; } = [];

        public async ValueTask InitializeAsync()
        {
            await Hangar.InitializeAsync();
            await Hangar.Squawk(School.Closed);
            await Hangar.Squawk(School.Called);
            await Hangar.Site.Services.GetRequiredService<Sealer>().SealNow(CancellationToken.None);
            Zip = (await Make(new BundleScope.Everything()))!;
        }

        internal async Task<byte[]?> Make(BundleScope scope)
        {
            using var into = new MemoryStream();
            return await Hangar.Site.Services.GetRequiredService<BundleMaker>().Make(scope, into) is null ? null : into.ToArray();
        }

        public ValueTask DisposeAsync() => Hangar.DisposeAsync();
    }

    static BundleReport Verify(byte[] zip) => BundleCheck.Verify(new MemoryStream(zip));

    static List<(string Name, byte[] Bytes)> Files(byte[] zip)
    {
        using var archive = new ZipArchive(new MemoryStream(zip), ZipArchiveMode.Read);
        return [.. archive.Entries.Select(entry =>
        {
            using var into = new MemoryStream();
            using var from = entry.Open();
            from.CopyTo(into);
            return (entry.FullName, into.ToArray());
        })];
    }

    static byte[] Zip(IEnumerable<(string Name, byte[] Bytes)> files)
    {
        using var into = new MemoryStream();
        using (var archive = new ZipArchive(into, ZipArchiveMode.Create, leaveOpen: true))
            foreach (var (name, bytes) in files)
            {
                using var entry = archive.CreateEntry(name).Open();
                entry.Write(bytes);
            }
        return into.ToArray();
    }

    byte[] With(string name, Func<byte[], byte[]> change)
    {
        var files = Files(made.Zip);
        Assert.Contains(files, file => file.Name == name);
        return Zip(files.Select(file => file.Name == name ? (name, change(file.Bytes)) : file));
    }

    byte[] With(string name, string from, string to) => With(name, bytes =>
    {
        var text = Encoding.UTF8.GetString(bytes);
        var at = text.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"{name} does not hold {from}");
        return Encoding.UTF8.GetBytes(text[..at] + to + text[(at + from.Length)..]);
    });

    [Fact]
    public void An_untouched_bundle_holds_and_holds_everything_it_needs()
    {
        var report = Verify(made.Zip);
        Assert.Empty(report.Faults);
        Assert.Contains($"2 ledgers with {School.Closed.Length + School.Called.Length} entries", report.Summary, StringComparison.Ordinal);
        var files = Files(made.Zip);
        Assert.Equal(["README.txt", "ledgers/S-1.json", "ledgers/S-2.json", "manifest.json", "manifest.sha256", "records/S-1-round-1.pdf", "register.json", "seals/seal-1.txt"],
            files.Select(file => file.Name).Order(StringComparer.Ordinal));
        var register = Encoding.UTF8.GetString(files.Single(file => file.Name == "register.json").Bytes);
        Assert.Contains(Hangar.NameOf(School.Mechanic), register, StringComparison.Ordinal);
        Assert.Contains(Hangar.NumberOf(School.Certifier.Certificates[0]), register, StringComparison.Ordinal);
        Assert.Contains(School.Wrench.Code, register, StringComparison.Ordinal);
        // Nobody goes along who has no part in it.
        Assert.DoesNotContain(Hangar.NameOf(School.Student), register, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"sequence\": 1,", "\"sequence\": 2,", "S-2, entry 1: does not follow")]
    [InlineData("\"kind\": \"airworthiness-call\"", "\"kind\": \"note\"", "S-2, entry 2: does not follow")]
    [InlineData("\"version\": 2,", "\"version\": 3,", "S-2, entry 2: does not follow")]
    [InlineData("straight enough", "straight enouhg", "S-2, entry 2: does not follow")]
    [InlineData("\"squawk\": \"0", "\"squawk\": \"1", "S-2, entry 1: does not follow")]
    [InlineData("\"number\": 2,", "\"number\": 3,", "S-3, entry 1: is not the report of that squawk")]
    [InlineData("\"previousHash\": \"00", "\"previousHash\": \"10", "S-2, entry 1: does not follow")]
    [InlineData("\"hash\": \"", "\"hash\": \"x", "S-2, entry 1: a hash of it is none")]
    public void A_change_in_a_ledger_names_the_first_bad_entry_first(string from, string to, string fault) =>
        Assert.StartsWith(fault, Verify(With("ledgers/S-2.json", from, to)).Faults[0], StringComparison.Ordinal);

    [Fact]
    public void Any_one_bit_of_a_payload_names_its_entry()
    {
        for (var sequence = 1; sequence <= School.Closed.Length; sequence++)
        {
            var changed = With("ledgers/S-1.json", bytes =>
            {
                var ledger = System.Text.Json.JsonSerializer.Deserialize<BundledLedger>(bytes, Bundle.Json)!;
                var at = sequence - 1;
                var payload = ledger.Entries[at].Payload;
                var flipped = ledger.Entries[at] with { Payload = payload[..^3] + (char)(payload[^3] ^ 1) + payload[^2..] };
                return System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(ledger with { Entries = [.. ledger.Entries.Select((entry, i) => i == at ? flipped : entry)] }, Bundle.Json);
            });
            Assert.StartsWith($"S-1, entry {sequence}: does not follow", Verify(changed).Faults[0], StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("records/S-1-round-1.pdf", "records/S-1-round-1.pdf: was changed.")]
    [InlineData("register.json", "register.json: was changed.")]
    [InlineData("README.txt", "README.txt: was changed.")]
    [InlineData("seals/seal-1.txt", "seals/seal-1.txt: was changed.")]
    [InlineData("ledgers/S-2.json", "ledgers/S-2.json: was changed.")]
    [InlineData("manifest.sha256", "manifest.json: is not the one whose hash is in manifest.sha256.")]
    public void One_byte_anywhere_in_a_file_is_found(string name, string fault)
    {
        var length = Files(made.Zip).Single(file => file.Name == name).Bytes.Length;
        foreach (var at in (int[])[0, length / 2, length - 1])
            Assert.Contains(fault, Verify(With(name, bytes => [.. bytes.Select((b, i) => i == at ? (byte)(b ^ 1) : b)])).Faults);
    }

    [Theory]
    [InlineData("\"installation\": \"0", "\"installation\": \"1", "S-1, entry 1: does not follow")]
    [InlineData("\"length\": 2,", "\"length\": 3,", "S-2, entry 3: is gone; the manifest remembers 3 entries")]
    [InlineData("\"scope\": \"everything\"", "\"scope\": \"everythin\"", "manifest.json: is not the one")]
    [InlineData("\"madeAt\": \"2026", "\"madeAt\": \"2025", "manifest.json: is not the one")]
    [InlineData("\"name\": \"register.json\"", "\"name\": \"register.jsn\"", "manifest.json: is not the one")]
    [InlineData("Rigging bundle, form 1", "Rigging bundle, form 2", "manifest.json: says nothing of the form")]
    public void A_change_in_the_manifest_is_found(string from, string to, string fault) =>
        Assert.StartsWith(fault, Verify(With("manifest.json", from, to)).Faults[0], StringComparison.Ordinal);

    [Fact]
    public void A_file_taken_out_put_in_or_doubled_is_named()
    {
        var files = Files(made.Zip);
        foreach (var (name, _) in files)
            Assert.Contains(Verify(Zip(files.Where(file => file.Name != name))).Faults, fault => fault.Contains(name == "manifest.sha256" ? "manifest.json" : name, StringComparison.Ordinal));
        Assert.Contains("extra.txt: was put in.", Verify(Zip([.. files, ("extra.txt", [1])])).Faults);
        Assert.Contains("README.txt: is in it twice.", Verify(Zip([.. files, ("README.txt", [1])])).Faults);
        Assert.StartsWith("S-2, entry 1: the whole ledger is gone", Verify(Zip(files.Where(file => file.Name != "ledgers/S-2.json"))).Faults[0], StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_cut_short_or_that_is_none_is_not_whole()
    {
        Assert.NotEmpty(Verify(made.Zip[..^40]).Faults);
        Assert.NotEmpty(Verify(made.Zip[..(made.Zip.Length / 2)]).Faults);
        Assert.NotEmpty(Verify("nothing of the kind"u8.ToArray()).Faults);
        Assert.NotEmpty(Verify([]).Faults);
    }

    /// <summary>Somebody who rewrites ledger, manifest and hashes alike is found by the seal alone.</summary>
    [Fact]
    public void A_ledger_cut_short_with_everything_made_to_fit_is_found_by_the_seal()
    {
        var files = Files(made.Zip);
        var ledger = System.Text.Json.JsonSerializer.Deserialize<BundledLedger>(files.Single(file => file.Name == "ledgers/S-2.json").Bytes, Bundle.Json)!;
        var shorter = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(ledger with { Entries = [ledger.Entries[0]] }, Bundle.Json);
        var manifest = System.Text.Json.JsonSerializer.Deserialize<Manifest>(files.Single(file => file.Name == "manifest.json").Bytes, Bundle.Json)!;
        manifest = manifest with
        {
            Ledgers = [.. manifest.Ledgers.Select(head => head.Number == 2 ? head with { Length = 1, Head = ledger.Entries[0].Hash } : head)],
            Files = [.. manifest.Files.Select(file => file.Name == "ledgers/S-2.json" ? new(file.Name, shorter.Length, Sha(shorter)) : file)],
        };
        var written = System.Text.Json.JsonSerializer.SerializeToUtf8Bytes(manifest, Bundle.Json);

        var report = Verify(Zip(files.Select(file => file.Name switch
        {
            "ledgers/S-2.json" => (file.Name, shorter),
            "manifest.json" => (file.Name, written),
            "manifest.sha256" => (file.Name, Encoding.ASCII.GetBytes($"{Sha(written)}  manifest.json\n")),
            _ => file,
        })));

        Assert.StartsWith("S-2, entry 2: is gone; seal 1 of 2026-03-02 remembers 2 entries.", Assert.Single(report.Faults), StringComparison.Ordinal);
    }

    static string Sha(byte[] bytes) => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));

    [Fact]
    public async Task One_squawk_or_one_aircraft_takes_along_its_own_and_nothing_else()
    {
        var squawk = (await made.Make(new BundleScope.Squawk(2)))!;
        await using var db = made.Hangar.Site.OpenDatabase();
        var registration = db.Aircraft.Single(row => row.Id == db.Squawks.Single(s => s.Number == 1).AircraftId).Registration;
        var aircraft = (await made.Make(new BundleScope.Aircraft(registration)))!;

        Assert.Empty(Verify(squawk).Faults);
        Assert.Empty(Verify(aircraft).Faults);
        Assert.Equal(["ledgers/S-2.json"], Files(squawk).Select(file => file.Name).Where(name => name.StartsWith("ledgers/", StringComparison.Ordinal)));
        Assert.Equal(["ledgers/S-1.json"], Files(aircraft).Select(file => file.Name).Where(name => name.StartsWith("ledgers/", StringComparison.Ordinal)));
        Assert.Null(await made.Make(new BundleScope.Squawk(99)));
        Assert.Null(await made.Make(new BundleScope.Aircraft("Q-NONE")));
    }

    [Fact]
    public async Task Those_who_keep_records_may_take_a_bundle_and_a_pilot_may_not()
    {
        using var office = await made.Hangar.As(School.Office);
        using var pilot = await made.Hangar.As(School.Pilot);
        using var nobody = made.Hangar.Site.Browser();
        foreach (var address in (string[])["/squawks/2/bundle.zip", "/school/bundle.zip"])
        {
            var answer = await office.Http.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Empty(Verify(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Faults);
            Assert.Equal(HttpStatusCode.Forbidden, (await pilot.Open(address)).Status);
            Assert.Equal(HttpStatusCode.Redirect, (await nobody.Open(address)).Status);
        }
        Assert.Equal(HttpStatusCode.NotFound, (await office.Open("/squawks/99/bundle.zip")).Status);
    }

    [Theory]
    [InlineData("manifest.json")]
    [InlineData("ledgers/")]
    public void A_member_that_says_nothing_is_a_fault_of_the_file_and_never_of_the_program(string file)
    {
        var name = Files(made.Zip).First(found => found.Name.StartsWith(file, StringComparison.Ordinal)).Name;
        var json = Encoding.UTF8.GetString(Files(made.Zip).First(found => found.Name == name).Bytes);
        foreach (var path in Paths(JsonNode.Parse(json)!).Prepend([]))
        {
            var changed = Emptied(json, path);

            var report = Verify(With(name, _ => Encoding.UTF8.GetBytes(changed)));

            Assert.NotEmpty(report.Faults);
        }
    }

    // The first two places of a list stand for the rest.
    static IEnumerable<object[]> Paths(JsonNode node) => node switch
    {
        JsonObject members => members.SelectMany(member => Within(member.Key, member.Value)),
        JsonArray places => places.Take(2).SelectMany((place, i) => Within(i, place)),
        _ => [],
    };

    static IEnumerable<object[]> Within(object step, JsonNode? node) =>
        (node is null ? [] : Paths(node)).Select(path => (object[])[step, .. path]).Prepend([step]);

    static string Emptied(string json, object[] path)
    {
        if (path.Length == 0) return "null";
        var root = JsonNode.Parse(json)!;
        var at = path[..^1].Aggregate(root, (node, step) => step is int i ? node[i]! : node[(string)step]!);
        if (path[^1] is int place) at[place] = null;
        else at[(string)path[^1]] = null;
        return root.ToJsonString();
    }

    [Fact]
    public void A_file_that_unpacks_to_far_more_than_it_is_is_put_down()
    {
        var bomb = Zip([("ledgers/1.json", new byte[200 << 20])]);
        Assert.True(bomb.Length < 1 << 20);

        var report = Verify(bomb);

        Assert.Contains(report.Faults, fault => fault.StartsWith("ledgers/1.json: unpacks to more than a bundle can hold; wanted: at most", StringComparison.Ordinal));
    }
}
