using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Paper;
using Rigging.Web.Plots;
using Rigging.Web.Story;
using Caution = Rigging.Web.Paper.Caution;
using Facts = Rigging.Web.Paper.Facts;
using Signature = Rigging.Web.Paper.Signature;

namespace Rigging.Web.SignOff;

/// <summary>The maintenance record entry of one round on paper: what a reader of the aircraft's records needs, every signature, and the texts as they were signed.</summary>
sealed class RecordSheet
{
    readonly SquawkFile file;
    readonly Ledger round;
    readonly SquawkState state;
    readonly WorkDone work;
    readonly RecordSignatures signatures;

    RecordSheet(SquawkFile file, Ledger round, WorkDone work) =>
        (this.file, this.round, state, this.work, signatures) = (file, round, round.State, work, new(file, round));

    /// <param name="number">The round, from 1; null for the last one in which work was signed.</param>
    /// <returns>Null when no work of that round is signed.</returns>
    public static Sheet? Of(SquawkFile file, int? number, Stock stock, ZonedDateTime printedAt) =>
        Round(file.Ledger, number) is { State.WorkDone: { Fact: var work } } round
            ? new Sheet("Maintenance record entry", file.School.Name, $"Squawk S-{file.Number} · {file.Aircraft.Registration}", file.HeadHash, printedAt, [.. new RecordSheet(file, round, work).Blocks()], stock)
            : null;

    /// <summary>The same on one small page, to be stuck into the logbook: the description, the data, the torque and the release with its signature. The full entry stays where it says.</summary>
    public static Sheet? Sticker(SquawkFile file, int? number, ZonedDateTime printedAt) =>
        Round(file.Ledger, number) is { State.WorkDone: { Fact: var work } } round
            ? new Sheet("Maintenance record entry", file.School.Name, $"S-{file.Number} · {file.Aircraft.Registration}", file.HeadHash, printedAt, [.. new RecordSheet(file, round, work).OnASticker()], Stock.A6)
            : null;

    IEnumerable<Block> OnASticker()
    {
        if (state.Approval is null) yield return new Caution("Not approved for return to service.", "Not approved");
        yield return new Paragraph($"{file.Aircraft.Registration}, serial {file.Aircraft.Serial}. {work.CompletedOn:uuuu-MM-dd}, {Words.Number(work.TotalTimeH, 1)} h total time.", Strong: true);
        yield return new Paragraph(string.Join(' ', (IEnumerable<string>)
        [
            work.Description,
            .. state.Correction is { Data: var data } ? [$"To {data.Manual}, section {data.Section}, revision {data.Revision}."] : Array.Empty<string>(),
            .. state.Torques.Select(torque => $"{torque.Fastener}: {InLb(torque.ReachedInLb)} in·lb, wrench {torque.WrenchCode}, calibration due {torque.CalibrationDue?.ToString("uuuu-MM-dd", null)}."),
            .. work.Parts.Select(part => $"{part.Quantity} × {part.Description}, {part.PartNumber}."),
            $"Disturbed: {string.Join("; ", work.Disturbed)}.",
        ]));
        yield return new Paragraph($"Work by {Signed(state.WorkDone!.Value.By)}{(state.Inspection is { Fact.Passed: true, By: var inspector } ? $", inspected by {Signed(inspector)}" : "")}. The full entry is in squawk S-{file.Number} of the school's ledger.", Small: true);
        if (state.Approval is null) yield return new Signature("To be signed by the certifier", file.Facts.RuleSet.ReleaseWording, "", "", "");
        else foreach (var block in signatures.Of<Approved>("Approved for return to service", file.Facts.RuleSet.ReleaseWording)) yield return block;
    }

    string Signed(Rigging.Squawks.People.PersonId person) => file.Register.Name(person);

    /// <summary>The ledger as it stood when a round ended.</summary>
    static Ledger? Round(Ledger ledger, int? number)
    {
        var ends = ledger.Entries.Where(entry => entry.Fact is RoundOpened).Select(entry => entry.Sequence - 1).Append(ledger.Length);
        var rounds = ends.Select(end => new Ledger(ledger.Id, ledger.Entries.Take(end))).ToList();
        return number is { } wanted ? rounds.ElementAtOrDefault(wanted - 1) : rounds.LastOrDefault(round => round.State.WorkDone is not null);
    }

    IEnumerable<Block> Blocks() =>
    [
        .. Standing(),
        .. Head(),
        .. Done(),
        .. Settings(),
        .. Torques(),
        .. PartsAndResets(),
        .. signatures.Of<WorkDone>("Signature of the mechanic"),
        .. Inspection(),
        .. Release(),
        .. Flight(),
        .. signatures.Late(),
        .. signatures.Changes(),
        .. signatures.Annex(),
    ];

    IEnumerable<Block> Standing()
    {
        if (state.Approval is null)
            yield return new Caution("The work described here is not approved for return to service. Nobody flies the aircraft on this paper.", "Not approved");
        else if (state.CheckFlight is null)
            yield return new Caution($"No person other than crew is carried until the check flight is flown and logged ({file.Facts.RuleSet.PassengerBarBasis}).", "Approved, passengers barred");
    }

    IEnumerable<Block> Head()
    {
        yield return new Facts(
        [
            ("Aircraft", $"{file.Aircraft.Registration}, {file.Aircraft.AirframeName}, serial {file.Aircraft.Serial}"),
            ("Squawk", $"S-{file.Number}, round {state.Round}; reported {file.When(round.Entries[0].At)} by {file.Register.Name(round.Entries[0].By)}"),
            ("Complaint", state.Report!.Words),
            .. state.Correction is { Data: var data } ? [("Data", $"{data.Manual}, section {data.Section}, revision {data.Revision}")] : (IEnumerable<(string, string)>)[],
            ("Work completed on", work.CompletedOn.ToString("uuuu-MM-dd", null)),
            ("Total time in service", $"{Words.Number(work.TotalTimeH, 1)} h"),
            ("Man hours", Words.Number(work.ManHours, 1)),
        ]);
    }

    IEnumerable<Block> Done()
    {
        yield return new Heading($"What was done{signatures.Mark<WorkDone>()}");
        yield return new Paragraph(work.Description);
        yield return new Facts(
        [
            .. (state.Correction?.Moves ?? []).Select(move => ("Agreed", move.Instruction)),
            .. state.WorkStarted is { } started ? [("Wing support", started.WingSupport)] : (IEnumerable<(string, string)>)[],
            .. Given("Direction proved by", work.DirectionProof),
            .. Given("Differs from the plan, because", work.DiffersBecause),
            ("Disturbed", string.Join("; ", work.Disturbed)),
            ("Closed up", "Everything removed for access is refitted; no temporary hardware is left; nothing is left loose."),
        ]);
    }

    IEnumerable<Block> Settings()
    {
        var (found, left) = (state.AsFound, work.AsLeft);
        yield return new Heading("As found and as left");
        if (found?.Bushings is { } bushings && (bushings != None || left != None))
        {
            yield return new Table([new("Eccentric bushing", 1.6), new("As found", 1.4), new("As left", 1.4)],
            [
                ["left wing, front", Setting(bushings.LeftFrontDeg), Setting(left.LeftFrontDeg)],
                ["left wing, rear", Setting(bushings.LeftRearDeg), Setting(left.LeftRearDeg)],
                ["right wing, front", Setting(bushings.RightFrontDeg), Setting(left.RightFrontDeg)],
                ["right wing, rear", Setting(bushings.RightRearDeg), Setting(left.RightRearDeg)],
            ]);
            if (file.Facts.Airframe?.Read() is { } airframe)
                foreach (var drawing in EccentricDrawings.Draw(airframe, bushings, left)) yield return new Figure(drawing, 0.6);
        }
        if (Given("Otherwise as found", found?.Other).Concat(Given("Otherwise as left", work.OtherAsLeft)).ToList() is { Count: > 0 } others) yield return new Facts(others);
    }

    IEnumerable<Block> Torques()
    {
        foreach (var torque in state.Torques)
        {
            yield return new Heading($"Torque: {torque.Fastener}");
            yield return new Facts(
            [
                ("Wanted", $"{InLb(torque.TargetMinInLb)} to {InLb(torque.TargetMaxInLb)} in·lb, {torque.TargetSource}; {Words.Of(torque.Lubrication)} threads, {Words.Of(torque.Turned)}"),
                ("Run-on", torque.TargetIncludesPrevailing ? "prevailing torque is included in that figure" : $"{InLb(torque.RunOnInLb ?? 0)} in·lb measured, added"),
                ("Final", $"{InLb(torque.FinalMinInLb)} to {InLb(torque.FinalMaxInLb)} in·lb"),
                ("Wrench", $"{torque.WrenchCode}, calibration due {torque.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? "never calibrated"}; lever {Words.Number(torque.LeverIn)} in, {(torque.ExtensionIn == 0 ? "no extension" : $"extension {Words.Number(torque.ExtensionIn)} in at {Words.Number(torque.ExtensionAngleDeg, 0)}°")}"),
                ("Reached", $"{InLb(torque.ReachedInLb)} in·lb at the fastener, the wrench showing {InLb(torque.SettingInLb)}; torque stripe applied"),
            ]);
        }
    }

    IEnumerable<Block> PartsAndResets()
    {
        yield return new Heading("Parts and dependent resets");
        yield return work.Parts.Count == 0
            ? new Paragraph("No parts were used.")
            : new Table([new("Quantity", 0.6), new("Part", 2), new("Part number", 1.4)], [.. work.Parts.Select(part => (IReadOnlyList<string>)[part.Quantity.ToString(System.Globalization.CultureInfo.InvariantCulture), part.Description, part.PartNumber])]);
        if (work.Resets.Count > 0)
            yield return new Table([new("Checked again after the move", 1.4), new("Found", 1)], [.. work.Resets.Select(reset => (IReadOnlyList<string>)[reset.What, reset.Result])]);
    }

    IEnumerable<Block> Inspection()
    {
        if (state.Inspection is not { Fact: var seen }) yield break;
        yield return new Heading($"Independent inspection: {(seen.Passed ? "passed" : "FAILED")}{signatures.Mark<Inspected>()}");
        yield return new Table([new("Called", 1), new("Surface", 1), new("Seen to move", 1), new("Must move", 1)],
            [.. seen.Observations.Select(o => (IReadOnlyList<string>)[o.Input, o.Surface, o.WrongWay ? $"{Words.Of(o.Seen)}: WRONG" : Words.Of(o.Seen), Words.Of(o.Expected)])]);
        yield return new Facts(
        [
            ("Full travel at every flap setting", YesNo(seen.FullTravelAtEveryFlapSetting)),
            ("Secured and locked", YesNo(seen.SecuredAndLocked)),
            ("Nothing left behind", YesNo(seen.NothingLeftBehind)),
            .. seen.AcceptsDifference is { } accepts ? [("Difference from the plan", accepts ? "accepted" : "not accepted")] : (IEnumerable<(string, string)>)[],
            ("Findings", seen.Findings),
            ("Basis", file.Facts.RuleSet.InspectionBasis),
        ]);
        foreach (var block in signatures.Of<Inspected>("Signature of the inspector")) yield return block;
    }

    IEnumerable<Block> Release()
    {
        yield return new Heading($"Approval for return to service{(state.Approval is null ? "" : signatures.Mark<Approved>())}");
        if (file.Facts.RuleSet.VerifyAgainstCurrentText) yield return new Paragraph("Rule set marked: verify against the current text.", Strong: true);
        if (state.Approval is not { Fact: var approved })
        {
            yield return new Signature("To be signed by the certifier", file.Facts.RuleSet.ReleaseWording, "", "", "");
            yield break;
        }
        if (approved.ConclusiveBecause is { } because) yield return new Paragraph($"Ground evidence that handling cannot have changed: {because}");
        foreach (var block in signatures.Of<Approved>("Signature of the certifier", file.Facts.RuleSet.ReleaseWording)) yield return block;
    }

    IEnumerable<Block> Flight()
    {
        yield return new Heading($"Check flight{(state.CheckFlight is null ? "" : signatures.Mark<CheckFlown>())}");
        if (state.CheckFlight is not { Fact: var flown })
        {
            yield return new Paragraph("Not logged.");
            yield break;
        }
        yield return new Facts([("Flown on", flown.FlownOn.ToString("uuuu-MM-dd", null)), ("Log", string.Join('\n', EntryStory.Of(flown).Lines.Select(line => line.Text)))]);
        foreach (var block in signatures.Of<CheckFlown>("Signature of the check pilot")) yield return block;
        if (file.Facts.Airframe is { } onFile)
            foreach (var chart in FlownPlots.Of(round, onFile)) yield return new Plotted(chart);
        if (state.Verdict is { } verdict) yield return new Paragraph($"Verdict on the complaint: {Words.Of(verdict.Verdict)}. {verdict.Explanation}");
        if (round.Entries.LastOrDefault(entry => entry.Fact is Closed) is { Fact: Closed closed })
        {
            yield return new Paragraph($"Complaint closed: {closed.Statement}");
            foreach (var block in signatures.Of<Closed>("Signature of the closing inspector")) yield return block;
        }
    }

    static readonly BushingAngles None = new(null, null, null, null);

    static IEnumerable<(string, string)> Given(string label, string? text) => string.IsNullOrWhiteSpace(text) ? [] : [(label, text)];

    static string Setting(double? deg) => EccentricDrawings.Setting(deg);

    static string InLb(double value) => Words.Number(value, 1);

    static string YesNo(bool yes) => yes ? "yes" : "NO";
}
