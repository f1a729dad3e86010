namespace Rigging.Simulation.Aeroplanes;

/// <summary>How one aeroplane departs from its file, as factors on the file's figures (1 = as filed).</summary>
public sealed record Departures
{
    public static Departures None { get; } = new();

    public double Damping { get; init; } = 1;

    /// <summary>Rolling moment of panel, tip and skin; induced yaw follows it.</summary>
    public double Incidence { get; init; } = 1;

    public double Flap { get; init; } = 1;

    public double Aileron { get; init; } = 1;

    public double SideForce { get; init; } = 1;

    public double Dihedral { get; init; } = 1;

    public double RollFromYaw { get; init; } = 1;

    public double Weathercock { get; init; } = 1;

    public double YawFromRoll { get; init; } = 1;

    public double YawDamping { get; init; } = 1;

    public double Rudder { get; init; } = 1;

    public double AileronYaw { get; init; } = 1;

    public double Slipstream { get; init; } = 1;

    public double Ixx { get; init; } = 1;

    public double Izz { get; init; } = 1;

    public double LeftThrow { get; init; } = 1;

    public double RightThrow { get; init; } = 1;

    /// <summary>
    /// Damping 12 % and yaw inertia, roll inertia up to 20 %, the spread between two published sets for one type; the rest 10 to 20 %, throw 10 %.
    /// Normal, cut at two and a half deviations.
    /// </summary>
    public static Departures Drawn(Chance chance) => new()
    {
        Damping = chance.Factor(0.12),
        Incidence = chance.Factor(0.10),
        Flap = chance.Factor(0.10),
        Aileron = chance.Factor(0.10),
        SideForce = chance.Factor(0.15),
        Dihedral = chance.Factor(0.15),
        RollFromYaw = chance.Factor(0.15),
        Weathercock = chance.Factor(0.15),
        YawFromRoll = chance.Factor(0.20),
        YawDamping = chance.Factor(0.15),
        Rudder = chance.Factor(0.10),
        AileronYaw = chance.Factor(0.20),
        Slipstream = chance.Factor(0.20),
        Ixx = chance.Factor(0.20),
        Izz = chance.Factor(0.15),
        LeftThrow = chance.Factor(0.10),
        RightThrow = chance.Factor(0.10),
    };
}
