namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Covariance of the observations under one explanation: reading variance, plus a model error in proportion to what is
/// predicted. Most of that variance is common to a family (a wrong damping moves every bank the same way), the rest is each
/// contribution's own. So the matrix is diagonal plus one outer product for each family, and inverts by hand.
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

    public ObservationNoise(IReadOnlyList<Observation> observations)
    {
        own = new double[observations.Count];
        common = new double[observations.Count];
        family = [.. observations.Select(observation => (int)observation.Family)];
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
            common[i] = modelError * Math.Sqrt(CommonShare) * sum;
            familySum[family[i]] += common[i] * common[i] / own[i];
        }
    }

    public double LogDeterminant => own.Sum(Math.Log) + familySum.Sum(Math.Log);

    /// <summary>xᵀ R⁻¹ y, by Sherman and Morrison in each family.</summary>
    public double Product(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
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
