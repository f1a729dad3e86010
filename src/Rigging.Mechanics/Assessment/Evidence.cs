using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>Everything that one request says about the causes, as numbers, and what had to be left aside.</summary>
sealed class Evidence
{
    const double RadPerDeg = Math.PI / 180;

    /// <summary>Degrees, widths or newtons per unit of a cause that only a broken airframe file leads to; NaN is no less.</summary>
    const double Absurd = 1e6;

    /// <summary>Nobody reads closer, whatever a stated standard deviation says.</summary>
    const double LeastVariance = 1e-6;

    /// <summary>Flap up within this, degrees.</summary>
    const double FlapUpDeg = 0.5;

    readonly Practice practice;

    public Evidence(AssessmentRequest request, Aeroplane aeroplane, Practice practice)
    {
        practice = practice.WidenedBy(aeroplane.Airframe);
        (Request, Aeroplane, this.practice) = (request, aeroplane, practice);
        var aside = new List<string>();
        Observations =
        [
            .. request.TestPoints.SelectMany(point => OfFlight(point, aside)),
            .. request.GroundChecks.OfType<AngleCheck>().Select(OfGround).OfType<Observation>(),
        ];
        LeftAside = aside;
        Priors = [.. ModelledCause.All.Select(modelled => PriorOdds.Of(modelled.Cause, request, practice))];
        Posterior = new(Observations, Priors, practice.ModelError);

        var reference = aeroplane.Reference;
        var rigged = aeroplane.Airframe.Reference.Load;
        TendencyKnown = reference.RollTendencyDegPerS(Known(reference, rigged) with { BallOffsetWidths = 0 });
        TendencyGains = [.. ModelledCause.All.Select(cause =>
            cause.BelongsToAircraft ? reference.RollTendencyDegPerS(cause.PerUnit(reference, rigged)) : 0)];
    }

    public AssessmentRequest Request { get; }

    public Aeroplane Aeroplane { get; }

    public Practice Practice => practice;

    public IReadOnlyList<Observation> Observations { get; }

    /// <summary>Readings that could not be used, each as a sentence.</summary>
    public IReadOnlyList<string> LeftAside { get; }

    public IReadOnlyList<(double Probability, double Spread)> Priors { get; }

    public Posterior Posterior { get; }

    /// <summary>Roll tendency at the reference from what is known, °/s.</summary>
    public double TendencyKnown { get; }

    /// <summary>Roll tendency at the reference for one unit of each modelled cause, °/s; zero for what is not the aircraft's own.</summary>
    public IReadOnlyList<double> TendencyGains { get; }

    /// <summary>Roll tendency at the reference, after a change of so many °/s by an adjuster whose effect is itself only modelled.</summary>
    public NormalMixture Tendency(double changeDegPerS = 0)
    {
        const double floor = 0.02;
        var extra = floor * floor + Square(practice.ModelError * TendencyKnown) + Square(practice.ModelError * changeDegPerS);
        return Posterior.Predict(TendencyKnown + changeDegPerS, TendencyGains, _ => extra);
    }

    /// <summary>Whether this airframe's figures lead to numbers at all.</summary>
    public bool IsComputable => TendencyGains.Append(TendencyKnown).All(value => Math.Abs(value) < Absurd);

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
            var flown = Observations.Where(observation => observation.Family != ReadingFamily.Ground).ToArray();
            var panel = ModelledCause.IndexOf(Cause.PanelIncidenceDifference);
            var noise = new ObservationNoise(flown, Posterior.MostCredible.Amplitudes, practice.ModelError);
            var precision = noise.Product(i => flown[i].Gains[panel], i => flown[i].Gains[panel]);
            return Math.Abs(TendencyGains[panel]) / Math.Sqrt(precision);
        }
    }

    /// <summary>Fraction of what was seen in flight, load and slipstream taken out, that one cause by itself accounts for; null without a flight reading.</summary>
    public double? Explains(int cause)
    {
        var amplitude = Posterior.Amplitude(cause).Mean;
        return Explained(observation => observation.Unexplained, observation => observation.Gains[cause] * amplitude);
    }

    /// <summary>The same for what is known: load and slipstream.</summary>
    public double? KnownExplains => Explained(observation => observation.Observed, observation => observation.Known);

    double? Explained(Func<Observation, double> seen, Func<Observation, double> predicted)
    {
        var flown = Observations.Where(observation => observation.Family != ReadingFamily.Ground).ToArray();
        var all = flown.Sum(o => Square(seen(o)) / o.Variance);
        if (flown.Length == 0)
            return null;
        return all == 0 ? 0 : Math.Clamp(1 - flown.Sum(o => Square(seen(o) - predicted(o)) / o.Variance) / all, 0, 1);
    }

    /// <summary>Whether anything observed would be different if the cause were present.</summary>
    public bool Bears(int cause) => Observations.Any(observation => observation.Gains[cause] != 0);

    /// <summary>Load, slipstream and what was measured of things that are not assessed.</summary>
    public Asymmetry Known(FlightPoint point, Load load)
    {
        var known = point.Of(load) + point.Slipstream;
        foreach (var check in Request.GroundChecks)
            known += check switch
            {
                AngleCheck { Kind: GroundCheckKind.TipIncidenceDifference } tip => tip.Deg * RadPerDeg * point.TipIncidence,
                AngleCheck { Kind: GroundCheckKind.AileronNeutralOffset } neutral => new(AileronNeutralRad: neutral.Deg * RadPerDeg),
                BallOffsetCheck ball => new(BallOffsetWidths: ball.Widths),
                _ => default,
            };
        return known;
    }

    /// <summary>One flight reading as a straight line in the causes; null when the manoeuvre cannot show it.</summary>
    public Observation? Observe(TestPoint point, FlightPoint flight, Reading reading)
    {
        // What was burned to balance is the reading itself, so it is no part of what is known.
        var load = reading is FuelDifference ? point.Load with { FuelL = new Dictionary<string, double>() } : point.Load;
        if (PilotReading.Predict(flight, point.Manoeuvre, reading, Known(flight, load)) is not { } known)
            return null;
        var gains = ModelledCause.All
            .Select(cause => PilotReading.Predict(flight, point.Manoeuvre, reading, cause.PerUnit(flight, load))!.Value)
            .ToArray();
        var (value, variance) = ReadingNoise.Of(reading, point.Air, practice);
        return new(FamilyOf(reading), value, known, gains, Math.Max(variance, LeastVariance));
    }

    IEnumerable<Observation> OfFlight(TestPoint point, List<string> aside)
    {
        if (Math.Abs(point.FlapDeg) > FlapUpDeg)
        {
            aside.Add($"The test point with {point.FlapDeg.ToString("0.#", CultureInfo.InvariantCulture)}° of flap was not used: flap lowered is not modelled yet.");
            yield break;
        }
        var flight = Aeroplane.At(point);
        foreach (var reading in point.Readings)
        {
            var observation = Observe(point, flight, reading);
            if (observation is null)
                aside.Add($"A {Wire.Word(reading.Kind)} reading says nothing in {Wire.Word(point.Manoeuvre)}; it was not used.");
            else if (!observation.Gains.Append(observation.Known).All(value => Math.Abs(value) < Absurd))
                aside.Add($"The {Wire.Word(reading.Kind)} reading at {point.CasKt.ToString("0", CultureInfo.InvariantCulture)} kt cannot be computed with this airframe's figures; it was not used.");
            else
                yield return observation;
        }
    }

    Observation? OfGround(AngleCheck check)
    {
        var cause = ModelledCause.All.ToList().FindIndex(modelled => modelled.MeasuredBy == check.Kind);
        if (cause < 0)
            return null;
        var gains = new double[ModelledCause.All.Count];
        gains[cause] = 1;
        var sd = check.SdDeg ?? practice.GroundChecks.Single(c => c.Check == check.Kind).Sd;
        return new(ReadingFamily.Ground, check.Deg, 0, gains, Math.Max(Square(sd), LeastVariance));
    }

    static ReadingFamily FamilyOf(Reading reading) => reading switch
    {
        BankAfter or TimeToBank or RollRate or Rolls => ReadingFamily.Roll,
        BallReading or HeadingRate or HeadingChange => ReadingFamily.Yaw,
        WheelAngle or WheelForce => ReadingFamily.Wheel,
        _ => ReadingFamily.Fuel,
    };

    static double Square(double value) => value * value;
}
