using UnitsNet;

namespace Rigging.Mechanics.Survey;

/// <summary>
/// How far the wings may differ, and how far each may stand from the fuselage: the aeroplane's own data, with their source. There
/// is no default.
/// </summary>
/// <param name="AgreeWithin">Right against left.</param>
/// <param name="BelowFuselage">Each wing may read so much less than the fuselage, 0 or more.</param>
/// <param name="AboveFuselage">Each wing may read so much more than the fuselage, 0 or more.</param>
public sealed record TwistLimits(Angle AgreeWithin, Angle BelowFuselage, Angle AboveFuselage, string Source)
{
    /// <summary>Least and greatest reading of a wing while the fuselage reads so.</summary>
    public (Angle Least, Angle Greatest) RangeAt(Angle fuselage) => (fuselage - BelowFuselage, fuselage + AboveFuselage);

    /// <summary>What is out, as sentences; empty when all is in.</summary>
    public IReadOnlyList<string> Faults(Angle fuselage, Angle left, Angle right)
    {
        // Readings come in whole steps; the last digit of a conversion is no fault.
        var slack = Angle.FromDegrees(1e-9);
        var (least, greatest) = RangeAt(fuselage);
        List<string> faults = [];
        foreach (var (name, wing) in new[] { ("left", left), ("right", right) })
            if (wing < least - slack || wing > greatest + slack)
                faults.Add(FormattableString.Invariant($"The {name} wing reads {wing.Degrees:0.00}°; with the fuselage at {fuselage.Degrees:0.00}° it may read {least.Degrees:0.00}° to {greatest.Degrees:0.00}°."));
        if ((right - left).Abs() > AgreeWithin + slack)
            faults.Add(FormattableString.Invariant($"The wings differ by {(right - left).Abs().Degrees:0.00}°; they may differ by {AgreeWithin.Degrees:0.00}°."));
        return faults;
    }
}
