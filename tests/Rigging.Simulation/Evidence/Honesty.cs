namespace Rigging.Simulation.Evidence;

/// <summary>How a thing is read: the standard deviation of the reading itself, and the step it is rounded to.</summary>
public sealed record Honesty(double Floor, double Share, double Step)
{
    /// <summary>Deviation of one reading before rounding.</summary>
    public double Deviation(double reading) => Floor + Share * Math.Abs(reading);

    /// <summary>With rounding: a step s spreads evenly, s/√12.</summary>
    public double WithRounding(double reading, double turbulence) => double.Hypot(Deviation(reading) * turbulence, Step / Math.Sqrt(12));

    public double Read(double truth, double turbulence, Chance chance)
    {
        var read = truth + Deviation(truth) * turbulence * chance.Normal();
        // Rounding −0.2 gives a negative zero, which no person writes.
        return Math.Round(Math.Round(read / Step, MidpointRounding.AwayFromZero) * Step, 3) + 0.0;
    }

    public static double Turbulence(string air) => air switch { "light" => 2, "moderate" => 3, _ => 1 };
}

/// <summary>
/// One pilot's ways. Deviations are the contract's defaults; where it has none the request states its own: times 0.7 s, heading change 3°,
/// wheel force 2 N, roll rate 0.5 °/s, fuel difference 3 L.
/// </summary>
public sealed record Pilot(string BankMethod, double BankStep, double BallStep, double SecondStep)
{
    public static Pilot Careful { get; } = new("stopwatch-horizon", 2, 0.25, 0.5);

    public static Pilot Plain { get; } = new("stopwatch-horizon", 5, 0.5, 1);

    public static Pilot Instrumented { get; } = new("instrument", 1, 0.25, 0.5);

    public static Pilot Recorded { get; } = new("flight-log", 0.5, 0.25, 0.5);

    public static Pilot Any(Chance chance) => chance.Pick(Careful, Careful, Plain, Plain, Instrumented, Recorded);

    public Honesty Of(string kind) => kind switch
    {
        "bank-after" => BankMethod switch
        {
            "instrument" => new(1, 0.03, BankStep),
            "flight-log" => new(0.5, 0, BankStep),
            _ => new(1.5, 0.05, BankStep),
        },
        "time-to-bank" => new(0.7, 0, SecondStep),
        "heading-change" => new(3, 0, 5),
        "heading-rate" => new(0.1, 0, 0.1),
        "ball" => new(0.12, 0, BallStep),
        "wheel-angle" => new(2, 0, 1),
        "wheel-force" => new(2, 0, 1),
        "roll-rate" => new(0.5, 0, 0.5),
        "fuel-difference" => new(3, 0, 1),
        _ => throw new ArgumentException($"Nobody reads {kind}."),
    };

    /// <summary>The contract has a default deviation for these; the others carry their own.</summary>
    public static bool HasDefault(string kind) => kind is "bank-after" or "ball" or "heading-rate" or "wheel-angle";

    public string Method(string kind) => kind switch
    {
        "bank-after" => BankMethod,
        "time-to-bank" => "stopwatch-horizon",
        "heading-rate" or "heading-change" => "stopwatch-compass",
        "fuel-difference" => "instrument",
        _ => "eye",
    };
}
