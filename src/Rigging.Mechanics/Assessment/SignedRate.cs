using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>A roll rate inside a sentence, right wing down positive.</summary>
static class SignedRate
{
    /// <summary>A tendency as far as it is known: the mean leads only where the interval has one side.</summary>
    public static string Known(Estimate tendency) => tendency.OfRoll().HasSide()
        ? $"at {Of(tendency.Mean)}, nine times in ten between {Of(tendency.Low)} and {Of(tendency.High)}"
        : $"nine times in ten between {Of(tendency.Low)} and {Of(tendency.High)}";

    /// <summary>Never faster than anybody could read.</summary>
    public static string Of(double degPerS) => Math.Abs(degPerS) <= ReadingLimits.RollRateDegPerS
        ? string.Create(CultureInfo.InvariantCulture, $"{degPerS:+0.0;−0.0;0.0} °/s")
        : string.Create(CultureInfo.InvariantCulture, $"more than {Math.CopySign(ReadingLimits.RollRateDegPerS, degPerS):+0;−0} °/s");
}
