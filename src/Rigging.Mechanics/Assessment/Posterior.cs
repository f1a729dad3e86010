namespace Rigging.Mechanics.Assessment;

/// <summary>What is thought of one amplitude before anything was observed, given that its cause is present.</summary>
readonly record struct AmplitudePrior(double Mean, double Spread);

/// <summary>One explanation: which causes are present, how credible that is, and how large each is then.</summary>
/// <param name="Present">Places in <see cref="ModelledCause.All"/>, ascending; empty when nothing is wrong.</param>
/// <param name="Traces">Places in <see cref="ModelledCause.Traces"/> of their amplitudes, ascending.</param>
/// <param name="Amplitudes">Mean of every amplitude; zero for those not present.</param>
/// <param name="Covariance">Of the present ones, in their order, row after row.</param>
sealed record Explanation(int[] Present, int[] Traces, double Weight, double[] Amplitudes, double[] Covariance)
{
    public bool Has(int cause) => Array.IndexOf(Present, cause) >= 0;

    public double Variance(IReadOnlyList<double> gains) => Variance(Traces, Covariance, gains);

    /// <summary>Of a straight line in the amplitudes of some traces, of which this is the covariance.</summary>
    public static double Variance(int[] traces, double[] covariance, IReadOnlyList<double> gains)
    {
        Span<double> own = stackalloc double[traces.Length];
        for (var i = 0; i < own.Length; i++)
            own[i] = gains[traces[i]];
        var sum = 0.0;
        for (var i = 0; i < own.Length; i++)
            for (var j = 0; j < own.Length; j++)
                sum += own[i] * covariance[i * own.Length + j] * own[j];
        return sum;
    }

    public double Mean(IReadOnlyList<double> gains)
    {
        var sum = 0.0;
        foreach (var trace in Traces)
            sum += gains[trace] * Amplitudes[trace];
        return sum;
    }
}

/// <summary>
/// What the observations make of the causes: every set of up to three causes weighed by its evidence, in closed form where
/// numbers were read and by <see cref="BandSites"/> where only words were. The model error depends on what a set predicts,
/// so each set is solved a few times over.
/// </summary>
sealed class Posterior
{
    const int MostCauses = 3;
    const int Passes = 3;
    const int PassesWithWords = 8;

    readonly Observation[] numbers;
    readonly Observation[] words;
    readonly double[][] gains;
    readonly IReadOnlyList<AmplitudePrior> priors;
    readonly double modelError;
    readonly ObservationNoise noise;

    /// <param name="observations">Everything observed.</param>
    /// <param name="probabilities">Of each cause being present, before any observation.</param>
    /// <param name="priors">Of each amplitude.</param>
    /// <param name="modelError">Standard deviation of the model as a share of what it predicts.</param>
    public Posterior(IReadOnlyList<Observation> observations, IReadOnlyList<double> probabilities, IReadOnlyList<AmplitudePrior> priors, double modelError)
    {
        (this.priors, this.modelError) = (priors, modelError);
        numbers = [.. observations.Where(observation => observation.Range is null)];
        words = [.. observations.Where(observation => observation.Range is not null)];
        gains = [.. priors.Select((_, trace) => numbers.Select(observation => observation.Gains[trace]).ToArray())];
        noise = new(numbers);

        var scored = Subsets(probabilities.Count).Select(present => Explain(present, probabilities)).ToArray();
        var best = scored.Max(s => s.LogWeight);
        var total = scored.Sum(s => Math.Exp(s.LogWeight - best));
        // Not impossible, only incredible: a weight that underflows to nothing would claim more than anybody knows.
        Explanations = [.. scored.Select(s => s.Explanation with { Weight = Math.Max(Math.Exp(s.LogWeight - best) / total, 1e-12) })];
    }

    public IReadOnlyList<Explanation> Explanations { get; }

    public Explanation MostCredible => Explanations.MaxBy(explanation => explanation.Weight)!;

    /// <summary>Of a cause, by its place in the catalogue.</summary>
    public double Probability(int cause) => Math.Min(Explanations.Where(e => e.Has(cause)).Sum(e => e.Weight), 1 - 1e-12);

    /// <summary>How large a cause is, given that it is present.</summary>
    /// <param name="cause">Its place in the catalogue.</param>
    /// <param name="scaleError">By how much all its effects are uncertain together: an effect seen too small by that share is a cause that much larger, and the mean of one over the share is more than one.</param>
    public NormalMixture Amplitude(int cause, double scaleError)
    {
        var trace = ModelledCause.All[cause].First;
        var share = scaleError * scaleError;
        return new(Explanations.Where(e => e.Has(cause)).Select(e =>
        {
            var at = Array.IndexOf(e.Traces, trace);
            var mean = e.Amplitudes[trace] * (1 + share);
            return (e.Weight, mean, e.Covariance[at * e.Traces.Length + at] + share * mean * mean);
        }));
    }

    /// <summary>Mean of an amplitude, nothing when its cause is absent.</summary>
    public double Expected(int trace) => Explanations.Sum(e => e.Weight * e.Amplitudes[trace]);

    /// <summary>Any number that is a straight line in the amplitudes; the extra variance may depend on the explanation and its mean.</summary>
    public NormalMixture Predict(double known, IReadOnlyList<double> gains, Func<Explanation, double, double> extraVariance) =>
        new(Explanations.Select(e =>
        {
            var mean = known + e.Mean(gains);
            return (e.Weight, mean, e.Variance(gains) + extraVariance(e, mean));
        }));

    /// <summary>Root mean square of friction in an explanation, newtons; nothing when it is not among its causes.</summary>
    public double Friction(Explanation explanation) => explanation.Has((int)Contract.Cause.ControlFriction) ? RmsFriction : 0;

    double RmsFriction
    {
        get
        {
            var (mean, spread) = priors[ModelledCause.Of(Contract.Cause.ControlFriction).First];
            return Math.Sqrt(mean * mean + spread * spread);
        }
    }

    (double LogWeight, Explanation Explanation) Explain(int[] present, IReadOnlyList<double> probabilities)
    {
        var traces = present.SelectMany(cause => Enumerable.Range(ModelledCause.All[cause].First, ModelledCause.All[cause].Count)).ToArray();
        var friction = present.Contains((int)Contract.Cause.ControlFriction) ? RmsFriction : 0;
        var amplitudes = new double[priors.Count];
        var sites = new BandSites(words, friction, modelError);
        var (size, logWeight) = (traces.Length, 0.0);
        var (covariance, precision, pull, mean) = (new double[size * size], new double[size * size], new double[size], new double[size]);
        var left = Left(traces);
        var passes = words.Length > 0 ? PassesWithWords : size == 0 ? 1 : Passes;
        for (var pass = 0; pass < passes; pass++)
        {
            noise.Suppose(numbers, amplitudes, friction, modelError);
            logWeight = -(noise.LogDeterminant + noise.Product(left, left)) / 2;
            if (size > 0)
            {
                Normal(traces, left, precision, pull);
                logWeight += sites.AddTo(precision, pull, traces, priors);
                logWeight -= FewUnknowns.Factorise(precision, size) / 2;
                pull.CopyTo(mean, 0);
                FewUnknowns.Solve(precision, size, mean);
                for (var i = 0; i < size; i++)
                {
                    logWeight += pull[i] * mean[i] / 2 - Math.Log(priors[traces[i]].Spread);
                    amplitudes[traces[i]] = priors[traces[i]].Mean + mean[i];
                }
                if (pass == passes - 1 || words.Length > 0)
                    FewUnknowns.Invert(precision, size, covariance);
            }
            logWeight += sites.LogScale(amplitudes);
            // The last weighing stands with the sites it was made with.
            if (pass < passes - 1)
                sites.Update(traces, amplitudes, covariance);
        }
        for (var cause = 0; cause < probabilities.Count; cause++)
            logWeight += Math.Log(present.Contains(cause) ? probabilities[cause] : 1 - probabilities[cause]);
        return (logWeight, new(present, traces, 0, amplitudes, covariance));
    }

    /// <summary>What the causes' mean amplitudes leave of what was read.</summary>
    double[] Left(int[] traces)
    {
        var left = new double[numbers.Length];
        for (var i = 0; i < left.Length; i++)
        {
            left[i] = numbers[i].Unexplained;
            foreach (var trace in traces)
                left[i] -= gains[trace][i] * priors[trace].Mean;
        }
        return left;
    }

    void Normal(int[] traces, double[] left, double[] precision, double[] pull)
    {
        var size = traces.Length;
        Span<double> along = stackalloc double[(size + 1) * noise.Figures];
        var ofLeft = Along(along, size, left);
        for (var i = 0; i < size; i++)
        {
            var ofOne = Along(along, i, gains[traces[i]]);
            pull[i] = noise.Product(gains[traces[i]], ofOne, left, ofLeft);
            for (var j = 0; j <= i; j++)
                precision[i * size + j] = precision[j * size + i] =
                    noise.Product(gains[traces[i]], ofOne, gains[traces[j]], along.Slice(j * noise.Figures, noise.Figures));
            precision[i * size + i] += 1 / (priors[traces[i]].Spread * priors[traces[i]].Spread);
        }
    }

    Span<double> Along(Span<double> all, int place, double[] x)
    {
        var along = all.Slice(place * noise.Figures, noise.Figures);
        noise.Along(x, along);
        return along;
    }

    static IEnumerable<int[]> Subsets(int count)
    {
        for (var bits = 0; bits < 1 << count; bits++)
            if (System.Numerics.BitOperations.PopCount((uint)bits) <= MostCauses)
                yield return [.. Enumerable.Range(0, count).Where(cause => (bits >> cause & 1) == 1)];
    }
}
