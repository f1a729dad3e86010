using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Rules;

/// <summary>Rules about what an entry says, once it has a place at all.</summary>
static class Contents
{
    public static IEnumerable<BrokenRule> Of(Fact fact, SquawkState state, Facts facts) =>
        Storable.Of(fact).ToList() is { Count: > 0 } impossible ? impossible : [.. Late(fact, facts), .. Meaning(fact, state, facts)];

    static IEnumerable<BrokenRule> Late(Fact fact, Facts facts)
    {
        if (fact is IMayComeLate { HappenedAt: { } happened } && happened > facts.Now)
            yield return new("date-in-future", "What is entered late happened before now: the time given has not come yet.", "happenedOn");
    }

    static IEnumerable<BrokenRule> Meaning(Fact fact, SquawkState state, Facts facts) => fact switch
    {
        Reported report => ReportRules.Of(report, facts.Airframe?.Read()),
        Called call => CallRules.Of(call, state, facts),
        GroundChecked check => CheckRules.Of(check, state, facts),
        EvaluationFlown flown => CheckRules.Of(flown, facts),
        CorrectionAgreed correction => CorrectionRules.Of(correction, state, facts),
        CorrectionWithdrawn withdrawn => Needed(withdrawn.Reason, "text-missing", "reason", "why the correction is withdrawn"),
        WorkStarted started => Needed(started.WingSupport, "wing-support-missing", "wingSupport",
            state.Plans(Controls.MovesIncidence) ? "how the wing is supported while its bolt is loose" : "how the surface or the aircraft is held, or that it is not needed"),
        AsFound found => WorkRules.Of(found, state),
        TorqueApplied torque => TorqueRules.Of(torque, facts),
        TorqueRechecked again => TorqueRules.Of(again, state),
        WorkHandedOver handover =>
        [
            .. Needed(handover.State, "text-missing", "state", "how the work stands"),
            .. handover.Loose is { } loose ? Needed(loose, "text-missing", "loose", "what is loose, or say that nothing is") : [],
        ],
        Photographed photo =>
        [
            .. photo.Sha256.Length == 64 && photo.Sha256.All(char.IsAsciiHexDigitLower) ? [] : (IEnumerable<BrokenRule>)[new("photo-unknown", "That picture is not kept here. Choose it again.", "photo")],
            .. Needed(photo.Caption, "text-missing", "caption", "what the picture shows"),
            .. PaperRules(photo, state),
        ],
        WorkDone done => WorkRules.Of(done, state, facts),
        Inspected inspected => InspectionRules.Of(inspected, state),
        Approved approved => ApprovalRules.Of(approved),
        CheckFlown flown => CheckFlightRules.Of(flown, state, facts),
        VerdictGiven verdict => VerdictRules(verdict, state, facts),
        Closed closed => Needed(closed.Statement, "text-missing", "statement", "why the complaint is closed"),
        RoundOpened round => Needed(round.Reason, "text-missing", "reason", "why another round is needed"),
        Waiting waiting => Needed(waiting.Reason, "text-missing", "reason", "what is waited for"),
        Resumed resumed => Needed(resumed.Reason, "text-missing", "reason", "why it goes on"),
        Noted note => NoteRules(note, state),
        TotalTimeCorrected corrected => TotalTimeRules.Of(corrected, facts.TotalTime, "totalTimeH", "reason"),
        NoFaultFound none => [.. Needed(none.Evaluation, "text-missing", "evaluation", "what was looked at and found"), .. Refitted(none.EverythingRefitted)],
        WithinLimits within =>
        [
            .. Needed(within.Evaluation, "text-missing", "evaluation", "the evaluation in words"),
            .. Needed(within.LimitAndSource, "limit-source-missing", "limitAndSource", "the limit and where it stands"),
            .. Refitted(within.EverythingRefitted),
        ],
        JoinedTo joined => JoinRules(joined, state, facts),
        HandedOver handed =>
            [.. Needed(handed.To, "text-missing", "to", "who takes it over"), .. Needed(handed.Reason, "text-missing", "reason", "why it is not a rigging complaint")],
        _ => [],
    };

    /// <summary>A text somebody must write.</summary>
    public static IEnumerable<BrokenRule> Needed(string? text, string code, string field, string wanted)
    {
        if (string.IsNullOrWhiteSpace(text)) yield return new(code, $"Write {wanted}.", field);
    }

    static IEnumerable<BrokenRule> Refitted(bool everything)
    {
        if (!everything) yield return new("not-refitted", "Everything opened, disconnected or removed for access must be refitted, inspected and entered first.", "everythingRefitted");
    }

    static IEnumerable<BrokenRule> NoteRules(Noted note, SquawkState state)
    {
        foreach (var rule in Needed(note.Text, "text-missing", "text", "the note")) yield return rule;
        if (note.Corrects is { } corrects && (corrects < 1 || corrects > state.Length))
            yield return new("no-such-entry", $"Entry {corrects} does not exist: this squawk has {state.Length}.", "corrects");
        if (note.RemarkOn is { } beside && (beside < 1 || beside > state.Length))
            yield return new("no-such-entry", $"Entry {beside} does not exist: this squawk has {state.Length}.", "remarkOn");
        if (note is { Corrects: not null, RemarkOn: not null })
            yield return new("correction-or-remark", "A note corrects an entry or stands beside one, not both. Choose one.", "remarkOn");
    }

    static IEnumerable<BrokenRule> PaperRules(Photographed photo, SquawkState state)
    {
        if (photo.Of != PhotoOf.SignedPaper) yield break;
        if (photo.PaperOf is not { } entry || !state.Signed.Contains(entry))
            yield return new("no-such-signature", $"Say which signed entry the paper carries: {(state.Signed.Count == 0 ? "none is signed yet" : string.Join(", ", state.Signed))}.", "paperOf");
        if (photo.Original is null)
            yield return new("original-not-said", "Say which is the original: the paper, or this ledger.", "original");
    }

    static IEnumerable<BrokenRule> VerdictRules(VerdictGiven verdict, SquawkState state, Facts facts)
    {
        foreach (var rule in Needed(verdict.Explanation, "text-missing", "explanation", "what the verdict rests on")) yield return rule;
        if (verdict.Verdict != VerdictWord.NotEnoughEvidence && facts.DamageInDoubt(state))
            yield return new("damage-not-ruled-out", "Damage is in doubt: until a damage inspection is recorded clear the verdict can only be “not enough evidence”.", "verdict");
        if (verdict.Verdict != VerdictWord.NotEnoughEvidence && state.CheckFlight is { Fact.FuelMeasured: false })
            yield return new("fuel-not-measured", "Fuel on each side was not measured on the check flight, so what it did to the roll is not known: the verdict can only be “not enough evidence”.", "verdict");
        if (verdict.Verdict != VerdictWord.NotEnoughEvidence && state.CheckFlight is { Fact.Trims: { } trims } && trims.WhatHeld() is { } held)
            yield return new("flown-held", $"The check flight was flown with {Words.Trims(held)}, so nothing was let go: the verdict can only be “not enough evidence”.", "verdict");
    }

    static IEnumerable<BrokenRule> JoinRules(JoinedTo joined, SquawkState state, Facts facts)
    {
        foreach (var rule in Needed(joined.Reason, "text-missing", "reason", "why it is the same complaint")) yield return rule;
        if (facts.OtherSquawks.FirstOrDefault(other => other.Id == joined.Other) is not { } target)
            yield return new("join-target-missing", $"S-{joined.OtherNumber} is not another open squawk of this aircraft.", "other");
        else if (target.Allows < state.FlightStatus)
            yield return new("join-would-lift", $"By this squawk the aircraft is “{Words.Of(state.FlightStatus)}”, by S-{target.Number} “{Words.Of(target.Allows)}”: joining would lift that. Make a call here, or there, first.", "other");
    }
}
