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

    internal static string For(Fact fact, Ledger ledger, Facts facts) => string.Join('\n', Statements(fact, ledger, facts).Select(line => line.Text));

    internal static IReadOnlyList<Statement> Statements(Fact fact, Ledger ledger, Facts facts)
    {
        var certificate = Certificates.For(Correcting.Act(fact, ledger), facts);
        return
        [
            $"Squawk S-{ledger.State.Report?.Number}, round {ledger.State.Round}.",
            .. fact is Noted note ? Correction(note, ledger, facts) : Body(fact, ledger, facts),
            .. Late(fact, facts),
            "",
            certificate is null
                ? $"{Intent(fact)} {Token(facts.Who.Id)}."
                : $"{Intent(fact)} {Token(facts.Who.Id)}, {facts.RuleSet.WordsFor(certificate.Kind)}, certificate {Token(certificate.Id)}.",
        ];
    }

    static IEnumerable<Statement> Late(Fact fact, Facts facts) =>
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

    static IEnumerable<Statement> Body(Fact fact, Ledger ledger, Facts facts) => (fact, ledger.State) switch
    {
        (GroundChecked check, var state) => DamageInspection(check, state, facts),
        (WorkDone done, var state) => MaintenanceRecord.Work(done, state),
        (Inspected inspected, var state) => Inspection(inspected, state),
        (Approved approved, var state) =>
        [
            .. MaintenanceRecord.Statements(state, facts.RuleSet, Certificates.For(approved, facts), facts.Who.Id),
            approved.MayHaveChangedHandling
                ? "This work may have changed how the aircraft flies."
                : new Statement("This work cannot have changed how the aircraft flies.", new Claim(Question.PassengersBarred, false)),
            .. Given("Ground evidence: ", approved.ConclusiveBecause),
        ],
        (CheckFlown flown, var state) => CheckFlight(flown, state),
        (Closed closed, var state) =>
        [
            $"Verdict on the check flight: {(state.Verdict is { } verdict ? Words.Of(verdict.Verdict) + ". " + verdict.Explanation : "none.")}",
            closed.Statement,
            .. LimitsLifted(state),
        ],
        (NoFaultFound none, var state) =>
        [
            new("No fault found.", new Claim(Question.FaultFound, false)),
            none.Evaluation,
            .. NotClear(ledger),
            "Everything opened, disconnected or removed for access is refitted, inspected and entered.",
            .. LimitsLifted(state),
        ],
        (WithinLimits within, var state) =>
            ["Within limits, to be monitored.", within.Evaluation, $"Limit and source: {within.LimitAndSource}", .. NotClear(ledger), .. LimitsLifted(state)],
        _ => [],
    };

    static IEnumerable<Statement> Correction(Noted note, Ledger ledger, Facts facts)
    {
        if (note.Corrects is { } sequence && sequence >= 1 && sequence <= ledger.Length && ledger.Entries[sequence - 1] is var entry)
            yield return $"Correction of entry {sequence}, {EntryCodec.KindOf(entry.Fact).Replace('-', ' ')}, signed by {Token(entry.By)} on {facts.DayOf(entry.At):uuuu-MM-dd}.";
        yield return $"Correction: {note.Text}";
    }

    static IEnumerable<Statement> Given(string label, string? text) => string.IsNullOrWhiteSpace(text) ? [] : [label + text];

    // What was looked at and not clear, and never looked at again: whoever signs that nothing is wrong reads it.
    static IEnumerable<Statement> NotClear(Ledger ledger) =>
        from looked in ledger.Entries.Select(entry => entry.Fact).OfType<GroundChecked>().Where(check => check.Clear is not null).GroupBy(check => check.Check)
        let last = looked.Last()
        where last.Clear == false
        select new Statement($"On record as not clear: {Words.Of(last.Check)}: {last.Finding}", new Claim(Question.FaultFound, true));

    // The end of a squawk is the end of its limits: whoever signs it reads so.
    static IEnumerable<Statement> LimitsLifted(SquawkState state) =>
        state is { FlightStatus: FlightStatus.Limits, Call.Limits: { } limits } ? [$"This lifts the limits it flies with: {limits}"] : [];

    static IEnumerable<Statement> DamageInspection(GroundChecked check, SquawkState state, Facts facts)
    {
        // A call that grounds it is not answered by a damage inspection, and neither is another squawk.
        var cleared = state with { DamageQuestions = [], DamageClear = true };
        string[] still =
        [
            .. cleared.FlightStatus == FlightStatus.Grounded ? ["the call of this squawk"] : Array.Empty<string>(),
            .. facts.OtherSquawks.Where(other => other.Allows == FlightStatus.Grounded).Select(other => $"S-{other.Number}"),
        ];
        yield return still.Length == 0
            ? "Damage inspection: clear. This lifts the grounding."
            : $"Damage inspection: clear. This answers the suspected damage of this squawk; the aircraft stays grounded by {string.Join(" and ", still)}.";
        if (state.RedFlagged) yield return $"Reported: {string.Join(", ", state.DamageQuestions)}.";
        if (state.DamageClear == false) yield return "An earlier damage inspection was not clear.";
        if (check.ToolCode is { } tool) yield return $"Tool: {tool}, calibration due {check.ToolCalibrationDue:uuuu-MM-dd}.";
        yield return $"Findings: {check.Finding}";
    }

    static IEnumerable<Statement> Inspection(Inspected inspected, SquawkState state)
    {
        yield return new($"Independent inspection: {(inspected.Passed ? "passed" : "FAILED")}.",
            inspected.Passed ? [new Claim(Question.InspectionPassed, true), new Claim(Question.DifferenceAccepted, true)] : []);
        if (state.WorkDone is { } work) yield return $"Disturbed: {Words.Disturbed(work.Fact)}.";
        foreach (var o in inspected.Observations)
            yield return new(
                o.Seen == Seen.NotRecorded
                    ? $"{o.Input}: {o.Surface} not looked at (must move {Words.Of(o.Expected)})."
                    : $"{o.Input}: {o.Surface} seen to move {Words.Of(o.Seen)} (must move {Words.Of(o.Expected)}){(o.WrongWay ? " — WRONG." : ".")}",
                Against(o.Seen == o.Expected));
        yield return new(
            $"Full travel at every flap setting: {YesNo(inspected.FullTravelAtEveryFlapSetting)}. Secured and locked: {YesNo(inspected.SecuredAndLocked)}. Nothing left behind: {YesNo(inspected.NothingLeftBehind)}.",
            Against(inspected is { FullTravelAtEveryFlapSetting: true, SecuredAndLocked: true, NothingLeftBehind: true }));
        if (state.WorkDone is { Fact: { DiffersBecause: { } reason } signed })
        {
            yield return new($"As left differs from the plan ({reason}): {(inspected.AcceptsDifference == true ? "accepted" : "not accepted")}.",
                new Claim(Question.DifferenceAccepted, inspected.AcceptsDifference == true));
            foreach (var difference in AsLeft.Differences(state, signed)) yield return difference;
            if (state.Expected is var (expected, low, high)) yield return $"Expected as left (estimate): {Directions.Expected(expected, low, high)}.";
        }
        yield return $"Findings: {inspected.Findings}";
    }

    // What is as it must be passes nothing by itself; what is not fails it.
    static IReadOnlyList<Claim> Against(bool right) => right ? [] : [new Claim(Question.InspectionPassed, false)];

    static IEnumerable<Statement> CheckFlight(CheckFlown flown, SquawkState state)
    {
        yield return new($"Check flight on {flown.FlownOn:uuuu-MM-dd}, {Words.Number(flown.DurationH, 1)} h, no passengers, no students{(flown.SecondCrewDuty is { } duty ? $"; second crew member: {duty}" : ", alone")}.",
            Aboard(flown.SecondCrewDuty is null ? 1 : 2));
        if (state.WorkDone is { } work) yield return $"I read what was disturbed ({Words.Disturbed(work.Fact)}) and checked those controls before flight.";
        yield return flown.FuelMeasured ? "Fuel on each side was measured." : "Fuel on each side was not measured.";
        if (flown.Trims is { } trims) yield return $"Trims and autopilot: {Words.Trims(trims)}.";
        var seats = TestPoints.SeatsFilled(flown.TestPoints);
        foreach (var (point, filled) in ReadingWords.Points(flown.TestPoints).Select((point, i) => (point, seats.ElementAtOrDefault(i))))
            yield return new($"Readings: {point}", filled is null ? [] : [Aboard(filled.Count)]);
        yield return flown.StallsFlown ? "The stall was flown and compared with the baseline." : NotFlown("Stall not flown", flown.StallsNotFlownBecause);
        yield return flown.EveryFlapSetting ? "Each flap setting was flown." : NotFlown("Not every flap setting was flown", flown.FlapsNotFlownBecause);
        yield return flown.Satisfactory ? "Operational check satisfactory." : "Operational check NOT satisfactory.";
        yield return $"Remarks: {flown.Remarks}";
    }

    static Claim Aboard(int people) => new(Question.PeopleAboard, $"{people}");

    static string NotFlown(string what, string? because) => string.IsNullOrWhiteSpace(because) ? $"{what}: not needed after this work." : $"{what}, because: {because}";

    static string YesNo(bool yes) => yes ? "yes" : "no";

    [GeneratedRegex(@"\[(?<what>person|certificate):(?<id>[0-9a-f-]{36})\]")]
    private static partial Regex Tokens();
}
