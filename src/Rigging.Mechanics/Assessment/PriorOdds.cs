using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// How credible a cause is before anything was flown or measured: what experience says, times what was done or happened
/// since it flew straight, times what a correction without effect says against its cause.
/// </summary>
static class PriorOdds
{
    const string StraightBefore = "straight-before";

    public static double Of(Cause cause, AssessmentRequest request, Practice practice)
    {
        var prior = practice.Prior(cause);
        var odds = prior.Probability / (1 - prior.Probability);
        var shifts = Words(request).Distinct()
            .SelectMany(word => practice.Shifts.Where(shift => shift.When == word && shift.Cause == cause))
            .ToArray();
        // That it flew straight speaks against what does not change by itself; but then somebody has had a hand in it.
        var touched = shifts.Any(shift => shift.When != StraightBefore && shift.Odds > 1);
        foreach (var shift in shifts.Where(shift => !(touched && shift.When == StraightBefore && shift.Odds < 1)))
            odds *= shift.Odds;
        if (request.Events.Any(e => e.Kind == EventKind.CorrectionWithoutEffect && e.Cause == cause))
            odds *= practice.WithoutEffect.SingleOrDefault(figure => figure.Cause == cause)?.Odds ?? practice.WithoutEffectOdds;
        foreach (var look in request.GroundChecks.OfType<ClearanceCheck>().Where(look => Shows(look.Kind) == cause))
            odds *= practice.Check(look.Kind)?.Odds(look.Clear) ?? 1;
        return odds / (1 + odds);
    }

    /// <summary>How far out a cause usually is, when it is; what was done last may have put it further out.</summary>
    public static double Spread(Cause cause, AssessmentRequest request, Practice practice)
    {
        var words = Words(request).ToHashSet();
        return practice.Prior(cause).Spread * practice.SpreadShifts
            .Where(shift => shift.Cause == cause && words.Contains(shift.When))
            .Select(shift => shift.Times)
            .DefaultIfEmpty(1)
            .Max();
    }

    /// <summary>What a look is a look for.</summary>
    public static Cause? Shows(GroundCheckKind look) => look switch
    {
        GroundCheckKind.DamageInspection => Cause.DamageOrMisassembly,
        GroundCheckKind.ContourSurvey => Cause.ContourOrFairing,
        _ => null,
    };

    static IEnumerable<string> Words(AssessmentRequest request)
    {
        if (request.StraightBefore is { } straight)
            yield return straight ? StraightBefore : "never-straight";
        if (request.TestPoints.Count > 0)
            yield return $"autopilot-{Wire.Word(request.Autopilot)}";
        foreach (var past in request.Events)
            yield return Wire.Word(past.Kind);
    }
}
