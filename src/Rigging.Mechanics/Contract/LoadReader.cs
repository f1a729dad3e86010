namespace Rigging.Mechanics.Contract;

/// <summary>Reads a load, and holds it against the tanks, seats and compartments there are.</summary>
static class LoadReader
{
    public static Load Read(FieldReader load) => new(
        load.Amounts("seatsKg", new(0, 300, "kg")),
        load.Amounts("fuelL", new(0, 2000, "L")),
        load.NumberIfGiven("fuelKgPerL", new(0.6, 0.9, "kg/L")) ?? Load.UsualFuelKgPerL,
        load.AmountsIfGiven("baggageKg", new(0, 1000, "kg")));

    /// <param name="fault">Takes path, value seen, what was wanted.</param>
    public static void Check(Load load, Airframe airframe, string path, Action<string, string?, string> fault)
    {
        var (tanks, seats, compartments) = (airframe.Tanks, airframe.Seats, airframe.Baggage ?? []);
        // Null where reading met a fault, and that is reported already.
        if (load.SeatsKg is null || load.FuelL is null || tanks.Any(tank => tank is null) || seats.Any(seat => seat is null) || compartments.Any(compartment => compartment is null))
            return;
        foreach (var (name, kg) in load.SeatsKg)
        {
            if (!seats.Any(seat => seat.Name == name))
                fault($"{path}.seatsKg{Key(name)}", Number(kg), $"only seats of the airframe: {string.Join(", ", seats.Select(seat => seat.Name))}");
        }
        foreach (var (name, kg) in load.BaggageKg ?? new Dictionary<string, double>())
        {
            if (!compartments.Any(compartment => compartment.Name == name))
                fault($"{path}.baggageKg{Key(name)}", Number(kg), compartments.Count == 0 ? "no baggage: the airframe has no compartment on file" : $"only compartments of the airframe: {string.Join(", ", compartments.Select(c => c.Name))}");
        }
        foreach (var (name, litres) in load.FuelL)
        {
            if (tanks.FirstOrDefault(tank => tank.Name == name) is not { } tank)
                fault($"{path}.fuelL{Key(name)}", Number(litres), $"only tanks of the airframe: {string.Join(", ", tanks.Select(tank => tank.Name))}");
            else if (litres > tank.CapacityL)
                fault($"{path}.fuelL{Key(name)}", Number(litres), $"at most the tank's {Number(tank.CapacityL)} L");
        }
        foreach (var tank in tanks.Where(tank => !load.FuelL.ContainsKey(tank.Name)))
            fault($"{path}.fuelL{Key(tank.Name)}", null, "the litres in this tank");
    }

    static string Key(string name) => JsonText.IsPlainName(name) ? $".{name}" : $"[{JsonText.Quoted(name)}]";

    static string Number(double value) => FormattableString.Invariant($"{value}");
}
