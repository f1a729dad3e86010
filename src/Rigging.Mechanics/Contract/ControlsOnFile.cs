using Rigging.Mechanics.Cables;
using Rigging.Mechanics.Travel;
using UnitsNet;

namespace Rigging.Mechanics.Contract;

/// <summary>One control cable that can be measured, by the name that the aeroplane's manual gives it.</summary>
/// <param name="Tension">Null when the file does not say what it is rigged to; no default.</param>
public sealed record CableOnFile(string Name, TensionOnFile? Tension = null)
{
    /// <summary>What it should show at a temperature; null when no tension is on file.</summary>
    public Answer<WantedTension>? At(Temperature temperature) => Tension is { } rigged
        ? WantedTension.At(temperature, rigged.Rigged(Name), rigged.Stretch?.Expansion)
        : null;
}

/// <summary>The tension a cable is rigged to at one temperature, from the aeroplane's own data.</summary>
/// <param name="Stretch">Null when nothing is known of it: then the tension is known at that temperature only.</param>
/// <param name="Source">Where these figures are from.</param>
public sealed record TensionOnFile(double LeastN, double GreatestN, double DegC, string Source, CableStretchOnFile? Stretch = null)
{
    internal RiggedTension Rigged(string cable) => new(cable, Force.FromNewtons((LeastN + GreatestN) / 2), Force.FromNewtons((GreatestN - LeastN) / 2),
        Temperature.FromDegreesCelsius(DegC), Source);
}

/// <summary>How a cable's tension goes with temperature, as its maker or a measurement gives it.</summary>
/// <param name="StiffnessN">Force for a stretch of its own length.</param>
/// <param name="ExpansionPerK">Of the cable.</param>
/// <param name="AirframeExpansionPerK">Of what holds its ends apart.</param>
/// <param name="Rigidity">Share of the difference that ends up in the cable; null for 1, an airframe that does not give.</param>
public sealed record CableStretchOnFile(double StiffnessN, double ExpansionPerK, double AirframeExpansionPerK, double? Rigidity = null)
{
    internal CableExpansion Expansion => new(StiffnessN, ExpansionPerK, AirframeExpansionPerK, Rigidity ?? 1);
}

/// <summary>What moves in the air for an input in the cockpit, by kind.</summary>
public enum ControlSurface { Ailerons, Flaps, Rudder, Elevator }

/// <summary>How far a surface is allowed to go from its neutral, from the aeroplane's own data.</summary>
/// <param name="UpLeastDeg">Trailing edge up; of a rudder, left.</param>
/// <param name="DownLeastDeg">Trailing edge down; of a rudder, right.</param>
/// <param name="AlikeWithinDeg">How far left and right surface may differ the same way; null where there is one, or nothing on file.</param>
/// <param name="Source">Where these figures are from.</param>
public sealed record TravelOnFile(
    ControlSurface Surface,
    double UpLeastDeg,
    double UpGreatestDeg,
    double DownLeastDeg,
    double DownGreatestDeg,
    double? AlikeWithinDeg,
    string Source)
{
    public TravelLimits Limits() => new(Range(UpLeastDeg, UpGreatestDeg), Range(DownLeastDeg, DownGreatestDeg),
        AlikeWithinDeg is { } alike ? Angle.FromDegrees(alike) : null, Source);

    static TravelRange Range(double least, double greatest) => new(Angle.FromDegrees(least), Angle.FromDegrees(greatest));
}
