using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation.Motion;

/// <summary>What a perfect observer would read of a manoeuvre: degrees, seconds, widths, newtons, litres.</summary>
public static class Instruments
{
    const double Longest = 60;

    /// <summary>Null where the manoeuvre never shows it: a bank that is not reached.</summary>
    public static double? Shows(Aeroplane aeroplane, TestPoint point, Quantity quantity)
    {
        var flight = new Flight(aeroplane, point);
        return quantity.Kind switch
        {
            "bank-after" => Degrees(At(flight, aeroplane, point, quantity.Argument).Bank),
            "heading-change" => Degrees(At(flight, aeroplane, point, quantity.Argument).Heading),
            "roll-rate" => Degrees(At(flight, aeroplane, point, RollRateAfter).Roll),
            "time-to-bank" => TimeTo(flight, aeroplane, point, AirframeFile.Radians(quantity.Argument)),
            "heading-rate" => Degrees(Before(flight, point).State.Yaw),
            "ball" => flight.Ball(Before(flight, point).State.Slip, Before(flight, point).Rudder),
            "wheel-angle" => Degrees(Before(flight, point).Aileron - aeroplane.NeutralAileron) * aeroplane.File.WheelPerAileron,
            "wheel-force" => Degrees(Before(flight, point).Aileron - flight.FreeAileron(0)) * aeroplane.File.ForcePerAileronDeg * flight.Stiffening,
            "fuel-difference" => Difference(aeroplane, point) + flight.MomentToBalance(flight.FreeAileron(0)) / aeroplane.MomentPerLitre,
            _ => throw new ArgumentException($"No instrument shows {quantity.Kind}."),
        };
    }

    /// <summary>Seconds after release at which a roll rate is read: the roll has settled, the slip has not grown.</summary>
    public const double RollRateAfter = 2;

    // Hands off and level: feet off in release-all and hold-level, feet keeping the shown ball centred in the others.
    static Held Before(Flight flight, TestPoint point) =>
        point.Manoeuvre is TestPoint.ReleaseAll or TestPoint.HoldLevel ? flight.Level() : flight.Straight();

    static IEnumerable<(double Time, State State)> Motion(Flight flight, Aeroplane aeroplane, TestPoint point)
    {
        var held = Before(flight, point);
        var aileron = point.Manoeuvre == TestPoint.HoldNeutral ? aeroplane.NeutralAileron : flight.FreeAileron(point.LastInput);
        return flight.After(held.State, aileron, held.Rudder);
    }

    static State At(Flight flight, Aeroplane aeroplane, TestPoint point, double seconds) =>
        Motion(flight, aeroplane, point).First(moment => moment.Time >= seconds - 1e-9).State;

    static double? TimeTo(Flight flight, Aeroplane aeroplane, TestPoint point, double bank)
    {
        foreach (var (time, state) in Motion(flight, aeroplane, point).TakeWhile(moment => moment.Time <= Longest))
            if (state.Bank * Math.Sign(bank) >= Math.Abs(bank))
                return time;
        return null;
    }

    static double Difference(Aeroplane aeroplane, TestPoint point) =>
        point.Load.FuelL.Sum(tank => tank.Value * Math.Sign(aeroplane.File.Tanks[tank.Key]));

    static double Degrees(double radians) => radians * 180 / Math.PI;
}
