using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// A tab that is bent on the ground. It drives its surface the other way: surface = −gain · tab. The gain on file is a measured one;
/// <see cref="ThinAerofoil.TabGainAtMost"/> only says what no real tab can exceed.
/// </summary>
public static class TabBend
{
    /// <summary>Nobody bends closer (common practice, no source).</summary>
    const double StepDeg = 1;

    /// <summary>
    /// The aileron's tab, degrees trailing edge down; acts on <c>aileron-float</c>. Bent up on the right it pushes the right aileron down
    /// and lifts the right wing. Refused as <c>no-tab-on-file</c>.
    /// </summary>
    public static Answer<Adjuster> OfAileron(Airframe airframe, Angle furthest)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        if (airframe.Ailerons.FixedTab is not { } tab)
            return new Refusal("no-tab-on-file", "No fixed aileron tab is on file for this airframe.");
        // Ailerons count right wing down: the right one trailing edge up, the left one down.
        return new Adjuster(AdjustableControl.AileronTab, Cause.AileronFloat, "°",
            tab.Side == Side.Right ? tab.Gain : -tab.Gain, -furthest.Degrees, furthest.Degrees, StepDeg);
    }

    /// <summary>The rudder's tab, degrees trailing edge left; acts on <c>rudder-or-fin-offset</c>. Refused as <c>no-tab-on-file</c>.</summary>
    public static Answer<Adjuster> OfRudder(Airframe airframe, Angle furthest)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        return airframe.Rudder is { } rudder
            ? new Adjuster(AdjustableControl.RudderTab, Cause.RudderOrFinOffset, "°", -rudder.FixedTabGain, -furthest.Degrees, furthest.Degrees, StepDeg)
            : new Refusal("no-tab-on-file", "No rudder tab is on file for this airframe.");
    }
}
