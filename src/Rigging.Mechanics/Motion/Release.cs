using System.Collections.Concurrent;

namespace Rigging.Mechanics.Motion;

/// <summary>The motion some seconds after the wheel was let go or put to neutral.</summary>
/// <param name="BankRad">Right wing down positive.</param>
/// <param name="RollRateRadPerS">Right wing down positive.</param>
/// <param name="YawRateRadPerS">Nose right positive.</param>
/// <param name="HeadingChangeRad">Since the release, right positive.</param>
public readonly record struct ReleasedMotion(
    double BankRad,
    double RollRateRadPerS,
    double YawRateRadPerS,
    double HeadingChangeRad)
{
    /// <summary>
    /// Sine and cosine of a bank are taken as the bank and one; at 40° that is 14 % and 23 % wrong, and the nose has begun to
    /// drop, which this motion does not have.
    /// </summary>
    public const double HonestBankDeg = 40;

    /// <summary>Whether the bank is still one that the linear motion may be asked for.</summary>
    public bool IsHonest => Math.Abs(BankRad) <= HonestBankDeg * Math.PI / 180;
}

/// <summary>
/// The exact response of the linear model to controls that stay put from the moment of release. What a time does to the motion is
/// worked out once for each time asked for; after that a reading takes a few multiplications and no memory.
/// </summary>
public sealed class Release(LateralModel model)
{
    readonly Matrix4 system = Matrix4.Of(model.System);
    readonly ConcurrentDictionary<double, Transition> transitions = new();

    /// <summary>
    /// From held flight, wings level; then the ailerons go to <paramref name="aileronRad"/>, the rudder stays where it was.
    /// </summary>
    public ReleasedMotion After(double seconds, HeldState from, double aileronRad, Asymmetry asymmetry)
    {
        var d = model.Derivatives;
        var push = model.Accelerations(
            asymmetry.SideForce + d.CYRudder * from.RudderRad,
            asymmetry.Rolling + asymmetry.WeightNm / model.MomentNm + d.ClRudder * from.RudderRad + d.ClAileron * aileronRad,
            asymmetry.Yawing + d.CnRudder * from.RudderRad + d.CnAileron * aileronRad);
        if (!transitions.TryGetValue(seconds, out var transition))
            transitions[seconds] = transition = new(system, seconds);
        return transition.After(from.BetaRad, from.YawRateRadPerS, push);
    }
}
