using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.RuleSets;
using Rigging.Storage.School;
using Rigging.Storage.Tools;

namespace Rigging.Storage.Ledgers;

/// <summary>Reads what the rules rest on from the registers, in the caller's transaction.</summary>
static class FactReader
{
    // Exact by definition: 1 lbf = 4.4482216152605 N, 1 in = 0.0254 m.
    const double NewtonsPerPoundForce = 4.4482216152605;
    const double NewtonMetresPerInchPound = NewtonsPerPoundForce * 0.0254;

    /// <summary>Null when the person is not in the register.</summary>
    /// <param name="squawk">The squawk asked about; null when it is yet to be opened.</param>
    public static async Task<Facts?> Read(
        RiggingDb db, InstallationRow installation, AircraftId aircraft, SquawkId? squawk, PersonId who, Instant now, CancellationToken ct)
    {
        return await PersonReader.Read(db, who, ct) is { } person ? await Read(db, installation, aircraft, squawk, person, now, ct) : null;
    }

    public static async Task<Facts> Read(
        RiggingDb db, InstallationRow installation, AircraftId aircraft, SquawkId? squawk, Person person, Instant now, CancellationToken ct)
    {
        var tools = await db.Tools.AsNoTracking().ToListAsync(ct);
        var others = await db.Squawks.AsNoTracking()
            .Where(row => row.AircraftId == aircraft && Stages.Open.Contains(row.Stage))
            .OrderBy(row => row.Number)
            .Select(row => new OtherSquawk(row.Id, row.Number, row.FlightStatus))
            .ToListAsync(ct);
        // Of those that ground it only the ledger says whether damage is in doubt.
        for (var i = 0; i < others.Count; i++)
            if (others[i] is { Allows: FlightStatus.Grounded } grounds && grounds.Id != squawk)
                others[i] = grounds with { DamageSuspected = (await LedgerStore.Open(db, grounds.Id, ct)).State.DamageSuspected };
        var onFile = await db.Aircraft.AsNoTracking()
            .Where(row => row.Id == aircraft)
            .Join(db.Airframes, row => new { Id = row.AirframeId, Version = row.AirframeVersion }, airframe => new { airframe.Id, airframe.Version },
                (row, airframe) => new { row.TotalTimeTenths, row.TotalTimeOn, row.RiggedForLoad, airframe.Id, airframe.Version, airframe.Json })
            .SingleOrDefaultAsync(ct);
        return new(
            now,
            DateTimeZoneProviders.Tzdb[installation.TimeZone],
            person,
            RuleSet.Shipped[installation.RuleSet],
            tools.Select(ToTool).ToDictionary(tool => tool.Id),
            [.. others.Where(other => other.Id != squawk)],
            onFile is null ? null : AirframeOnFile.Of(onFile.Id, onFile.Version, onFile.Json, onFile.RiggedForLoad),
            onFile is null ? null : new(onFile.TotalTimeTenths / 10.0, onFile.TotalTimeOn));
    }

    static Tool ToTool(ToolRow row)
    {
        var kind = KindOf(row.Kind);
        // A range in a unit that such a tool is not read in is no range.
        double? perUnit = (row.RangeUnit, Tool.UnitOf(kind)) switch
        {
            ("lbf.in", "in·lb") => 1,
            ("lbf.ft", "in·lb") => 12,
            ("N.m", "in·lb") => 1 / NewtonMetresPerInchPound,
            ("N", "N") => 1,
            ("lbf", "N") => NewtonsPerPoundForce,
            ("deg", "°") => 1,
            ("mm", "mm") => 1,
            _ => null,
        };
        return new(row.Id, row.Code, row.Description, row.CalibrationDue, row.RangeMin * perUnit, row.FullScale * perUnit, row.LeverLengthIn, kind) { Scale = ScaleOf(kind, row) };
    }

    static ToolScale? ScaleOf(ToolKind kind, ToolRow row)
    {
        MovementUnit? unit = (Tool.UnitOf(kind), row.RangeUnit) switch
        {
            ("°", _) or (null, "deg") => MovementUnit.Degree,
            ("mm", _) or (null, "mm") => MovementUnit.Millimetre,
            (null, "in") => MovementUnit.Inch,
            _ => null,
        };
        return unit is { } of && row.Resolution is { } step ? new(of, step) : null;
    }

    /// <summary>The register's own word for it; a word that this program does not know is another kind of tool.</summary>
    static ToolKind KindOf(string word) =>
        Enum.GetValues<ToolKind>().FirstOrDefault(kind => JsonNamingPolicy.KebabCaseLower.ConvertName(kind.ToString()) == word, ToolKind.Other);
}
