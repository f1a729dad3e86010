using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

/// <summary>Readings of which only a range is known, against integration by brute force.</summary>
public class WordsTests
{
    const double Spread = 0.25;
    const double Present = 0.5;

    static readonly int Panel = (int)Cause.PanelIncidenceDifference;
    static readonly int PanelTrace = ModelledCause.Of(Cause.PanelIncidenceDifference).First;

    public static TheoryData<double, double, double> Ranges => new()
    {
        { -3, -0.5, 0.4 }, { double.NegativeInfinity, -3, 0.4 }, { -0.5, 0.5, 0.4 }, { 0, 0.5, 0.8 }, { 3, double.PositiveInfinity, 0.2 },
    };

    /// <summary>
    /// One cause and two words of it: probability, mean and spread by a sum over a fine grid. A range cut off sharply is no Gaussian, so
    /// the matched one is a few per cent out; probability and mean keep to 3 %, the spread to 5 % of what it was before, which no decision turns on.
    /// </summary>
    [Theory, MemberData(nameof(Ranges))]
    public void Words_weigh_as_integration_by_brute_force_says(double from, double to, double sd)
    {
        const double perDegree = -8;
        Observation[] words = [Word(perDegree, new(from, to, sd)), Word(perDegree * 0.8, new(Math.Max(from, -6), to, sd))];

        var posterior = Only(words);

        var (evidence, first, second) = (0.0, 0.0, 0.0);
        const double step = 0.0005;
        for (var a = -8 * Spread; a <= 8 * Spread; a += step)
        {
            var density = Math.Exp(-a * a / (2 * Spread * Spread)) / (Spread * Math.Sqrt(2 * Math.PI)) * step * words.Aggregate(1.0, (product, word) => product * Inside(word, a));
            evidence += density;
            first += a * density;
            second += a * a * density;
        }
        var without = words.Aggregate(1.0, (product, word) => product * Inside(word, 0));
        var probability = Present * evidence / (Present * evidence + (1 - Present) * without);
        var mean = first / evidence;
        var spread = Math.Sqrt(second / evidence - mean * mean);

        var found = posterior.Explanations.Single(e => e.Present.SequenceEqual([Panel]));
        Assert.Equal(probability, posterior.Probability(Panel), 0.03);
        Assert.Equal(mean, found.Amplitudes[PanelTrace], 0.03 * Spread);
        Assert.Equal(spread, Math.Sqrt(found.Covariance[0]), 0.05 * Spread);
    }

    static Observation Word(double gain, Band band)
    {
        var gains = new double[ModelledCause.Traces.Count];
        gains[PanelTrace] = gain;
        return new(default, ReadingFamily.Roll, 0, 0, gains, 1, 0, band);
    }

    /// <summary>Everything but the panel all but ruled out; no model error, which has no brute-force twin.</summary>
    static Posterior Only(Observation[] words) => new(
        words,
        [.. ModelledCause.All.Select(modelled => modelled.Cause == Cause.PanelIncidenceDifference ? Present : 1e-9)],
        [.. ModelledCause.Traces.Select(_ => new AmplitudePrior(0, Spread))],
        0);

    static double Inside(Observation word, double amplitude)
    {
        var (from, to, sd) = word.Range!.Value;
        var at = word.Gains[PanelTrace] * amplitude;
        return MathNet.Numerics.Distributions.Normal.CDF(at, sd, to) - MathNet.Numerics.Distributions.Normal.CDF(at, sd, from);
    }
}
