using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Loading;

/// <summary>
/// What fuel, people and baggage do to the balance of the wings: a rolling moment in newton metres, right wing down positive.
/// It does not change with airspeed. Ten litres of 0.72 kg/L at 1.3 m right of the centreline: 10·0.72·9.80665·1.3 = 91.8 N m.
/// </summary>
public static class LateralLoad
{
    const double GravityMPerS2 = 9.80665;

    /// <summary>The moment of everything aboard. Seats, compartments and tanks that the airframe does not have count for nothing.</summary>
    public static double RollingMomentNm(Airframe airframe, Load load)
    {
        var seats = airframe.Seats.Sum(seat => load.SeatsKg.GetValueOrDefault(seat.Name) * seat.ArmM);
        var tanks = airframe.Tanks.Sum(tank => load.FuelL.GetValueOrDefault(tank.Name) * load.FuelKgPerL * tank.ArmM);
        var baggage = load.BaggageKg is { } kg && airframe.Baggage is { } compartments
            ? compartments.Sum(compartment => kg.GetValueOrDefault(compartment.Name) * compartment.ArmM)
            : 0;
        return (seats + tanks + baggage) * GravityMPerS2;
    }

    /// <summary>
    /// The moment of one litre of fuel difference, right minus left, the total unchanged: half a litre across.
    /// Zero where no tank lies beside the centreline.
    /// </summary>
    public static double MomentPerLitreNm(Airframe airframe, double fuelKgPerL)
    {
        var (left, right) = (ArmM(airframe, side: -1), ArmM(airframe, side: 1));
        return fuelKgPerL * GravityMPerS2 * (right - left) / 2;
    }

    /// <summary>
    /// Standard deviation of the moment when each tank is known to so many litres and a litre to so many kilograms. Fuel of
    /// one delivery is in all tanks, so an error of density goes with the moment of the fuel as a whole.
    /// </summary>
    public static double MomentSdNm(Airframe airframe, Load load, double tankSdL, double sdKgPerL = 0)
    {
        var byGauge = airframe.Tanks.Sum(tank => Math.Pow(tankSdL * load.FuelKgPerL * tank.ArmM, 2));
        var byDensity = sdKgPerL * airframe.Tanks.Sum(tank => load.FuelL.GetValueOrDefault(tank.Name) * tank.ArmM);
        return GravityMPerS2 * Math.Sqrt(byGauge + byDensity * byDensity);
    }

    /// <summary>Fuel right of the centreline minus fuel left of it, litres.</summary>
    public static double FuelDifferenceL(Airframe airframe, Load load) =>
        airframe.Tanks.Sum(tank => Math.Sign(tank.ArmM) * load.FuelL.GetValueOrDefault(tank.Name));

    /// <summary>Arm of a side's fuel, metres, right positive: the mean of its tanks by capacity.</summary>
    static double ArmM(Airframe airframe, int side)
    {
        var tanks = airframe.Tanks.Where(tank => Math.Sign(tank.ArmM) == side).ToArray();
        var litres = tanks.Sum(tank => tank.CapacityL);
        return litres > 0 ? tanks.Sum(tank => tank.CapacityL * tank.ArmM) / litres : 0;
    }
}
