using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Rules;

/// <summary>Fills in what the program knows better than the page: the wrench's calibration, what a surface must do, the record entry.</summary>
static class Stamp
{
    public static Fact With(Facts facts, Ledger ledger, Fact fact) => fact switch
    {
        TorqueApplied torque when facts.Tools.TryGetValue(torque.Wrench, out var wrench) =>
            torque with { WrenchCode = wrench.Code, CalibrationDue = wrench.CalibrationDue },
        GroundChecked { Tool: { } id } check when facts.Tools.TryGetValue(id, out var tool) =>
            check with { ToolCode = tool.Code, ToolCalibrationDue = tool.CalibrationDue },
        Inspected inspected when ledger.State.WorkDone is not null => inspected with { Observations = [.. Expected(inspected, ledger.State)] },
        Approved approved when ledger.State.WorkDone is { } work => approved with
        {
            CompletedOn = work.Fact.CompletedOn,
            TotalTimeH = work.Fact.TotalTimeH,
            ApprovedOn = facts.Today,
            RecordEntry = MaintenanceRecord.Compose(ledger, facts.RuleSet, Certificates.For(approved, facts), facts.Who.Id),
        },
        _ => fact,
    };

    // The page may not say what right looks like: what was called and seen comes from the inspector, what is expected from the table.
    static IEnumerable<Observation> Expected(Inspected inspected, SquawkState state) =>
        state.ControlsToSee.Select(asked =>
            asked with { Seen = inspected.Observations.FirstOrDefault(o => o.Surface == asked.Surface && o.Input == asked.Input)?.Seen ?? Seen.NotRecorded });
}
