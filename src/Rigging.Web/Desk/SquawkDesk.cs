using Microsoft.EntityFrameworkCore;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using Rigging.Storage;
using Rigging.Storage.Doors;
using Rigging.Storage.Ledgers;
using Rigging.Web.Security;

namespace Rigging.Web.Desk;

/// <summary>What every squawk page does: open the file, ask, add an entry, sign. The rules are asked inside the append, whatever the page thought.</summary>
public sealed class SquawkDesk(LedgerStore ledgers, IDbContextFactory<RiggingDb> databases, Actor actor, Watch watch)
{
    /// <summary>Null when the school has no such squawk.</summary>
    public async Task<SquawkFile?> Open(int number, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        var found = await db.Squawks.AsNoTracking().Where(squawk => squawk.Number == number).Select(squawk => (SquawkId?)squawk.Id).SingleOrDefaultAsync(ct);
        if (found is not { } id || await ledgers.Look(id, await actor.Me(), ct) is not { } seen) return null;
        // A guest learns nothing of other squawks, not even that they exist.
        if (seen.Facts.Who.Visit is { } visit && visit.Squawk != id) return null;
        return await FileOf(db, seen.Ledger, seen.Facts, ct);
    }

    /// <summary>How earlier corrections turned out, on this aircraft and on the others of its type; the latest closed ledgers, oldest first.</summary>
    public async Task<IReadOnlyList<EarlierCorrection>> Lessons(SquawkFile file, CancellationToken ct = default)
    {
        const int enough = 40;
        if (file.Facts.Airframe is not { } onFile) return [];
        await using var db = await databases.CreateDbContextAsync(ct);
        var ofType = db.Aircraft.Where(aircraft => aircraft.AirframeId == onFile.Id).Select(aircraft => aircraft.Id);
        var closed = await db.Squawks.AsNoTracking().Where(squawk => squawk.Stage == Stage.Closed && squawk.Id != file.Id && ofType.Contains(squawk.AircraftId))
            .OrderByDescending(squawk => squawk.OpenedAt).Take(enough).Select(squawk => squawk.Id).ToListAsync(ct);
        List<Ledger> earlier = [];
        foreach (var id in Enumerable.Reverse(closed))
            if (await ledgers.Load(id, ct) is { } ledger) earlier.Add(ledger);
        return Squawks.Evidence.Lessons.Of(file.Ledger, earlier, onFile);
    }

    /// <summary>The file of a ledger that was read already: what a page shows, and what an export prints.</summary>
    internal static async Task<SquawkFile> FileOf(RiggingDb db, Ledger ledger, Facts facts, CancellationToken ct)
    {
        var aircraft = await db.Aircraft.AsNoTracking().SingleAsync(a => a.Id == ledger.State.Report!.Aircraft, ct);
        var airframe = await db.Airframes.AsNoTracking().Where(a => a.Id == aircraft.AirframeId && a.Version == aircraft.AirframeVersion).Select(a => a.Name).SingleOrDefaultAsync(ct);
        return new(ledger, facts,
            new(aircraft.Id, aircraft.Registration, aircraft.Serial, airframe ?? aircraft.AirframeId, aircraft.TotalTimeTenths / 10.0),
            await Registers.Names(db, ct), await Registers.School(db, ct));
    }

    /// <param name="id">Made with the form: sent twice, the report is stored once.</param>
    public async Task<Outcome> File(SquawkId id, Reported report, CancellationToken ct = default) =>
        await Noted(report, await ledgers.File(await actor.Me(), id, report, ct));

    /// <param name="lengthSeen">Number of entries on the page that was acted on.</param>
    public async Task<Outcome> Append(SquawkId id, int lengthSeen, Fact fact, CancellationToken ct = default) =>
        await Noted(fact, await ledgers.Append(id, lengthSeen, await actor.Me(), fact, null, ct));

    /// <summary>The text to show above a signature, names in place, and its hashes.</summary>
    public static TextToSign TextFor(SquawkFile file, Fact fact)
    {
        var text = Squawk.TextToSign(file.Ledger, fact, file.Facts);
        var shown = file.Register.Render(text);
        return new(shown, SignedText.Sha256(text), SignedText.Sha256(shown));
    }

    /// <summary>Adds a signed entry. Only the signature page calls this, after it has checked the password.</summary>
    public async Task<Outcome> Sign(SquawkId id, int lengthSeen, Fact fact, Affirmation affirmation, CancellationToken ct = default) =>
        await Noted(fact, await ledgers.Append(id, lengthSeen, await actor.Me(), fact, affirmation, ct));

    // Pages do not offer what a person may not do: whoever gets this far went round them, or lost the right meanwhile.
    async Task<Outcome> Noted(Fact fact, Outcome outcome)
    {
        if (outcome is Outcome.Refused refused && refused.Broken.FirstOrDefault(rule => Authority.Contains(rule.Code)) is { } rule)
            await watch.Note(SecurityEventKind.Refused, await actor.Me(), $"{EntryCodec.KindOf(fact)}: {rule.Code}");
        return outcome;
    }

    static readonly string[] Authority =
    [
        "no-authority", "person-unknown", "person-left", "guest-of-another-squawk", "guest-expired", "certificate-missing", "certificate-expired",
        "certificate-does-not-cover-the-work", "pilot-not-rated", "experience-lapsed", "experience-not-stated", "inspector-did-the-work", "certifier-did-the-work", "office-may-only-ground",
    ];
}

/// <param name="Shown">As the person reads it.</param>
/// <param name="TextSha256">Of the text with tokens: travels with the form, and is compared when it comes back.</param>
public sealed record TextToSign(string Shown, string TextSha256, string ShownSha256);
