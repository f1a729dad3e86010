using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Loading;

/// <summary>One thing on the scales or taken off the sum; what is taken off is negative.</summary>
/// <param name="ArmM">From the datum of the sum: behind it, or right of the centreline, positive.</param>
public sealed record Weight(string What, double Kg, double ArmM);

/// <summary>A mass and where it lies along one axis.</summary>
public sealed record Balance(double Kg, double ArmM)
{
    /// <summary>Sum of weights and of moments. Refused as <c>nothing-weighed</c> when no mass is left.</summary>
    public static Answer<Balance> Of(IReadOnlyList<Weight> weights)
    {
        ArgumentNullException.ThrowIfNull(weights);
        var kg = weights.Sum(weight => weight.Kg);
        if (!(kg > 0) || !double.IsFinite(kg))
            return new Refusal("nothing-weighed", "The weights add up to nothing: check the scale readings and their tare.");
        return new Balance(kg, weights.Sum(weight => weight.Kg * weight.ArmM) / kg);
    }

    /// <summary>
    /// How far right of the centreline the aeroplane's mass lies, from its two main-wheel scales less tare: half a track
    /// for the whole difference. A nose or tail wheel on the centreline has no lateral arm and only adds mass.
    /// </summary>
    public static Answer<Balance> Across(double leftMainKg, double rightMainKg, double onCentrelineKg, double trackM) => Of(
    [
        new("left main wheel", leftMainKg, -trackM / 2),
        new("right main wheel", rightMainKg, trackM / 2),
        new("wheel on the centreline", onCentrelineKg, 0),
    ]);
}
