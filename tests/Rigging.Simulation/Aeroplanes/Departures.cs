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

    public double RudderSideForce { get; init; } = 1;

    public double RudderRoll { get; init; } = 1;

    public double RudderYaw { get; init; } = 1;

    public double AileronYaw { get; init; } = 1;

    public double SlipstreamRoll { get; init; } = 1;

    public double SlipstreamYaw { get; init; } = 1;

    public double Ixx { get; init; } = 1;

    public double Izz { get; init; } = 1;

    public double LeftThrow { get; init; } = 1;

    public double RightThrow { get; init; } = 1;

    /// <summary>
    /// Damping 12 % and yaw inertia, roll inertia up to 20 %, the spread between two published sets for one type; the rest 10 to 20 %, throw 10 %.
    /// Normal, cut at two and a half deviations.
    /// </summary>
    public static Departures Drawn(Chance chance)
    {
        var drawn = new Departures
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
            RudderYaw = chance.Factor(0.10),
            AileronYaw = chance.Factor(0.20),
            SlipstreamYaw = chance.Factor(0.20),
            Ixx = chance.Factor(0.20),
            Izz = chance.Factor(0.15),
            LeftThrow = chance.Factor(0.10),
            RightThrow = chance.Factor(0.10),
        };
        // One rudder, known as well as its area is, and one stream.
        return drawn with { RudderSideForce = drawn.RudderYaw, RudderRoll = drawn.RudderYaw, SlipstreamRoll = drawn.SlipstreamYaw };
    }

    /// <summary>
    /// Of an aeroplane whose file has its geometry alone: what the file cannot say departs by the accuracy to which a textbook gives it, each figure by
    /// itself; the wing and the throws as of any other.
    /// </summary>
    public static Departures Drawn(Chance chance, IReadOnlyDictionary<string, double> accuracies) =>
        accuracies.Aggregate(Drawn(chance), (drawn, figure) => drawn.With(figure.Key, chance.Factor(figure.Value)));

    /// <summary>With one figure, by its name in the airframe file, so many times what is filed or what is usual.</summary>
    public Departures With(string figure, double factor) => figure switch
    {
        "cYBeta" => this with { SideForce = factor },
        "clBeta" => this with { Dihedral = factor },
        "clR" => this with { RollFromYaw = factor },
        "cnBeta" => this with { Weathercock = factor },
        "cnP" => this with { YawFromRoll = factor },
        "cnR" => this with { YawDamping = factor },
        "cYRudder" => this with { RudderSideForce = factor },
        "clRudder" => this with { RudderRoll = factor },
        "cnRudder" => this with { RudderYaw = factor },
        "cnAileron" => this with { AileronYaw = factor },
        "slipstreamClAtFullPower" => this with { SlipstreamRoll = factor },
        "slipstreamCnAtFullPower" => this with { SlipstreamYaw = factor },
        "ixxKgM2" => this with { Ixx = factor },
        "izzKgM2" => this with { Izz = factor },
        _ => throw new ArgumentException($"Nothing departs by {figure}."),
    };
}
