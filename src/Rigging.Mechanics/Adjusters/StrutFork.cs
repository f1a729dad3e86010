using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Wing;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>
/// Turning the fork out lengthens the rear strut, raises the rear spar above it and takes incidence off: the wing twists from the
/// fuselage, where both spars are held, to the strut, and from there on stands as the strut has it.
/// </summary>
/// <remarks>
/// Lift of the fitting = lengthening / sin(elevation); twist = atan(lift / distance between the struts). The twist is not quite that of
/// <c>tip-incidence-difference</c>, so it is given as the tip difference with the same rolling moment on this wing.
/// </remarks>
public static class StrutFork
{
    /// <summary>
    /// Refused as <c>no-rear-strut</c> unless there is a strut at each spar, and <c>strut-data-wrong</c> when the fitting is not on the panel
    /// or the strut lies flat.
    /// </summary>
    public static Answer<Adjuster> On(Aeroplane aeroplane, Side wing, StrutForkOnFile onFile)
    {
        ArgumentNullException.ThrowIfNull(aeroplane);
        ArgumentNullException.ThrowIfNull(onFile);
        var geometry = aeroplane.Airframe.Wing;
        if (geometry.Bracing != Bracing.StrutAtEachSpar)
            return new Refusal("no-rear-strut", $"With {Wire.Word(geometry.Bracing)} bracing there is no rear strut beside a front strut to twist the wing with.");
        var (rootYM, fittingYM, tipYM) = (geometry.PanelInboardYM, onFile.FittingYM, geometry.SpanM / 2);
        if (!(fittingYM > rootYM && fittingYM < tipYM) || !(onFile.ElevationDeg is > 1 and < 90) || !(onFile.StrutsApartM > 0) || !(onFile.StepTurns > 0))
            return new Refusal("strut-data-wrong", "The strut's data do not fit the wing: the fitting lies outboard of the panel's root and short of the tip, the strut rises more than 1°, the struts stand apart, a step is more than 0.");

        var asTip = aeroplane.RollingMomentOf(Twist(rootYM, fittingYM, tipYM)) / aeroplane.RollingMomentOf(IncidenceShape.TwistDifference(rootYM, tipYM));
        // Longer means less incidence: on the right that is a negative difference, right minus left.
        var perTurnDeg = TwistPerTurn(onFile).Degrees * asTip * (wing == Side.Right ? -1 : 1);
        return new Adjuster(
            wing == Side.Right ? AdjustableControl.RightStrutFork : AdjustableControl.LeftStrutFork,
            Cause.TipIncidenceDifference, "turns", perTurnDeg, onFile.LeastTurns, onFile.GreatestTurns, onFile.StepTurns);
    }

    /// <summary>What one turn out takes off that wing's incidence at the strut and outboard of it: what a level there shows.</summary>
    public static Angle TwistPerTurn(StrutForkOnFile onFile)
    {
        ArgumentNullException.ThrowIfNull(onFile);
        return Angle.FromRadians(Math.Atan(onFile.MmPerTurn / 1000 / Math.Sin(onFile.ElevationDeg * Math.PI / 180) / onFile.StrutsApartM));
    }

    /// <summary>One radian at the fitting, right minus left, and no more outboard of it.</summary>
    static IncidenceShape Twist(double rootYM, double fittingYM, double tipYM) => new(
    [
        new(-tipYM, -fittingYM, -0.5, -0.5), new(-fittingYM, -rootYM, -0.5, 0),
        new(rootYM, fittingYM, 0, 0.5), new(fittingYM, tipYM, 0.5, 0.5),
    ]);
}
