using System.Globalization;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Fastening;

/// <summary>An extension between the wrench's drive and the fastener.</summary>
/// <param name="Length">Drive centre to fastener centre, 0 or more.</param>
/// <param name="Angle">From the wrench's own direction: 0° straight on, 90° square, 180° pointing back along the handle.</param>
public sealed record Extension(Length Length, Angle Angle)
{
    public static readonly Extension None = new(Length.Zero, Angle.Zero);
}

/// <summary>A torque wrench as the tool register knows it.</summary>
/// <param name="Lever">Grip to drive centre; the pull goes where this was measured from.</param>
/// <param name="FullScale">Greatest torque on its scale.</param>
/// <param name="StatedRange">Where its maker or calibration says it is good; null for 20 to 100 % of full scale.</param>
/// <param name="CalibratedOn">Null when the day is not on file.</param>
/// <param name="CalibrationDue">Good to the end of this day; null when never calibrated.</param>
public sealed record TorqueWrench(string Code, Length Lever, Torque FullScale, (Torque Low, Torque High)? StatedRange, DateOnly? CalibratedOn, DateOnly? CalibrationDue)
{
    // Military tool table read in TM 1-1500-204-23-9: no claim of accuracy below 20 % of full scale.
    const double LowestFraction = 0.2;

    public Torque Low => StatedRange?.Low ?? FullScale * LowestFraction;

    public Torque High => StatedRange?.High ?? FullScale;

    /// <summary>
    /// What the wrench shows when the fastener feels <paramref name="atFastener"/>: T·L / (L + E·cos a). A straight extension
    /// makes it show less, one pointing back more, a square one the same. Null when the extension reaches back to the grip.
    /// </summary>
    /// <remarks>US Navy and Army training manuals; AC 43.13-1B par. 7-40(h) for the straight one.</remarks>
    public Torque? SettingFor(Torque atFastener, Extension extension) => Gain(extension) is { } gain ? atFastener / gain : null;

    /// <summary>What the fastener feels when the wrench shows <paramref name="setting"/>; null when the extension reaches back to the grip.</summary>
    public Torque? AtFastener(Torque setting, Extension extension) => Gain(extension) is { } gain ? setting * gain : null;

    /// <summary>Why this wrench may not be used on a day; empty when it may. Codes <c>wrench-out-of-calibration</c>, <c>wrench-calibrated-later</c>.</summary>
    public IReadOnlyList<Refusal> CalibrationOn(DateOnly day)
    {
        if (CalibrationDue is not { } due)
            return [new("wrench-out-of-calibration", $"{Code} has never been calibrated. Use a wrench in calibration.")];
        if (day > due)
            return [new("wrench-out-of-calibration", $"{Code}: calibration was due {Words.Day(due)}, and this is {Words.Day(day)}. Use a wrench in calibration.")];
        if (CalibratedOn is { } since && day < since)
            return [new("wrench-calibrated-later", $"{Code} was calibrated on {Words.Day(since)}, after {Words.Day(day)}: that calibration says nothing about this day.")];
        return [];
    }

    /// <summary>
    /// The window to set for a final torque. Refused as <c>wrench-out-of-calibration</c>, <c>wrench-calibrated-later</c>,
    /// <c>extension-wrong</c>, or <c>wrench-out-of-range</c> when any of the window is outside its range.
    /// </summary>
    /// <param name="day">Of use.</param>
    public Answer<WrenchSetting> Set(FinalTorque wanted, Extension extension, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(extension);
        var refusals = CalibrationOn(day).ToList();
        if (SettingFor(wanted.Least, extension) is not { } least || SettingFor(wanted.Greatest, extension) is not { } greatest)
        {
            refusals.Add(new("extension-wrong", string.Create(CultureInfo.InvariantCulture,
                $"An extension of {extension.Length.Inches:0.##} in at {extension.Angle.Degrees:0.#}° does not go with a lever of {Lever.Inches:0.##} in: wanted 0 or more, and not back to the grip.")));
            return refusals;
        }
        if (!(Words.AtLeast(least, Low) && Words.AtMost(greatest, High)))
            refusals.Add(new("wrench-out-of-range", $"A setting of {Words.InLb(least)} to {Words.InLb(greatest)} in·lb is outside {Code}'s range of {Words.InLb(Low)} to {Words.InLb(High)}."));
        return refusals.Count > 0 ? refusals : new WrenchSetting(least, greatest);
    }

    double? Gain(Extension extension)
    {
        double leverM = Lever.Meters, extensionM = extension.Length.Meters;
        var gain = 1 + extensionM / leverM * Math.Cos(extension.Angle.Radians);
        return leverM > 0 && extensionM >= 0 && gain > 0.01 && double.IsFinite(gain) ? gain : null;
    }
}

/// <summary>What the wrench may show, least and greatest.</summary>
public sealed record WrenchSetting(Torque Least, Torque Greatest)
{
    public Torque Middle => (Least + Greatest) / 2;
}
