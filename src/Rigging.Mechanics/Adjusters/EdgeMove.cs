using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// What a move of one adjuster shows on the aeroplane: what it moves turns about a line across it, and the edge behind that line goes up or down.
/// </summary>
/// <remarks>
/// Plane geometry. The line is the front spar for an eccentric, the front strut's fitting for a rear strut fork, the hinge for a flap, the bend for a
/// tab. A wing twisted by a fork shows all of it at the strut and outboard, and less towards the root.
/// </remarks>
/// <param name="Way">Trailing edge down +1, up −1; of a rudder tab, left +1. 0 when it ends at the height it came from.</param>
/// <param name="Turned">Signed the same way; null when what it takes is not on file.</param>
/// <param name="RearSparAft">From that line to the rear spar; null where no wing is moved, or where it is not on file.</param>
public sealed record EdgeMove(int Way, Angle? Turned, Length? RearSparAft)
{
    /// <summary>Null when nothing on file says which way it goes, and for what has no edge.</summary>
    /// <param name="from">Degrees of an eccentric or a tab, turns of a fork or a rod, signed as everywhere.</param>
    /// <param name="to">The same.</param>
    public static EdgeMove? Of(AdjustableControl control, double from, double to, Airframe airframe)
    {
        ArgumentNullException.ThrowIfNull(airframe);
        return control switch
        {
            AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric => Eccentrics(from, to, airframe),
            AdjustableControl.LeftStrutFork or AdjustableControl.RightStrutFork => Forks(to - from, airframe.StrutFork),
            AdjustableControl.LeftFlapRod or AdjustableControl.RightFlapRod => airframe.FlapRod is { } rod ? Rods(to - from, rod) : null,
            AdjustableControl.AileronTab or AdjustableControl.RudderTab => Turning(Angle.FromDegrees(to - from)),
            _ => null,
        };
    }

    /// <summary>How far the edge goes so far behind that line, signed as <see cref="Way"/>; null when it is not on file.</summary>
    public Length? At(Length aft) => Turned is { } turned ? aft * Math.Tan(turned.Radians) : null;

    static EdgeMove Eccentrics(double from, double to, Airframe airframe)
    {
        var drop = Math.Sin(double.DegreesToRadians(to)) - Math.Sin(double.DegreesToRadians(from));
        return airframe is { Eccentric: { } onFile, Wing.SparSpacingM: > 0 and var spacingM }
            ? Turning(Angle.FromRadians(Math.Atan(onFile.ThrowMm / 1000 * drop / spacingM)), Length.FromMeters(spacingM))
            : new(Sign(drop), null, null);
    }

    // A longer rear strut lifts the rear spar.
    static EdgeMove Forks(double turnsOut, StrutForkOnFile? onFile)
    {
        if (onFile is null) return new(Sign(-turnsOut), null, null);
        var liftM = onFile.MmPerTurn / 1000 * turnsOut / Math.Sin(double.DegreesToRadians(onFile.ElevationDeg));
        return Turning(Angle.FromRadians(-Math.Atan(liftM / onFile.StrutsApartM)), Length.FromMeters(onFile.StrutsApartM));
    }

    static EdgeMove Rods(double turnsOut, FlapRodOnFile onFile) =>
        Turning(Angle.FromRadians(Math.Atan(onFile.MmPerTurn * turnsOut / onFile.HornArmMm) * (onFile.LengtheningLowers ? 1 : -1)));

    static EdgeMove Turning(Angle turned, Length? rearSparAft = null) => new(Sign(turned.Radians), turned, rearSparAft);

    // Far below what anybody can set.
    static int Sign(double move) => Math.Abs(move) < 1e-9 ? 0 : Math.Sign(move);
}
