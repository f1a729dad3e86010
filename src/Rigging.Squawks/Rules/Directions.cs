using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Squawks.Rules;

/// <summary>Signed numbers as people say them: a size and the side it goes to. Signs as everywhere: right, right wing down, trailing edge down positive.</summary>
/// <remarks>A computed figure that no reading could be is said as more than the largest that could, and one that is no number as not known.</remarks>
public static class Directions
{
    /// <summary>Between a number and its unit: narrow, and no line breaks there.</summary>
    public const string Space = "\u202F";

    public static string Bank(double deg) => Sided(deg, ReadingLimits.BankDeg, "°", "left wing down", "right wing down", "wings level");

    public static string RollRate(double degPerS) => Sided(degPerS, ReadingLimits.RollRateDegPerS, $"{Space}°/s", "left wing down", "right wing down", "no roll");

    /// <summary>A roll rate that is expected, with its 90 % interval: the side is said where the interval has one, and only then does the mean lead.</summary>
    public static string Expected(double degPerS, double low, double high) => WhatIsKnown.Of(low, high, WhatIsKnown.UnfeltDegPerS) switch
    {
        Known.Positive or Known.Negative => $"{RollRate(degPerS)}, nine times in ten between {Rate(Math.Min(Math.Abs(low), Math.Abs(high)))} and {Rate(Math.Max(Math.Abs(low), Math.Abs(high)))}{Space}°/s",
        Known.Nothing => $"{RollRate(0)}, {Range(low, high, RollRate)}",
        _ => $"{NotWhichWay}, {Range(low, high, RollRate)}",
    };

    /// <summary>The same of anything else that is told by a side: a ball, a bank.</summary>
    /// <param name="say">One value in words.</param>
    public static string Expected(double mean, double low, double high, Func<double, string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return WhatIsKnown.Of(low, high) == Known.NotWhichWay ? $"{NotWhichWay}, {Range(low, high, say)}" : $"{say(mean)}, {Range(low, high, say)}";
    }

    /// <summary>In a list of several: the mean where its side is known, else only between what and what.</summary>
    public static string Short(double mean, double low, double high, Func<double, string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return WhatIsKnown.Of(low, high) == Known.NotWhichWay ? $"between {say(low)} and {say(high)}" : say(mean);
    }

    public const string NotWhichWay = "not known which way";

    public static string Range(double low, double high, Func<double, string> say)
    {
        ArgumentNullException.ThrowIfNull(say);
        return $"nine times in ten between {say(low)} and {say(high)}";
    }

    public static string HeadingRate(double degPerS) => Sided(degPerS, ReadingLimits.HeadingRateDegPerS, $"{Space}°/s", "to the left", "to the right", "heading steady");

    public static string HeadingChange(double deg) => Sided(deg, ReadingLimits.HeadingChangeDeg, "°", "to the left", "to the right", "heading unchanged");

    /// <summary>Slip ball, widths.</summary>
    public static string Ball(double widths) => Sided(widths, ReadingLimits.BallWidths, $"{Space}{(Math.Abs(widths) is > 0 and <= 1 ? "width" : "widths")}", "left of centre", "right of centre", "centred");

    public static string Wheel(double deg) => Sided(deg, ReadingLimits.WheelDeg, "°", "to the left", "to the right", "centred");

    public static string TrailingEdge(double deg) => Sided(deg, HalfTurnDeg, "°", "trailing edge up", "trailing edge down", "neutral");

    /// <summary>A rudder's angle or its tab's: trailing edge left positive, as in stability reports.</summary>
    public static string RudderTrailingEdge(double deg) => Sided(deg, HalfTurnDeg, "°", "trailing edge right", "trailing edge left", "in line");

    /// <summary>A difference right minus left, such as "right flap 0.1° lower".</summary>
    /// <param name="part">Flap, panel, tip.</param>
    /// <param name="more">What the positive side has more of: "lower", "more incidence".</param>
    public static string Difference(double deg, string part, string more) =>
        double.IsNaN(deg) ? NotKnown : Sized(deg, ReadingLimits.GroundDeg) is { } size ? $"{(deg > 0 ? "right" : "left")} {part} {size}° {more}" : $"both {part}s alike";

    /// <summary>Who and what is aboard, by seat and tank.</summary>
    public static string Load(Load load) => string.Join("; ",
        load.SeatsKg.Select(seat => $"seat {seat.Key} {Words.Number(seat.Value, 0)}{Space}kg").Concat(load.FuelL.Select(tank => $"fuel {tank.Key} {Words.Number(tank.Value, 0)}{Space}L")));

    /// <summary>Fuel as both halves of the world count it.</summary>
    public static string Litres(double litres) => $"{Words.Number(litres, 0)}{Space}L ({Words.Number(litres / ByDefinition.LitresPerUsGallon, 1)}{Space}US{Space}gal)";

    static string Sided(double value, double most, string unit, string negative, string positive, string none) =>
        double.IsNaN(value) ? NotKnown : Sized(value, most) is { } size ? $"{size}{unit} {(value > 0 ? positive : negative)}" : none;

    // Null where nothing is left to show: a side on a zero would say what nobody saw.
    static string? Sized(double value, double most) => Math.Round(Math.Abs(value), 2) == 0 ? null : Words.AtMost(Math.Abs(value), most);

    static string Rate(double degPerS) => Words.AtMost(degPerS, ReadingLimits.RollRateDegPerS);

    const double HalfTurnDeg = 180;

    const string NotKnown = "not known";
}
