using System.Globalization;
using Rigging.Mechanics.Survey;
using UnitsNet;

namespace Rigging.Mechanics.Travel;

/// <summary>Least and greatest travel one way, from the aeroplane's type data.</summary>
public sealed record TravelRange(Angle Least, Angle Greatest);

/// <summary>What a surface is allowed to do.</summary>
/// <param name="Up">Trailing edge up; for a rudder, left.</param>
/// <param name="Down">Trailing edge down; for a rudder, right.</param>
/// <param name="AlikeWithin">How far left and right surface may differ the same way; null for a surface that has no partner.</param>
public sealed record TravelLimits(TravelRange Up, TravelRange Down, Angle? AlikeWithin, string Source);

/// <summary>
/// The protractor on one surface at neutral and at both stops, each read twice with the protractor reversed. Trailing edge down
/// positive. Against its own neutral reading, so the angle the surface is built at does not count.
/// </summary>
public sealed record SurfaceReadings(string Surface, ReversedReading Neutral, ReversedReading FullUp, ReversedReading FullDown)
{
    public SurfaceTravel Travel => new(Surface, Neutral.True - FullUp.True, FullDown.True - Neutral.True);
}

/// <summary>How far one surface goes from its neutral to each stop.</summary>
/// <param name="Up">Trailing edge up; of a rudder, left.</param>
/// <param name="Down">Trailing edge down; of a rudder, right.</param>
public sealed record SurfaceTravel(string Surface, Angle Up, Angle Down);

/// <summary>One thing measured against one limit.</summary>
public sealed record TravelFinding(string What, Angle Measured, Angle Least, Angle Greatest)
{
    /// <summary>The last digit of a sum is no finding.</summary>
    const double SlackDeg = 1e-9;

    public bool Within => Measured.Degrees >= Least.Degrees - SlackDeg && Measured.Degrees <= Greatest.Degrees + SlackDeg;

    public string Sentence => string.Create(CultureInfo.InvariantCulture, $"{What} {Measured.Degrees:0.0}°, allowed {Least.Degrees:0.0}° to {Greatest.Degrees:0.0}°.");
}

/// <summary>Travel of a surface, and of two against each other.</summary>
public static class ControlTravel
{
    /// <summary>Each surface against its limits.</summary>
    public static IReadOnlyList<TravelFinding> Of(SurfaceTravel surface, TravelLimits limits)
    {
        ArgumentNullException.ThrowIfNull(surface);
        ArgumentNullException.ThrowIfNull(limits);
        return [Against(surface.Surface, "up", surface.Up, limits.Up), Against(surface.Surface, "down", surface.Down, limits.Down)];
    }

    /// <summary>
    /// A left and a right surface: each against its limits, and both against each other. Ailerons on one wheel: the left goes
    /// up while the right goes down, but the same way is compared with the same way.
    /// </summary>
    public static IReadOnlyList<TravelFinding> OfPair(SurfaceTravel left, SurfaceTravel right, TravelLimits limits)
    {
        ArgumentNullException.ThrowIfNull(left);
        ArgumentNullException.ThrowIfNull(right);
        ArgumentNullException.ThrowIfNull(limits);
        List<TravelFinding> findings = [.. Of(left, limits), .. Of(right, limits)];
        if (limits.AlikeWithin is { } alike)
        {
            findings.Add(Alike("up", right.Up - left.Up, alike));
            findings.Add(Alike("down", right.Down - left.Down, alike));
        }
        return findings;
    }

    static TravelFinding Against(string surface, string way, Angle travel, TravelRange range) => new($"{surface} {way}", travel, range.Least, range.Greatest);

    static TravelFinding Alike(string way, Angle difference, Angle alike) => new($"right less left {way}", difference, -alike, alike);
}
