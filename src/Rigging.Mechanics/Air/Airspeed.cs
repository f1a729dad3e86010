namespace Rigging.Mechanics.Air;

/// <summary>Calibrated to true airspeed.</summary>
public static class Airspeed
{
    /// <summary>
    /// True airspeed, m/s, from calibrated airspeed, m/s, by the compressible relation: calibrated airspeed fixes the
    /// impact pressure, impact over static pressure fixes the Mach number. Subsonic only.
    /// </summary>
    public static double TrueFromCalibrated(double calibratedMPerS, Atmosphere air)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(calibratedMPerS);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(calibratedMPerS, Atmosphere.SeaLevel.SpeedOfSoundMPerS);

        var seaLevel = Atmosphere.SeaLevel;
        var impactPa = seaLevel.PressurePa
            * (Math.Pow(1 + 0.2 * Square(calibratedMPerS / seaLevel.SpeedOfSoundMPerS), 3.5) - 1);
        var mach = Math.Sqrt(5 * (Math.Pow(impactPa / air.PressurePa + 1, 2.0 / 7) - 1));
        return mach * air.SpeedOfSoundMPerS;
    }

    static double Square(double value) => value * value;
}
