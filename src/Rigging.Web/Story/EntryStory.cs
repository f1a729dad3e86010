using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;

namespace Rigging.Web.Story;

/// <summary>Any entry in plain words. Pure: the same entry always reads the same.</summary>
public static class EntryStory
{
    /// <param name="render">Puts names in the place of tokens; without it they stay tokens.</param>
    public static Told Of(Fact fact, Func<string, string>? render = null) => fact switch
    {
        Reported report => ReportStory.Of(report),
        Called call => CallOf(call),
        GroundChecked check => CheckStory.Of(check),
        EvaluationFlown flown => FlightStory.Of(flown),
        Assessed assessed => PlanStory.Of(assessed),
        CorrectionAgreed agreed => PlanStory.Of(agreed),
        WorkStarted started => WorkStory.Of(started),
        AsFound found => WorkStory.Of(found),
        TorqueApplied torque => WorkStory.Of(torque),
        Photographed photo => new($"Photograph, {Words.Of(photo.Of)}", [photo.Caption, .. photo is { PaperOf: { } entry, Original: { } original } ? [$"Entry {entry} was signed on paper: {Words.Of(original)}."] : Array.Empty<Line>()], [photo.Sha256]),
        WorkHandedOver handover => WorkStory.Of(handover),
        WorkDone done => WorkStory.Of(done),
        Inspected inspected => ReleaseStory.Of(inspected),
        Approved approved => ReleaseStory.Of(approved, render ?? (text => text)),
        CheckFlown flown => FlightStory.Of(flown),
        VerdictGiven verdict => ReleaseStory.Of(verdict),
        Closed closed => new("Complaint closed", [new(closed.Statement, Tone.Quoted)]),
        RoundOpened round => new("Another round opened", ["Back to the checks. What was done before stays on record.", .. Line.Quote(round.Reason)]),
        Waiting waiting => new($"Waiting for {Words.Of(waiting.For)}", [new(waiting.Reason, Tone.Quoted)]),
        Resumed resumed => new("It goes on", [new(resumed.Reason, Tone.Quoted)]),
        Noted note => new(note.Corrects is { } entry ? $"Correction of entry {entry}" : note.HappenedAt is null ? "Note" : "Late entry", [new(note.Text, Tone.Quoted)]),
        NoFaultFound none => new("No fault found", [new(none.Evaluation, Tone.Quoted), Refitted(none.EverythingRefitted)]),
        WithinLimits within => new("Within limits, to be monitored",
            [new(within.Evaluation, Tone.Quoted), $"Limit and where it stands: {within.LimitAndSource}", Refitted(within.EverythingRefitted)]),
        JoinedTo joined => new($"Joined to S-{joined.OtherNumber}", ["The same complaint; its readings count there.", .. Line.Quote(joined.Reason)]),
        HandedOver handed => new($"Handed over to {handed.To}", ["Not a rigging complaint.", .. Line.Quote(handed.Reason)]),
        NewerEntry newer => new("An entry this program cannot read",
            [new($"It was written by a newer version of the program (kind “{newer.Kind}”, version {newer.Version}). It is kept as it is, and nothing can be signed here until the program is updated.", Tone.Caution)]),
        _ => throw new ArgumentOutOfRangeException(nameof(fact), fact, "an entry without words"),
    };

    static Told CallOf(Called call) => new($"Call: {Words.Of(call.Call)}",
    [
        .. call.Call switch
        {
            Call.Grounded => [new Line("Nobody flies it.", Tone.Stop)],
            Call.MayFlyWithLimits => [new Line($"Limits: {call.Limits}", Tone.Caution)],
            _ => new[] { new Line("It may fly while this is open.", Tone.Good) },
        },
        .. Line.Quote(call.Reason),
    ]);

    static Line Refitted(bool everything) => everything
        ? "Everything opened, disconnected or removed for access is refitted, inspected and entered."
        : new Line("Not everything is refitted.", Tone.Stop);
}
