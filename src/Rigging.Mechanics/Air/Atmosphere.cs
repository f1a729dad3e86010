namespace Rigging.Mechanics.Air;

/// <summary>Still air at one pressure altitude: static pressure and temperature, and what follows from them.</summary>
/// <remarks>
/// Source: U.S. Standard Atmosphere 1976, layers from 2 km below sea level to 20 km. The height is pressure altitude,
/// that is geopotential height in the standard atmosphere; it fixes the pressure whatever the temperature of the day.
/// </remarks>
public readonly record struct Atmosphere
{
    const double GasConstant = 287.05287;
    const double HeatRatio = 1.4;
    const double SeaLevelPressurePa = 101325;
    const double SeaLevelTemperatureK = 288.15;
    const double LapseKPerM = 0.0065;
    const double StandardGravity = 9.80665;
    const double TropopauseM = 11000;
    const double LowestM = -2000;
    const double HighestM = 20000;

    Atmosphere(double pressurePa, double temperatureK) => (PressurePa, TemperatureK) = (pressurePa, temperatureK);

    public static Atmosphere SeaLevel { get; } = new(SeaLevelPressurePa, SeaLevelTemperatureK);

    /// <summary>Static pressure, pascal.</summary>
    public double PressurePa { get; }

    /// <summary>Static temperature, kelvin.</summary>
    public double TemperatureK { get; }

    /// <summary>Density by the gas law, kg/m³.</summary>
    public double DensityKgPerM3 => PressurePa / (GasConstant * TemperatureK);

    public double SpeedOfSoundMPerS => Math.Sqrt(HeatRatio * GasConstant * TemperatureK);

    /// <summary>The standard day at a pressure altitude between −2000 m and 20 000 m.</summary>
    public static Atmosphere Standard(double pressureAltitudeM)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pressureAltitudeM, LowestM);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(pressureAltitudeM, HighestM);

        var inTroposphereM = Math.Min(pressureAltitudeM, TropopauseM);
        var temperatureK = SeaLevelTemperatureK - LapseKPerM * inTroposphereM;
        var pressurePa = SeaLevelPressurePa
            * Math.Pow(temperatureK / SeaLevelTemperatureK, StandardGravity / (GasConstant * LapseKPerM))
            * Math.Exp(-StandardGravity * (pressureAltitudeM - inTroposphereM) / (GasConstant * temperatureK));
        return new(pressurePa, temperatureK);
    }

    /// <summary>The same pressure altitude on a day of another temperature, kelvin, greater than zero.</summary>
    public Atmosphere AtTemperature(double temperatureK)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperatureK);
        return new(PressurePa, temperatureK);
    }

    /// <summary>The same pressure altitude on a day warmer (positive) or colder than standard by so many kelvin.</summary>
    public Atmosphere WithDeviation(double deviationK) => AtTemperature(TemperatureK + deviationK);
}
