using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Storage;

namespace Rigging.Web.Desk;

/// <summary>What a person has typed and not yet sent, by key. A draft belongs to one person and is nobody else's to read.</summary>
public sealed class Drafts(IDbContextFactory<RiggingDb> databases, IClock clock)
{
    public const int MaxKeyLength = 120;
    public const int MaxLength = 64 * 1024;

    /// <summary>Forms that one person may have begun and not sent: far more than anybody has, and no more than a disk bears.</summary>
    public const int MaxPerPerson = 200;

    /// <summary>Whether a form of that key can still be kept: it is kept already, or there are not too many.</summary>
    public async Task<bool> HasRoom(PersonId person, string key, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Drafts.CountAsync(draft => draft.PersonId == person && draft.Key != key, ct) < MaxPerPerson;
    }

    public async Task<string?> Load(PersonId person, string key, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Drafts.Where(draft => draft.PersonId == person && draft.Key == key).Select(draft => draft.Json).SingleOrDefaultAsync(ct);
    }

    /// <summary>Who has something typed and not recorded under a key, and since when; newest first. What it says is nobody else's to read.</summary>
    public async Task<IReadOnlyList<(PersonId Person, Instant At)>> At(string key, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var rows = await db.Drafts.AsNoTracking().Where(draft => draft.Key == key && draft.Json != "{}").OrderByDescending(draft => draft.UpdatedAt).Select(draft => new { draft.PersonId, draft.UpdatedAt }).ToListAsync(ct);
        return [.. rows.Select(row => (row.PersonId, row.UpdatedAt))];
    }

    public async Task Save(PersonId person, string key, string json, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var now = clock.GetCurrentInstant();
        // One statement: two tabs that save at once both succeed, the later one stays.
        await db.Database.ExecuteSqlAsync($"""
            insert into draft (person_id, key, json, updated_at) values ({person.Value}, {key}, {json}, {now})
            on conflict (person_id, key) do update set json = excluded.json, updated_at = excluded.updated_at
            """, ct);
    }

    public async Task Drop(PersonId person, string key, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        await db.Drafts.Where(draft => draft.PersonId == person && draft.Key == key).ExecuteDeleteAsync(ct);
    }

    /// <summary>The fact that a step page has prepared for signing.</summary>
    public Task SaveFact(PersonId person, int squawk, Fact fact, CancellationToken ct = default) =>
        Save(person, SigningKey(squawk, EntryCodec.KindOf(fact)), EntryCodec.WriteFact(fact), ct);

    public async Task<Fact?> LoadFact(PersonId person, int squawk, string kind, CancellationToken ct = default)
    {
        try
        {
            return await Load(person, SigningKey(squawk, kind), ct) is { } json ? EntryCodec.ReadFact(kind, json) : null;
        }
        catch (JsonException)
        {
            return null;   // prepared by another version of the program: the step page prepares it again
        }
    }

    /// <summary>What was typed on a step's page.</summary>
    /// <param name="step">The page's last word in its address.</param>
    public static string TypedKey(int squawk, string step) => $"{step}:{squawk}";

    /// <summary>What was typed for one ground check.</summary>
    public static string CheckKey(int squawk, string check) => $"check:{squawk}:{check}";

    public static string SigningKey(int squawk, string kind) => $"sign:{squawk}:{kind}";
}
