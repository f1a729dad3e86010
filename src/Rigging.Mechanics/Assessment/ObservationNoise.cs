namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Covariance of the observations under one explanation: reading variance, plus a model error in proportion to what is
/// predicted. Most of that variance is common to a family (a wrong damping moves every bank the same way), the rest is each
/// contribution's own. So the matrix is diagonal plus one outer product for each family, and inverts by hand. Where figures of the
/// airframe are estimates, each adds an outer product over everything that was read, which is taken out by Woodbury's identity.
/// </summary>
sealed class ObservationNoise
{
    static readonly int Families = Enum.GetValues<ReadingFamily>().Length;

    /// <summary>Of the model error's variance, what all of a family have in common.</summary>
    const double CommonShare = 0.7;

    readonly double[] own;
    readonly double[] common;
    readonly int[] family;
    readonly double[] familySum = new double[Families];
    readonly int figures;
    double logCapacity;
    readonly double[] figureErrors, whitening, capacity;

    public ObservationNoise(IReadOnlyList<Observation> observations)
    {
        own = new double[observations.Count];
        common = new double[observations.Count];
        family = [.. observations.Select(observation => (int)observation.Family)];
        figures = observations.Select(observation => observation.PerFigure?.Length ?? 0).DefaultIfEmpty(0).Max();
        (figureErrors, whitening, capacity) = (new double[figures * own.Length], new double[figures * own.Length], new double[figures * figures]);
    }

    /// <param name="observations">What was observed, of which the noise was made.</param>
    /// <param name="amplitudes">Of every trace under this explanation.</param>
    /// <param name="modelError">Standard deviation as a share of the prediction.</param>
    public ObservationNoise(IReadOnlyList<Observation> observations, double[] amplitudes, double modelError)
        : this(observations) => Suppose(observations, amplitudes, 0, modelError);

    /// <summary>Sets the covariance for other amplitudes.</summary>
    /// <param name="friction">Root mean square of friction, newtons, where the last input is not known.</param>
    public void Suppose(IReadOnlyList<Observation> observations, double[] amplitudes, double friction, double modelError)
    {
        Array.Fill(familySum, 1);
        var half = modelError * modelError * (1 - CommonShare);
        for (var i = 0; i < own.Length; i++)
        {
            var observation = observations[i];
            var scatter = observation.FrictionGain * friction;
            own[i] = observation.Variance + scatter * scatter;
            var sum = observation.Known * observation.ErrorOfKnown;
            own[i] += half * sum * sum;
            for (var k = 0; k < amplitudes.Length; k++)
            {
                if (amplitudes[k] == 0)
                    continue;
                var part = observation.Gains[k] * amplitudes[k] * observation.ErrorOf(k);
                sum += part;
                own[i] += half * part * part;
            }
            for (var f = 0; f < figures; f++)
                own[i] += SupposeFigure(observation, f, i, amplitudes);
            common[i] = modelError * Math.Sqrt(CommonShare) * sum;
            familySum[family[i]] += common[i] * common[i] / own[i];
        }
        if (figures > 0)
            TakeOutFigures();
    }

    public double LogDeterminant => own.Sum(Math.Log) + familySum.Sum(Math.Log) + logCapacity;

    /// <summary>How many numbers <see cref="Along"/> gives.</summary>
    public int Figures => figures;

    /// <summary>What the figures take off any product with x; worked out once for each x.</summary>
    public void Along(ReadOnlySpan<double> x, Span<double> along)
    {
        for (var f = 0; f < figures; f++)
            along[f] = Dot(whitening.AsSpan(f * own.Length, own.Length), x);
    }

    /// <summary>xᵀ R⁻¹ y.</summary>
    public double Product(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Span<double> alongX = stackalloc double[figures], alongY = stackalloc double[figures];
        Along(x, alongX);
        Along(y, alongY);
        return Product(x, alongX, y, alongY);
    }

    /// <summary>The same where <see cref="Along"/> of both is known.</summary>
    public double Product(ReadOnlySpan<double> x, ReadOnlySpan<double> alongX, ReadOnlySpan<double> y, ReadOnlySpan<double> alongY)
    {
        var sum = WithoutFigures(x, y);
        for (var f = 0; f < figures; f++)
            sum -= alongX[f] * alongY[f];
        return sum;
    }

    /// <summary>Keeps the part of a figure's error that all observations share; returns the variance that is this one's own.</summary>
    double SupposeFigure(Observation observation, int figure, int place, double[] amplitudes)
    {
        var error = observation.PerFigure is { } perFigure ? FigureErrors.Of(perFigure[figure], amplitudes) : 0;
        figureErrors[figure * own.Length + place] = Math.Sqrt(CommonShare) * error;
        return (1 - CommonShare) * error * error;
    }

    /// <summary>
    /// With U the figures' errors, a row each, and B the rest: 1 + U B⁻¹ Uᵀ = L Lᵀ, and what is taken off xᵀ B⁻¹ y is (W x)·(W y)
    /// with W = L⁻¹ U B⁻¹.
    /// </summary>
    void TakeOutFigures()
    {
        var count = own.Length;
        for (var f = 0; f < figures; f++)
        {
            var row = whitening.AsSpan(f * count, count);
            InverseWithoutFigures(figureErrors.AsSpan(f * count, count), row);
            for (var g = 0; g <= f; g++)
                capacity[f * figures + g] = capacity[g * figures + f] = Dot(row, figureErrors.AsSpan(g * count, count)) + (f == g ? 1 : 0);
        }
        logCapacity = FewUnknowns.Factorise(capacity, figures);
        for (var f = 0; f < figures; f++)
        {
            var row = whitening.AsSpan(f * count, count);
            for (var g = 0; g < f; g++)
                Subtract(row, capacity[f * figures + g], whitening.AsSpan(g * count, count));
            var pivot = capacity[f * figures + f];
            for (var i = 0; i < count; i++)
                row[i] /= pivot;
        }
    }

    /// <summary>B⁻¹ x.</summary>
    void InverseWithoutFigures(ReadOnlySpan<double> x, Span<double> inverse)
    {
        Span<double> along = stackalloc double[Families];
        for (var i = 0; i < own.Length; i++)
            along[family[i]] += common[i] * x[i] / own[i];
        for (var i = 0; i < own.Length; i++)
            inverse[i] = (x[i] - common[i] * along[family[i]] / familySum[family[i]]) / own[i];
    }

    static double Dot(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var sum = 0.0;
        for (var i = 0; i < x.Length; i++)
            sum += x[i] * y[i];
        return sum;
    }

    static void Subtract(Span<double> from, double times, ReadOnlySpan<double> row)
    {
        for (var i = 0; i < from.Length; i++)
            from[i] -= times * row[i];
    }

    /// <summary>xᵀ B⁻¹ y, by Sherman and Morrison in each family.</summary>
    double WithoutFigures(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        Span<double> alongX = stackalloc double[Families], alongY = stackalloc double[Families];
        var sum = 0.0;
        for (var i = 0; i < own.Length; i++)
        {
            sum += x[i] * y[i] / own[i];
            alongX[family[i]] += common[i] * x[i] / own[i];
            alongY[family[i]] += common[i] * y[i] / own[i];
        }
        for (var f = 0; f < Families; f++)
            sum -= alongX[f] * alongY[f] / familySum[f];
        return sum;
    }
}
