using System.Globalization;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>Where one wing's eccentric was found.</summary>
/// <param name="PastQuarterTurn">Accepted, and said: from here the trailing edge first goes the wrong way on the way back to neutral.</param>
public sealed record FoundSetting(Angle Angle, bool PastQuarterTurn)
{
    /// <summary>Front and rear bushing may differ by no more, in degrees: what a protractor on a head tells apart; common practice, no source.</summary>
    public const double AgreeWithinDeg = 3;

    /// <summary>The one angle of both bushings, degrees within half a turn of neutral; null when they disagree.</summary>
    public static double? AngleOf(BushingAngles bushings)
    {
        ArgumentNullException.ThrowIfNull(bushings);
        // The same place after a whole turn is the same setting.
        var difference = Math.IEEERemainder(bushings.Rear - bushings.Front, 360);
        return Math.Abs(difference) <= AgreeWithinDeg ? Math.IEEERemainder(bushings.Front + difference / 2, 360) : null;
    }

    /// <summary>
    /// One angle from both bushings. Refused as <c>bushings-disagree</c> when they differ: one bolt runs through both, so
    /// either the bolt is bent or a hole is damaged, and neither is an adjustment.
    /// </summary>
    public static Answer<FoundSetting> From(Side wing, BushingAngles bushings)
    {
        ArgumentNullException.ThrowIfNull(bushings);
        if (AngleOf(bushings) is not { } deg)
        {
            return new Refusal("bushings-disagree", string.Create(CultureInfo.InvariantCulture,
                $"The {Wire.Word(wing)} wing's front bushing stands at {bushings.Front:0.#}°, its rear at {bushings.Rear:0.#}°: look for a bent bolt or a damaged hole before anything is turned."));
        }
        var angle = Angle.FromDegrees(deg);
        return new FoundSetting(angle, Eccentric.IsPastQuarterTurn(angle));
    }
}
