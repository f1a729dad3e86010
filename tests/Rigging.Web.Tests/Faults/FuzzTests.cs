using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Storage.Tests.Faults;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Faults;

/// <summary>Nonsense from every side, always the same nonsense: it is refused in words, never by a crash, and writes nothing in part.</summary>
[Collection(InTheHangar.Name)]
public sealed class FuzzTests(Hangar hangar)
{
    static readonly string[] Texts = ["", " ", "x", "\0", "\ud83d", "é左🛩", "'; drop table squawk; --", "<script>alert(1)</script>", "${7*7}", "../../etc/passwd", "-0", "1e400", "NaN", "2026-02-30", "99999999999999999999", "[person:00000000-0000-7000-8000-000000000004]"];

    static CancellationToken Ct => TestContext.Current.CancellationToken;

    static JsonNode? Nonsense(Random chance) => chance.Next(12) switch
    {
        0 => null,
        1 => JsonValue.Create(chance.Next(2) == 0),
        2 => JsonValue.Create(chance.Next(-1000, 1000)),
        3 => JsonValue.Create((chance.NextDouble() - 0.5) * Math.Pow(10, chance.Next(-300, 300))),
        4 => new JsonArray(),
        5 => new JsonObject(),
        6 => new JsonArray(JsonValue.Create(1), JsonValue.Create("two")),
        7 => JsonValue.Create(new string('y', chance.Next(1, 6000))),
        8 => JsonValue.Create(Guid.NewGuid().ToString("D")),
        9 => JsonValue.Create(int.MinValue),
        _ => JsonValue.Create(Texts[chance.Next(2, Texts.Length)].Replace("\ud83d", "?", StringComparison.Ordinal)),
    };

    /// <summary>Changes one to three places of a JSON text: values, names, structure, or single characters.</summary>
    static string Change(string json, Random chance)
    {
        var root = JsonNode.Parse(json)!;
        for (var times = chance.Next(1, 4); times > 0; times--)
        {
            var places = Places(root).ToList();
            if (places.Count == 0) break;
            switch (places[chance.Next(places.Count)])
            {
                case (JsonObject parent, string name) when chance.Next(4) == 0:
                    parent.Remove(name);
                    break;
                case (JsonObject parent, string name) when chance.Next(8) == 0:
                    parent[name + "x"] = Nonsense(chance);
                    break;
                case (JsonObject parent, string name):
                    parent[name] = Nonsense(chance);
                    break;
                case (JsonArray parent, int index) when chance.Next(3) == 0:
                    parent.RemoveAt(index);
                    break;
                case (JsonArray parent, int index):
                    parent[index] = Nonsense(chance);
                    break;
            }
        }
        var text = root.ToJsonString();
        if (chance.Next(10) > 0 || text.Length == 0) return text;
        var at = chance.Next(text.Length);
        return text[..at] + (char)chance.Next(1, 0x250) + text[(at + 1)..];
    }

    static IEnumerable<(JsonNode Parent, object Key)> Places(JsonNode? node) => node switch
    {
        JsonObject parent => parent.SelectMany(pair => Places(pair.Value).Prepend((parent, pair.Key))),
        JsonArray parent => parent.SelectMany((item, index) => Places(item).Prepend((parent, index))),
        _ => [],
    };

    [Fact]
    public async Task Bodies_sent_to_the_api_are_answered_without_a_crash()
    {
        var chance = new Random(11);
        using var program = hangar.Site.Browser();
        Dictionary<HttpStatusCode, int> answers = [];
        for (var n = 0; n < Rounds.Of(2000); n++)
        {
            var body = Change(Api.ApiSite.Example, chance);
            using var content = new StringContent(body, Encoding.UTF8, "application/json");
            using var answer = await program.Http.PostAsync(new Uri("/api/v1/assessments", UriKind.Relative), content, Ct);
            answers[answer.StatusCode] = answers.GetValueOrDefault(answer.StatusCode) + 1;
            Assert.True((int)answer.StatusCode < 500, $"{answer.StatusCode} to body {n}: {body}");
        }
        // Both happened often enough to mean something.
        Assert.True(answers.GetValueOrDefault(HttpStatusCode.OK) > 20 && answers.Values.Sum() - answers.GetValueOrDefault(HttpStatusCode.OK) > 20, string.Join(", ", answers));
    }

    [Fact]
    public async Task Entries_are_taken_whole_or_refused_and_ledgers_hold()
    {
        var chance = new Random(12);
        var store = hangar.Site.Services.GetRequiredService<LedgerStore>();
        Ledger[] stages = [School.Called, School.Checked, School.Torqued, School.Worked, School.Approved, School.Judged];
        var squawks = new List<SquawkId>();
        foreach (var stage in stages) squawks.Add((await hangar.Ledger(await hangar.Squawk(stage))).Id);
        var kinds = EntryCodec.Kinds.Order().ToList();
        var (unreadable, refused, taken) = (0, 0, 0);
        for (var n = 0; n < Rounds.Of(2000); n++)
        {
            var kind = kinds[chance.Next(kinds.Count)];
            var payload = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "payloads", $"{kind}.1.json"), Ct);
            var json = JsonNode.Parse(payload)!["fact"]!.ToJsonString();
            Fact fact;
            try
            {
                fact = EntryCodec.ReadFact(kind, chance.Next(5) == 0 ? json : Change(json, chance));
            }
            catch (Exception error) when (error is JsonException or FormatException or NodaTime.Text.UnparsableValueException)
            {
                unreadable++;
                continue;
            }
            var who = Walks.Cast[chance.Next(6)];
            var (ledger, facts) = (await store.Look(squawks[chance.Next(squawks.Count)], who.Id, Ct))!.Value;
            var hash = SignedText.Sha256(Squawk.TextToSign(ledger, fact, facts));
            var outcome = await store.Append(ledger.Id, ledger.Length, who.Id, fact, new("password", facts.Now, hash, hash), Ct);
            if (outcome is Outcome.Appended) taken++;
            else refused++;
            Assert.True(outcome is Outcome.Appended or Outcome.Refused { Broken.Count: > 0 }, $"{kind} {n}: {outcome}");
        }
        var length = 0;
        foreach (var id in squawks) length += (await store.Load(id, Ct))!.Length;
        Assert.Equal(stages.Sum(stage => stage.Length) + taken, length);
        Assert.True(unreadable > 30 && refused > 30 && taken > 5, $"{unreadable} unreadable, {refused} refused, {taken} taken");
        await WholeLedgers();
    }

    [Fact]
    public async Task Forms_are_answered_without_a_crash_and_write_nothing_in_part()
    {
        var chance = new Random(13);
        var number = await hangar.Squawk(School.Checked);
        string[] pages = ["other/note", "other/wait", "call", "flight", "checks?check=flap-difference", "checks?check=cable-tension", "other/join", "other/hand-over", "other/within-limits", "other/no-fault-found"];
        using var mechanic = await hangar.As(School.Mechanic);
        for (var n = 0; n < Rounds.Of(100); n++)
        {
            var address = $"/squawks/{number}/{pages[chance.Next(pages.Length)]}";
            var page = await mechanic.Open(address);
            Assert.Equal(HttpStatusCode.OK, page.Status);
            var forms = page.Document.QuerySelectorAll("main form").ToList();
            if (forms.Count == 0) continue;
            var fields = forms[0].QuerySelectorAll("[name]").Select(field => field.GetAttribute("name")!).Where(name => !name.StartsWith("__", StringComparison.Ordinal)).Distinct().ToList();
            // Half a pair cannot travel in a form.
            var typed = fields.Where(name => name != "_handler" && chance.Next(3) > 0).ToDictionary(name => name, _ => Texts[chance.Next(Texts.Length)].Replace("\ud83d", "?", StringComparison.Ordinal));
            if (chance.Next(3) > 0)
                typed.Remove(EntryPage.LengthField);
            var answer = await mechanic.Submit(page, typed);
            Assert.True((int)answer.Status < 500, $"{answer.Status} to form {n} at {address}: {string.Join("; ", typed)}");
        }
        await WholeLedgers();
    }

    /// <summary>Chains hold, and every projection is what its entries prove.</summary>
    async Task WholeLedgers()
    {
        var report = await hangar.Site.Services.GetRequiredService<LedgerAudit>().Verify(Ct);
        Assert.True(report.Holds, string.Join('\n', report.Lines));
        await using var db = hangar.Site.OpenDatabase();
        foreach (var row in await db.Squawks.AsNoTracking().ToListAsync(Ct))
        {
            var entries = await db.Entries.AsNoTracking().Where(entry => entry.SquawkId == row.Id).OrderBy(entry => entry.Sequence).ToListAsync(Ct);
            Assert.Equivalent(SquawkRow.Of(Ledger.Of(row.Id, [.. entries.Select(entry => entry.Sealed())])), row, strict: true);
        }
    }
}
