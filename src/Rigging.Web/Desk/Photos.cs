using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>Takes in pictures that entries will name by their hash, and hands them out again.</summary>
public sealed class Photos(IDbContextFactory<RiggingDb> databases)
{
    public const int Most = 4;
    public const int MostBytes = 8 * 1024 * 1024;

    /// <summary>Every picture that can be kept is kept, stripped of place and time; what cannot be is named.</summary>
    public async Task<(IReadOnlyList<Photo> Kept, IReadOnlyList<BrokenRule> Refused)> Keep(IEnumerable<IFormFile> files, string field, CancellationToken ct = default)
    {
        List<Photo> kept = [];
        List<BrokenRule> refused = [];
        foreach (var file in files.Where(file => file.Length > 0))
        {
            if (file.Length > MostBytes)
            {
                refused.Add(new("photo-too-large", Gaps.Fill(Say.PictureHasMBAtMost, file.FileName, $"{file.Length / 1048576.0:0.0}", MostBytes / 1048576), field));
                continue;
            }
            using var bytes = new MemoryStream((int)file.Length);
            await file.CopyToAsync(bytes, ct);
            if (PlainPicture.Of(bytes.ToArray()) is { } plain) kept.Add(await Keep(plain.MediaType, plain.Bytes, ct));
            else refused.Add(new("photo-unreadable", Gaps.Fill(Say.IsNotPictureThatCanBeKept, file.FileName), field));
        }
        return (kept, refused);
    }

    /// <summary>The hashes that a squawk's entries name.</summary>
    static IEnumerable<string> In(SquawkFile file) => file.Ledger.Entries.SelectMany(entry => entry.Fact switch
    {
        Reported { Photos: { } photos } => photos.Select(photo => photo.Sha256),
        Photographed photo => [photo.Sha256],
        _ => [],
    });

    async Task<Photo> Keep(string mediaType, byte[] bytes, CancellationToken ct)
    {
        var sha256 = SHA256.HashData(bytes);
        await using var db = await databases.CreateDbContextAsync(ct);
        // The same picture twice is one picture.
        await db.Database.ExecuteSqlAsync($"insert into attachment (sha256, media_type, bytes) values ({sha256}, {mediaType}, {bytes}) on conflict do nothing", ct);
        return new(Convert.ToHexStringLower(sha256));
    }

    /// <summary>Those of these hashes that are kept here, in their order.</summary>
    public async Task<IReadOnlyList<Photo>> Known(IEnumerable<string> hashes, CancellationToken ct = default)
    {
        var asked = hashes.Where(hash => hash.Length == 64 && hash.All(char.IsAsciiHexDigitLower)).Distinct().Take(Most).ToList();
        var keys = asked.ConvertAll(Convert.FromHexString);
        await using var db = await databases.CreateDbContextAsync(ct);
        var found = (await db.Attachments.Where(row => keys.Contains(row.Sha256)).Select(row => row.Sha256).ToListAsync(ct)).ConvertAll(Convert.ToHexStringLower);
        return [.. asked.Where(found.Contains).Select(hash => new Photo(hash))];
    }

    /// <summary>A picture that one of this squawk's entries names; null when none does.</summary>
    public async Task<(string MediaType, byte[] Bytes)?> Of(SquawkFile file, string hash, CancellationToken ct = default)
    {
        if (!In(file).Contains(hash)) return null;
        var key = Convert.FromHexString(hash);
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Attachments.AsNoTracking().SingleOrDefaultAsync(row => row.Sha256 == key, ct) is { } row ? (row.MediaType, row.Bytes) : null;
    }
}

static class PhotoEndpoint
{
    /// <summary><c>/squawks/12/photos/HASH</c>, for whoever may open the squawk.</summary>
    public static void MapPhotos(this IEndpointRouteBuilder app) =>
        app.MapGet("/squawks/{number:int}/photos/{hash}", async (int number, string hash, HttpContext http, Actor actor, SquawkDesk desk, Photos photos, CancellationToken ct) =>
        {
            actor.Is(http.User);
            return await desk.Open(number, ct) is { } file && await photos.Of(file, hash, ct) is { } picture ? Results.File(picture.Bytes, picture.MediaType) : Results.NotFound();
        }).RequireAuthorization().ExcludeFromDescription();
}
