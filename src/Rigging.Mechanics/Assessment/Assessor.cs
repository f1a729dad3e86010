using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>From what was flown and measured to what is behind it, what to look at next and what to move, if anything.</summary>
/// <remarks>Pure: the same request and airframe always give the same answer.</remarks>
public static class Assessor
{
    /// <summary>Assesses with the figures of experience this library ships.</summary>
    public static AssessmentResponse Assess(AssessmentRequest request, Airframe airframe) => Assess(request, airframe, Practice.Usual);

    /// <param name="request">Everything known about the complaint.</param>
    /// <param name="airframe">Its file.</param>
    /// <param name="practice">Figures of experience.</param>
    public static AssessmentResponse Assess(AssessmentRequest request, Airframe airframe, Practice practice)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(airframe);
        ArgumentNullException.ThrowIfNull(practice);
        var aeroplane = new Aeroplane(airframe);
        if (aeroplane.Refusals.Count > 0)
            return NotComputable(airframe, request, aeroplane.Refusals);
        var evidence = new Evidence(request, aeroplane, practice);
        if (!evidence.IsComputable)
            return NotComputable(airframe, request, [Evidence.NotComputable]);

        var experience = Experience.Of(request.EarlierCorrections);
        var plan = CorrectionPlan.For(evidence, experience);
        return new(
            airframe.Id,
            evidence.Observations.Count > 0 ? evidence.Tendency().Estimate("deg/s") : null,
            evidence.LoadContribution is { } load ? new(load, "deg/s") : null,
            Causes(evidence),
            evidence.Alike,
            NextTests.For(evidence),
            Prerequisites.Missing(request),
            plan.Proposal,
            plan.Refusals,
            [.. Cautions.For(evidence), .. experience.Sentences(evidence.Practice.ModelError, control => PerUnit(control, evidence)), .. plan.Cautions, WhyEccentric.For(evidence, plan)]);
    }

    /// <summary>What one flat about neutral, one turn or one degree does to the roll tendency, °/s.</summary>
    static (double DegPerS, string Unit)? PerUnit(AdjustableControl control, Evidence evidence)
    {
        double Gain(Cause cause) => evidence.TendencyGains[ModelledCause.Of(cause).First];
        if (control is AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric)
            return Eccentric.On(evidence.Aeroplane.Airframe) is { Ok: true, Value: var eccentric } ? (Gain(Cause.PanelIncidenceDifference) * eccentric.IncidenceAt(eccentric.PerFlat).Degrees, "flat from neutral") : null;
        return Adjuster.On(control, evidence.Aeroplane) is { Ok: true, Value: var adjuster } ? (Gain(adjuster.Cause) * adjuster.PerUnit, adjuster.Unit == "turns" ? "turn" : "degree") : null;
    }

    static CauseEstimate[] Causes(Evidence evidence) =>
    [
        .. Enum.GetValues<Cause>().Select(cause => (int)cause is var index && evidence.Bears(index)
            ? new CauseEstimate(
                cause,
                evidence.Posterior.Probability(index),
                evidence.Amplitude(cause).Estimate(evidence.Practice.Prior(cause).Unit),
                evidence.Explains(index))
            : new CauseEstimate(cause, null, null, null)),
    ];

    static AssessmentResponse NotComputable(Airframe airframe, AssessmentRequest request, IReadOnlyList<Refusal> refusals) => new(
        airframe.Id, null, null,
        [.. Enum.GetValues<Cause>().Select(cause => new CauseEstimate(cause, null, null, null))],
        [], [], Prerequisites.Missing(request), null,
        refusals,
        []);
}
