using System.Runtime.Intrinsics;

namespace Rigging.Mechanics.Motion;

/// <summary>
/// What some seconds do to the motion, exactly: x(t) = E·x(0) + P·f with E = exp(A·t) and P the integral of E, and the heading as the
/// integral of the yaw rate.
/// </summary>
/// <remarks>
/// With q the yaw row of the integral of P: a short step by Taylor's series, then doubled until it is long enough,
/// P(2t) = 2P + A·P² and q(2t) = 2q + (P²)'s yaw row; E = 1 + A·P. Doubling P instead of E keeps a root at zero harmless.
/// </remarks>
sealed class Transition
{
    /// <summary>The first term left out of a step with ‖A·t‖ below a half is under 1e-15.</summary>
    const int Terms = 12;

    readonly Matrix4 carried, pushed;
    readonly Vector256<double> pushedHeading;

    public Transition(in Matrix4 system, double seconds)
    {
        var size = system.InfinityNorm * seconds;
        var doublings = double.IsFinite(size) && size > 0 ? Math.Max(0, Math.ILogB(size) + 2) : 0;
        var step = Math.ScaleB(seconds, -doublings);

        var (scaled, unit) = (step * system, Matrix4.Unit(LateralModel.YawRate));
        var (push, heading) = (Matrix4.Identity, unit);
        for (var k = Terms; k >= 1; k--)
        {
            push = Matrix4.Identity + 1.0 / (k + 1) * (scaled * push);
            heading = unit + 1.0 / (k + 2) * (heading * scaled);
        }
        (push, heading) = (step * push, step * step / 2 * heading);
        for (var i = 0; i < doublings; i++)
        {
            var square = push * push;
            (push, heading) = (2 * push + system * square, 2 * heading + square[LateralModel.YawRate]);
        }
        (carried, pushed, pushedHeading) = (Matrix4.Identity + system * push, push, heading);
    }

    /// <summary>From a start that turns and slips with wings level, under a constant push.</summary>
    public ReleasedMotion After(double betaRad, double yawRateRadPerS, LateralAcceleration push)
    {
        var start = Vector256.Create(betaRad, 0, yawRateRadPerS, 0);
        var steady = Vector256.Create(push.BetaRadPerS, push.RollRadPerS2, push.YawRadPerS2, 0);
        double At(int place) => Vector256.Dot(carried[place], start) + Vector256.Dot(pushed[place], steady);
        return new(
            At(LateralModel.Bank), At(LateralModel.RollRate), At(LateralModel.YawRate),
            Vector256.Dot(pushed[LateralModel.YawRate], start) + Vector256.Dot(pushedHeading, steady));
    }
}
