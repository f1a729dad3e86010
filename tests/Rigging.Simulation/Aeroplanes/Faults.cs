namespace Rigging.Simulation.Aeroplanes;

/// <summary>What is wrong with one aeroplane: an amplitude per cause name, in the contract's unit and sign; a cause not named is 0.</summary>
public sealed record Faults(IReadOnlyDictionary<string, double> Amplitudes)
{
    public const string Fuel = "fuel-and-loading";
    public const string Panel = "panel-incidence-difference";
    public const string Tip = "tip-incidence-difference";
    public const string Flap = "flap-difference";
    public const string Contour = "contour-or-fairing";
    public const string Float = "aileron-float";
    public const string Neutral = "aileron-neutral-offset";
    public const string Rudder = "rudder-or-fin-offset";
    public const string Slipstream = "slipstream";
    public const string Friction = "control-friction";
    public const string Ball = "instrument-misalignment";
    public const string Damage = "damage-or-misassembly";

    /// <summary>Causes whose readings grow in proportion to the amplitude. Friction does not (its sign follows the last input), and damage is whatever broke.</summary>
    public static readonly IReadOnlyList<string> Proportional = [Fuel, Panel, Tip, Flap, Contour, Float, Neutral, Rudder, Slipstream, Ball];

    public static Faults None { get; } = new(new Dictionary<string, double>());

    public static Faults Of(string cause, double amplitude) => None.With(cause, amplitude);

    public double this[string cause] => Amplitudes.GetValueOrDefault(cause);

    public Faults With(string cause, double amplitude) => new(new Dictionary<string, double>(Amplitudes) { [cause] = amplitude });

    public Faults Plus(string cause, double change) => With(cause, this[cause] + change);
}
