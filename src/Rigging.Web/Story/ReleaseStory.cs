using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>Inspection, approval and verdict in words.</summary>
static class ReleaseStory
{
    public static Told Of(Inspected inspected) => new(inspected.Passed ? Say.IndependentInspectionPassed : Say.IndependentInspectionFailed,
    [
        .. inspected.Passed ? Array.Empty<Line>() : [new Line(Say.WorkGoesBack, Tone.Stop)],
        .. inspected.Observations.Where(o => o.WrongWay).Select(o => new Line(Gaps.Fill(Say.WasSeenToMoveItMustMove, Words.Capital(o.Input), o.Surface, Words.Of(o.Seen), Words.Of(o.Expected)), Tone.Stop)),
        .. Seen(inspected),
        Gaps.Fill(Say.FullTravelAtEveryFlap, YesNo(inspected.FullTravelAtEveryFlapSetting), YesNo(inspected.SecuredAndLocked), YesNo(inspected.NothingLeftBehind)),
        .. inspected.AcceptsDifference switch
        {
            true => [Say.AsLeftDiffersFromPlanAnd],
            false => [new Line(Say.AsLeftDiffersFromPlanAndInspector, Tone.Caution)],
            null => Array.Empty<Line>(),
        },
        .. Line.Quote(inspected.Findings),
    ]);

    static IEnumerable<Line> Seen(Inspected inspected)
    {
        var right = inspected.Observations.Where(o => o.Seen != Squawks.Entries.Seen.NotRecorded && !o.WrongWay).ToList();
        if (right.Count > 0)
            yield return Gaps.Fill(Say.SeenAtSurface, string.Join("; ", right.GroupBy(o => o.Input).Select(input => $"{input.Key}, {string.Join(", ", input.Select(o => $"{o.Surface} {Words.Of(o.Seen)}"))}")));
        if (inspected.Observations.Any(o => o.Seen == Squawks.Entries.Seen.NotRecorded))
            yield return new(Say.NotEveryControlWasLooked, Tone.Missing);
    }

    public static Told Of(Approved approved, Func<string, string> render) => new(Texts.ApprovedForReturnToService,
    [
        approved.MayHaveChangedHandling
            ? new(Say.PassengersAreBarredUntilCheck, Tone.Caution)
            : new Line(Gaps.Fill(Say.HandlingCannotHaveChangedBecause, approved.ConclusiveBecause)),
        Gaps.Fill(Say.WorkCompletedAtHTotal, $"{approved.CompletedOn:uuuu-MM-dd}", Words.Number(approved.TotalTimeH, 1)),
        .. string.IsNullOrWhiteSpace(approved.RecordEntry) ? Array.Empty<Line>() : [new(render(approved.RecordEntry), Tone.Document)],
    ]);

    public static Told Of(VerdictGiven verdict) => new(Gaps.Fill(Say.Verdict, Words.Of(verdict.Verdict)),
    [
        .. verdict.TendencyDegPerS is { } rate
            ? [Gaps.Fill(Say.WithLoadItIsRigged, PlanStory.Tendency(verdict.Response) is { } found ? Expected(found.Mean, found.Low, found.High) : Gaps.Fill(Say.IntervalNotOnRecord, RollRate(rate)))]
            : Array.Empty<Line>(),
        .. verdict.LoadShareDegPerS is { } share ? [Gaps.Fill(Say.DaysFuelAndSeatsAdded, RollRate(share))] : Array.Empty<Line>(),
        verdict.Explanation,
    ]);

    static string YesNo(bool yes) => yes ? Say.Yes : Say.No;
}
