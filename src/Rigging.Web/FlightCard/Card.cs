using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Manoeuvre = Rigging.Mechanics.Contract.Manoeuvre;

namespace Rigging.Web.FlightCard;

/// <summary>What is flown next for a squawk, and what must be known before: one card for the kneeboard and the phone.</summary>
/// <param name="IsCheck">A check flight after work; otherwise an evaluation flight before it.</param>
/// <param name="NotNow">Why it may not be flown now; empty when it may.</param>
/// <param name="InDoubt">Damage is in doubt: the card says that and nothing else.</param>
/// <param name="Why">Where the points come from.</param>
/// <param name="Disturbed">Exactly what was disturbed; empty when nothing was.</param>
/// <param name="Look">Which way each control must move.</param>
sealed record Card(
    SquawkFile File, Airframe? Airframe, bool IsCheck, bool InDoubt, IReadOnlyList<string> NotNow, string Why, IReadOnlyList<CardPoint> Points,
    IReadOnlyList<string> Disturbed, IReadOnlyList<string> Look, IReadOnlyList<string> Cautions, IReadOnlyList<string> Limits)
{
    public const int Repeats = 3;
    public const int MostPoints = 4;
    public const double StopAtDeg = 30;

    /// <summary>What the pilot sees coming and a stopwatch catches well; beyond it the motion is no longer that of small banks.</summary>
    public const double MarkAtDeg = 15;

    public string Title => IsCheck ? Say.CheckFlightCard : Say.EvaluationFlightCard;

    public static Card Of(SquawkFile file)
    {
        var isCheck = file.State.Stage is Stage.ApprovedPassengersBarred or Stage.CheckFlightLogged;
        var airframe = file.Facts.Airframe?.Read();
        IReadOnlyList<string> notNow = [.. (isCheck ? file.WhatBlocks<CheckFlown>() : file.WhatBlocks<EvaluationFlown>()).Where(rule => rule.Code != "no-authority").Select(rule => rule.Sentence).Distinct()];
        var assessed = isCheck || airframe is null || file.Facts.DamageInDoubt(file.State) ? null : Assess(file);
        if (file.Facts.DamageInDoubt(file.State) || assessed is { DamageInDoubt: true })
            return new(file, airframe, isCheck, true, [WhyInDoubt(file) ?? assessed!.Refusals.First(refusal => refusal.Code == Refusal.DamageNotRuledOut).Sentence], Say.DamageIsNotRuledOut, [], [], [], [], []);
        var (points, why) = airframe is null ? ([], Say.ThisAircraftHasNoAirframe)
            : isCheck ? (ForCheck(airframe), Say.AfterWorkPointItIsJudged)
            : ForEvaluation(assessed, airframe);
        var work = file.Ledger.Entries.Select(entry => entry.Fact).OfType<WorkDone>().LastOrDefault();
        var plan = file.Ledger.Entries.Select(entry => entry.Fact).TakeWhile(fact => fact != work).OfType<CorrectionAgreed>().LastOrDefault();
        return new(file, airframe, isCheck, false, notNow, why, points, work?.Disturbed ?? [], work is null ? [] : ControlSense.Sentences(work, plan),
            [.. CautionsFor(file, isCheck)], [.. LimitsOf(file, airframe)]);
    }

    /// <summary>Null where only the assessment says so.</summary>
    static string? WhyInDoubt(SquawkFile file) => file.State.DamageSuspected ? StatusReason.Of(file.State)
        : file.Facts.OtherSquawks.FirstOrDefault(other => other.DamageSuspected) is { } elsewhere ? Gaps.Fill(Say.OtherSquawkAsksForInspection, $"S-{elsewhere.Number}") : null;

    /// <summary>Null where the evidence does not fit the airframe file.</summary>
    static AssessmentResponse? Assess(SquawkFile file) =>
        ContractReader.ReadRequest(EvidenceRequest.Of(file.Ledger, file.Facts.Airframe!).Json).Faults.Count > 0 ? null : LedgerAssessment.Of(file.Ledger, file.Facts.Airframe!).Response;

    static (IReadOnlyList<CardPoint>, string) ForEvaluation(AssessmentResponse? assessed, Airframe airframe)
    {
        if (assessed is null) return (Standing(airframe), Say.EvidenceOnRecordDoesNot);
        CardPoint[] points = [.. assessed.NextTests.Select(test => CardPoint.Of(test.Test, airframe)).OfType<CardPoint>().Take(MostPoints)];
        return points.Length > 0 ? (points, Say.PointsThatWouldTellMost) : (Standing(airframe), Say.AssessmentAsksForChecksOnGround);
    }

    // The three that separate wings, rudder and aileron float (the trade's order of diagnosis, step 5).
    static IReadOnlyList<CardPoint> Standing(Airframe airframe) =>
        [At(airframe, Manoeuvre.ReleaseWheel), At(airframe, Manoeuvre.HoldLevel), At(airframe, Manoeuvre.ReleaseAll)];

    static IReadOnlyList<CardPoint> ForCheck(Airframe airframe) =>
    [
        At(airframe, Manoeuvre.ReleaseWheel),
        .. airframe.SpeedsKt is not { } limits ? [] : (ReadOnlySpan<CardPoint>)
        [
            At(airframe, Manoeuvre.ReleaseWheel) with { CasKt = Math.Min(5 * Math.Ceiling(1.5 * limits.StallClean / 5), airframe.Reference.CasKt) },
            At(airframe, Manoeuvre.ReleaseWheel) with { CasKt = Math.Max(5 * Math.Floor(0.97 * limits.MaxStructuralCruise / 5), airframe.Reference.CasKt) },
        ],
        At(airframe, Manoeuvre.HoldLevel),
    ];

    static CardPoint At(Airframe airframe, Manoeuvre manoeuvre) =>
        new(manoeuvre, airframe.Reference.CasKt, airframe.Reference.PressureAltitudeFt, airframe.Reference.PowerPercent, 0, BothSides: false);

    // Common practice, no source, but for the first three lines after work: 14 CFR 91.407(b) and what experimental first flights teach about reversed controls.
    static IEnumerable<string> CautionsFor(SquawkFile file, bool isCheck)
    {
        if (isCheck)
        {
            yield return Say.NoPassengersNoStudents;
            yield return Say.ControlMayActReversed;
        }
        yield return Say.DaySmoothAirClear;
        yield return Say.LookOutBeforeEvery;
        yield return Say.SecondPersonTimesAndWrites;
        yield return Gaps.Fill(Say.AtOfBankStopTakeWheel, $"{StopAtDeg:0}");
        yield return Gaps.Fill(Say.EachTimedPointTimes, Repeats, Repeats);
        if (file.State.Call is { Limits: { Length: > 0 } limits }) yield return Gaps.Fill(Say.WithinLimitsOfCall, limits);
    }

    static IEnumerable<string> LimitsOf(SquawkFile file, Airframe? airframe)
    {
        if (airframe?.SpeedsKt is not { } speeds)
        {
            yield return Say.NoSpeedLimitsAreOnFile;
            yield break;
        }
        yield return Gaps.Fill(Say.StallCleanFlapsManoeuvring, Kt(speeds.StallClean), Kt(speeds.FlapLimit), Kt(speeds.Manoeuvring), Kt(speeds.MaxStructuralCruise), Kt(speeds.NeverExceed), file.Facts.Airframe!.Id, file.Facts.Airframe.Version);
    }

    static string Kt(double speed) => $"{Words.Number(speed, 0)}{Directions.Space}kt";
}
