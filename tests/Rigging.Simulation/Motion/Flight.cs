using MathNet.Numerics.LinearAlgebra;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation.Motion;

/// <summary>Sideslip (wind from the right positive), roll rate, yaw rate, bank, heading since release; radians and seconds.</summary>
public readonly record struct State(double Slip, double Roll, double Yaw, double Bank, double Heading)
{
    public static State operator +(State a, State b) => new(a.Slip + b.Slip, a.Roll + b.Roll, a.Yaw + b.Yaw, a.Bank + b.Bank, a.Heading + b.Heading);

    public static State operator *(double s, State a) => new(s * a.Slip, s * a.Roll, s * a.Yaw, s * a.Bank, s * a.Heading);
}

/// <summary>Wings level and steady: aileron (right wing down) and rudder (trailing edge left), radians.</summary>
public sealed record Held(State State, double Aileron, double Rudder);

/// <summary>One aeroplane in one condition of flight: its linear lateral equations, the ways a pilot can hold it, and what follows when let go.</summary>
public sealed class Flight
{
    readonly Aeroplane aeroplane;
    readonly Flow flow;
    readonly double span;
    readonly double force;
    readonly double weight;
    readonly double hat;
    readonly double roll;
    readonly double yaw;

    public Flight(Aeroplane aeroplane, TestPoint point)
    {
        this.aeroplane = aeroplane;
        var file = aeroplane.File;
        flow = Flow.At(point.CasKt, point.PressureAltitudeFt, point.OatC);
        span = file.Span;
        force = flow.Pressure * file.Wing.Area;
        weight = file.Mass * Flow.Gravity;
        hat = span / (2 * flow.Speed);
        var thrust = aeroplane.PowerEffect(point.Power, flow.Pressure);
        roll = aeroplane.WingRoll + thrust.Roll + aeroplane.LoadMoment(point.Load) / (force * span);
        yaw = aeroplane.WingYaw(weight / force) + thrust.Yaw;
    }

    /// <summary>Rolling moment that one newton metre of load makes, as a coefficient.</summary>
    double PerMoment => 1 / (force * span);

    /// <summary>The ball as shown, widths, right positive.</summary>
    public double Ball(double slip, double rudder)
    {
        var side = aeroplane.D.CyBeta * slip + aeroplane.D.CyRudder * rudder;
        return -force * side / weight * 180 / Math.PI / aeroplane.File.BallDegPerWidth + aeroplane.Faults[Faults.Ball];
    }

    /// <summary>Feet off: the rudder floats where it will, the wheel keeps the wings level.</summary>
    public Held Level()
    {
        var rudder = aeroplane.FeetOffRudder;
        var d = aeroplane.D;
        // Unknown: sideslip, yaw rate, aileron.
        var x = Solve(
            [[force / (weight / Flow.Gravity * flow.Speed) * d.CyBeta, -1, 0], [d.ClBeta, d.ClR * hat, aeroplane.AileronRoll], [d.CnBeta, d.CnR * hat, d.CnAileron]],
            [-force / (weight / Flow.Gravity * flow.Speed) * d.CyRudder * rudder, -roll - d.ClRudder * rudder, -yaw - d.CnRudder * rudder]);
        return new(new(x[0], 0, x[1], 0, 0), x[2], rudder);
    }

    /// <summary>Wings level and the shown ball centred, by wheel and feet.</summary>
    public Held Straight()
    {
        var (side, turn, d) = BallCentred(shown: true);
        // Unknown: sideslip, aileron, rudder.
        var x = Solve(
            [[d.CyBeta, 0, d.CyRudder], [d.ClBeta, aeroplane.AileronRoll, d.ClRudder], [d.CnBeta, d.CnAileron, d.CnRudder]],
            [side, -roll - d.ClR * hat * turn, -yaw - d.CnR * hat * turn]);
        return new(new(x[0], 0, turn, 0, 0), x[1], x[2]);
    }

    /// <summary>The rolling moment coefficient that is left hands off with the ball centred, wings level; truly centred, or as shown.</summary>
    public double HandsOffRoll(double aileron, bool shownBall)
    {
        var (side, turn, d) = BallCentred(shownBall);
        var x = Solve([[d.CyBeta, d.CyRudder], [d.CnBeta, d.CnRudder]], [side, -yaw - d.CnR * hat * turn - d.CnAileron * aileron]);
        return roll + d.ClBeta * x[0] + d.ClRudder * x[1] + d.ClR * hat * turn + aeroplane.AileronRoll * aileron;
    }

    /// <summary>Roll rate quoted for that moment, rad/s: (2V/b)·Cl/|Clp|.</summary>
    public double Tendency(double aileron) => HandsOffRoll(aileron, shownBall: false) / Math.Abs(aeroplane.Damping) / hat;

    /// <summary>Moment (N·m) of load that must be added for no roll hands off with the shown ball centred.</summary>
    public double MomentToBalance(double aileron) => -HandsOffRoll(aileron, shownBall: true) / PerMoment;

    /// <summary>The states every <paramref name="step"/> seconds after the wheel is let go or moved, by Runge and Kutta's fourth order.</summary>
    public IEnumerable<(double Time, State State)> After(State start, double aileron, double rudder, double step = 0.05)
    {
        var state = start;
        for (var i = 0; ; i++)
        {
            yield return (i * step, state);
            var a = Rate(state, aileron, rudder);
            var b = Rate(state + step / 2 * a, aileron, rudder);
            var c = Rate(state + step / 2 * b, aileron, rudder);
            var e = Rate(state + step * c, aileron, rudder);
            state += step / 6 * (a + 2 * b + 2 * c + e);
        }
    }

    /// <summary>Aileron where the wheel goes hands off, rad; the forces of the stream scale the friction that holds it away.</summary>
    public double FreeAileron(int lastInput) => aeroplane.FreeAileron(lastInput, flow.Pressure);

    /// <summary>Dynamic pressure over that of the reference.</summary>
    public double Stiffening => flow.Pressure / aeroplane.ReferencePressure;

    /// <summary>Columns of the state matrix (slip, roll rate, yaw rate, bank).</summary>
    public IEnumerable<double[]> Columns()
    {
        var still = Rate(default, 0, 0);
        return ((State[])[new(1, 0, 0, 0, 0), new(0, 1, 0, 0, 0), new(0, 0, 1, 0, 0), new(0, 0, 0, 1, 0)])
            .Select(unit => Rate(unit, 0, 0) + -1 * still)
            .Select(rate => (double[])[rate.Slip, rate.Roll, rate.Yaw, rate.Bank]);
    }

    State Rate(State s, double aileron, double rudder)
    {
        var d = aeroplane.D;
        var (p, r) = (s.Roll * hat, s.Yaw * hat);
        var side = d.CyBeta * s.Slip + d.CyRudder * rudder;
        var l = force * span * (d.ClBeta * s.Slip + aeroplane.Damping * p + d.ClR * r + aeroplane.AileronRoll * aileron + d.ClRudder * rudder + roll);
        var n = force * span * (d.CnBeta * s.Slip + d.CnP * p + d.CnR * r + d.CnAileron * aileron + d.CnRudder * rudder + yaw);
        var (ix, iz, ixz) = aeroplane.Inertia;
        var determinant = ix * iz - ixz * ixz;
        return new(
            force * side / (weight / Flow.Gravity * flow.Speed) - s.Yaw + Flow.Gravity / flow.Speed * s.Bank,
            (iz * l + ixz * n) / determinant,
            (ixz * l + ix * n) / determinant,
            s.Roll,
            s.Yaw);
    }

    /// <summary>Side force coefficient and turn with the ball centred: a ball that shows m widths right in true balance is centred in a slip.</summary>
    (double Side, double Turn, Derivatives D) BallCentred(bool shown)
    {
        var lean = shown ? AirframeFile.Radians(aeroplane.Faults[Faults.Ball] * aeroplane.File.BallDegPerWidth) : 0;
        return (lean * weight / force, lean * Flow.Gravity / flow.Speed, aeroplane.D);
    }

    static Vector<double> Solve(double[][] rows, double[] right) => Matrix<double>.Build.DenseOfRowArrays(rows).Solve(Vector<double>.Build.DenseOfArray(right));
}
