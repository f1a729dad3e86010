using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Adjusters;

/// <summary>Turning the rod moves one flap at the up stop by atan(lengthening / horn arm).</summary>
public static class FlapRod
{
    /// <summary>Refused as <c>flap-rod-data-wrong</c> when pitch, arm or step is not more than 0.</summary>
    public static Answer<Adjuster> On(Side wing, FlapRodOnFile onFile)
    {
        ArgumentNullException.ThrowIfNull(onFile);
        if (!(onFile.MmPerTurn > 0) || !(onFile.HornArmMm > 0) || !(onFile.StepTurns > 0))
            return new Refusal("flap-rod-data-wrong", "Lengthening per turn, horn arm and step of a flap rod are more than 0.");
        var perTurnDeg = Math.Atan(onFile.MmPerTurn / onFile.HornArmMm) * 180 / Math.PI;
        return new Adjuster(
            wing == Side.Right ? AdjustableControl.RightFlapRod : AdjustableControl.LeftFlapRod,
            Cause.FlapDifference, "turns",
            perTurnDeg * (onFile.LengtheningLowers ? 1 : -1) * (wing == Side.Right ? 1 : -1),
            onFile.LeastTurns, onFile.GreatestTurns, onFile.StepTurns);
    }
}
