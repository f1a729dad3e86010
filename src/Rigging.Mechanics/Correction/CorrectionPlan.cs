using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>What to move, or why not; and what to mind in either case.</summary>
sealed record CorrectionPlan(CorrectionProposal? Proposal, IReadOnlyList<Refusal> Refusals, IReadOnlyList<string> Cautions)
{
    public static CorrectionPlan For(Evidence evidence)
    {
        var refusals = Gate.Refusals(evidence);
        return refusals.Count > 0 ? Refused(refusals) : EccentricPlan.For(evidence);
    }

    internal static CorrectionPlan Refused(IReadOnlyList<Refusal> refusals) => new(null, refusals, []);
}
