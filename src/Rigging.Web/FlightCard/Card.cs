using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Manoeuvre = Rigging.Mechanics.Contract.Manoeuvre;

namespace Rigging.Web.FlightCard;

/// <summary>What is flown next for a squawk, and what must be known before: one card for the kneeboard and the phone.</summary>
/// <param name="IsCheck">A check flight after work; otherwise an evaluation flight before it.</param>
/// <param name="NotNow">Why it may not be flown now; empty when it may.</param>
/// <param name="Why">Where the points come from.</param>
/// <param name="Disturbed">Exactly what was disturbed; empty when nothing was.</param>
/// <param name="Look">Which way each control must move.</param>
sealed record Card(
    SquawkFile File, Airframe? Airframe, bool IsCheck, IReadOnlyList<string> NotNow, string Why, IReadOnlyList<CardPoint> Points,
    IReadOnlyList<string> Disturbed, IReadOnlyList<string> Look, IReadOnlyList<string> Cautions, IReadOnlyList<string> Limits)
{
    public const int Repeats = 3;
    public const int MostPoints = 4;
    public const double StopAtDeg = 30;

    /// <summary>What the pilot sees coming and a stopwatch catches well; beyond it the motion is no longer that of small banks.</summary>
    public const double MarkAtDeg = 15;

    public string Title => IsCheck ? "Check flight card" : "Evaluation flight card";

    public static Card Of(SquawkFile file)
    {
        var isCheck = file.State.Stage is Stage.ApprovedPassengersBarred or Stage.CheckFlightLogged;
        var airframe = file.Facts.Airframe?.Read();
        var (points, why) = airframe is null ? ([], "This aircraft has no airframe data on file, so no points can be named. The maintenance office can enter it.")
            : isCheck ? (ForCheck(airframe), "After work: the point it is judged at, slower and faster, and the ball with the feet off.")
            : ForEvaluation(file, airframe);
        var disturbed = file.Ledger.Entries.Select(entry => entry.Fact).OfType<WorkDone>().LastOrDefault()?.Disturbed ?? [];
        return new(file, airframe, isCheck, [.. (isCheck ? file.WhatBlocks<CheckFlown>() : file.WhatBlocks<EvaluationFlown>()).Where(rule => rule.Code != "no-authority").Select(rule => rule.Sentence).Distinct()],
            why, points, disturbed, disturbed.Count == 0 ? [] : ControlSense.Sentences(disturbed), [.. CautionsFor(file, isCheck)], [.. LimitsOf(file, airframe)]);
    }

    static (IReadOnlyList<CardPoint>, string) ForEvaluation(SquawkFile file, Airframe airframe)
    {
        if (ContractReader.ReadRequest(EvidenceRequest.Of(file.Ledger, file.Facts.Airframe!).Json).Faults.Count > 0)
            return (Standing(airframe), "The evidence on record does not fit the airframe file, so these are the standing points.");
        var tests = LedgerAssessment.Of(file.Ledger, file.Facts.Airframe!).Response.NextTests.Select(test => test.Test).ToList();
        CardPoint[] points = [.. tests.Select(test => CardPoint.Of(test, airframe)).OfType<CardPoint>().Take(MostPoints)];
        if (points.Length > 0) return (points, "The points that would tell most, by the assessment of what is on record, best first.");
        return tests.FirstOrDefault() == "ground-check:damage-inspection"
            ? ([], "Damage is not ruled out: nothing is flown. The damage inspection comes first.")
            : (Standing(airframe), "The assessment asks for checks on the ground before anything is flown; these are the standing points.");
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
            yield return "No passengers, no students. Alone, or with one crew member who has a named duty.";
            yield return "A control may act reversed, heavy or not at all on the first lift-off: be ready, stay within gliding range.";
        }
        yield return "Day, smooth air, clear of cloud, 3000 ft above the ground or more.";
        yield return "Look out before every release: clear the turn to both sides.";
        yield return "The second person times and writes. The pilot flying never does; alone, count aloud and write after landing.";
        yield return $"At {StopAtDeg:0}° of bank stop: take the wheel, note the time.";
        yield return $"Each timed point {Repeats} times after a turn to the left and {Repeats} times after one to the right. Autopilot off.";
        if (file.State.Call is { Limits: { Length: > 0 } limits }) yield return $"Within the limits of the call: {limits}";
    }

    static IEnumerable<string> LimitsOf(SquawkFile file, Airframe? airframe)
    {
        if (airframe?.SpeedsKt is not { } speeds)
        {
            yield return "No speed limits are on file for this airframe: the placards and the manual govern.";
            yield break;
        }
        yield return $"Stall, clean {Kt(speeds.StallClean)} · flaps {Kt(speeds.FlapLimit)} · manoeuvring {Kt(speeds.Manoeuvring)} · cruise {Kt(speeds.MaxStructuralCruise)} · never exceed {Kt(speeds.NeverExceed)} (airframe file {file.Facts.Airframe!.Id}, version {file.Facts.Airframe.Version})";
    }

    static string Kt(double speed) => $"{Words.Number(speed, 0)}{Directions.Space}kt";
}
