using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Story;

/// <summary>The one thing to do next: where it is done, and why not by this person if so.</summary>
/// <param name="Act">The words on the button.</param>
/// <param name="Blocked">Sentences of the rules; empty when this person may.</param>
public sealed record NextStep(string Sentence, string Act, string Address, IReadOnlyList<string> Blocked, string By)
{
    public static NextStep? Of(SquawkFile file) => file.State.Stage?.IsOpen() == true && file.Next is { } next
        ? new(next.Sentence, Step.ActOf(next.Kind), $"squawks/{file.Number}/{Step.PlaceOf(next.Kind)}", [.. file.WhatBlocks(next.Kind).Select(rule => rule.Sentence)], Words.Any(next.By))
        : null;
}

/// <summary>Another step that has a place now.</summary>
public sealed record Step(string Act, string Address, IReadOnlyList<string> Blocked)
{
    static (Type Kind, string Act, string Place)[] Known =>
    [
        (typeof(Called), Say.MakeCall, "call"),
        (typeof(GroundChecked), Say.GroundChecks, "checks"),
        (typeof(EvaluationFlown), Say.LogEvaluationFlight, "flight"),
        (typeof(Assessed), Say.Assessment, "assessment"),
        (typeof(CorrectionAgreed), Say.AgreeCorrection, "assessment"),
        (typeof(WorkStarted), Say.StartWork, "work"),
        (typeof(WorkHandedOver), Say.GoToWork, "work"),
        (typeof(WorkDone), Say.GoToWork, "work"),
        (typeof(Inspected), Say.Inspect, "inspection"),
        (typeof(Approved), Say.Approve, "approval"),
        (typeof(CheckFlown), Say.LogCheckFlight, "check-flight"),
        (typeof(VerdictGiven), Say.JudgeCheckFlight, "verdict"),
        (typeof(Closed), Texts.CloseComplaint, "closing"),
        (typeof(RoundOpened), Texts.OpenAnotherRound, "other/another-round"),
        (typeof(Resumed), Say.SayThatItGoesOn, "other/resume"),
    ];

    public static string ActOf(Type kind) => Array.Find(Known, step => step.Kind == kind).Act;

    public static string PlaceOf(Type kind) => Array.Find(Known, step => step.Kind == kind).Place;

    /// <summary>Each place once, without the one where the next act is done; last the side steps, which are always there.</summary>
    public static IReadOnlyList<Step> Beside(SquawkFile file)
    {
        var next = NextStep.Of(file)?.Address;
        return
        [
            .. Known
                .Where(step => !step.Place.StartsWith("other", StringComparison.Ordinal) && MoveTable.Find(step.Kind, file.State.Stage) is not null)
                .Select(step => new Step(step.Act, $"squawks/{file.Number}/{step.Place}", [.. file.WhatBlocks(step.Kind).Select(rule => rule.Sentence)]))
                .Where(step => step.Address != next)
                // Of two acts on one page the one this person may do speaks for it.
                .GroupBy(step => step.Address).Select(place => place.FirstOrDefault(step => step.Blocked.Count == 0) ?? place.First()),
            new(Say.NotesAndOtherSteps, $"squawks/{file.Number}/other", []),
        ];
    }
}
