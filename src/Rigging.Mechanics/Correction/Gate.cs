using System.Globalization;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>Which cause the evidence singles out, or why nothing should be moved on it. Everything that stands in the way is named.</summary>
static class Gate
{
    /// <summary>A cause this credible, and behind this much of the tendency or of what was seen, is singled out (judgement, no source).</summary>
    const double Credible = 0.6, Share = 0.6, Half = 0.5, Rival = 0.15, MostOfAll = 0.75;

    /// <summary>An eccentric turned for another's fault is what all this is to prevent: it must be surer than others. Asking for 0.85 leaves two more in a hundred of the wings that are out as they are, and prevents one wrong turn in three thousand simulated aeroplanes.</summary>
    const double CredibleIncidence = 0.7;

    /// <summary>The cause to remedy, or why there is none to remedy yet.</summary>
    public static (Cause? ToRemedy, IReadOnlyList<Refusal> Refusals) Of(Evidence evidence)
    {
        List<Refusal> refusals = [.. evidence.DamageDoubt.Select(reason => new Refusal(Refusal.DamageNotRuledOut, reason))];
        refusals.AddRange(NotLetGo(evidence));
        Cause? toRemedy = null;
        if (evidence.Aeroplane.Airframe.Limits is not { } limits)
            refusals.Add(new("limits-not-on-file", "No acceptable roll tendency is on file for this airframe: enter it from the school's or the type's own data, with its source."));
        else if (evidence.Observations.Count == 0)
            refusals.Add(new("not-enough-evidence", "No reading and no ground check says anything about the roll yet."));
        else
        {
            (toRemedy, var refusal) = Tendency(evidence, limits);
            refusals.AddRange(refusal is null ? [] : [refusal]);
        }
        if (evidence.Fit.IsPoor)
            refusals.Add(new("nothing-fits", $"No cause in the catalogue agrees with what was read.{FlyAgain(evidence, " Fly and measure again before anything is moved.")} A reading is wrong, something is broken, or it is a cause nobody thought of."));
        if (refusals.Count > 0 && toRemedy is { } cause and not Cause.PanelIncidenceDifference)
            refusals.Add(Remedy.NotAnAdjustment(cause));
        refusals.AddRange(Stops.Refusal(evidence, refusals.Count == 0));
        return (refusals.Count == 0 ? toRemedy : null, refusals);
    }

    /// <summary>A trim that is off neutral holds the aeroplane, or rolls it, as a hand would; so does an autopilot.</summary>
    static IEnumerable<Refusal> NotLetGo(Evidence evidence)
    {
        var request = evidence.Request;
        if (request.TestPoints.Count == 0)
            yield break;
        if (request.Trims?.OffNeutral.ToArray() is { Length: > 0 } off)
            yield return new("trim-not-neutral", $"It was flown with {string.Join(" and ", off)}: that may be the cause, or hide it. Set the trims to neutral and look at where they stand then.{FlyAgain(evidence, " Fly it again before anything is moved.")}");
        if (request.Autopilot == Autopilot.Engaged)
            yield return new("autopilot-engaged", $"It was flown with the autopilot engaged, so nothing was let go: switch it off, and pull its breaker where the manual allows it.{FlyAgain(evidence, " Fly it again before anything is moved.")}");
    }

    static (Cause? ToRemedy, Refusal? Refusal) Tendency(Evidence evidence, RiggingLimits limits)
    {
        var tendency = evidence.Tendency();
        var limit = limits.AcceptableRollTendencyDegPerS;
        var inside = Math.Abs(tendency.Mean) <= limit;
        var load = evidence.LoadContribution ?? 0;

        if (SeenIn(evidence, Cause.FuelAndLoading))
            return (null, new("loading-explains", "A load that was not reported explains most of what was seen: measure fuel and weights each side before anything is moved. Loading is never cured by moving a wing."));
        // A load that is on record is taken out of what was seen. It is flown again only where what is left of that is not likely too much one way.
        if (evidence.KnownExplains >= MostOfAll && Math.Abs(load) > limit && Math.Abs(load) >= 2 * Math.Abs(tendency.Mean) && OneWay(tendency, limit) < MostOfAll)
            return (null, new("loading-explains", $"The load of that flight is worth {SignedRate.Of(load)} and explains most of what was seen.{FlyAgain(evidence, " Fly it again loaded as it is rigged for.")} Loading is never cured by moving a wing."));
        if (inside && evidence.KnownExplains >= Half && Math.Abs(load) > limit / 4)
            return (null, new("loading-explains", Invariant($"The load of that flight is worth {SignedRate.Of(load)} and explains most of what was seen; without it the aeroplane is inside its limit of {limit:0.0} °/s. Loading is never cured by moving a wing.")));
        // What misleads a pilot, or rolls the aeroplane by another way than its wings, shows in the readings and not in the tendency.
        foreach (var other in NotOfTheWings.Where(other => SeenIn(evidence, other)))
            return HasDouble(evidence, other) ? (null, NotSingledOut(evidence)) : (other, null);
        if (inside && tendency.Within(limit) >= Half && evidence.TendencyResolution <= limit)
            return (null, new("inside-limits", Invariant($"With the ball centred the aeroplane is inside its limit of {limit:0.0} °/s as far as the evidence goes ({Sureness.Percent(tendency.Within(limit)):0} % sure).")));
        if (inside)
            return (null, new("not-enough-evidence", "The readings are too few or too vague to say how much it rolls; the next tests would tell."));
        return SingledOut(evidence) switch
        {
            null => (null, NotSingledOut(evidence)),
            Cause.PanelIncidenceDifference => Incidence(evidence),
            { } cause => (cause, null),
        };
    }

    /// <summary>
    /// Incidence comes last. What a survey of the skin found, and whatever else of the aeroplane is as sure as a panel must be, is put right
    /// first and flown again; a load is not among it, for the tendency has it taken out. A panel that did little of what was seen is no cure for it.
    /// </summary>
    static (Cause? ToRemedy, Refusal? Refusal) Incidence(Evidence evidence)
    {
        if (evidence.Request.GroundChecks.OfType<ClearanceCheck>().Any(look => PriorOdds.Shows(look.Kind) == Cause.ContourOrFairing && !look.Clear))
            return (null, new("not-an-adjustment", $"Skin, a fairing or a tip was found to differ: repair or refit it to data{FlyAgain(evidence, " and fly it again")} before a wing is turned; turning it now might only hide it."));
        if (evidence.Observations.Any(observation => observation.IsFlown) && evidence.Diagnosis.Probability(Cause.PanelIncidenceDifference) < Half)
            return (null, NotSingledOut(evidence));
        var surest = ModelledCause.All
            .Where(modelled => modelled.BelongsToAircraft && modelled.Cause != Cause.PanelIncidenceDifference)
            .Select(modelled => (modelled.Cause, Probability: evidence.Posterior.Probability((int)modelled.Cause)))
            .MaxBy(beside => beside.Probability);
        return (surest.Probability >= CredibleIncidence ? surest.Cause : Cause.PanelIncidenceDifference, null);
    }

    /// <summary>That it rolls more than the limit to the likelier side.</summary>
    static double OneWay(NormalMixture tendency, double limit) => Math.Max(tendency.Below(-limit), 1 - tendency.Below(limit));

    static readonly Cause[] NotOfTheWings =
        [Cause.RudderOrFinOffset, Cause.InstrumentMisalignment, Cause.ControlFriction, Cause.AileronNeutralOffset, Cause.Slipstream];

    static bool SeenIn(Evidence evidence, Cause cause) =>
        evidence.Bears((int)cause) && evidence.Posterior.Probability((int)cause) >= Credible && evidence.Diagnosis.Probability(cause) >= Half && evidence.Explains((int)cause) >= Half;

    /// <summary>Another that is credible and left the same trace: then naming either would be a guess.</summary>
    static bool HasDouble(Evidence evidence, Cause cause) => evidence.Alike.Where(group => group.Contains(cause)).SelectMany(group => group)
        .Any(other => other != cause && evidence.Diagnosis.Probability(other) >= Rival);

    /// <summary>The cause behind most of the roll tendency, if one is.</summary>
    static Cause? SingledOut(Evidence evidence)
    {
        var parts = ModelledCause.All
            .Select(modelled => (modelled.Cause, DegPerS: Math.Abs(Enumerable.Range(modelled.First, modelled.Count)
                .Sum(trace => evidence.TendencyGains[trace] * evidence.Posterior.Expected(trace)))))
            .ToArray();
        var most = parts.MaxBy(part => part.DegPerS);
        var credible = most.Cause == Cause.PanelIncidenceDifference ? CredibleIncidence : Credible;
        return most.DegPerS >= Share * parts.Sum(part => part.DegPerS) && evidence.Posterior.Probability((int)most.Cause) >= credible ? most.Cause : null;
    }

    static Refusal NotSingledOut(Evidence evidence)
    {
        var names = ModelledCause.All
            .Where((_, index) => evidence.Bears(index))
            .Select(modelled => (modelled.Cause, Probability: evidence.Posterior.Probability((int)modelled.Cause)))
            .OrderByDescending(c => c.Probability)
            .Take(3)
            .Select(c => Invariant($"{Wire.Word(c.Cause)} ({Sureness.Percent(c.Probability):0} %)"));
        return new("cause-not-singled-out", $"The evidence does not single out one cause: {string.Join(", ", names)}. Starting at the eccentric would be a guess; the next tests would separate them.");
    }

    /// <summary>Nobody is told to fly what may be broken.</summary>
    static string FlyAgain(Evidence evidence, string advice) => evidence.DamageDoubt.Count > 0 ? "" : advice;

    static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
