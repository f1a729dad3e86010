using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>Inspection, approval and verdict in words.</summary>
static class ReleaseStory
{
    public static Told Of(Inspected inspected) => new(inspected.Passed ? "Independent inspection passed" : "Independent inspection failed",
    [
        .. inspected.Passed ? Array.Empty<Line>() : [new Line("The work goes back.", Tone.Stop)],
        .. inspected.Observations.Where(o => o.WrongWay).Select(o => new Line($"{Words.Capital(o.Input)}: the {o.Surface} was seen to move {Words.Of(o.Seen)}. It must move {Words.Of(o.Expected)}.", Tone.Stop)),
        .. Seen(inspected),
        $"Full travel at every flap setting: {YesNo(inspected.FullTravelAtEveryFlapSetting)}. Secured and locked: {YesNo(inspected.SecuredAndLocked)}. Nothing left behind: {YesNo(inspected.NothingLeftBehind)}.",
        .. inspected.AcceptsDifference switch
        {
            true => ["As left differs from the plan, and the inspector accepts it."],
            false => [new Line("As left differs from the plan, and the inspector does not accept it.", Tone.Caution)],
            null => Array.Empty<Line>(),
        },
        .. Line.Quote(inspected.Findings),
    ]);

    static IEnumerable<Line> Seen(Inspected inspected)
    {
        var right = inspected.Observations.Where(o => o.Seen != Squawks.Entries.Seen.NotRecorded && !o.WrongWay).ToList();
        if (right.Count > 0)
            yield return $"Seen at the surface: {string.Join("; ", right.GroupBy(o => o.Input).Select(input => $"{input.Key}, {string.Join(", ", input.Select(o => $"{o.Surface} {Words.Of(o.Seen)}"))}"))}.";
        if (inspected.Observations.Any(o => o.Seen == Squawks.Entries.Seen.NotRecorded))
            yield return new("Not every control was looked at.", Tone.Missing);
    }

    public static Told Of(Approved approved, Func<string, string> render) => new("Approved for return to service",
    [
        approved.MayHaveChangedHandling
            ? new("Passengers are barred until the check flight is logged.", Tone.Caution)
            : new Line($"Handling cannot have changed, because: {approved.ConclusiveBecause}"),
        $"Work completed {approved.CompletedOn:uuuu-MM-dd} at {Words.Number(approved.TotalTimeH, 1)}{Space}h total time.",
        .. string.IsNullOrWhiteSpace(approved.RecordEntry) ? Array.Empty<Line>() : [new(render(approved.RecordEntry), Tone.Document)],
    ]);

    public static Told Of(VerdictGiven verdict) => new($"Verdict: {Words.Of(verdict.Verdict)}",
    [
        .. verdict.TendencyDegPerS is { } rate ? [$"With the load it is rigged for: {RollRate(rate)}."] : Array.Empty<Line>(),
        .. verdict.LoadShareDegPerS is { } share ? [$"The day’s fuel and seats added {RollRate(share)}; that has been taken out."] : Array.Empty<Line>(),
        verdict.Explanation,
    ]);

    static string YesNo(bool yes) => yes ? "yes" : "no";
}
