using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Loading;

/// <summary>What is in the tanks.</summary>
public enum FuelGrade { Avgas, UnleadedAvgas, Jet }

/// <summary>What a litre of fuel weighs, and how well that is known.</summary>
/// <param name="KgPerL">At the temperature asked for.</param>
/// <param name="SdKgPerL">Standard deviation: batches of one grade differ.</param>
/// <param name="Source">Where both are from.</param>
public sealed record FuelDensity(double KgPerL, double SdKgPerL, string Source)
{
    /// <summary>No figure was read for colder or warmer, °C.</summary>
    const double LeastDegC = -40, GreatestDegC = 50;

    const double StandardDegC = 15;

    /// <summary>
    /// Of a grade at a temperature. Refused as <c>density-not-on-file</c> where no published figure was found: then a sample
    /// is weighed; and as <c>temperature-out-of-range</c> below −40 and above 50 °C.
    /// </summary>
    public static Answer<FuelDensity> Of(FuelGrade grade, double degC)
    {
        if (!(degC is >= LeastDegC and <= GreatestDegC))
            return new Refusal("temperature-out-of-range", string.Create(CultureInfo.InvariantCulture, $"Fuel at {degC:0.#} °C: densities are on file from {LeastDegC:0} to {GreatestDegC:0} °C."));
        var warmer = degC - StandardDegC;
        return grade switch
        {
            // Half the 1 % by which the source contradicts itself at −40 °C is carried along with the distance from 15 °C.
            FuelGrade.Avgas => new FuelDensity(0.721 - 0.0007 * warmer, Root(0.008, 0.0036 * warmer / 55),
                "0.721 kg/L at 15 °C (CAN 2-3 M82 grades, quoted in an encyclopaedia); −0.0007 kg/L per K (a pilots' training page on fuel density); producers' sheets give 0.695 to 0.72"),
            // The whole published range is allowed for, evenly; the thermal part is our allowance, no coefficient was read.
            FuelGrade.Jet => new FuelDensity(0.8075, Root(0.065 / Math.Sqrt(12), 0.0008 * warmer),
                "0.775 to 0.840 kg/L (MIL-HDBK-1022A 2.3.2.1), its middle; no temperature coefficient was found, so the temperature widens the uncertainty"),
            _ => new Refusal("density-not-on-file", "No published density of this grade was found: weigh a litre, or take it from the fuel supplier's release note."),
        };
    }

    static double Root(double one, double other) => Math.Sqrt(one * one + other * other);
}
