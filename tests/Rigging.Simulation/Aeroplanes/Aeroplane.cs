using Rigging.Simulation.Motion;

namespace Rigging.Simulation.Aeroplanes;

/// <summary>One aeroplane: its file, how it departs from it, and what is wrong with it. Radians inside.</summary>
public sealed class Aeroplane
{
    readonly Departures departures;

    public Aeroplane(AirframeFile file, Departures departures, Faults faults)
    {
        (File, this.departures, Faults) = (file, departures, faults);
        var filed = file.Derivatives;
        D = new(
            filed.CyBeta * departures.SideForce, filed.ClBeta * departures.Dihedral, filed.ClR * departures.RollFromYaw,
            filed.CnBeta * departures.Weathercock, filed.CnP * departures.YawFromRoll, filed.CnR * departures.YawDamping,
            filed.CyRudder * departures.RudderSideForce, filed.ClRudder * departures.RudderRoll, filed.CnRudder * departures.RudderYaw,
            filed.CnAileron * departures.AileronYaw, filed.SlipstreamCl * departures.SlipstreamRoll, filed.SlipstreamCn * departures.SlipstreamYaw);
        Damping = file.Wing.Damping * departures.Damping;
        AileronRoll = file.Wing.Aileron * departures.Aileron;
        Inertia = (file.Ixx * departures.Ixx, file.Izz * departures.Izz, file.Ixz * Math.Sqrt(departures.Ixx * departures.Izz));
        ReferencePressure = Flow.At(file.ReferenceKt, file.ReferenceFt, Flow.StandardC(file.ReferenceFt)).Pressure;
    }

    public AirframeFile File { get; }

    public Faults Faults { get; }

    public Derivatives D { get; }

    public double Damping { get; }

    public double AileronRoll { get; }

    public (double Ixx, double Izz, double Ixz) Inertia { get; }

    public double ReferencePressure { get; }

    /// <summary>Feet off, the fin and rudder act as this much rudder.</summary>
    public double FeetOffRudder => Angle(Faults.Rudder) + AirframeFile.Radians(DamageRudderPerPanelDeg * Faults[Faults.Damage]);

    /// <summary>Damage twists the panel by its amplitude and bends the tail with it, degrees of rudder per degree of panel.</summary>
    public const double DamageRudderPerPanelDeg = 1.5;

    /// <summary>Rolling moment coefficient of everything the wing has wrong.</summary>
    public double WingRoll => departures.Incidence * (File.Wing.Panel * WholePanel + File.Wing.Tip * Angle(Faults.Tip)) + departures.Flap * File.Wing.Flap * Angle(Faults.Flap);

    /// <summary>Yaw induced by the same at a lift coefficient.</summary>
    public double WingYaw(double lift)
    {
        var (panel, tip, flap) = File.Wing.Yaw(lift);
        return departures.Incidence * (panel * WholePanel + tip * Angle(Faults.Tip)) + departures.Flap * flap * Angle(Faults.Flap);
    }

    // Skin, fairings and damage roll as so many degrees of panel would.
    double WholePanel => Angle(Faults.Panel) + Angle(Faults.Contour) + Angle(Faults.Damage);

    /// <summary>What the slipstream does beyond what the type's built-in offsets cancel: C·(P·qref/q − Pref), and the fault's fraction more.</summary>
    public (double Roll, double Yaw) PowerEffect(double power, double pressure)
    {
        var difference = (power * ReferencePressure / pressure - File.ReferencePower) * (1 + Faults[Faults.Slipstream]);
        return (D.SlipstreamCl * difference, D.SlipstreamCn * difference);
    }

    /// <summary>Lateral moment of people and fuel, N·m right wing down, with the litres that nobody reported.</summary>
    public double LoadMoment(Load load) => SeatMoment(load) + FuelMoment(load.FuelL) + Faults[Faults.Fuel] * MomentPerLitre;

    public double SeatMoment(Load load) => load.SeatsKg.Sum(seat => seat.Value * File.Seats[seat.Key]) * Flow.Gravity;

    /// <summary>N·m per litre of difference, right minus left.</summary>
    public double MomentPerLitre => Load.KgPerLitre * Flow.Gravity * (File.Tanks.Values.Max() - File.Tanks.Values.Min()) / 2;

    double FuelMoment(IReadOnlyDictionary<string, double> litres) => litres.Sum(tank => tank.Value * File.Tanks[tank.Key]) * Load.KgPerLitre * Flow.Gravity;

    /// <summary>
    /// Hands off the aileron floats; with friction it stays short of there on the side of the last input, as far as the friction
    /// (newtons at the wheel) outweighs the air.
    /// </summary>
    public double FreeAileron(int lastInput, double pressure) =>
        Angle(Faults.Float) + lastInput * AirframeFile.Radians(Faults[Faults.Friction] / (File.ForcePerAileronDeg * pressure / ReferencePressure));

    public double NeutralAileron => Angle(Faults.Neutral);

    /// <summary>°/s, hands off, ball truly centred, at the reference with the reference load: litres that were not reported are no part of that.</summary>
    public double TendencyDegPerS
    {
        get
        {
            var asRigged = new Aeroplane(File, departures, Faults.With(Faults.Fuel, 0));
            var reference = new TestPoint(
                TestPoint.ReleaseWheel, File.ReferenceKt, File.ReferenceFt, Flow.StandardC(File.ReferenceFt), File.ReferencePower, Load.Of(File.ReferenceLoad));
            var flight = new Flight(asRigged, reference);
            return flight.Tendency(asRigged.FreeAileron(0, ReferencePressure)) * 180 / Math.PI;
        }
    }

    public Aeroplane With(Faults faults) => new(File, departures, faults);

    /// <summary>Incidence of one panel from its eccentric at an angle, degrees, trailing edge down positive; the true throw.</summary>
    public double EccentricDeg(bool right, double angleDeg)
    {
        var reach = File.Throw * (right ? departures.RightThrow : departures.LeftThrow);
        return Math.Atan(reach * Math.Sin(AirframeFile.Radians(angleDeg)) / File.SparSpacing) * 180 / Math.PI;
    }

    double Angle(string cause) => AirframeFile.Radians(Faults[cause]);
}
