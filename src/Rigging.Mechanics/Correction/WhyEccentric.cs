using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>Why the eccentric, or why not: one honest paragraph in every answer.</summary>
static class WhyEccentric
{
    const string Rule = "An eccentric turns a whole wing panel and cures nothing else; in reports of practitioners the wing's incidence was the cause in fewer than one in ten.";

    public static string For(Evidence evidence, CorrectionPlan plan)
    {
        if (plan.Proposal?.Moves.Any(move => move.Control is AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric) == true)
            return $"Why the eccentric: {Said(evidence, Cause.PanelIncidenceDifference)} {Others(evidence)} {Unchecked(evidence)} {Rule}".Replace("  ", " ", StringComparison.Ordinal);
        if (evidence.Observations.Count == 0)
            return $"Why not the eccentric: nothing that was read or measured speaks for the wing's incidence yet. {Rule}";
        return $"Why not the eccentric: {Because(evidence, plan)} {Said(evidence, Cause.PanelIncidenceDifference)} {Others(evidence)} {Rule}".Replace("  ", " ", StringComparison.Ordinal);
    }

    static string Because(Evidence evidence, CorrectionPlan plan)
    {
        List<string> because = [];
        if (evidence.Aeroplane.Airframe.Eccentric is null) because.Add("none is on file for this airframe");
        if (plan.Proposal is { } proposal) because.Add($"what is moved instead is the {string.Join(" and the ", proposal.Moves.Select(move => move.Control.InWords()))}");
        else if (plan.Refusals.Count > 0) because.Add($"what stands in the way: {string.Join(", ", plan.Refusals.Select(InWords).Distinct())}");
        return because is [] ? "" : $"{string.Join("; ", because)}.";
    }

    /// <summary>The reason in a few words; the refusal has it as a whole sentence.</summary>
    static string InWords(Refusal refusal) => refusal.Code switch
    {
        "not-an-adjustment" => "it is no matter of adjusting a wing",
        "loading-explains" => "the load explains it",
        "inside-limits" => "it is inside its limit",
        "not-enough-evidence" => "there is too little evidence",
        "cause-not-singled-out" => "no cause stands out from the others",
        "at-stops" => "an adjuster stands at its stop",
        "beyond-adjuster" => "it is more than the adjuster can take out",
        "limits-not-on-file" => "the limits are not on file",
        "setting-not-recorded" => "how it stands now is not on record",
        "nothing-fits" => "no cause fits what was reported",
        "survey-incomplete" => "the survey is not complete",
        "trim-not-neutral" => "the trim was off neutral",
        "autopilot-engaged" => "the autopilot was engaged",
        var other => other.Replace('-', ' '),
    };

    static string Said(Evidence evidence, Cause cause) => evidence.Bears((int)cause)
        ? string.Create(CultureInfo.InvariantCulture, $"A panel incidence difference is {Percent(evidence, cause)} likely{(evidence.Explains((int)cause) is { } share ? $", and by itself would explain {100 * share:0} % of what was seen" : "")}.")
        : "Nothing reported bears on a panel incidence difference.";

    static string Others(Evidence evidence)
    {
        var others = ModelledCause.All.Where((modelled, index) => modelled.Cause != Cause.PanelIncidenceDifference && evidence.Bears(index))
            .OrderByDescending(modelled => Math.Round(evidence.Posterior.Probability((int)modelled.Cause), 9))
            .Take(2)
            .Select(modelled => $"{Wire.Word(modelled.Cause)} ({Percent(evidence, modelled.Cause)})")
            .ToArray();
        return others.Length == 0 ? "" : $"Likeliest beside it: {string.Join(", ", others)}.";
    }

    static string Unchecked(Evidence evidence) => Prerequisites.Missing(evidence.Request) is { Count: > 0 } missing
        ? $"Before it is turned these must be on record: {string.Join(", ", missing.Select(Wire.Word)).Replace('-', ' ')}."
        : "";

    static string Percent(Evidence evidence, Cause cause) => string.Create(CultureInfo.InvariantCulture, $"{Sureness.Percent(evidence.Posterior.Probability((int)cause)):0} %");
}
