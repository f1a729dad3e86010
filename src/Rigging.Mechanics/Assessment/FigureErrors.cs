using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// What an airframe's estimated figures leave open of everything that is computed from them: each prediction is worked out with each
/// figure larger and smaller, once for each flight. All predictions of one airframe err by the same figures.
/// </summary>
/// <remarks>
/// Half the difference over a step of one standard deviation either way: what is not straight counts as far as the figure may be out.
/// </remarks>
sealed class FigureErrors
{
    /// <summary>
    /// A published derivative is good to so much, and that much the usual model error allows already (practice.json: 10 to 20 %); only
    /// what an estimate is worse counts here.
    /// </summary>
    const double Published = 0.15;

    /// <summary>A figure is not tried at less than half of itself: beyond, the straight line is continued.</summary>
    const double WidestStep = 0.5;

    /// <summary>Nor where no steady flight is left: the step is halved as often as this.</summary>
    const int Halvings = 4;

    static readonly Asymmetry[] Units =
    [
        new(Rolling: 1), new(Yawing: 1), new(WeightNm: 1), new(AileronFloatRad: 1), new(AileronNeutralRad: 1), new(RudderOffsetRad: 1),
        new(BallOffsetWidths: 1),
    ];

    readonly Uncertain[] figures, ofSlipstream;
    readonly Dictionary<FlightPoint, Pair[]> flights = [];

    FigureErrors(Uncertain[] uncertain)
    {
        figures = [.. uncertain.Where(figure => !figure.IsOfSlipstream)];
        ofSlipstream = [.. uncertain.Where(figure => figure.IsOfSlipstream)];
    }

    /// <summary>Null where no figure is known worse than a published one.</summary>
    public static FigureErrors? Of(Airframe airframe)
    {
        Uncertain[] figures = [.. (airframe.Estimated ?? []).Select(Uncertain.Of).Where(figure => figure.Sd > 0)];
        return figures.Length == 0 ? null : new(figures);
    }

    /// <summary>For each figure what one standard deviation adds to what a unit of each amplitude does, and last to what is known.</summary>
    /// <param name="predict">What is computed, a straight line in the asymmetry.</param>
    public double[][] Of(
        FlightPoint flight, Func<FlightPoint, Asymmetry, double> predict, IReadOnlyList<Asymmetry> perUnit, Asymmetry known)
    {
        if (!flights.TryGetValue(flight, out var pairs))
            flights[flight] = pairs = [.. figures.Select(figure => figure.About(flight))];
        return
        [
            .. pairs.Select(pair =>
            {
                double[] slopes = [.. Units.Select(unit => pair.Times * (predict(pair.More, unit) - predict(pair.Less, unit)) / 2)];
                return (double[])[.. perUnit.Select(asymmetry => Along(slopes, asymmetry)), Along(slopes, known)];
            }),
            .. ofSlipstream.Select(figure =>
            {
                var errors = new double[perUnit.Count + 1];
                errors[^1] = predict(flight, figure.Sd * figure.Of(flight.Slipstream));
                // Where there is more of it the amplitude says how much more yaw; how much roll goes with that is as uncertain again.
                if (figure.Figure == EstimableFigure.SlipstreamClAtFullPower)
                    errors[ModelledCause.Of(Cause.Slipstream).First] = errors[^1];
                return errors;
            }),
        ];
    }

    /// <summary>Variance that the figures leave under an explanation.</summary>
    public static double Variance(double[][]? perFigure, Explanation explanation)
    {
        var sum = 0.0;
        foreach (var figure in perFigure ?? [])
        {
            var error = figure[^1];
            foreach (var trace in explanation.Traces)
                error += figure[trace] * explanation.Amplitudes[trace];
            sum += error * error;
        }
        return sum;
    }

    /// <summary>By how much one standard deviation of a figure changes a prediction with these amplitudes.</summary>
    public static double Of(double[] figure, double[] amplitudes)
    {
        var error = figure[^1];
        for (var k = 0; k < amplitudes.Length; k++)
            if (amplitudes[k] != 0)
                error += figure[k] * amplitudes[k];
        return error;
    }

    static double Along(double[] slopes, Asymmetry asymmetry) =>
        slopes[0] * asymmetry.Rolling + slopes[1] * asymmetry.Yawing + slopes[2] * asymmetry.WeightNm
            + slopes[3] * asymmetry.AileronFloatRad + slopes[4] * asymmetry.AileronNeutralRad + slopes[5] * asymmetry.RudderOffsetRad + slopes[6] * asymmetry.BallOffsetWidths;

    /// <param name="Sd">Standard deviation beyond that of a published figure, as a share.</param>
    readonly record struct Uncertain(EstimableFigure Figure, double Sd)
    {
        public static Uncertain Of(EstimatedFigure figure) =>
            new(figure.Figure, Math.Sqrt(Math.Max(0, Math.Pow(figure.AccuracyPercent / 100, 2) - Published * Published)));

        /// <summary>Such a figure is no part of how the aeroplane answers, but of what it answers to.</summary>
        public bool IsOfSlipstream => Figure is EstimableFigure.SlipstreamClAtFullPower or EstimableFigure.SlipstreamCnAtFullPower;

        /// <summary>Its part of the slipstream.</summary>
        public Asymmetry Of(Asymmetry slipstream) => Figure == EstimableFigure.SlipstreamClAtFullPower
            ? new(Rolling: slipstream.Rolling)
            : new(Yawing: slipstream.Yawing);

        public Pair About(FlightPoint flight)
        {
            var step = Math.Min(Sd, WidestStep);
            for (var halved = 0; ; halved++, step /= 2)
            {
                var (more, less) = (flight.With(Figure, 1 + step), flight.With(Figure, 1 - step));
                if (Pair.Of(more, less, Sd / step) is { } pair)
                    return pair;
                if (halved == Halvings)
                    return Pair.OfOneSide(flight, more, less, Sd / step);
            }
        }
    }

    /// <param name="More">With the figure a step larger.</param>
    /// <param name="Less">And smaller.</param>
    /// <param name="Times">How often the step one standard deviation is.</param>
    readonly record struct Pair(FlightPoint More, FlightPoint Less, double Times)
    {
        /// <summary>Null where either leaves no steady flight.</summary>
        public static Pair? Of(FlightPoint more, FlightPoint less, double times) =>
            Steady(more) && Steady(less) ? new(more, less, times) : null;

        /// <summary>On the side on which there is one, against the flight itself; nothing where there is none.</summary>
        public static Pair OfOneSide(FlightPoint flight, FlightPoint more, FlightPoint less, double times) =>
            Steady(more) ? new(more, flight, 2 * times)
            : Steady(less) ? new(flight, less, 2 * times)
            : new(flight, flight, 0);

        static bool Steady(FlightPoint flight) =>
            double.IsFinite(flight.Held.Straight(default).AileronRad) && double.IsFinite(flight.Held.Level(default).AileronRad);
    }
}
