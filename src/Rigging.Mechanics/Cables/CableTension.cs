using System.Globalization;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Cables;

/// <summary>The tension a cable is rigged to at one temperature, from the aeroplane's own data.</summary>
/// <param name="Tolerance">Either way.</param>
public sealed record RiggedTension(string Cable, Force At, Force Tolerance, Temperature Temperature, string Source);

/// <summary>
/// What a cable stretches by and what it is rigged against. There is no default: a cable's stiffness is its maker's or a
/// measured figure.
/// </summary>
/// <param name="StiffnessN">Force for a stretch of its own length, E·A, newtons: less than that of the solid steel in it.</param>
/// <param name="ExpansionPerK">Of the cable.</param>
/// <param name="AirframeExpansionPerK">Of what holds its ends apart.</param>
/// <param name="Rigidity">Share of the difference that ends up in the cable, 0 to 1; 1 for an airframe that does not give.</param>
public sealed record CableExpansion(double StiffnessN, double ExpansionPerK, double AirframeExpansionPerK, double Rigidity = 1)
{
    /// <summary>Handbook constants, from memory, per kelvin: carbon steel, corrosion-resistant steel, aluminium alloy.</summary>
    public const double CarbonSteel = 11.7e-6, CorrosionResistantSteel = 17.3e-6, AluminiumAlloy = 23.4e-6;

    /// <summary>
    /// Newtons per kelvin of warming: positive, because an aluminium airframe grows more than a steel cable. With a rigid
    /// airframe an upper bound.
    /// </summary>
    /// <remarks>
    /// Assumes: cable and structure at one temperature, in proportion all along the run, pulleys without friction, stretch in
    /// proportion to force. None of these holds well while the sun shines on one wing.
    /// </remarks>
    public double NewtonsPerK => Rigidity * StiffnessN * (AirframeExpansionPerK - ExpansionPerK);

    /// <summary>Newtons gained when the run gets longer by so much, over its whole length.</summary>
    public Force GainedBy(Length lengthening, Length run)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(run.Meters, nameof(run));
        return Force.FromNewtons(Rigidity * StiffnessN * (lengthening / run));
    }
}

/// <summary>What a cable should show at another temperature than it was rigged at.</summary>
/// <param name="Least">Never below zero: a cable cannot push.</param>
/// <param name="IsEstimate">True away from the temperature on file: the aeroplane's own chart, where there is one, goes before it.</param>
public sealed record WantedTension(Force Least, Force Middle, Force Greatest, bool IsEstimate)
{
    /// <summary>Beyond so many kelvin from what is on file an estimate is not given (judgement, no source).</summary>
    const double FarthestK = 40;

    /// <summary>
    /// The rigged tension carried to a temperature. Refused as <c>expansion-not-on-file</c> away from the temperature on file
    /// when nothing is known of the cable, and <c>temperature-too-far</c> beyond 40 K.
    /// </summary>
    public static Answer<WantedTension> At(Temperature temperature, RiggedTension rigged, CableExpansion? expansion)
    {
        ArgumentNullException.ThrowIfNull(rigged);
        const double sameK = 0.5;
        var warmerK = temperature.Kelvins - rigged.Temperature.Kelvins;
        if (!(Math.Abs(warmerK) <= FarthestK))
            return new Refusal("temperature-too-far", string.Create(CultureInfo.InvariantCulture, $"{warmerK:+0;−0} K from the {rigged.Temperature.DegreesCelsius:0} °C on file is too far for an estimate."));
        if (Math.Abs(warmerK) > sameK && expansion is null)
            return new Refusal("expansion-not-on-file", string.Create(CultureInfo.InvariantCulture,
                $"The {rigged.Cable} tension is on file at {rigged.Temperature.DegreesCelsius:0} °C only: use the manual's chart, or bring the hangar to that temperature."));
        var estimated = Math.Abs(warmerK) > sameK;
        var middle = rigged.At.Newtons + (estimated ? expansion!.NewtonsPerK * warmerK : 0);
        Force Of(double newtons) => Force.FromNewtons(Math.Max(0, newtons));
        return new WantedTension(Of(middle - rigged.Tolerance.Newtons), Of(middle), Of(middle + rigged.Tolerance.Newtons), estimated);
    }

    /// <summary>Null when it is inside, else what is wrong.</summary>
    public string? Fault(Force measured) => measured < Least
        ? string.Create(CultureInfo.InvariantCulture, $"{measured.Newtons:0} N is slack: at least {Least.Newtons:0} N.")
        : measured > Greatest ? string.Create(CultureInfo.InvariantCulture, $"{measured.Newtons:0} N is tight: at most {Greatest.Newtons:0} N.") : null;
}
