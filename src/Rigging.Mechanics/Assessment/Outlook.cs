using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>A flight that has not been flown.</summary>
/// <param name="CasKt">At the reference's altitude and power, on a standard day, flap up.</param>
/// <param name="Moves">Made before it; what such moves were seen to do earlier is counted in. Null for none.</param>
public sealed record Supposed(double CasKt, Load Load, IReadOnlyList<SetTo>? Moves = null);

/// <summary>
/// What an assessment expects of the aeroplane where nobody has flown it yet, how each reading agrees with it, and which readings it rests on.
/// </summary>
/// <remarks>Pure. The evidence is weighed once, when it is made; <see cref="Influences"/> weighs it once more for each piece of evidence.</remarks>
public sealed class Outlook
{
    readonly Evidence evidence;
    readonly Practice practice;

    readonly Experience experience;

    Outlook(Evidence evidence, Practice practice) => (this.evidence, this.practice, experience) = (evidence, practice, Experience.Of(evidence.Request.EarlierCorrections));

    /// <summary>Null when nothing was observed, or when the airframe's figures lead to no numbers.</summary>
    public static Outlook? Of(AssessmentRequest request, Airframe airframe, Practice practice)
    {
        ArgumentNullException.ThrowIfNull(request);
        ArgumentNullException.ThrowIfNull(airframe);
        ArgumentNullException.ThrowIfNull(practice);
        var aeroplane = new Aeroplane(airframe);
        if (aeroplane.Refusals.Count > 0)
            return null;
        var evidence = new Evidence(request, aeroplane, practice);
        return evidence.IsComputable && evidence.Observations.Count > 0 ? new(evidence, practice) : null;
    }

    /// <summary>Roll rate hands off with the ball centred, °/s, right wing down positive, with its 90 % interval.</summary>
    /// <exception cref="ArgumentException">An adjuster that is supposed to move is not on file.</exception>
    public Estimate RollTendency(Supposed supposed)
    {
        ArgumentNullException.ThrowIfNull(supposed);
        var reference = evidence.Aeroplane.Airframe.Reference;
        var flight = evidence.Aeroplane.At(new TestPoint(Manoeuvre.ReleaseWheel, supposed.CasKt, reference.PressureAltitudeFt,
            TestPoint.StandardOatC(reference.PressureAltitudeFt), reference.PowerPercent, 0, supposed.Load, AirState.Smooth, null, null, []));
        var there = evidence.TendencyAt(new(flight, supposed.Load, FlapLowered: false, LastInput: null));
        var moves = (supposed.Moves ?? []).Select(move => (move.Control, move.On(evidence.Aeroplane).Value ?? throw new ArgumentException($"{move} is not on file.", nameof(supposed))));
        var (change, sd) = experience.Effect(moves, there.Gains, evidence.Practice.ModelError);
        return evidence.Tendency(there, change, sd).Estimate("deg/s");
    }

    /// <summary>The roll tendency at the reference after a mechanic's own plan, or where something was left otherwise than planned.</summary>
    /// <remarks>Refused when an adjuster is not on file or is named twice.</remarks>
    public Answer<Foreseen> After(params IReadOnlyList<SetTo> moves) => Foreseen.Of(evidence, experience, moves);

    /// <summary>An adjuster of this aeroplane, as <see cref="Adjusters.Adjuster.On"/>.</summary>
    public Answer<Adjuster> Adjuster(AdjustableControl control) => Adjusters.Adjuster.On(control, evidence.Aeroplane);

    /// <summary>
    /// What the motion would show at a point, with its 90 % interval, without the error of reading it: in the reading's unit, a time to a bank as the
    /// bank at that time. Null where the manoeuvre cannot show it.
    /// </summary>
    public Estimate? Expected(TestPoint point, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(point);
        ArgumentNullException.ThrowIfNull(reading);
        return evidence.Observe(point, evidence.Aeroplane.At(point), reading) is { } there && Evidence.IsNumber(there)
            ? evidence.Left.Predict(there.Known, there.Gains, (explanation, mean) => evidence.ModelVariance(there, explanation, mean)).Estimate(Unit(reading))
            : null;
    }

    /// <summary>Where the ball lies at the reference with the feet off and the wings held level, in widths, right positive; null where nothing shows it.</summary>
    public Estimate? BallFeetOff => Expected(Foreseen.FeetOff(evidence.Aeroplane.Airframe.Reference), new BallReading(0));

    /// <summary>
    /// Half the width in which such a reading lies about the truth nine times in ten, in the reading's unit; null where the manoeuvre cannot show it,
    /// or where a word was given and no number.
    /// </summary>
    public double? ReadWithin(TestPoint point, Reading reading)
    {
        ArgumentNullException.ThrowIfNull(point);
        return evidence.Observe(point, evidence.Aeroplane.At(point), reading) is { Range: null, Variance: var variance } ? 1.645 * Math.Sqrt(variance) : null;
    }

    /// <summary>Each number that was read, against what all of them together expect; words have no place here.</summary>
    public IReadOnlyList<ReadingFit> Fits =>
    [
        .. evidence.Observations.Where(observation => observation.Range is null).Select(observation =>
        {
            var expected = observation.Known;
            for (var trace = 0; trace < observation.Gains.Length; trace++)
                expected += observation.Gains[trace] * evidence.Posterior.Expected(trace);
            var sd = Math.Sqrt(observation.Variance + evidence.ModelVariance(observation, evidence.Posterior.MostCredible, expected));
            return new ReadingFit(observation.Source.Point, observation.Source.Index, observation.Observed, expected, sd);
        }),
    ];

    /// <summary>What each piece of evidence did: the assessment with it against the one without it.</summary>
    public IReadOnlyList<Influence> Influences()
    {
        var (tendency, with) = (evidence.Tendency().Mean, Probabilities(evidence));
        List<Influence> all = [];
        foreach (var source in evidence.Observations.Select(observation => observation.Source).Distinct())
        {
            var without = new Evidence(Without(evidence.Request, source), evidence.Aeroplane, practice);
            var left = Probabilities(without);
            var most = Enumerable.Range(0, with.Length).MaxBy(cause => Math.Abs(with[cause] - left[cause]));
            all.Add(new(source.Point, source.Index, tendency - without.Tendency().Mean, ModelledCause.All[most].Cause, left[most], with[most]));
        }
        return all;
    }

    static double[] Probabilities(Evidence evidence) => [.. ModelledCause.All.Select((_, cause) => evidence.Posterior.Probability(cause))];

    static AssessmentRequest Without(AssessmentRequest request, ObservationSource source) => source.Point is { } place
        ? request with { TestPoints = [.. request.TestPoints.Select((point, at) => at == place ? point with { Readings = Without(point.Readings, source.Index) } : point)] }
        : request with { GroundChecks = Without(request.GroundChecks, source.Index) };

    static T[] Without<T>(IReadOnlyList<T> all, int place) => [.. all.Where((_, at) => at != place)];

    static string Unit(Reading reading) => reading switch
    {
        BankAfter or TimeToBank or HeadingChange or WheelAngle => "deg",
        RollRate or HeadingRate or Rolls => "deg/s",
        BallReading => "widths",
        WheelForce => "N",
        FuelDifference => "L",
        _ => throw new ArgumentOutOfRangeException(nameof(reading)),
    };
}

/// <summary>One number that was read beside what the whole of the evidence expects there.</summary>
/// <param name="Point">Place of the test point in the request; null for a ground check.</param>
/// <param name="Index">Place of the reading in its point, or of the ground check in the request.</param>
/// <param name="Read">In the reading's unit, a time to a bank as that bank.</param>
/// <param name="Sd">Of reading and model together, the same unit.</param>
public sealed record ReadingFit(int? Point, int Index, double Read, double Expected, double Sd)
{
    /// <summary>How far it lies from what is expected, in standard deviations.</summary>
    public double Misfit => (Read - Expected) / Sd;
}

/// <summary>What one piece of evidence did to the assessment.</summary>
/// <param name="Point">As in <see cref="ReadingFit"/>.</param>
/// <param name="Index">As in <see cref="ReadingFit"/>.</param>
/// <param name="TendencyDegPerS">How much it moved the roll tendency at the reference.</param>
/// <param name="Cause">The cause whose probability it moved most.</param>
/// <param name="Without">That probability without it.</param>
/// <param name="With">And with it.</param>
public sealed record Influence(int? Point, int Index, double TendencyDegPerS, Cause Cause, double Without, double With);
