using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Signing;

/// <summary>The exact text above a signature. People and certificates stand in it as tokens, so that the stored bytes hold no names.</summary>
public static partial class SignedText
{
    public static string Token(PersonId person) => $"[person:{person}]";

    public static string Token(CertificateId certificate) => $"[certificate:{certificate}]";

    public static string Sha256(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    /// <summary>Tokens replaced by what the register says today.</summary>
    public static string Render(string text, Func<PersonId, string> name, Func<CertificateId, string> number) =>
        Tokens().Replace(text, match => match.Groups["what"].Value == "person"
            ? name(new(Guid.Parse(match.Groups["id"].Value)))
            : number(new(Guid.Parse(match.Groups["id"].Value))));

    internal static string For(Fact fact, Ledger ledger, Facts facts)
    {
        List<string> lines = [$"Squawk S-{ledger.State.Report?.Number}, round {ledger.State.Round}.", .. fact is Noted note ? Correction(note, ledger, facts) : Body(fact, ledger.State), .. Late(fact, facts)];
        var certificate = Certificates.For(Correcting.Act(fact, ledger), facts);
        lines.Add("");
        lines.Add(certificate is null
            ? $"{Intent(fact)} {Token(facts.Who.Id)}."
            : $"{Intent(fact)} {Token(facts.Who.Id)}, {facts.RuleSet.WordsFor(certificate.Kind)}, certificate {Token(certificate.Id)}.");
        return string.Join('\n', lines);
    }

    static IEnumerable<string> Late(Fact fact, Facts facts) =>
        fact is IMayComeLate { HappenedAt: { } happened } ? [$"A late entry: it happened {happened.InZone(facts.Zone).ToString("uuuu-MM-dd HH:mm", null)} {facts.Zone.Id}."] : [];

    static string Intent(Fact fact) => fact switch
    {
        GroundChecked => "I inspected the aircraft for damage and find it clear:",
        WorkDone => "I did this work as described:",
        Inspected => "I inspected this work and took no part in it:",
        Approved => "I approve the work described for return to service:",
        CheckFlown => "I flew this check flight as logged:",
        Closed => "I close this complaint:",
        Noted => "I correct that entry so:",
        _ => "This is my evaluation:",
    };

    static IEnumerable<string> Body(Fact fact, SquawkState state) => fact switch
    {
        GroundChecked check => DamageInspection(check, state),
        WorkDone done => MaintenanceRecord.Work(done, state),
        Inspected inspected => Inspection(inspected, state),
        Approved approved =>
        [
            .. approved.RecordEntry.Split('\n'),
            approved.MayHaveChangedHandling ? "This work may have changed how the aircraft flies." : "This work cannot have changed how the aircraft flies.",
            .. string.IsNullOrWhiteSpace(approved.ConclusiveBecause) ? [] : (string[])[$"Ground evidence: {approved.ConclusiveBecause}"],
        ],
        CheckFlown flown => CheckFlight(flown, state),
        Closed closed =>
        [
            $"Verdict on the check flight: {(state.Verdict is { } verdict ? Words.Of(verdict.Verdict) + ". " + verdict.Explanation : "none.")}",
            closed.Statement,
            .. LimitsLifted(state),
        ],
        NoFaultFound none => ["No fault found.", none.Evaluation, "Everything opened, disconnected or removed for access is refitted, inspected and entered.", .. LimitsLifted(state)],
        WithinLimits within => ["Within limits, to be monitored.", within.Evaluation, $"Limit and source: {within.LimitAndSource}", .. LimitsLifted(state)],
        _ => [],
    };

    static IEnumerable<string> Correction(Noted note, Ledger ledger, Facts facts)
    {
        if (note.Corrects is { } sequence && sequence >= 1 && sequence <= ledger.Length && ledger.Entries[sequence - 1] is var entry)
            yield return $"Correction of entry {sequence}, {EntryCodec.KindOf(entry.Fact).Replace('-', ' ')}, signed by {Token(entry.By)} on {facts.DayOf(entry.At):uuuu-MM-dd}.";
        yield return $"Correction: {note.Text}";
    }

    // The end of a squawk is the end of its limits: whoever signs it reads so.
    static IEnumerable<string> LimitsLifted(SquawkState state) =>
        state is { FlightStatus: FlightStatus.Limits, Call.Limits: { } limits } ? [$"This lifts the limits it flies with: {limits}"] : [];

    static IEnumerable<string> DamageInspection(GroundChecked check, SquawkState state)
    {
        yield return "Damage inspection: clear. This lifts the grounding.";
        if (state.Report is { RedFlags: { Count: > 0 } flags }) yield return $"Reported: {string.Join(", ", flags.Select(Words.Of))}.";
        if (state.DamageClear == false) yield return "An earlier damage inspection was not clear.";
        if (check.ToolCode is { } tool) yield return $"Tool: {tool}, calibration due {check.ToolCalibrationDue:uuuu-MM-dd}.";
        yield return $"Findings: {check.Finding}";
    }

    static IEnumerable<string> Inspection(Inspected inspected, SquawkState state)
    {
        yield return $"Independent inspection: {(inspected.Passed ? "passed" : "FAILED")}.";
        if (state.WorkDone is { } work) yield return $"Disturbed: {Words.Disturbed(work.Fact)}.";
        foreach (var o in inspected.Observations)
            yield return o.Seen == Seen.NotRecorded
                ? $"{o.Input}: {o.Surface} not looked at (must move {Words.Of(o.Expected)})."
                : $"{o.Input}: {o.Surface} seen to move {Words.Of(o.Seen)} (must move {Words.Of(o.Expected)}){(o.WrongWay ? " — WRONG." : ".")}";
        yield return $"Full travel at every flap setting: {YesNo(inspected.FullTravelAtEveryFlapSetting)}. Secured and locked: {YesNo(inspected.SecuredAndLocked)}. Nothing left behind: {YesNo(inspected.NothingLeftBehind)}.";
        if (state.WorkDone is { Fact: { DiffersBecause: { } reason } signed })
        {
            yield return $"As left differs from the plan ({reason}): {(inspected.AcceptsDifference == true ? "accepted" : "not accepted")}.";
            foreach (var difference in AsLeft.Differences(state, signed)) yield return difference;
            if (state.Expected is var (expected, low, high)) yield return $"Expected as left (estimate): {Directions.Expected(expected, low, high)}.";
        }
        yield return $"Findings: {inspected.Findings}";
    }

    static IEnumerable<string> CheckFlight(CheckFlown flown, SquawkState state)
    {
        yield return $"Check flight on {flown.FlownOn:uuuu-MM-dd}, {Words.Number(flown.DurationH, 1)} h, no passengers, no students{(flown.SecondCrewDuty is { } duty ? $"; second crew member: {duty}" : ", alone")}.";
        if (state.WorkDone is { } work) yield return $"I read what was disturbed ({Words.Disturbed(work.Fact)}) and checked those controls before flight.";
        yield return flown.FuelMeasured ? "Fuel on each side was measured." : "Fuel on each side was not measured.";
        if (flown.Trims is { } trims) yield return $"Trims and autopilot: {Words.Trims(trims)}.";
        yield return flown.StallsFlown ? "The stall was flown and compared with the baseline." : $"Stall not flown, because: {flown.StallsNotFlownBecause}";
        yield return flown.EveryFlapSetting ? "Each flap setting was flown." : $"Not every flap setting was flown, because: {flown.FlapsNotFlownBecause}";
        yield return flown.Satisfactory ? "Operational check satisfactory." : "Operational check NOT satisfactory.";
        yield return $"Remarks: {flown.Remarks}";
        yield return $"Readings: sha-256 {Sha256(flown.TestPoints)}";
    }

    static string YesNo(bool yes) => yes ? "yes" : "no";

    [GeneratedRegex(@"\[(?<what>person|certificate):(?<id>[0-9a-f-]{36})\]")]
    private static partial Regex Tokens();
}
