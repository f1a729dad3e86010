namespace Rigging.Mechanics.Assessment;

/// <summary>
/// Covariance of the observations under one explanation: reading variance, plus a model error in proportion to what is
/// predicted. Half of that variance is common to a family (a wrong damping moves every bank the same way), half is each
/// contribution's own. So the matrix is diagonal plus one outer product for each family, and inverts by hand.
/// </summary>
sealed class ObservationNoise
{
    readonly double[] own;
    readonly double[] common;
    readonly int[] family;
    readonly double[] familySum;

    /// <param name="observations">What was observed.</param>
    /// <param name="amplitudes">Of every modelled cause under this explanation.</param>
    /// <param name="modelError">Standard deviation as a share of the prediction.</param>
    public ObservationNoise(IReadOnlyList<Observation> observations, double[] amplitudes, double modelError)
    {
        own = new double[observations.Count];
        common = new double[observations.Count];
        family = [.. observations.Select(observation => (int)observation.Family)];
        familySum = [.. Enum.GetValues<ReadingFamily>().Select(_ => 1.0)];
        var half = modelError * modelError / 2;
        for (var i = 0; i < observations.Count; i++)
        {
            var observation = observations[i];
            own[i] = observation.Variance;
            if (observation.Family == ReadingFamily.Ground)
                continue;
            var predicted = observation.Known;
            own[i] += half * observation.Known * observation.Known;
            for (var k = 0; k < amplitudes.Length; k++)
            {
                var part = observation.Gains[k] * amplitudes[k];
                predicted += part;
                own[i] += half * part * part;
            }
            common[i] = Math.Sqrt(half) * predicted;
            familySum[family[i]] += common[i] * common[i] / own[i];
        }
    }

    public double LogDeterminant => own.Sum(Math.Log) + familySum.Sum(Math.Log);

    /// <summary>xᵀ R⁻¹ y, by Sherman and Morrison in each family.</summary>
    public double Product(Func<int, double> x, Func<int, double> y)
    {
        var (sum, alongX, alongY) = (0.0, new double[familySum.Length], new double[familySum.Length]);
        for (var i = 0; i < own.Length; i++)
        {
            var (xi, yi) = (x(i), y(i));
            sum += xi * yi / own[i];
            alongX[family[i]] += common[i] * xi / own[i];
            alongY[family[i]] += common[i] * yi / own[i];
        }
        for (var f = 0; f < familySum.Length; f++)
            sum -= alongX[f] * alongY[f] / familySum[f];
        return sum;
    }
}
