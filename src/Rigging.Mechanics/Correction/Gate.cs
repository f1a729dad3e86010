using System.Globalization;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>Why no wing should be moved on this evidence. Everything that stands in the way is named.</summary>
static class Gate
{
    /// <summary>A cause this credible, and behind this much of the tendency or of what was seen, is singled out (judgement, no source).</summary>
    const double Credible = 0.6, Share = 0.6, Half = 0.5;

    static readonly EventKind[] Bent =
        [EventKind.HardLanding, EventKind.GroundStrike, EventKind.FlapOverspeed, EventKind.Repair, EventKind.WingReplaced, EventKind.SuddenOnset];

    public static List<Refusal> Refusals(Evidence evidence)
    {
        List<Refusal> refusals = [.. Damage(evidence)];
        if (evidence.Aeroplane.Airframe.Limits is not { } limits)
            refusals.Add(new("limits-not-on-file", "No acceptable roll tendency is on file for this airframe: enter it from the school's or the type's own data, with its source."));
        else if (evidence.Observations.Count == 0)
            refusals.Add(new("not-enough-evidence", "No reading and no ground check says anything about the roll yet."));
        else
            refusals.AddRange(Tendency(evidence, limits));
        return refusals;
    }

    static IEnumerable<Refusal> Damage(Evidence evidence)
    {
        var request = evidence.Request;
        var found = request.GroundChecks.OfType<ClearanceCheck>().Any(c => c.Kind == GroundCheckKind.DamageInspection && !c.Clear);
        var suspects = request.Events.Select(e => e.Kind).Where(Bent.Contains).Distinct().Select(Wire.Word).ToArray();
        if (found)
            yield return new("damage-not-ruled-out", "The damage inspection found something: repair to data comes before any adjustment.");
        else if (suspects.Length > 0 && !Prerequisites.IsDamageCleared(request))
            yield return new("damage-not-ruled-out", $"After {string.Join(", ", suspects)} nothing is moved until a damage inspection is recorded clear.");

        if (evidence.Aeroplane.Airframe.Limits is { } limits && Difference(evidence) is var deg && Math.Abs(deg) > limits.MaxPanelIncidenceDifferenceDeg)
            yield return new("damage-not-ruled-out", string.Create(CultureInfo.InvariantCulture,
                $"The panels differ by about {Math.Abs(deg):0.00}°, beyond the {limits.MaxPanelIncidenceDifferenceDeg:0.00}° on file: look for damage or misassembly, not for a wrench."));
    }

    /// <summary>Panel incidence difference, right minus left: the largest that was measured, or what the evidence makes of a credible one.</summary>
    static double Difference(Evidence evidence)
    {
        var panel = ModelledCause.IndexOf(Cause.PanelIncidenceDifference);
        var measured = evidence.Request.GroundChecks.OfType<AngleCheck>()
            .Where(check => check.Kind == GroundCheckKind.PanelIncidenceDifference)
            .Select(check => check.Deg);
        var inferred = evidence.Posterior.Probability(panel) >= Half ? evidence.Posterior.Amplitude(panel).Mean : 0;
        return measured.Append(inferred).MaxBy(Math.Abs);
    }

    static IEnumerable<Refusal> Tendency(Evidence evidence, RiggingLimits limits)
    {
        var tendency = evidence.Tendency();
        var limit = limits.AcceptableRollTendencyDegPerS;
        var inside = Math.Abs(tendency.Mean) <= limit;
        var load = evidence.LoadContribution ?? 0;

        if (SeenIn(evidence, Cause.FuelAndLoading))
            yield return new("loading-explains", "A load that was not reported explains most of what was seen: measure fuel and weights each side before anything is moved. Loading is never cured by moving a wing.");
        else if (inside && evidence.KnownExplains >= Half && Math.Abs(load) > limit / 4)
            yield return new("loading-explains", Invariant($"The load of that flight is worth {load:+0.0;−0.0} °/s and explains most of what was seen; without it the aeroplane is inside its limit of {limit:0.0} °/s. Loading is never cured by moving a wing."));
        else if (SeenIn(evidence, Cause.RudderOrFinOffset))
            yield return NotAnAdjustment(Cause.RudderOrFinOffset);
        else if (inside && tendency.Within(limit) >= Half && evidence.TendencyResolution <= limit)
            yield return new("inside-limits", Invariant($"With the ball centred the aeroplane is inside its limit of {limit:0.0} °/s as far as the evidence goes ({tendency.Within(limit):P0} sure)."));
        else if (inside)
            yield return new("not-enough-evidence", "The readings are too few or too vague to say how much it rolls; the next tests would tell.");
        else if (SingledOut(evidence) is not { } cause)
            yield return NotSingledOut(evidence);
        else if (cause != Cause.PanelIncidenceDifference)
            yield return NotAnAdjustment(cause);
    }

    static bool SeenIn(Evidence evidence, Cause cause)
    {
        var index = ModelledCause.IndexOf(cause);
        return evidence.Bears(index) && evidence.Posterior.Probability(index) >= Credible && evidence.Explains(index) >= Half;
    }

    /// <summary>The cause behind most of the roll tendency, if one is.</summary>
    static Cause? SingledOut(Evidence evidence)
    {
        var posterior = evidence.Posterior;
        var parts = ModelledCause.All
            .Select((modelled, index) => (modelled.Cause, Index: index, DegPerS: Math.Abs(evidence.TendencyGains[index]
                * posterior.Explanations.Sum(explanation => explanation.Weight * explanation.Amplitudes[index]))))
            .ToArray();
        var most = parts.MaxBy(part => part.DegPerS);
        return most.DegPerS >= Share * parts.Sum(part => part.DegPerS) && posterior.Probability(most.Index) >= Credible ? most.Cause : null;
    }

    static Refusal NotSingledOut(Evidence evidence)
    {
        var names = ModelledCause.All
            .Select((modelled, index) => (modelled.Cause, Probability: evidence.Posterior.Probability(index)))
            .OrderByDescending(c => c.Probability)
            .Take(3)
            .Select(c => Invariant($"{Wire.Word(c.Cause)} ({c.Probability:P0})"));
        return new("cause-not-singled-out", $"The evidence does not single out one cause: {string.Join(", ", names)}. Starting at the eccentric would be a guess; the next tests would separate them.");
    }

    static Refusal NotAnAdjustment(Cause cause) => new("not-an-adjustment", cause switch
    {
        Cause.RudderOrFinOffset => "What was seen comes from yaw, feet off: look at rudder tab, fin, rudder cables and nose-wheel centring. Moving a wing would hide it, not cure it.",
        Cause.FlapDifference => "The flaps do not sit alike at the up stop: put the flap stop and rods back to their book setting first. Moving a wing would hide it, not cure it.",
        Cause.AileronFloat => "It rolls when the wheel is let go, from the ailerons: trailing-edge shape, hinge height or tab, repaired or replaced to data. No change of incidence cures it.",
        Cause.FuelAndLoading => "The load explains it; loading is never cured by moving a wing.",
        _ => "The cause is not one that an eccentric cures.",
    });

    static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
