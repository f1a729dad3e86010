namespace Rigging.Mechanics.Contract;

/// <summary>
/// How far each thing may be written down, either way. What nobody can read on a light aeroplane is said of none either: a computed figure beyond
/// is said as more than this.
/// </summary>
public static class ReadingLimits
{
    public const double BankDeg = 180, RollRateDegPerS = 90, HeadingRateDegPerS = 45, HeadingChangeDeg = 720, BallWidths = 3, WheelDeg = 180, WheelForceN = 1000;

    /// <summary>Of an angle measured on the ground.</summary>
    public const double GroundDeg = 45;

    /// <summary>Of a force measured on the ground.</summary>
    public const double GroundForceN = 5000;
}
