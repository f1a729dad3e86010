using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using UnitsNet;

namespace Rigging.Mechanics.Loading;

/// <summary>A load by its everyday name: <c>solo left</c>, <c>two up</c>.</summary>
public sealed record NamedLoad(string Name, Load Load);

/// <summary>How an aeroplane flies with one load.</summary>
/// <param name="DegPerS">Roll tendency at the point asked for, right wing down positive.</param>
/// <param name="FromRiggedForDegPerS">The part of it that comes from not being loaded as it is rigged for.</param>
public sealed record LoadTendency(string Name, double DegPerS, double FromRiggedForDegPerS);

/// <summary>
/// One size in several coins at one flight point: °/s of roll tendency, degrees of panel incidence difference, flats,
/// litres of fuel difference, a person's weight in a seat. Weight counts more at low speed, incidence at high.
/// </summary>
public sealed class PilotsCurrency
{
    const double RadPerDeg = Math.PI / 180, GravityMPerS2 = LateralModel.StandardGravity;

    readonly FlightPoint point;

    public PilotsCurrency(FlightPoint point)
    {
        ArgumentNullException.ThrowIfNull(point);
        this.point = point;
        DegPerSPerPanelDeg = point.RollTendencyDegPerS(RadPerDeg * point.PanelIncidence);
        DegPerSPerLitre = OfMoment(LateralLoad.MomentPerLitreNm(point.Airframe, point.Airframe.Reference.Load.FuelKgPerL));
    }

    /// <summary>°/s for one degree of panel incidence difference, right minus left; negative.</summary>
    public double DegPerSPerPanelDeg { get; }

    /// <summary>°/s for one litre of fuel difference, right minus left; 0 where no tank lies beside the centreline.</summary>
    public double DegPerSPerLitre { get; }

    /// <summary>°/s for one kilogram more in a seat.</summary>
    public double DegPerSPerKgIn(Seat seat)
    {
        ArgumentNullException.ThrowIfNull(seat);
        return OfMoment(seat.ArmM * GravityMPerS2);
    }

    /// <summary>°/s for one flat of one wing's eccentric about the angle it stands at: right wing, trailing edge down.</summary>
    public double DegPerSPerFlat(Eccentric eccentric, Angle standing)
    {
        ArgumentNullException.ThrowIfNull(eccentric);
        return DegPerSPerPanelDeg * eccentric.SensitivityAt(standing) * eccentric.PerFlat.Degrees;
    }

    /// <summary>The fuel difference, litres, right minus left, that makes it fly straight; null where no tank lies beside the centreline, or where no flight can be computed.</summary>
    public double? LitresThatNull(double tendencyDegPerS) => DegPerSPerLitre is 0 or double.NaN ? null : -tendencyDegPerS / DegPerSPerLitre;

    /// <summary>
    /// How far one wing's eccentric is turned from neutral to make it fly straight, flats, either way; null where its throw or its stop does not reach.
    /// </summary>
    public double? FlatsThatNull(double tendencyDegPerS, Eccentric eccentric)
    {
        ArgumentNullException.ThrowIfNull(eccentric);
        var incidence = Angle.FromDegrees(Math.Abs(PanelDegThatNulls(tendencyDegPerS)));
        return eccentric.AngleForIncidence(incidence) is { } turn && turn <= eccentric.MaxAngle ? turn / eccentric.PerFlat : null;
    }

    /// <summary>The panel incidence difference, degrees, right minus left, that makes it fly straight.</summary>
    public double PanelDegThatNulls(double tendencyDegPerS) => -tendencyDegPerS / DegPerSPerPanelDeg;

    /// <summary>The panel incidence difference, degrees, that a fuel difference takes out, and the reverse of <see cref="LitresForPanel"/>.</summary>
    public double PanelForLitres(double litres) => PanelDegThatNulls(litres * DegPerSPerLitre);

    /// <summary>The fuel difference, litres, that takes out a panel incidence difference; null where no tank lies beside the centreline.</summary>
    public double? LitresForPanel(double panelDeg) => LitresThatNull(panelDeg * DegPerSPerPanelDeg);

    /// <summary>The share of a person's weight in a seat that makes it fly straight; negative: so much less. Null for a seat on the centreline.</summary>
    public double? PersonsThatNull(double tendencyDegPerS, Seat seat, double personKg) =>
        DegPerSPerKgIn(seat) is var perKg and not (0 or double.NaN) ? -tendencyDegPerS / (perKg * personKg) : null;

    /// <summary>
    /// How it flies at other loads when it rolls at <paramref name="riggedForDegPerS"/> with the load it is rigged for.
    /// </summary>
    public IReadOnlyList<LoadTendency> At(IEnumerable<NamedLoad> loads, double riggedForDegPerS)
    {
        var rigged = OfMoment(LateralLoad.RollingMomentNm(point.Airframe, point.Airframe.Reference.Load));
        return [.. loads.Select(named =>
        {
            var part = OfMoment(LateralLoad.RollingMomentNm(point.Airframe, named.Load)) - rigged;
            return new LoadTendency(named.Name, riggedForDegPerS + part, part);
        })];
    }

    /// <summary>
    /// Each seat by itself with one person, and everybody aboard, fuel as in the load it is rigged for: the loads a school
    /// flies with.
    /// </summary>
    public static IReadOnlyList<NamedLoad> CommonLoads(Airframe airframe, double personKg)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        var rigged = airframe.Reference.Load;
        Load With(IEnumerable<Seat> seats) => rigged with { SeatsKg = seats.ToDictionary(seat => seat.Name, _ => personKg) };
        return
        [
            .. airframe.Seats.Select(seat => new NamedLoad($"solo {seat.Name}", With([seat]))),
            .. airframe.Seats.Count > 1 ? [new NamedLoad("all seats", With(airframe.Seats))] : Array.Empty<NamedLoad>(),
        ];
    }

    double OfMoment(double rollingNm) => point.RollTendencyDegPerS(new(WeightNm: rollingNm));
}
