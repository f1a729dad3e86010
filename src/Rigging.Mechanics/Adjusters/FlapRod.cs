using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Adjusters;

/// <summary>The push rod of one flap, as the aeroplane's own data give it; no default.</summary>
/// <param name="PerTurn">How much longer one turn makes the rod.</param>
/// <param name="HornArm">From the flap's hinge to the rod's bolt, square to the rod at the up stop.</param>
/// <param name="LengtheningLowers">Whether a longer rod lowers the trailing edge.</param>
public sealed record FlapRodOnFile(Length PerTurn, Length HornArm, bool LengtheningLowers, double LeastTurns, double GreatestTurns, double StepTurns, string Source);

/// <summary>Turning the rod moves one flap at the up stop by atan(lengthening / horn arm).</summary>
public static class FlapRod
{
    /// <summary>Refused as <c>flap-rod-data-wrong</c> when pitch, arm or step is not more than 0.</summary>
    public static Answer<Adjuster> On(Side wing, FlapRodOnFile onFile)
    {
        ArgumentNullException.ThrowIfNull(onFile);
        if (!(onFile.PerTurn.Meters > 0) || !(onFile.HornArm.Meters > 0) || !(onFile.StepTurns > 0))
            return new Refusal("flap-rod-data-wrong", "Lengthening per turn, horn arm and step of a flap rod are more than 0.");
        var perTurnDeg = Math.Atan(onFile.PerTurn / onFile.HornArm) * 180 / Math.PI;
        return new Adjuster(
            wing == Side.Right ? AdjustableControl.RightFlapRod : AdjustableControl.LeftFlapRod,
            Cause.FlapDifference, "turns",
            perTurnDeg * (onFile.LengtheningLowers ? 1 : -1) * (wing == Side.Right ? 1 : -1),
            onFile.LeastTurns, onFile.GreatestTurns, onFile.StepTurns);
    }
}
