using System.Globalization;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Survey;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>One angle at which an eccentric may stand.</summary>
/// <param name="Sd">One standard deviation.</param>
public sealed record AsFoundEstimate(Angle Angle, Angle Sd);

/// <param name="Candidates">One or two; two fit the same measurement where the throw can be on either side of its end.</param>
public sealed record AsFoundCandidates(IReadOnlyList<AsFoundEstimate> Candidates);

/// <summary>How an eccentric stands, from where its mark points or from what a known turn does.</summary>
public static class FoundAngle
{
    /// <summary>
    /// From the mark on the head that points to the bolt hole, read as on a clock by whoever looks at the named face: 12 is up.
    /// Refused as <c>bushing-not-on-file</c> where fitting and neutral offset are unknown, <c>no-such-hour</c> outside 0 to 12.
    /// </summary>
    /// <param name="hour">Such as 3.5.</param>
    /// <param name="readToHours">How close the hour was read, either way; half an hour is 15°.</param>
    public static Answer<AsFoundEstimate> FromClock(Eccentric eccentric, Side wing, Face face, double hour, double readToHours)
    {
        ArgumentNullException.ThrowIfNull(eccentric);
        if (!(hour is >= 0 and <= 12) || !(readToHours is > 0 and <= 3))
            return new Refusal("no-such-hour", "A clock position is 0 to 12, read to within 3 hours or closer.");
        if (eccentric.RotationOf(wing, face, TrailingEdge.Down) is not { } lowers || eccentric.HoleSeenRight(wing, face) is not { } right)
            return new Refusal("bushing-not-on-file", "Which fitting holds the bushing and which way its hole lies at neutral are not on file: the mark's place says nothing without them.");
        const double degPerHour = 30;
        // Level with the bolt, at 3 or at 9 o'clock, it stands at neutral.
        var clockwiseDeg = Math.IEEERemainder((hour - (right ? 3 : 9)) * degPerHour, 360);
        return new AsFoundEstimate(
            Angle.FromDegrees(lowers == Rotation.Clockwise ? clockwiseDeg : -clockwiseDeg),
            Angle.FromDegrees(readToHours * degPerHour / Math.Sqrt(3)));
    }

    /// <summary>
    /// From the incidence before and after a known turn: e·[sin(θ + Δ) − sin θ] = s·Δi, so cos(θ + Δ/2) = s·Δi / (2e·sin(Δ/2)).
    /// The angles are those before the turn. Refused as <c>turn-too-small</c> when the measurement cannot see it, and
    /// <c>beyond-throw</c> when it changed more than the throw can.
    /// </summary>
    /// <param name="turned">Positive the way that lowers the trailing edge near neutral.</param>
    /// <param name="incidenceChange">After less before, leading edge up positive.</param>
    public static Answer<AsFoundCandidates> FromTurn(Eccentric eccentric, Angle turned, MeasuredAngle incidenceChange)
    {
        ArgumentNullException.ThrowIfNull(eccentric);
        ArgumentNullException.ThrowIfNull(incidenceChange);
        const double mostVague = 0.5;
        var most = 2 * eccentric.Throw.Meters * Math.Sin(turned.Radians / 2) / eccentric.SparSpacing.Meters;
        var (share, sdShare) = (Math.Tan(incidenceChange.Value.Radians) / most, Math.Abs(incidenceChange.Sd.Radians / most));
        if (!(sdShare <= mostVague))
            return new Refusal("turn-too-small", string.Create(CultureInfo.InvariantCulture,
                $"A turn of {turned.Degrees:0.#}° changes the incidence by at most {Math.Abs(most) * 180 / Math.PI:0.000}°; measured to {incidenceChange.Sd.Degrees:0.000}° that says nothing. Turn further or measure closer."));
        if (!(Math.Abs(share) <= 1 + 2 * sdShare))
            return new Refusal("beyond-throw", string.Create(CultureInfo.InvariantCulture,
                $"The incidence changed by {incidenceChange.Value.Degrees:+0.000;−0.000}°, more than the throw on file can do in that turn: check throw, spar spacing and the readings."));
        var middle = Math.Acos(Math.Clamp(share, -1, 1));
        // At the end of the throw the slope is nothing and the root of the deviation is what is left.
        var sd = Angle.FromRadians(sdShare / Math.Sqrt(Math.Max(1 - share * share, sdShare)));
        AsFoundEstimate At(double middleRad) => new(Angle.FromDegrees(Math.IEEERemainder((middleRad - turned.Radians / 2) * 180 / Math.PI, 360)), sd);
        return new AsFoundCandidates(middle < 1e-9 ? [At(0)] : [At(middle), At(-middle)]);
    }
}
