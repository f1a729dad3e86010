using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// How credible a cause is before anything was flown or measured: what experience says, times what was done or happened
/// since it flew straight, times what a correction without effect says against its cause.
/// </summary>
static class PriorOdds
{
    public static (double Probability, double Spread) Of(Cause cause, AssessmentRequest request, Practice practice)
    {
        var prior = practice.Prior(cause);
        var odds = prior.Probability / (1 - prior.Probability);
        foreach (var word in Words(request).Distinct())
            foreach (var shift in practice.Shifts.Where(s => s.When == word && s.Cause == cause))
                odds *= shift.Odds;
        if (request.Events.Any(e => e.Kind == EventKind.CorrectionWithoutEffect && e.Cause == cause))
            odds *= practice.WithoutEffectOdds;
        return (odds / (1 + odds), prior.Spread);
    }

    static IEnumerable<string> Words(AssessmentRequest request)
    {
        if (request.StraightBefore is { } straight)
            yield return straight ? "straight-before" : "never-straight";
        foreach (var past in request.Events)
            yield return Wire.Word(past.Kind);
    }
}
