using System.Globalization;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Verification;

/// <summary>What a check flight shows.</summary>
public enum Verdict { Accepted, AdjustAgain, NotEnoughEvidence }

/// <param name="RollTendency">At the airframe's reference, the day's fuel and seats taken out; right wing down positive. Null when nothing bears on it.</param>
/// <param name="LoadContribution">What the day's load adds to that, °/s; null without a test point.</param>
/// <param name="ProbabilityWithinLimit">Null when there is no tendency or no limit on file.</param>
/// <param name="Reasons">For a person, in order.</param>
public sealed record CheckFlightVerdict(
    Verdict Verdict,
    Estimate? RollTendency,
    PointEstimate? LoadContribution,
    double? ProbabilityWithinLimit,
    IReadOnlyList<string> Reasons);

/// <summary>
/// Judges a check flight at the load the aeroplane is rigged for: whatever the day's fuel and seats explain is taken out
/// first. Without measured fuel there is no verdict: the tank could explain it, or hide it. Nor is there one on a flight with a trim
/// off neutral or the autopilot engaged, and then no tendency either.
/// </summary>
public static class CheckFlight
{
    /// <summary>How sure is sure enough to accept, and how unlikely is unlikely enough to adjust again (judgement, no source).</summary>
    const double Sure = 0.8, Unlikely = 0.4;

    /// <param name="flight">The check flight's test points, the ground checks that still hold, the eccentrics as left.</param>
    /// <param name="airframe">With its acceptable tendency on file.</param>
    /// <param name="fuelMeasured">Each tank dipped or metered on the day, and the people aboard known.</param>
    public static CheckFlightVerdict Judge(AssessmentRequest flight, Airframe airframe, bool fuelMeasured)
    {
        ArgumentNullException.ThrowIfNull(flight);
        ArgumentNullException.ThrowIfNull(airframe);
        var aeroplane = new Aeroplane(airframe);
        if (aeroplane.Refusals.Count > 0)
            return new(Verdict.NotEnoughEvidence, null, null, null, [.. aeroplane.Refusals.Select(refusal => refusal.Sentence)]);
        var practice = (fuelMeasured ? Practice.Usual.WithFuelMeasured() : Practice.Usual).AfterAdjusting();
        var evidence = new Evidence(flight, aeroplane, practice);
        if (!evidence.IsComputable)
            return new(Verdict.NotEnoughEvidence, null, null, null, ["With this airframe's figures no steady flight can be computed."]);

        PointEstimate? load = evidence.LoadContribution is { } value ? new(value, "deg/s") : null;
        if (!double.IsFinite(evidence.TendencyResolution))
            return new(Verdict.NotEnoughEvidence, null, load, null, ["Nothing that was read bears on the roll tendency."]);
        if (flight.NotLetGo.ToArray() is { Length: > 0 } held)
            return new(Verdict.NotEnoughEvidence, null, load, null, [$"It was flown with {string.Join(" and ", held)}: that may roll it, or hide that it rolls. Fly it again with the trims at neutral and the autopilot off."]);
        var tendency = evidence.Tendency();
        if (airframe.Limits is not { AcceptableRollTendencyDegPerS: var limit })
            return new(Verdict.NotEnoughEvidence, tendency.Estimate("deg/s"), load, null, ["No acceptable roll tendency is on file for this airframe."]);

        var within = tendency.Within(limit);
        List<string> reasons = [Said($"With the day's load taken out it rolls {SignedRate.Known(tendency.Estimate("deg/s"))}; the limit is {limit:0.0} °/s either way.")];
        if (load is { Mean: var byLoad } && Math.Abs(byLoad) > limit / 4)
            reasons.Add($"The day's fuel and seats add {SignedRate.Of(byLoad)}.");
        var verdict = Decide(within, evidence.TendencyResolution, limit, fuelMeasured, reasons);
        return new(verdict, tendency.Estimate("deg/s"), load, within, reasons);
    }

    static Verdict Decide(double within, double resolution, double limit, bool fuelMeasured, List<string> reasons)
    {
        if (!fuelMeasured)
        {
            reasons.Add("Fuel was not measured: a tank could explain what was seen, or hide it.");
            return Verdict.NotEnoughEvidence;
        }
        if (within < Unlikely)
        {
            reasons.Add(Said($"It is inside the limit with a chance of {Sureness.Percent(within):0} % only."));
            return Verdict.AdjustAgain;
        }
        if (within < Sure || resolution > limit)
        {
            reasons.Add(Said($"The readings do not settle it ({Sureness.Percent(within):0} % sure): fly more points, in smooth air."));
            return Verdict.NotEnoughEvidence;
        }
        reasons.Add(Said($"It is inside the limit, {Sureness.Percent(within):0} % sure."));
        return Verdict.Accepted;
    }

    static string Said(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
