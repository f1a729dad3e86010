using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Assessment;

/// <summary>A cause that the motion model can follow: what one unit of it amounts to in flight.</summary>
/// <param name="Cause">Its name in the catalogue.</param>
/// <param name="PerUnit">The asymmetry of one unit (degree, litre) at a flight point with a load aboard.</param>
/// <param name="MeasuredBy">The ground check that sees it; null when none of the contract's does.</param>
/// <param name="BelongsToAircraft">False for what is different on the next flight, such as fuel.</param>
sealed record ModelledCause(
    Cause Cause,
    Func<FlightPoint, Load, Asymmetry> PerUnit,
    GroundCheckKind? MeasuredBy,
    bool BelongsToAircraft = true)
{
    const double RadPerDeg = Math.PI / 180;

    /// <summary>The causes that are assessed. The rest of the catalogue is answered with null.</summary>
    public static IReadOnlyList<ModelledCause> All { get; } =
    [
        new(Cause.FuelAndLoading,
            (point, load) => new(WeightNm: LateralLoad.MomentPerLitreNm(point.Airframe, load.FuelKgPerL)), null, BelongsToAircraft: false),
        new(Cause.PanelIncidenceDifference, (point, _) => RadPerDeg * point.PanelIncidence, GroundCheckKind.PanelIncidenceDifference),
        new(Cause.FlapDifference, (point, _) => RadPerDeg * point.FlapDifference, GroundCheckKind.FlapDifference),
        new(Cause.AileronFloat, (_, _) => new(AileronFloatRad: RadPerDeg), GroundCheckKind.AileronFloat),
        new(Cause.RudderOrFinOffset, (_, _) => new(RudderOffsetRad: RadPerDeg), null),
    ];

    public static int IndexOf(Cause cause) => All.Select(modelled => modelled.Cause).ToList().IndexOf(cause);
}
