using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>Everything that one request says about the causes, as numbers, and what had to be left aside.</summary>
sealed class Evidence
{
    /// <summary>Degrees, widths or newtons per unit of a cause that only a broken airframe file leads to; NaN is no less.</summary>
    const double Absurd = 1e6;

    /// <summary>No aeroplane that is let go of rolls so fast and is still flown: round in four seconds.</summary>
    const double AbsurdDegPerS = 90;

    /// <summary>Nobody reads closer, whatever a stated standard deviation says.</summary>
    public const double LeastVariance = 1e-6;

    /// <summary>Flap up within this, degrees.</summary>
    public const double FlapUpDeg = 0.5;

    readonly Practice practice;
    readonly RoundingHabit habit;
    readonly int readBeforeMoves;
    readonly Func<ReadingKind, double[]> errorTimes;
    readonly FigureErrors? figures;
    readonly double[][]? tendencyPerFigure;

    public Evidence(AssessmentRequest request, Aeroplane aeroplane, Practice practice)
    {
        practice = practice.For(aeroplane.Airframe);
        readBeforeMoves = request.TestPoints.Where(point => point.MovedSince is { Count: > 0 }).Sum(point => point.Readings.Count);
        (Request, Aeroplane, this.practice) = (request, aeroplane, practice);
        habit = new(request);
        figures = FigureErrors.Of(aeroplane.Airframe);
        var times = new Dictionary<ReadingKind, double[]>();
        errorTimes = kind => times.TryGetValue(kind, out var known) ? known : times[kind] = practice.ErrorTimes(kind);
        var aside = new List<string>();
        Observations = [.. request.TestPoints.SelectMany((point, place) => OfFlight(point, place, aside)), .. GroundEvidence.Of(request, aeroplane, practice)];
        LeftAside = aside;
        Posterior = By(practice);
        Left = practice.IsAdjusted || readBeforeMoves > 0 ? By(practice.WithSomethingLeft()) : Posterior;
        Fit = Fit.OfBest(this);
        Diagnosis = new(this);
        Alike = AlikeCauses.In(this);

        var rigged = TendencyAt(FlightCase.AtReference(aeroplane));
        (TendencyKnown, TendencyGains, tendencyPerFigure) = (rigged.Known, rigged.Gains, rigged.PerFigure);
    }

    Posterior By(Practice practice) => new(
        Observations,
        [.. ModelledCause.All.Select(modelled => PriorOdds.Of(modelled.Cause, Request, practice))],
        [.. ModelledCause.Traces.Select(trace => new AmplitudePrior(practice.Prior(trace.Cause).Mean, PriorOdds.Spread(trace.Cause, Request, practice) * trace.SpreadShare))],
        practice.ModelError);

    public AssessmentRequest Request { get; }

    public Aeroplane Aeroplane { get; }

    public Practice Practice => practice;

    public IReadOnlyList<Observation> Observations { get; }

    /// <summary>Readings that could not be used, each as a sentence.</summary>
    public IReadOnlyList<string> LeftAside { get; }

    public Posterior Posterior { get; }

    /// <summary>
    /// By what the aeroplane moves. Of one that was adjusted something is left, and what is left is no cause that anybody looks for: only how it flies
    /// is known no better than was read. Of any other it is <see cref="Posterior"/>.
    /// </summary>
    public Posterior Left { get; }

    /// <summary>How well the most credible explanation agrees with what was read.</summary>
    public Fit Fit { get; }

    /// <summary>Which cause is behind what was seen.</summary>
    public Diagnosis Diagnosis { get; }

    /// <summary>Why damage is not ruled out, each as a sentence: as long as there is one nothing is moved and nobody is told to fly.</summary>
    public IReadOnlyList<string> DamageDoubt => doubt ??= [.. Assessment.DamageDoubt.Reasons(this)];

    IReadOnlyList<string>? doubt;

    /// <summary>Groups of credible causes that this evidence cannot tell apart.</summary>
    public IReadOnlyList<IReadOnlyList<Cause>> Alike { get; }

    /// <summary>Roll tendency at the reference from what is known, °/s.</summary>
    public double TendencyKnown { get; }

    /// <summary>Roll tendency at the reference for one unit of each amplitude, °/s; zero for what is not the aircraft's own or not the ball in the middle.</summary>
    public IReadOnlyList<double> TendencyGains { get; }

    /// <summary>Roll tendency at the reference, as it stands.</summary>
    public NormalMixture Tendency() => Tendency(0, 0);

    /// <summary>Its mean if a cause is present, °/s: what a correction of that cause is sized by, for one between two explanations would cure neither.</summary>
    public double TendencyIf(Cause cause)
    {
        var present = Posterior.Explanations.Where(explanation => explanation.Has((int)cause)).ToArray();
        return TendencyKnown + present.Sum(explanation => explanation.Weight * explanation.Mean(TendencyGains)) / present.Sum(explanation => explanation.Weight);
    }

    /// <summary>Roll tendency after a move that the model says changes it by so many °/s, the adjuster having so much of its modelled effect.</summary>
    public NormalMixture TendencyAfter(double modelledDegPerS, MeasuredEffect effect) => Tendency(modelledDegPerS * effect.Factor, modelledDegPerS * effect.Sd);

    /// <summary>Roll tendency at the reference with a change that is as good as its standard deviation.</summary>
    public NormalMixture Tendency(double changeDegPerS, double sdDegPerS) =>
        Tendency(new(TendencyKnown, TendencyGains, tendencyPerFigure), changeDegPerS, sdDegPerS);

    /// <summary>Roll tendency anywhere, with a change that is as good as its standard deviation.</summary>
    public NormalMixture Tendency(TendencyLine at, double changeDegPerS, double sdDegPerS)
    {
        const double floor = 0.02;
        var extra = floor * floor + Square(practice.ModelError * at.Known) + Square(sdDegPerS);
        return Left.Predict(at.Known + changeDegPerS, at.Gains, (explanation, _) => extra + FigureErrors.Variance(at.PerFigure, explanation));
    }

    /// <summary>Roll tendency in one flight.</summary>
    public TendencyLine TendencyAt(FlightCase at)
    {
        var known = at.Flight.Of(at.Load) + at.Flight.Slipstream;
        return new(
            at.Flight.RollTendencyDegPerS(known), ModelledCause.TendencyGains(at),
            figures?.Of(at.Flight, (flight, asymmetry) => flight.RollTendencyDegPerS(asymmetry), ModelledCause.OfTendency(at), known));
    }

    /// <summary>Of what the motion shows, beside what the amplitudes leave open: the model's error, and friction that may have left the wheel on either side.</summary>
    public double ModelVariance(Observation observation, Explanation explanation, double mean) =>
        Square(practice.ModelError * observation.ErrorOfKnown * mean) + Square(observation.FrictionGain * Posterior.Friction(explanation))
            + FigureErrors.Variance(observation.PerFigure, explanation);

    /// <summary>Whether this airframe's figures lead to numbers that an aeroplane can have: what is known, and each cause of its usual size, roll it no faster than <see cref="AbsurdDegPerS"/>.</summary>
    public bool IsComputable => Math.Abs(TendencyKnown) < AbsurdDegPerS
        && ModelledCause.Traces.Index().All(trace => Math.Abs(TendencyGains[trace.Index] * practice.Prior(trace.Item.Cause).Spread * trace.Item.SpreadShare) < AbsurdDegPerS);

    public static Refusal NotComputable { get; } = new("airframe-not-computable",
        "With this airframe's derivatives, inertias or wing no steady flight can be computed; look at the airframe's figures.");

    /// <summary>What the first test point's load adds to the tendency at the reference, °/s; null without a test point.</summary>
    public double? LoadContribution => Request.TestPoints.Count == 0 ? null
        : Aeroplane.Reference.RollTendencyDegPerS(Aeroplane.Reference.Of(Request.TestPoints[0].Load))
            - Aeroplane.Reference.RollTendencyDegPerS(Aeroplane.Reference.Of(Aeroplane.Airframe.Reference.Load));

    /// <summary>Whether a test point was flown with the feet following the ball.</summary>
    public bool TrustsTheBall => Request.TestPoints.Any(point =>
        point.Manoeuvre is Manoeuvre.ReleaseWheel or Manoeuvre.HoldNeutral or Manoeuvre.HoldStraight or Manoeuvre.BalanceFuel);

    /// <summary>
    /// How well the flight readings by themselves fix the roll tendency, °/s, one standard deviation: what a panel
    /// difference without any prior would be known to. Infinite when nothing flown bears on it.
    /// </summary>
    public double TendencyResolution
    {
        get
        {
            var flown = Observations.Where(observation => observation.IsFlown).ToArray();
            var panel = ModelledCause.Of(Cause.PanelIncidenceDifference).First;
            var noise = new ObservationNoise(flown, Posterior.MostCredible.Amplitudes, practice.ModelError);
            double[] gains = [.. flown.Select(observation => observation.Gains[panel])];
            return Math.Abs(TendencyGains[panel]) / Math.Sqrt(noise.Product(gains, gains));
        }
    }

    /// <summary>Fraction of what was seen in flight, load and slipstream taken out, that one cause by itself accounts for; null without a flight reading.</summary>
    public double? Explains(int cause)
    {
        var (first, count) = (ModelledCause.All[cause].First, ModelledCause.All[cause].Count);
        var probability = Posterior.Probability(cause);
        return Explained(
            observation => observation.Unexplained,
            observation => Enumerable.Range(first, count).Sum(trace => observation.Gains[trace] * Posterior.Expected(trace)) / probability);
    }

    /// <summary>The same for what is known: load and slipstream.</summary>
    public double? KnownExplains => Explained(observation => observation.Observed, observation => observation.Known);

    double? Explained(Func<Observation, double> seen, Func<Observation, double> predicted)
    {
        var flown = Observations.Where(observation => observation.IsFlown).ToArray();
        var all = flown.Sum(o => Square(seen(o)) / o.Variance);
        if (flown.Length == 0)
            return null;
        return all == 0 ? 0 : Math.Clamp(1 - flown.Sum(o => Square(seen(o) - predicted(o)) / o.Variance) / all, 0, 1);
    }

    /// <summary>How large a cause is, given that it is present.</summary>
    public NormalMixture Amplitude(Cause cause) => Posterior.Amplitude((int)cause, practice.Prior(cause).ScaleError);

    /// <summary>Whether anything observed, or looked for, would be different if the cause were present.</summary>
    public bool Bears(int cause)
    {
        var modelled = ModelledCause.All[cause];
        return Observations.Any(o => o.Gains.AsSpan(modelled.First, modelled.Count).ContainsAnyExcept(0.0) || modelled.Cause == Cause.ControlFriction && o.FrictionGain != 0)
            || Request.GroundChecks.OfType<ClearanceCheck>().Any(look => PriorOdds.Shows(look.Kind) == modelled.Cause);
    }

    /// <summary>One flight reading as a straight line in the amplitudes; null when the manoeuvre cannot show it.</summary>
    public Observation? Observe(TestPoint point, FlightPoint flight, Reading reading, ObservationSource source = default)
    {
        // What was burned to balance is the reading itself, so it is no part of what is known.
        var load = reading is FuelDifference ? point.Load with { FuelL = new Dictionary<string, double>() } : point.Load;
        double? Predicted(Asymmetry asymmetry) => PilotReading.Predict(flight, point.Manoeuvre, reading, asymmetry);
        var carried = flight.Of(load) + flight.Slipstream;
        if (Predicted(carried) is not { } known)
            return null;
        var at = new FlightCase(flight, load, Math.Abs(point.FlapDeg) > FlapUpDeg, point.LastInput);
        Asymmetry[] perUnit = [.. ModelledCause.Traces.Select(trace => trace.PerUnit(at))];
        double[] gains = [.. perUnit.Select(asymmetry => Predicted(asymmetry)!.Value)];
        var perFigure = figures?.Of(flight, (other, asymmetry) => PilotReading.Predict(other, point.Manoeuvre, reading, asymmetry)!.Value, perUnit, carried);
        var friction = point.LastInput is null ? Predicted(ModelledCause.Stuck(flight, Side.Right))!.Value : 0;
        var (value, variance, range) = ReadingNoise.Of(reading, point.Air, practice, habit);
        foreach (var moved in point.MovedSince ?? [])
        {
            var since = gains[ModelledCause.Of(moved.Cause).First] * moved.Amplitude;
            known -= since;
            foreach (var figure in perFigure ?? [])
                figure[^1] -= figure[ModelledCause.Of(moved.Cause).First] * moved.Amplitude;
            // Whatever the move did otherwise than modelled it did to every one of these readings alike: together they know it no better than one does.
            variance += readBeforeMoves * Square(practice.ModelError * since);
        }
        return new(source, FamilyOf(reading), value, known, gains, Math.Max(variance, LeastVariance), friction, range, errorTimes(reading.Kind), perFigure);
    }

    IEnumerable<Observation> OfFlight(TestPoint point, int place, List<string> aside)
    {
        var flight = Aeroplane.At(point);
        for (var i = 0; i < point.Readings.Count; i++)
        {
            var reading = point.Readings[i];
            var observation = Observe(point, flight, reading, new(place, i));
            if (observation is null)
                aside.Add($"A {Wire.Word(reading.Kind)} reading says nothing in {Wire.Word(point.Manoeuvre)}; it was not used.");
            else if (!IsNumber(observation))
                aside.Add($"The {Wire.Word(reading.Kind)} reading at {point.CasKt.ToString("0", CultureInfo.InvariantCulture)} kt cannot be computed with this airframe's figures; it was not used.");
            else
                yield return observation;
        }
    }

    /// <summary>Whether the motion at a point could be computed.</summary>
    public static bool IsNumber(Observation observation) => observation.Gains.Append(observation.Known).All(value => Math.Abs(value) < Absurd);

    static ReadingFamily FamilyOf(Reading reading) => reading switch
    {
        BankAfter or TimeToBank or RollRate or Rolls => ReadingFamily.Roll,
        BallReading or HeadingRate or HeadingChange => ReadingFamily.Yaw,
        WheelAngle or WheelForce => ReadingFamily.Wheel,
        _ => ReadingFamily.Fuel,
    };

    static double Square(double value) => value * value;
}

/// <summary>Roll tendency in one flight as a straight line in the amplitudes, °/s.</summary>
/// <param name="Known">From load and slipstream.</param>
/// <param name="PerFigure">Of <see cref="FigureErrors"/>; null where nothing was estimated.</param>
readonly record struct TendencyLine(double Known, IReadOnlyList<double> Gains, double[][]? PerFigure);
