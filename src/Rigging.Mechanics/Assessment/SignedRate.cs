using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Assessment;

/// <summary>A roll rate inside a sentence, right wing down positive.</summary>
static class SignedRate
{
    /// <summary>Never faster than anybody could read.</summary>
    public static string Of(double degPerS) => Math.Abs(degPerS) <= ReadingLimits.RollRateDegPerS
        ? string.Create(CultureInfo.InvariantCulture, $"{degPerS:+0.0;−0.0;0.0} °/s")
        : string.Create(CultureInfo.InvariantCulture, $"more than {Math.CopySign(ReadingLimits.RollRateDegPerS, degPerS):+0;−0} °/s");
}
