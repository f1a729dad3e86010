using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
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
            ? new Sheet(Say.MaintenanceRecordEntry, file.School.Name, Gaps.Fill(Texts.SquawkS, file.Number, file.Aircraft.Registration), file.HeadHash, printedAt, [.. new RecordSheet(file, round, work).Blocks()], stock)
            : null;

    /// <summary>The same on one small page, to be stuck into the logbook: the description, the data, the torque and the release with its signature. The full entry stays where it says.</summary>
    public static Sheet? Sticker(SquawkFile file, int? number, ZonedDateTime printedAt) =>
        Round(file.Ledger, number) is { State.WorkDone: { Fact: var work } } round
            ? new Sheet(Say.MaintenanceRecordEntry, file.School.Name, $"S-{file.Number} · {file.Aircraft.Registration}", file.HeadHash, printedAt, [.. new RecordSheet(file, round, work).OnASticker()], Stock.A6)
            : null;

    IEnumerable<Block> OnASticker()
    {
        if (state.Approval is null) yield return new Caution(Say.NotApprovedForReturnToService, Say.NotApproved);
        yield return new Paragraph(Gaps.Fill(Say.SerialHTotalTime, file.Aircraft.Registration, file.Aircraft.Serial, $"{work.CompletedOn:uuuu-MM-dd}", Words.Number(Corrected?.Fact.TotalTimeH ?? work.TotalTimeH, 1)), Strong: true);
        yield return new Paragraph(string.Join(' ', (IEnumerable<string>)
        [
            work.Description,
            .. state.Correction is { Data: var data } ? [Gaps.Fill(Say.ToSectionRevision, data.Manual, data.Section, data.Revision)] : Array.Empty<string>(),
            .. state.Torques.Select(torque => Gaps.Fill(Say.InlbWrenchCalibrationDue, torque.Fastener, InLb(torque.ReachedInLb), torque.WrenchCode, torque.CalibrationDue?.ToString("uuuu-MM-dd", null))),
            .. work.Parts.Select(part => $"{part.Quantity} × {part.Description}, {part.PartNumber}."),
            Gaps.Fill(Say.DisturbedSentence, Words.Disturbed(work)),
        ]));
        yield return new Paragraph(Gaps.Fill(Say.WorkByFullEntryIsInSquawk, signatures.Signer<WorkDone>(), state.Inspection is { Fact.Passed: true } ? Gaps.Fill(Say.InspectedBy, signatures.Signer<Inspected>()) : "", file.Number), Small: true);
        if (state.Approval is null) yield return new Signature(Say.ToBeSignedByCertifier, file.Facts.RuleSet.ReleaseWording, "", "", "");
        else foreach (var block in signatures.Of<Approved>(Texts.ApprovedForReturnToService, file.Facts.RuleSet.ReleaseWording)) yield return block;
    }

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
        .. signatures.Of<WorkDone>(Say.SignatureOfMechanic),
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
            yield return new Caution(Say.WorkDescribedHereIsNot, Say.NotApproved);
        else if (state.CheckFlight is null)
            yield return new Caution(Gaps.Fill(Say.NoPersonOtherThan, file.Facts.RuleSet.PassengerBarBasis), Say.ApprovedPassengersBarred);
    }

    IEnumerable<Block> Head()
    {
        yield return new Facts(
        [
            (Texts.Aircraft, Gaps.Fill(Say.Serial, file.Aircraft.Registration, file.Aircraft.AirframeName, file.Aircraft.Serial)),
            (Say.Squawk, Gaps.Fill(Say.SRoundReportedBy, file.Number, state.Round, file.When(round.Entries[0].At), file.Register.NameThenAndNow(round.Entries[0].By, round.Entries[0].At))),
            (Say.Complaint, state.Report!.Words),
            .. state.Correction is { Data: var data } ? [(Say.Data, Gaps.Fill(Say.SectionRevision, data.Manual, data.Section, data.Revision))] : (IEnumerable<(string, string)>)[],
            (Texts.WorkCompletedOn, work.CompletedOn.ToString("uuuu-MM-dd", null)),
            (Texts.TotalTimeInService, TotalTime()),
            (Say.ManHours, Words.Number(work.ManHours, 1)),
        ]);
    }

    /// <summary>The last correction of this work's total time, rounds later too; null when there is none.</summary>
    (TotalTimeCorrected Fact, Entry Entry)? Corrected
    {
        get
        {
            var since = file.Ledger.Entries.Where(entry => entry.Sequence > round.Entries.Last(signed => signed.Fact is WorkDone).Sequence).TakeWhile(entry => entry.Fact is not WorkDone);
            return since.LastOrDefault(entry => entry.Fact is TotalTimeCorrected) is { Fact: TotalTimeCorrected corrected } entry ? (corrected, entry) : null;
        }
    }

    string TotalTime() => Corrected is var (corrected, entry)
        ? Gaps.Fill(Say.TotalTimeCorrectedFrom, Words.Number(corrected.TotalTimeH, 1), Words.Number(work.TotalTimeH, 1), entry.Sequence, file.Register.Name(entry.By), file.When(entry.At), corrected.Reason)
        : $"{Words.Number(work.TotalTimeH, 1)} h";

    IEnumerable<Block> Done()
    {
        yield return new Heading(Gaps.Fill(Say.WhatWasDone, signatures.Mark<WorkDone>()));
        yield return new Paragraph(work.Description);
        yield return new Facts(
        [
            .. (state.Correction?.Moves ?? []).Select(move => (Say.Agreed, move.Instruction)),
            .. state.WorkStarted is { } started ? [(Say.Support, started.WingSupport)] : (IEnumerable<(string, string)>)[],
            .. (work.Movements ?? []).Select(measured => (Say.DirectionProvedBy, Words.Capital(Words.Movement(measured)))),
            .. Given(Say.DirectionProvedBy, work.DirectionProof),
            .. Given(Say.DiffersFromPlanBecause, work.DiffersBecause),
            .. Given(Say.ExpectedAsLeft, work is { PredictedDegPerS: { } expected, PredictedLowDegPerS: { } low, PredictedHighDegPerS: { } high } ? Gaps.Fill(Say.Estimate, Directions.Expected(expected, low, high)) : null),
            (Say.Disturbed, Words.Disturbed(work)),
            (Say.ClosedUp, Say.EverythingRemovedForAccessIsRefitted),
        ]);
    }

    IEnumerable<Block> Settings()
    {
        var (found, left) = (state.AsFound, work.AsLeft);
        yield return new Heading(Say.AsFoundAndAsLeft);
        if (found?.Bushings is { } bushings && (bushings != BushingAngles.None || left != BushingAngles.None))
        {
            (string Name, double? Found, double? Left)[] rows =
            [
                (Say.LeftWingFront, bushings.LeftFrontDeg, left.LeftFrontDeg),
                (Say.LeftWingRear, bushings.LeftRearDeg, left.LeftRearDeg),
                (Say.RightWingFront, bushings.RightFrontDeg, left.RightFrontDeg),
                (Say.RightWingRear, bushings.RightRearDeg, left.RightRearDeg),
            ];
            if (left == BushingAngles.None && !state.Plans(Controls.IsEccentric))
            {
                yield return new Table([new(Say.EccentricBushing, 1.6), new(Texts.AsFound, 2.8)], [.. rows.Where(row => row.Found is not null).Select(row => (IReadOnlyList<string>)[row.Name, Setting(row.Found)])]);
                yield return new Paragraph(Say.NoEccentricTouched);
            }
            else yield return new Table([new(Say.EccentricBushing, 1.6), new(Texts.AsFound, 1.4), new(Texts.AsLeft, 1.4)], [.. rows.Select(row => (IReadOnlyList<string>)[row.Name, Setting(row.Found), Setting(row.Left)])]);
            if (left != BushingAngles.None && file.Facts.Airframe?.Read() is { } airframe)
                foreach (var drawing in AdjusterDrawings.Draw(airframe, bushings, left)) yield return new Figure(drawing, 0.4);
        }
        if (Given(Say.OtherwiseAsFound, Otherwise(found?.Adjusters, found?.Other)).Concat(Given(Say.OtherwiseAsLeft, Otherwise(work.AdjustersAsLeft, work.OtherAsLeft))).ToList() is { Count: > 0 } others) yield return new Facts(others);
    }

    static string? Otherwise(IReadOnlyList<AdjusterSetting>? settings, string? other) => settings is { Count: > 0 }
        ? $"{Words.Capital(string.Join("; ", settings.Select(Words.Setting)))}. {other}".TrimEnd()
        : other;

    IEnumerable<Block> Torques()
    {
        foreach (var torque in state.Overtorqued.Concat(state.Torques))
        {
            yield return new Heading(Gaps.Fill(torque.IsAboveItsLimits() ? Say.TorqueAboveItsLimits : Say.Torque, torque.Fastener));
            yield return new Facts(
            [
                (Say.Wanted, Gaps.Fill(Say.ToInlbThreads, InLb(torque.TargetMinInLb), InLb(torque.TargetMaxInLb), torque.TargetSource, Words.Of(torque.Lubrication), Words.Of(torque.Turned))),
                (Say.RunOn, torque.TargetIncludesPrevailing ? Say.PrevailingTorqueIsIncludedInThatFigure : Gaps.Fill(Say.InlbMeasuredAdded, InLb(torque.RunOnInLb ?? 0))),
                (Say.Final, Gaps.Fill(Say.FromToInLb, InLb(torque.FinalMinInLb), InLb(torque.FinalMaxInLb))),
                (Texts.Wrench, Gaps.Fill(Say.CalibrationDueLeverIn, torque.WrenchCode, torque.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? Texts.NeverCalibrated, Words.Number(torque.LeverIn), torque.ExtensionIn == 0 ? Say.NoExtension : Gaps.Fill(Say.ExtensionInAt, Words.Number(torque.ExtensionIn), Words.Number(torque.ExtensionAngleDeg, 0)))),
                (Say.Reached, Gaps.Fill(Say.InlbAtFastenerWrenchShowing, InLb(torque.ReachedInLb), InLb(torque.SettingInLb))),
                .. torque.Nut is { } nut ? [(Say.Nut, Words.Capital(Words.Of(nut)))] : (IEnumerable<(string, string)>)[],
                .. torque.NoRunOnBecause is { } none ? [(Say.NoRunOn, none)] : (IEnumerable<(string, string)>)[],
                .. torque.OtherPartBecause is { } other ? [(Gaps.Fill(Say.FigureIsFor, Words.Part(torque.FigureFor ?? TurnedPart.Nut)), other)] : (IEnumerable<(string, string)>)[],
                .. torque.OutOfLimitsDone is { } done ? [(Say.DoneAboutIt, done)] : (IEnumerable<(string, string)>)[],
            ]);
        }
    }

    IEnumerable<Block> PartsAndResets()
    {
        yield return new Heading(Say.PartsAndDependentResets);
        yield return work.Parts.Count == 0
            ? new Paragraph(Say.NoPartsWereUsed)
            : new Table([new(Say.Quantity, 0.6), new(Say.Part, 2), new(Say.PartNumber, 1.4)], [.. work.Parts.Select(part => (IReadOnlyList<string>)[part.Quantity.ToString(System.Globalization.CultureInfo.InvariantCulture), part.Description, part.PartNumber])]);
        if (state.MeasuredAgain.Count > 0)
            yield return new Table([new(Say.MeasuredAgainAfterMove, 1)], [.. state.MeasuredAgain.Select(check => (IReadOnlyList<string>)[Words.Capital(Words.MeasuredAgain(check))])]);
        if (work.Resets.Count > 0)
            yield return new Table([new(Say.CheckedAgainAfterMove, 1.4), new(Say.Found, 1)], [.. work.Resets.Select(reset => (IReadOnlyList<string>)[reset.What, reset.Result])]);
    }

    IEnumerable<Block> Inspection()
    {
        if (state.Inspection is not { Fact: var seen }) yield break;
        yield return new Heading(Gaps.Fill(Say.IndependentInspection, seen.Passed ? Say.Passed : Say.FAILED, signatures.Mark<Inspected>()));
        yield return new Table([new(Say.Called, 1), new(Say.Surface, 1), new(Say.SeenToMove, 1), new(Say.MustMove, 1)],
            [.. seen.Observations.Select(o => (IReadOnlyList<string>)[o.Input, o.Surface, o.WrongWay ? Gaps.Fill(Say.WRONG, Words.Of(o.Seen)) : Words.Of(o.Seen), Words.Of(o.Expected)])]);
        yield return new Facts(
        [
            (Say.FullTravelAtEveryFlap, YesNo(seen.FullTravelAtEveryFlapSetting)),
            (Say.SecuredAndLocked, YesNo(seen.SecuredAndLocked)),
            (Say.NothingLeftBehind, YesNo(seen.NothingLeftBehind)),
            .. work.DiffersBecause is not null && seen.AcceptsDifference is { } accepts ? [(Say.DifferenceFromPlan, accepts ? Say.Accepted : Say.NotAccepted)] : (IEnumerable<(string, string)>)[],
            (Texts.Findings, seen.Findings),
            (Say.Basis, file.Facts.RuleSet.InspectionBasis),
        ]);
        foreach (var block in signatures.Of<Inspected>(Say.SignatureOfInspector)) yield return block;
    }

    IEnumerable<Block> Release()
    {
        yield return new Heading(Gaps.Fill(Say.ApprovalHeading, state.Approval is null ? "" : signatures.Mark<Approved>()));
        if (file.Facts.RuleSet.VerifyAgainstCurrentText) yield return new Paragraph(Say.RuleSetMarkedVerify, Strong: true);
        if (state.Approval is not { Fact: var approved })
        {
            yield return new Signature(Say.ToBeSignedByCertifier, file.Facts.RuleSet.ReleaseWording, "", "", "");
            yield break;
        }
        if (approved.ConclusiveBecause is { } because) yield return new Paragraph(Gaps.Fill(Say.GroundEvidenceThatHandlingCannot, because));
        foreach (var block in signatures.Of<Approved>(Say.SignatureOfCertifier, file.Facts.RuleSet.ReleaseWording)) yield return block;
    }

    IEnumerable<Block> Flight()
    {
        yield return new Heading(Gaps.Fill(Say.CheckFlight, state.CheckFlight is null ? "" : signatures.Mark<CheckFlown>()));
        if (state.CheckFlight is not { Fact: var flown })
        {
            yield return new Paragraph(Say.NotLogged);
            yield break;
        }
        yield return new Facts([(Texts.FlownOn, flown.FlownOn.ToString("uuuu-MM-dd", null)), (Say.Log, string.Join('\n', EntryStory.Of(flown).Lines.Select(line => line.Text)))]);
        foreach (var block in signatures.Of<CheckFlown>(Say.SignatureOfCheckPilot)) yield return block;
        if (file.Facts.Airframe is { } onFile)
            foreach (var chart in FlownPlots.Of(round, onFile)) yield return new Plotted(chart);
        if (state.Verdict is { } verdict) yield return new Paragraph(Gaps.Fill(Say.VerdictOnComplaint, Words.Of(verdict.Verdict), verdict.Explanation));
        if (round.Entries.LastOrDefault(entry => entry.Fact is Closed) is { Fact: Closed closed })
        {
            yield return new Paragraph(Gaps.Fill(Say.ComplaintClosed, closed.Statement));
            foreach (var block in signatures.Of<Closed>(Say.SignatureOfClosingInspector)) yield return block;
        }
    }

    static IEnumerable<(string, string)> Given(string label, string? text) => string.IsNullOrWhiteSpace(text) ? [] : [(label, text)];

    static string Setting(double? deg) => AdjusterDrawings.Setting(deg);

    static string InLb(double value) => Words.Number(value, 1);

    static string YesNo(bool yes) => yes ? Say.Yes : Say.NO;
}
