using MathNet.Numerics.Distributions;

namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Readings of which only a range is known, inside one explanation: each is stood for by a Gaussian that is matched to it in
/// the company of all the others, again and again until they agree (expectation propagation; T. P. Minka, 2001, from memory).
/// A range's likelihood has one hump, so it settles.
/// </summary>
sealed class BandSites
{
    /// <summary>A part of each correction at a time, so that sites that lean on one another do not swing.</summary>
    const double Step = 0.7;
    const double NoPrecision = 1e-12;

    readonly Observation[] words;
    readonly double friction;
    readonly double modelError;
    readonly double[] precision;
    readonly double[] centre;
    readonly double[] logScale;

    public BandSites(Observation[] words, double friction, double modelError)
    {
        (this.words, this.friction, this.modelError) = (words, friction, modelError);
        precision = new double[words.Length];
        centre = new double[words.Length];
        logScale = new double[words.Length];
    }

    /// <summary>Adds the sites to the normal equations of the explanation's amplitudes; returns what they add to its log evidence.</summary>
    public double AddTo(double[] normal, double[] pull, int[] traces, IReadOnlyList<AmplitudePrior> priors)
    {
        var log = 0.0;
        for (var w = 0; w < words.Length; w++)
        {
            if (precision[w] < NoPrecision)
                continue;
            var gains = words[w].Gains;
            var left = centre[w] - words[w].Known - traces.Sum(trace => gains[trace] * priors[trace].Mean);
            log += (Math.Log(precision[w] / (2 * Math.PI)) - precision[w] * left * left) / 2;
            for (var i = 0; i < traces.Length; i++)
            {
                pull[i] += precision[w] * left * gains[traces[i]];
                for (var j = 0; j < traces.Length; j++)
                    normal[i * traces.Length + j] += precision[w] * gains[traces[i]] * gains[traces[j]];
            }
        }
        return log;
    }

    /// <summary>What the sites' own heights add to the log evidence; a site that is not matched yet counts as it would with certain amplitudes.</summary>
    public double LogScale(double[] amplitudes)
    {
        var log = 0.0;
        for (var w = 0; w < words.Length; w++)
            log += precision[w] < NoPrecision ? Match(w, words[w].Predicted(amplitudes), 0, OfFigures(w, amplitudes)).Log : logScale[w];
        return log;
    }

    /// <summary>Matches every site anew to the amplitudes that all of them together led to.</summary>
    public void Update(int[] traces, double[] amplitudes, double[] covariance)
    {
        for (var w = 0; w < words.Length; w++)
        {
            var variance = Explanation.Variance(traces, covariance, words[w].Gains);
            if (variance < NoPrecision)
                continue;
            var predicted = words[w].Predicted(amplitudes);
            // Without itself.
            var others = Math.Max(1 / variance - precision[w], 1e-9 / variance);
            var (cavity, mean) = (1 / others, (predicted / variance - precision[w] * centre[w]) / others);
            var (log, slope, bend) = Match(w, mean, cavity, OfFigures(w, amplitudes));
            var matched = bend / Math.Max(1 - cavity * bend, 1e-9);
            if (!(matched > NoPrecision))
                continue;
            var to = mean + slope / bend;
            var (was, natural) = (precision[w], precision[w] * centre[w]);
            precision[w] = was + Step * (matched - was);
            centre[w] = (natural + Step * (matched * to - natural)) / precision[w];
            var spread = cavity + 1 / precision[w];
            logScale[w] = log + (Math.Log(2 * Math.PI * spread) + (centre[w] - mean) * (centre[w] - mean) / spread) / 2;
        }
    }

    double OfFigures(int w, double[] amplitudes)
    {
        var sum = 0.0;
        foreach (var figure in words[w].PerFigure ?? [])
            sum += FigureErrors.Of(figure, amplitudes) is var error ? error * error : 0;
        return sum;
    }

    /// <summary>Log likelihood of the range for a prediction with a mean and variance, its slope and (positive) bend along the mean.</summary>
    /// <param name="ofFigures">Variance that estimated figures leave.</param>
    (double Log, double Slope, double Bend) Match(int w, double mean, double variance, double ofFigures)
    {
        var (from, to, sd) = words[w].Range!.Value;
        var scatter = words[w].FrictionGain * friction;
        var model = modelError * mean;
        var width = Math.Sqrt(variance + sd * sd + scatter * scatter + model * model + ofFigures);
        var (low, high) = ((from - mean) / width, (to - mean) / width);
        var inside = Inside(low, high);
        if (inside < 1e-280)
        {
            // So far out that only the nearer end counts, as a Gaussian about it.
            var away = low > 0 ? low : high;
            return (-away * away / 2 - Math.Log(Math.Abs(away) + 1) - 1, away / width, 1 / (width * width));
        }
        var (atLow, atHigh) = (Density(low), Density(high));
        var slope = (atLow - atHigh) / (width * inside);
        var bend = slope * slope - (Times(low, atLow) - Times(high, atHigh)) / (width * width * inside);
        return (Math.Log(inside), slope, Math.Max(bend, 1e-15));
    }

    /// <summary>On the side where the tail does not cancel.</summary>
    static double Inside(double low, double high) => low > 0
        ? Normal.CDF(0, 1, -low) - Normal.CDF(0, 1, -high)
        : Normal.CDF(0, 1, high) - Normal.CDF(0, 1, low);

    static double Density(double at) => double.IsInfinity(at) ? 0 : Math.Exp(-at * at / 2) / Math.Sqrt(2 * Math.PI);

    static double Times(double at, double density) => density == 0 ? 0 : at * density;
}
