using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Fleet;
using Rigging.Storage.Ledgers;
using Rigging.Storage.School;
using Rigging.Web.Desk;

namespace Rigging.Web.Fleet;

/// <summary>Reads the fleet from the projections, and the ledgers where those do not say enough.</summary>
public sealed class Ramp(IDbContextFactory<RiggingDb> databases, LedgerStore ledgers, Actor actor, IClock clock)
{
    public async Task<RampView> Show(CancellationToken ct = default)
    {
        var me = await actor.Me();
        await using var db = await databases.CreateDbContextAsync(ct);
        var names = await AirframeNames(db, ct);
        var squawks = await db.Squawks.AsNoTracking().Where(row => Stages.Open.Contains(row.Stage)).ToListAsync(ct);
        var aircraft = await db.Aircraft.AsNoTracking().OrderBy(row => row.Registration).ToListAsync(ct);
        if (await PersonReader.Read(db, me, ct) is not { } person) throw new InvalidOperationException(Say.NobodyIsSignedIn);
        if (person.Visit is { } visit)
        {
            squawks.RemoveAll(row => row.Id != visit.Squawk);
            aircraft.RemoveAll(row => squawks.All(squawk => squawk.AircraftId != row.Id));
        }
        List<OpenSquawk> open = [];
        foreach (var squawk in squawks.OrderByDescending(squawk => squawk.FlightStatus).ThenBy(squawk => squawk.Number)) open.Add(await Tell(squawk, person, ct));
        return new(
            await Registers.School(db, ct),
            [.. aircraft.Select(row => new Strip(row.Registration, names(row.AirframeId, row.AirframeVersion), row.TotalTimeTenths / 10.0, [.. open.Where(squawk => squawk.Aircraft == row.Id)]))],
            await Unread(db, me, ct));
    }

    /// <summary>Null when the fleet has no aircraft of that registration.</summary>
    public async Task<AircraftHistory?> History(string registration, CancellationToken ct = default)
    {
        var me = await actor.Me();
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await PersonReader.Read(db, me, ct) is not { Visit: null }) return null;
        if (await db.Aircraft.AsNoTracking().SingleOrDefaultAsync(row => row.Registration == registration, ct) is not { } row) return null;
        var squawks = await db.Squawks.AsNoTracking().Where(squawk => squawk.AircraftId == row.Id).OrderByDescending(squawk => squawk.Number).ToListAsync(ct);
        var school = await Registers.School(db, ct);
        List<Ledger> told = [];
        foreach (var squawk in squawks)
            if (await ledgers.Load(squawk.Id, ct) is { } ledger) told.Add(ledger);
        var file = await db.Airframes.AsNoTracking().SingleAsync(airframe => airframe.Id == row.AirframeId && airframe.Version == row.AirframeVersion, ct);
        var airframe = AirframeOnFile.Of(file.Id, file.Version, file.Json, row.RiggedForLoad)?.Read();
        var flew = TendencyHistory.Of(told, school.Zone, airframe?.Limits?.AcceptableRollTendencyDegPerS);
        return new(row.Registration, row.Serial, row.AirframeId, row.AirframeVersion, file.Name, row.TotalTimeTenths / 10.0,
            squawks.Select(squawk => squawk.FlightStatus).DefaultIfEmpty(FlightStatus.MayFly).Max(),
            school, airframe is null ? null : await RiggedForOf(db, row, airframe, ct),
            [.. squawks.Select(squawk => new PastSquawk(squawk.Number, squawk.Stage, squawk.Round, squawk.Summary, squawk.OpenedAt, squawk.UpdatedAt))],
            [.. told.Where(ledger => ledger.State.Stage?.IsOpen() == false).SelectMany(ledger => ledger.State.StripesToSee.Select(seen => new StripeToSee(ledger.State.Report!.Number, seen.Torque.Fastener, TorquedAt(ledger, seen))))],
            flew?.Chart, flew is { Latest: var latest } && airframe is not null ? new Equivalents(new(airframe)).Says(latest) : []);
    }

    static Instant TorquedAt(Ledger ledger, (int Sequence, TorqueApplied Torque) seen) => ledger.Entries[seen.Sequence - 1].Moment();

    static async Task<RiggedFor> RiggedForOf(RiggingDb db, AircraftRow row, Airframe airframe, CancellationToken ct)
    {
        var by = row.RiggedForChosenBy is { } chooser ? await db.People.AsNoTracking().Where(person => person.Id == chooser).Select(person => person.Name).SingleOrDefaultAsync(ct) : null;
        return new(Directions.Load(airframe.Reference.Load), by, row.RiggedForReason, new Equivalents(new(airframe)).AtCommonLoads(0));
    }

    /// <summary>The latest version where none is named; null when there is none on record.</summary>
    public async Task<AirframeSheet?> Airframe(string id, int? version, CancellationToken ct = default)
    {
        await using var db = await databases.CreateDbContextAsync(ct);
        return await db.Airframes.AsNoTracking().Where(row => row.Id == id && (version == null || row.Version == version)).OrderByDescending(row => row.Version).FirstOrDefaultAsync(ct) is { } row
            && AirframeOnFile.Of(row.Id, row.Version, row.Json) is { } onFile
            ? AirframeSheet.Of(onFile.Read(), row.Version)
            : null;
    }

    /// <summary>Marks this person's notices about these squawks as read; those of others stay as they are.</summary>
    public async Task MarkRead(IReadOnlyCollection<int> squawks, CancellationToken ct = default)
    {
        var me = await actor.Me();
        var now = clock.GetCurrentInstant();
        await using var db = await databases.CreateDbContextAsync(ct);
        var ids = await db.Squawks.Where(squawk => squawks.Contains(squawk.Number)).Select(squawk => squawk.Id).ToListAsync(ct);
        await db.Notices.Where(notice => notice.PersonId == me && notice.ReadAt == null && ids.Contains(notice.SquawkId))
            .ExecuteUpdateAsync(set => set.SetProperty(notice => notice.ReadAt, now), ct);
    }

    /// <summary>What only the ledger and the rules can say: the limits of a call, and whether the next act is really open to this person, who may have done the work to be inspected.</summary>
    async Task<OpenSquawk> Tell(SquawkRow row, Person me, CancellationToken ct)
    {
        var mine = row.NextAuthorities.Any(me.May);
        string? limits = null;
        if ((mine || row.FlightStatus == FlightStatus.Limits) && await ledgers.Look(row.Id, me.Id, ct) is { } seen)
        {
            limits = seen.Ledger.State is { FlightStatus: FlightStatus.Limits, Call.Limits: { } said } ? said : null;
            mine = mine && NextAct.Of(seen.Ledger.State) is { } next && Squawk.WhatBlocks(next.Kind, seen.Ledger, seen.Facts).Count == 0;
        }
        return new(row.Number, row.AircraftId, row.Stage, row.FlightStatus, row.Summary, limits, row.NextAct, row.NextAuthorities, mine);
    }

    static async Task<Func<string, int, string>> AirframeNames(RiggingDb db, CancellationToken ct)
    {
        var rows = await db.Airframes.AsNoTracking().Select(row => new { row.Id, row.Version, row.Name }).ToListAsync(ct);
        var names = rows.ToDictionary(row => (row.Id, row.Version), row => row.Name);
        return (id, version) => names.GetValueOrDefault((id, version), id);
    }

    static async Task<IReadOnlyList<NoticeOnRamp>> Unread(RiggingDb db, PersonId me, CancellationToken ct)
    {
        var unread = await db.Notices.AsNoTracking().Where(notice => notice.PersonId == me && notice.ReadAt == null)
            .Join(db.Squawks, notice => notice.SquawkId, squawk => squawk.Id, (notice, squawk) => new { notice, squawk.Number })
            .OrderByDescending(row => row.notice.CreatedAt)
            .ToListAsync(ct);
        return [.. unread.DistinctBy(row => row.Number).Select(row => new NoticeOnRamp(row.Number, row.notice.Subject, row.notice.Body, row.notice.CreatedAt))];
    }
}
