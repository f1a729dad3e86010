namespace Rigging.Mechanics.Contract;

/// <summary>The threaded fork at the end of each rear lift strut, as the aeroplane's own data give it; no default.</summary>
/// <param name="MmPerTurn">How much longer one turn makes the strut.</param>
/// <param name="ElevationDeg">Of the strut above the horizontal, seen from the front; the strut pushes up from below.</param>
/// <param name="StrutsApartM">Front to rear strut fitting on the wing, along the chord.</param>
/// <param name="FittingYM">Where the rear strut meets the wing, from the centreline.</param>
/// <param name="LeastTurns">Out from fully in.</param>
/// <param name="GreatestTurns">Out from fully in: as far as enough thread stays in.</param>
/// <param name="StepTurns">Half a turn where the fork turns on its bolt hole.</param>
/// <param name="Source">Where these figures are from.</param>
/// <param name="EnteredBy">Who entered or measured them; null when not said.</param>
public sealed record StrutForkOnFile(
    double MmPerTurn,
    double ElevationDeg,
    double StrutsApartM,
    double FittingYM,
    double LeastTurns,
    double GreatestTurns,
    double StepTurns,
    string Source,
    string? EnteredBy = null);

/// <summary>The push rod of each flap, as the aeroplane's own data give it; no default.</summary>
/// <param name="MmPerTurn">How much longer one turn makes the rod.</param>
/// <param name="HornArmMm">From the flap's hinge to the rod's bolt, square to the rod at the up stop.</param>
/// <param name="LengtheningLowers">Whether a longer rod lowers the trailing edge.</param>
/// <param name="LeastTurns">Out from the length of the drawing; negative is in.</param>
/// <param name="GreatestTurns">Out from the length of the drawing: as far as enough thread stays in.</param>
/// <param name="Source">Where these figures are from.</param>
/// <param name="EnteredBy">Who entered or measured them; null when not said.</param>
public sealed record FlapRodOnFile(
    double MmPerTurn,
    double HornArmMm,
    bool LengtheningLowers,
    double LeastTurns,
    double GreatestTurns,
    double StepTurns,
    string Source,
    string? EnteredBy = null);

/// <summary>How far a fixed tab may be bent, and what its gain is worth.</summary>
/// <param name="MaxDeg">Furthest from its surface's chord, either way.</param>
/// <param name="Source">Where these figures are from.</param>
/// <param name="EnteredBy">Who entered or measured them; null when not said.</param>
public sealed record TabBendOnFile(double MaxDeg, TabGain GainIs, string Source, string? EnteredBy = null);

/// <summary>Whether a tab's gain was measured on this aeroplane or is only what no real tab exceeds.</summary>
public enum TabGain { Measured, UpperBound }
