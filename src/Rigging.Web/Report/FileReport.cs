using Microsoft.EntityFrameworkCore;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;

namespace Rigging.Web.Report;

public sealed record ReportableAircraft(AircraftId Id, string Registration, string AirframeName, FlightStatus May);

/// <summary>What came of sending the form: a number, or what was wrong.</summary>
public sealed record Filed(int? Number, IReadOnlyList<BrokenRule> Errors);

/// <summary>The pilot files a report.</summary>
public sealed class FileReport(SquawkDesk desk, Drafts drafts, Actor actor, Badge badge, IDbContextFactory<RiggingDb> databases)
{
    /// <summary>Ends in the registration where the page was opened for one aircraft, so that a report begun on another one does not come up there.</summary>
    public static string DraftKey(string? registration) => registration is null ? "report" : $"report:{registration}";

    public async Task<IReadOnlyList<ReportableAircraft>> Show(CancellationToken ct = default)
    {
        if (await badge.Visit(ct) is not null) return [];
        await using var db = await databases.CreateDbContextAsync(ct);
        var names = await db.Airframes.AsNoTracking().ToDictionaryAsync(row => (row.Id, row.Version), row => row.Name, ct);
        var squawks = (await db.Squawks.AsNoTracking().Select(row => new { row.AircraftId, row.FlightStatus }).ToListAsync(ct)).ToLookup(row => row.AircraftId, row => row.FlightStatus);
        var aircraft = await db.Aircraft.AsNoTracking().OrderBy(row => row.Registration).ToListAsync(ct);
        return [.. aircraft.Select(row => new ReportableAircraft(row.Id, row.Registration, names.GetValueOrDefault((row.AirframeId, row.AirframeVersion), row.AirframeId), squawks[row.Id].DefaultIfEmpty(FlightStatus.MayFly).Max()))];
    }

    public async Task<Filed> Run(TypedFields typed, string draftKey, IReadOnlyList<ReportableAircraft> fleet, CancellationToken ct = default)
    {
        var (report, errors) = ReportForm.Read(typed, fleet.ToDictionary(aircraft => aircraft.Registration, aircraft => aircraft.Id));
        if (report is null) return new(null, errors);
        var id = Guid.TryParse(typed["form"], out var sent) ? new SquawkId(sent) : SquawkId.Next();
        switch (await desk.File(id, report, ct))
        {
            case Outcome.Appended filed:
                await drafts.Drop(await actor.Me(), draftKey, ct);
                return new(filed.Ledger.State.Report!.Number, []);
            case Outcome.Refused refused:
                // The sentence says that sending it once more files another report: that one needs an id of its own.
                if (refused.Broken.Any(rule => rule.Code == "already-filed")) typed["form"] = SquawkId.Next().ToString();
                return new(null, refused.Broken);
            case var other:
                throw new InvalidOperationException($"Filing a report ended in {other.GetType().Name}.");
        }
    }
}
