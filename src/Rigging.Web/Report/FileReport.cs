using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Report;

/// <param name="TankLeftL">What all tanks left of the centreline hold; null when not on file.</param>
public sealed record ReportableAircraft(AircraftId Id, string Registration, string AirframeName, FlightStatus May, double? TankLeftL = null, double? TankRightL = null);

/// <summary>What came of sending the form: a filed report, or what was wrong.</summary>
public sealed record Filed(SquawkId? Id, IReadOnlyList<BrokenRule> Errors);

/// <summary>A pilot files a report: one of the register, or somebody in the cockpit with a name and the school's PIN.</summary>
public sealed class FileReport(SquawkDesk desk, LedgerStore ledgers, Drafts drafts, Photos photos, CockpitPin pin, Badge badge, IDbContextFactory<RiggingDb> databases)
{
    /// <summary>Hidden fields that name pictures kept on an earlier try: a browser cannot be given a file back.</summary>
    public const string KeptPhotos = "keptPhotos", NewPhotos = "photos";

    /// <summary>Ends in the registration where the page was opened for one aircraft, so that a report begun on another one does not come up there.</summary>
    public static string DraftKey(string? registration) => registration is null ? "report" : $"report:{registration}";

    /// <param name="visitor">Nobody is signed in.</param>
    public async Task<IReadOnlyList<ReportableAircraft>> Show(bool visitor, CancellationToken ct = default)
    {
        if (!visitor && await badge.Visit(ct) is not null) return [];
        await using var db = await databases.CreateDbContextAsync(ct);
        var files = await db.Airframes.AsNoTracking().ToDictionaryAsync(row => (row.Id, row.Version), ct);
        var squawks = (await db.Squawks.AsNoTracking().Select(row => new { row.AircraftId, row.FlightStatus }).ToListAsync(ct)).ToLookup(row => row.AircraftId, row => row.FlightStatus);
        var aircraft = await db.Aircraft.AsNoTracking().OrderBy(row => row.Registration).ToListAsync(ct);
        return
        [
            .. aircraft.Select(row =>
            {
                var file = files.GetValueOrDefault((row.AirframeId, row.AirframeVersion));
                var airframe = file is null ? null : AirframeOnFile.Of(file.Id, file.Version, file.Json)?.Read();
                return new ReportableAircraft(row.Id, row.Registration, file?.Name ?? row.AirframeId, squawks[row.Id].DefaultIfEmpty(FlightStatus.MayFly).Max(),
                    airframe?.TanksHoldL(Mechanics.Contract.Side.Left) is > 0 and var left ? left : null,
                    airframe?.TanksHoldL(Mechanics.Contract.Side.Right) is > 0 and var right ? right : null);
            }),
        ];
    }

    /// <param name="lately">What the page showed of the one aircraft it was opened for.</param>
    public async Task<Filed> Run(TypedFields typed, IReadOnlyList<IFormFile> files, HttpContext http, string draftKey, IReadOnlyList<ReportableAircraft> fleet, Lately? lately, CancellationToken ct = default)
    {
        var me = Actor.PersonOf(http.User);
        var (visitor, refused) = me is null ? await pin.Admit(typed, http, ct) : (null, []);
        List<BrokenRule> wrong = [.. refused];
        var unkept = wrong.Count == 0 ? await TakePhotos(typed, files, ct) : [];
        var (report, errors) = ReportForm.Read(typed, fleet.ToDictionary(aircraft => aircraft.Registration), lately, await photos.Known(typed.All(KeptPhotos), ct));
        // A picture that cannot be kept holds no grounding up.
        if (report is not null && GroundingQuestions.Grounds(report)) report = AtOnce.Of(report, [.. report.Unread ?? [], .. unkept.Select(rule => rule.Sentence)]);
        else wrong.AddRange(unkept);
        wrong.InsertRange(0, errors);
        if (report is null || wrong.Count > 0) return new(null, wrong);

        var id = Guid.TryParse(typed["form"], out var sent) ? new SquawkId(sent) : SquawkId.Next();
        switch (me is not null ? await desk.File(id, report, ct) : await ledgers.FileUnconfirmed(visitor!, id, report, ct))
        {
            case Outcome.Appended:
                if (me is { } mine) await drafts.Drop(mine, draftKey, ct);
                return new(id, []);
            case Outcome.Refused rules:
                // The sentence says that sending it once more files another report: that one needs an id of its own.
                if (rules.Broken.Any(rule => rule.Code == "already-filed")) typed["form"] = SquawkId.Next().ToString();
                return new(null, rules.Broken);
            case var other:
                throw new InvalidOperationException($"Filing a report ended in {other.GetType().Name}.");
        }
    }

    /// <summary>Keeps what was sent and names it in the form, so that it need not be chosen again when something else was wrong.</summary>
    async Task<IReadOnlyList<BrokenRule>> TakePhotos(TypedFields typed, IReadOnlyList<IFormFile> files, CancellationToken ct)
    {
        if (files.Count == 0) return [];
        var before = typed.All(KeptPhotos);
        if (before.Count + files.Count > Photos.Most)
            return [new("too-many-photos", Gaps.Fill(Say.PicturesAtMostChooseOnes, before.Count + files.Count, Photos.Most), NewPhotos)];
        var (kept, refused) = await photos.Keep(files, NewPhotos, ct);
        typed.Set(KeptPhotos, [.. before.Concat(kept.Select(photo => photo.Sha256)).Distinct()]);
        return refused;
    }
}
