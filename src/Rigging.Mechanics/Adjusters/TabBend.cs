using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// A tab that is bent on the ground. It drives its surface the other way: surface = −gain · tab. The gain to bend by is a measured one;
/// <see cref="ThinAerofoil.TabGainAtMost"/> only says what no real tab can exceed.
/// </summary>
/// <remarks>
/// Refused as <c>no-tab-on-file</c>; <c>tab-stop-not-on-file</c> when neither the file nor the caller says how far it may be bent; and
/// <c>tab-gain-not-measured</c> when the file calls its gain an upper bound.
/// </remarks>
public static class TabBend
{
    /// <summary>Nobody bends closer (common practice, no source).</summary>
    const double StepDeg = 1;

    /// <summary>Further is no tab setting but a fence (common practice, no source).</summary>
    internal static readonly Angle Furthest = Angle.FromDegrees(45);

    /// <summary>
    /// The aileron's tab, degrees trailing edge down; acts on <c>aileron-float</c>. Bent up on the right it pushes the right aileron down
    /// and lifts the right wing.
    /// </summary>
    /// <param name="airframe">With the tab on file.</param>
    /// <param name="furthest">Either way, where the file names no stop; the file's own stop wins.</param>
    public static Answer<Adjuster> OfAileron(Airframe airframe, Angle? furthest = null)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        // Ailerons count right wing down: the right one trailing edge up, the left one down.
        return airframe.Ailerons.FixedTab is { } tab
            ? Of(AdjustableControl.AileronTab, Cause.AileronFloat, tab.Side == Side.Right ? tab.Gain : -tab.Gain, tab.Bend, furthest)
            : new Refusal("no-tab-on-file", "No fixed aileron tab is on file for this airframe.");
    }

    /// <summary>The rudder's tab, degrees trailing edge left; acts on <c>rudder-or-fin-offset</c>.</summary>
    /// <param name="airframe">With the tab on file.</param>
    /// <param name="furthest">Either way, where the file names no stop; the file's own stop wins.</param>
    public static Answer<Adjuster> OfRudder(Airframe airframe, Angle? furthest = null)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        return airframe.Rudder is { } rudder
            ? Of(AdjustableControl.RudderTab, Cause.RudderOrFinOffset, -rudder.FixedTabGain, rudder.FixedTabBend, furthest)
            : new Refusal("no-tab-on-file", "No rudder tab is on file for this airframe.");
    }

    static Answer<Adjuster> Of(AdjustableControl control, Cause cause, double perDeg, TabBendOnFile? onFile, Angle? furthest)
    {
        var tab = control.InWords();
        if (onFile?.GainIs == TabGain.UpperBound)
            return new Refusal("tab-gain-not-measured", $"The gain on file for the {tab} is an upper bound: bend it a little, fly, and enter what a degree did.");
        if ((onFile?.MaxDeg ?? furthest?.Degrees) is not { } maxDeg)
            return new Refusal("tab-stop-not-on-file", $"How far the {tab} may be bent is not on file for this airframe.");
        return new Adjuster(control, cause, "°", perDeg, -maxDeg, maxDeg, StepDeg);
    }
}
