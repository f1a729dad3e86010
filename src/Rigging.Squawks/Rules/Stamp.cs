using System.Text.Encodings.Web;
using System.Text.Json;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Rules;

/// <summary>Fills in what the program knows better than the page: the wrench's calibration, what a surface must do, the record entry.</summary>
static class Stamp
{
    static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static Fact With(Facts facts, Ledger ledger, Fact fact) => fact switch
    {
        TorqueApplied torque when facts.Tools.TryGetValue(torque.Wrench, out var wrench) =>
            torque with { WrenchCode = wrench.Code, CalibrationDue = wrench.CalibrationDue },
        GroundChecked check => FileLimits.Beside(check.Tool is { } id && facts.Tools.TryGetValue(id, out var tool)
            ? check with { ToolCode = tool.Code, ToolCalibrationDue = tool.CalibrationDue } : check, ledger.State, facts),
        TotalTimeCorrected corrected => corrected with { WasH = facts.TotalTime?.Hours },
        // A reason of no words is none: nothing above a signature ends in "because".
        WorkDone done => done with
        {
            DiffersBecause = string.IsNullOrWhiteSpace(done.DiffersBecause) ? null : done.DiffersBecause,
            Movements = done.Movements is { } movements ? [.. movements.Select(measured => DirectionRules.Stamped(measured, done, ledger.State, facts))] : null,
        },
        Inspected inspected when ledger.State.WorkDone is { } work => inspected with
        {
            Observations = [.. Expected(inspected, ledger.State)],
            AcceptsDifference = work.Fact.DiffersBecause is null ? null : inspected.AcceptsDifference,
        },
        // Written one way, so that the words above the signature stand for these bytes and no others.
        CheckFlown flown when ReadingWords.Parse(flown.TestPoints) is { } points => flown with { TestPoints = points.ToJsonString(Plain) },
        Approved approved when ledger.State.WorkDone is { } work => approved with
        {
            CompletedOn = work.Fact.CompletedOn,
            TotalTimeH = ledger.State.TotalTimeH ?? work.Fact.TotalTimeH,
            ApprovedOn = facts.Today,
            RecordEntry = MaintenanceRecord.Compose(ledger, facts.RuleSet, Certificates.For(approved, facts), facts.Who.Id),
        },
        VerdictGiven verdict => verdict with { WorseThanBefore = Evidence.WorseThanBefore.Is(ledger, verdict) },
        _ => fact,
    };

    // The page may not say what right looks like: what was called and seen comes from the inspector, what is expected from the table.
    static IEnumerable<Observation> Expected(Inspected inspected, SquawkState state) =>
        state.ControlsToSee.Select(asked =>
            asked with { Seen = inspected.Observations.FirstOrDefault(o => o.Surface == asked.Surface && o.Input == asked.Input)?.Seen ?? Seen.NotRecorded });
}
