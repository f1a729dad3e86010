using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

/// <summary>Rules about what an entry says, once it has a place at all.</summary>
static class Contents
{
    public static IEnumerable<BrokenRule> Of(Fact fact, SquawkState state, Facts facts) => fact switch
    {
        Reported report => ReportRules.Of(report),
        Called call => CallRules.Of(call, state, facts),
        GroundChecked check => CheckRules.Of(check, facts),
        EvaluationFlown flown => CheckRules.Of(flown, facts),
        CorrectionAgreed correction => CorrectionRules.Of(correction, state, facts),
        WorkStarted started => Needed(started.WingSupport, "wing-support-missing", "wingSupport", "how the wing is supported while a spar bolt is loose"),
        AsFound found => WorkRules.Of(found, state),
        TorqueApplied torque => TorqueRules.Of(torque, facts),
        WorkHandedOver handover => Needed(handover.State, "text-missing", "state", "how the work stands"),
        WorkDone done => WorkRules.Of(done, state, facts),
        Inspected inspected => InspectionRules.Of(inspected, state),
        Approved approved => ApprovalRules.Of(approved, state),
        CheckFlown flown => CheckFlightRules.Of(flown, state, facts),
        Closed closed => Needed(closed.Statement, "text-missing", "statement", "why the complaint is closed"),
        RoundOpened round => Needed(round.Reason, "text-missing", "reason", "why another round is needed"),
        Waiting waiting => Needed(waiting.Reason, "text-missing", "reason", "what is waited for"),
        Resumed resumed => Needed(resumed.Reason, "text-missing", "reason", "why it goes on"),
        Noted note => NoteRules(note, facts),
        NoFaultFound none => [.. Needed(none.Evaluation, "text-missing", "evaluation", "what was looked at and found"), .. Refitted(none.EverythingRefitted)],
        WithinLimits within =>
        [
            .. Needed(within.Evaluation, "text-missing", "evaluation", "the evaluation in words"),
            .. Needed(within.LimitAndSource, "limit-source-missing", "limitAndSource", "the limit and where it stands"),
            .. Refitted(within.EverythingRefitted),
        ],
        JoinedTo joined => JoinRules(joined, facts),
        HandedOver handed =>
            [.. Needed(handed.To, "text-missing", "to", "who takes it over"), .. Needed(handed.Reason, "text-missing", "reason", "why it is not a rigging complaint")],
        _ => [],
    };

    /// <summary>A text somebody must write: long enough to mean something, short enough to print.</summary>
    public static IEnumerable<BrokenRule> Needed(string? text, string code, string field, string wanted)
    {
        if (string.IsNullOrWhiteSpace(text)) yield return new(code, $"Write {wanted}.", field);
        else if (text.Length > 4000) yield return new("text-too-long", $"This text has {text.Length} characters; 4000 is the most a record takes.", field);
    }

    static IEnumerable<BrokenRule> Refitted(bool everything)
    {
        if (!everything) yield return new("not-refitted", "Everything opened, disconnected or removed for access must be refitted, inspected and entered first.", "everythingRefitted");
    }

    static IEnumerable<BrokenRule> NoteRules(Noted note, Facts facts)
    {
        foreach (var rule in Needed(note.Text, "text-missing", "text", "the note")) yield return rule;
        _ = facts;
        if (note.Corrects is < 1) yield return new("no-such-entry", $"Entry {note.Corrects} does not exist.", "corrects");
    }

    static IEnumerable<BrokenRule> JoinRules(JoinedTo joined, Facts facts)
    {
        foreach (var rule in Needed(joined.Reason, "text-missing", "reason", "why it is the same complaint")) yield return rule;
        if (facts.OtherSquawks.All(other => other.Id != joined.Other))
            yield return new("join-target-missing", $"S-{joined.OtherNumber} is not another open squawk of this aircraft.", "other");
    }
}
