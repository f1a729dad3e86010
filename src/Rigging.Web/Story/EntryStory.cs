using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;

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
        CorrectionWithdrawn withdrawn => new(Say.CorrectionWithdrawn, [Say.BackToChecksNothingWasMoved, .. Line.Quote(withdrawn.Reason)]),
        WorkStarted started => WorkStory.Of(started),
        AsFound found => WorkStory.Of(found),
        TorqueApplied torque => WorkStory.Of(torque),
        Photographed photo => new(Gaps.Fill(Say.Photograph, Words.Of(photo.Of)), [photo.Caption, .. photo is { PaperOf: { } entry, Original: { } original } ? [Gaps.Fill(Say.EntryWasSignedOnPaper, entry, Words.Of(original))] : Array.Empty<Line>()], [photo.Sha256]),
        TorqueRechecked again => new(Gaps.Fill(Say.TorqueSeenAgain, again.Findings), [new(Gaps.Fill(Say.StripeInLineTorqueHeld, again.TorqueEntry), Tone.Good)]),
        WorkHandedOver handover => WorkStory.Of(handover),
        WorkDone done => WorkStory.Of(done),
        Inspected inspected => ReleaseStory.Of(inspected),
        Approved approved => ReleaseStory.Of(approved, render ?? (text => text)),
        CheckFlown flown => FlightStory.Of(flown),
        VerdictGiven verdict => ReleaseStory.Of(verdict),
        Closed closed => new(Say.ComplaintClosed, [new(closed.Statement, Tone.Quoted)]),
        RoundOpened round => new(Say.AnotherRoundOpened, [Say.BackToChecksWhatWasDone, .. Line.Quote(round.Reason)]),
        Waiting waiting => new(Gaps.Fill(Say.WaitingFor, Words.Of(waiting.For)), [new(waiting.Reason, Tone.Quoted)]),
        Resumed resumed => new(Say.ItGoesOn, [new(resumed.Reason, Tone.Quoted)]),
        Noted note => new(note.Corrects is { } entry ? Gaps.Fill(Say.CorrectionOfEntry, entry) : note.RemarkOn is { } beside ? Gaps.Fill(Say.RemarkOnEntry, beside) : note.HappenedAt is null ? Say.Note : Say.LateEntry, [new(note.Text, Tone.Quoted)]),
        TotalTimeCorrected corrected => new(Gaps.Fill(Say.TotalTimeCorrectedTo, Words.Number(corrected.TotalTimeH, 1)),
            [.. corrected.WasH is { } was ? [Gaps.Fill(Say.ItStoodAt, Words.Number(was, 1))] : Array.Empty<Line>(), .. Line.Quote(corrected.Reason)]),
        NoFaultFound none => new(Say.NoFaultFound, [new(none.Evaluation, Tone.Quoted), Refitted(none.EverythingRefitted)]),
        WithinLimits within => new(Say.WithinLimitsToBeMonitored,
            [new(within.Evaluation, Tone.Quoted), Gaps.Fill(Say.LimitAndWhereItStands, within.LimitAndSource), Refitted(within.EverythingRefitted)]),
        JoinedTo joined => new(Gaps.Fill(Say.JoinedToS, joined.OtherNumber), [Say.SameComplaintItsReadingsCount, .. Line.Quote(joined.Reason)]),
        HandedOver handed => new(Gaps.Fill(Say.HandedOverTo, handed.To), [Say.NotRiggingComplaint, .. Line.Quote(handed.Reason)]),
        NewerEntry newer => new(Say.EntryThisProgramCannotRead,
            [new(Gaps.Fill(Say.ItWasWrittenByNewerVersionOfProgram, newer.Kind, newer.Version), Tone.Caution)]),
        _ => throw new ArgumentOutOfRangeException(nameof(fact), fact, "an entry without words"),
    };

    static Told CallOf(Called call) => new(Gaps.Fill(Say.Call, Words.Of(call.Call)),
    [
        .. call.Call switch
        {
            Call.Grounded => [new Line(Say.NobodyFliesIt, Tone.Stop)],
            Call.MayFlyWithLimits => [new Line(Gaps.Fill(Say.Limits, call.Limits), Tone.Caution)],
            _ => new[] { new Line(Say.NoRiggingHoldWhileOpen, Tone.Good) },
        },
        .. GroundingQuestions.Raised(call.RedFlags, call.Happened).ToList() is { Count: > 0 } raised ? [new Line(Gaps.Fill(Say.RedFlagsGroundedUntil, string.Join("; ", raised)), Tone.Stop)] : (Line[])[],
        .. Line.Quote(call.Reason),
    ]);

    static Line Refitted(bool everything) => everything
        ? Say.EverythingOpenedDisconnectedOrRemoved
        : new Line(Say.NotEverythingIsRefitted, Tone.Stop);
}
