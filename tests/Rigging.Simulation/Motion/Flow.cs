namespace Rigging.Simulation.Motion;

/// <summary>The air at a test point: true airspeed (m/s) and dynamic pressure (Pa), from calibrated airspeed, pressure altitude and outside temperature.</summary>
public sealed record Flow(double Speed, double Pressure)
{
    public const double Gravity = 9.80665;
    public const double Knot = 1852.0 / 3600;
    const double GasConstant = 287.05287;
    const double SeaLevelPressure = 101325;
    const double SeaLevelTemperature = 288.15;

    /// <summary>The trade's default temperature: 15 °C less 1.98 per 1000 ft.</summary>
    public static double StandardC(double pressureAltitudeFt) => 15 - 1.98 * pressureAltitudeFt / 1000;

    public static Flow At(double casKt, double pressureAltitudeFt, double oatC)
    {
        var height = pressureAltitudeFt * 0.3048;
        var pressure = SeaLevelPressure * Math.Pow(1 - 0.0065 * height / SeaLevelTemperature, Gravity / (0.0065 * GasConstant));
        var temperature = oatC + 273.15;
        var impact = SeaLevelPressure * (Math.Pow(1 + 0.2 * Math.Pow(casKt * Knot / Sound(SeaLevelTemperature), 2), 3.5) - 1);
        var mach = Math.Sqrt(5 * (Math.Pow(impact / pressure + 1, 2.0 / 7) - 1));
        var speed = mach * Sound(temperature);
        return new(speed, 0.5 * pressure / (GasConstant * temperature) * speed * speed);
    }

    static double Sound(double kelvin) => Math.Sqrt(1.4 * GasConstant * kelvin);
}
