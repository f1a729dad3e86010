using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Web.Desk;
using Check = Rigging.Squawks.Entries.Check;

namespace Rigging.Web.Records;

/// <summary>One thing that rests on a tool or on a manual's revision.</summary>
/// <param name="At">When it was done.</param>
public sealed record TouchedLine(int Squawk, string Registration, string Stage, int Sequence, Instant At, string What, string Details)
{
    /// <summary>The same with the trade's words in place of the ledger's.</summary>
    public TouchedLine InWords() => this with
    {
        Stage = Wire.TryRead<Stage>(Stage, out var stage) ? Words.Of(stage) : Stage,
        What = Wire.TryRead<Check>(What, out var check) ? Words.Of(check) : What,
    };
}

/// <summary>Everything that rests on one thing, newest first.</summary>
public sealed record TouchedBy(SchoolOnFile School, IReadOnlyList<TouchedLine> Lines);

/// <summary>What has to be looked at again: after a wrench was found out of tolerance, or a manual's revision was superseded.</summary>
public sealed class Touched(IDbContextFactory<RiggingDb> databases, RecordsRoom records)
{
    /// <summary>Every fastener torqued and every check measured with this tool, newest first; null when there is no such tool, or whoever asks does not keep records.</summary>
    public async Task<TouchedBy?> ByTool(string code, CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        if (await db.Tools.Where(tool => tool.Code == code).Select(tool => (ToolId?)tool.Id).SingleOrDefaultAsync(ct) is not { } id) return null;
        var tool = id.Value.ToString();
        return await Found(db, db.Database.SqlQuery<TouchedLine>($"""
            select s.number as "Squawk", a.registration as "Registration", s.stage as "Stage", e.sequence as "Sequence", coalesce(e.payload_json->'fact'->>'happenedAt', e.payload_json->>'at')::timestamptz as "At",
                coalesce(e.payload_json->'fact'->>'fastener', e.payload_json->'fact'->>'check', e.kind) as "What",
                coalesce('reached ' || (e.payload_json->'fact'->>'reachedInLb') || ' in·lb, calibration due ' || (e.payload_json->'fact'->>'calibrationDue'), e.payload_json->'fact'->>'finding', '') as "Details"
            from ledger_entry e join squawk s on s.id = e.squawk_id join aircraft a on a.id = s.aircraft_id
            where e.payload_json->'fact'->>'wrench' = {tool} or e.payload_json->'fact'->>'tool' = {tool}
            order by "At" desc, s.number, e.sequence
            """), ct);
    }

    /// <summary>Every correction that was agreed on approved data, newest first; one manual's when it is named. Null when whoever asks does not keep records.</summary>
    public async Task<TouchedBy?> ByManual(string? manual, string? revision, CancellationToken ct = default)
    {
        if (await records.Refused(ct) is not null) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        return await Found(db, db.Database.SqlQuery<TouchedLine>($"""
            select s.number as "Squawk", a.registration as "Registration", s.stage as "Stage", e.sequence as "Sequence", (e.payload_json->>'at')::timestamptz as "At",
                (e.payload_json->'fact'->'data'->>'manual') || ', revision ' || (e.payload_json->'fact'->'data'->>'revision') as "What",
                e.payload_json->'fact'->'data'->>'section' as "Details"
            from ledger_entry e join squawk s on s.id = e.squawk_id join aircraft a on a.id = s.aircraft_id
            where e.kind = 'correction'
                and ({manual}::text is null or e.payload_json->'fact'->'data'->>'manual' = {manual})
                and ({revision}::text is null or e.payload_json->'fact'->'data'->>'revision' = {revision})
            order by "At" desc, s.number, e.sequence
            """), ct);
    }

    static async Task<TouchedBy> Found(RiggingDb db, IQueryable<TouchedLine> lines, CancellationToken ct) =>
        new(await Registers.School(db, ct), [.. (await lines.ToListAsync(ct)).Select(line => line.InWords())]);
}
