using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>What to move, or why not; and what to mind in either case.</summary>
sealed record CorrectionPlan(CorrectionProposal? Proposal, IReadOnlyList<Refusal> Refusals, IReadOnlyList<string> Cautions)
{
    public static CorrectionPlan For(Evidence evidence, Experience experience)
    {
        var (toRemedy, refusals) = Gate.Of(evidence);
        return toRemedy switch
        {
            null => Refused(refusals),
            // Where a strut holds each spar no eccentric turns the panel; the rear strut's fork twists it.
            Cause.PanelIncidenceDifference => AdjusterPlan.OfStrutForks(Cause.PanelIncidenceDifference, evidence, experience) ?? EccentricPlan.For(evidence, experience),
            { } cause => Remedy.Of(cause, evidence, experience),
        };
    }

    internal static CorrectionPlan Refused(IReadOnlyList<Refusal> refusals) => new(null, refusals, []);
}
