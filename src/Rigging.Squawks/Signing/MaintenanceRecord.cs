using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.RuleSets;

namespace Rigging.Squawks.Signing;

/// <summary>The maintenance record entry, composed from the ledger: what was done, to which data, by whom, when, and the release.</summary>
public static class MaintenanceRecord
{
    public static string Compose(Ledger ledger, RuleSet rules, Certificate? certificate, PersonId certifier) =>
        string.Join('\n', Statements(ledger.State, rules, certificate, certifier).Select(line => line.Text));

    internal static IEnumerable<Statement> Statements(SquawkState state, RuleSet rules, Certificate? certificate, PersonId certifier)
    {
        if (state.WorkDone is not { } work) yield break;
        yield return $"Complaint: {state.Report!.Words}";
        foreach (var line in Work(work.Fact, state)) yield return line;
        yield return $"Work done by {SignedText.Token(work.By)}.";
        if (state.Inspection is { } inspection)
        {
            yield return new($"Independently inspected by {SignedText.Token(inspection.By)}: {(inspection.Fact.Passed ? "passed" : "failed")}. {inspection.Fact.Findings}",
                new Claim(Question.InspectionPassed, inspection.Fact.Passed));
            yield return rules.InspectionBasis;
        }
        yield return new(rules.ReleaseWording, new Claim(Question.InspectionPassed, true));
        yield return new($"Passengers barred until the check flight is logged ({rules.PassengerBarBasis}).", new Claim(Question.PassengersBarred, true));
        if (rules.VerifyAgainstCurrentText) yield return "Rule set marked: verify against the current text.";
        yield return certificate is null
            ? $"Approved by {SignedText.Token(certifier)}."
            : $"Approved by {SignedText.Token(certifier)}, {rules.WordsFor(certificate.Kind)}, certificate {SignedText.Token(certificate.Id)}.";
    }

    /// <summary>The work in lines, without who did it: the same words above the mechanic's signature and in the record.</summary>
    internal static IEnumerable<Statement> Work(WorkDone done, SquawkState state)
    {
        yield return $"Work: {done.Description}";
        if (state.Correction is { } correction)
        {
            yield return $"Data: {correction.Data.Manual}, section {correction.Data.Section}, revision {correction.Data.Revision}.";
            foreach (var move in correction.Moves) yield return new($"Agreed: {move.Instruction}", move.Control.IsEccentric() ? [new Claim(Question.EccentricTouched, true)] : []);
        }
        if (state.WorkStarted is { } started) yield return $"Support: {started.WingSupport}";
        if (state.AsFound is { } found) yield return $"As found: {Stands(found.Bushings, found.Adjusters, found.Other, "")}";
        yield return new($"As left: {Stands(done.AsLeft, done.AdjustersAsLeft, done.OtherAsLeft, "no eccentric touched.")}",
            done.AsLeft == BushingAngles.None && done.AdjustersAsLeft is null or [] ? [new Claim(Question.EccentricTouched, false)] : []);
        if (done.DiffersBecause is { } reason) yield return $"As left differs from the plan, because: {reason}";
        if (done is { PredictedDegPerS: { } expected, PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high })
            yield return $"Expected as left (estimate): {Directions.Expected(expected, low, high)}.";
        foreach (var measured in done.Movements ?? []) yield return $"Direction measured: {Words.Movement(measured)}";
        if (!string.IsNullOrWhiteSpace(done.DirectionProof)) yield return $"Direction proved: {done.DirectionProof}";
        foreach (var torque in state.Overtorqued)
            yield return $"Torque above its limits: {torque.Fastener}, reached {Words.Number(torque.ReachedInLb, 1)} in·lb, at most {Words.Number(torque.FinalMaxInLb, 1)} with wrench {torque.WrenchCode}. Done about it: {torque.OutOfLimitsDone}";
        foreach (var torque in state.Torques) yield return Torque(torque);
        foreach (var part in done.Parts) yield return $"Part: {part.Quantity} × {part.Description}, {part.PartNumber}.";
        foreach (var check in state.MeasuredAgain) yield return $"Measured again: {Words.MeasuredAgain(check)}";
        foreach (var reset in done.Resets) yield return $"Checked again: {reset.What}: {reset.Result}.";
        yield return $"Disturbed: {Words.Disturbed(done)}.";
        yield return "Everything removed is refitted; no temporary hardware is left; nothing is left loose.";
        yield return $"Man hours {Words.Number(done.ManHours, 1)}. Total time {TotalTime(done, state)}. Completed {done.CompletedOn:uuuu-MM-dd}.";
    }

    // The mechanic signs the figure as read; the certifier, and whoever reads the record, has the one that counts, and why.
    static string TotalTime(WorkDone done, SquawkState state) =>
        ReferenceEquals(done, state.WorkDone?.Fact) && state.TotalTimeCorrected is var (corrected, entry)
            ? $"{Words.Number(corrected.TotalTimeH, 1)} h, corrected by {SignedText.Token(entry.By)} from the {Words.Number(done.TotalTimeH, 1)} h signed with the work, because: {corrected.Reason}"
            : $"{Words.Number(done.TotalTimeH, 1)} h{(done.TotalTimeAgainH is null ? "" : ", read twice")}";

    static string Torque(TorqueApplied torque) =>
        $"Torque: {torque.Fastener}, {torque.TargetSource}, {Words.Number(torque.TargetMinInLb, 1)} to {Words.Number(torque.TargetMaxInLb, 1)} in·lb {(torque.TargetIncludesPrevailing ? "including prevailing torque" : $"plus run-on {Words.Number(torque.RunOnInLb ?? 0, 1)}")}, " +
        $"{(torque.Lubrication == Lubrication.Dry ? "dry" : "lubricated")}, {(torque.Turned == TurnedPart.Nut ? "nut" : "bolt head")} turned; reached {Words.Number(torque.ReachedInLb, 1)} in·lb with wrench {torque.WrenchCode} set to {Words.Number(torque.SettingInLb, 1)}, calibration due {torque.CalibrationDue:uuuu-MM-dd}; stripe applied." +
        (torque.Nut is { } nut ? $" {Words.Capital(Words.Of(nut))}." : "") +
        (torque.NoRunOnBecause is { } none ? $" No run-on torque, because: {none}" : "") +
        (torque.OtherPartBecause is { } other ? $" The figure is for the {Words.Part(torque.FigureFor ?? TurnedPart.Nut)}; the other was turned, because: {other}" : "");

    static string Stands(BushingAngles b, IReadOnlyList<AdjusterSetting>? counted, string? other, string nothing)
    {
        var settings = string.Join("; ", (counted ?? []).Select(Words.Setting));
        string[] told =
        [
            b != BushingAngles.None
                ? $"left eccentric front {Words.Degrees(b.LeftFrontDeg)}, rear {Words.Degrees(b.LeftRearDeg)}; right eccentric front {Words.Degrees(b.RightFrontDeg)}, rear {Words.Degrees(b.RightRearDeg)} (trailing edge down positive)."
                : settings == "" ? nothing : "",
            settings == "" ? "" : $"{Words.Capital(settings)}.",
            other ?? "",
        ];
        return string.Join(' ', told.Where(part => !string.IsNullOrWhiteSpace(part)));
    }
}
