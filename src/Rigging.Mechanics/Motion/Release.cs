using MathNet.Numerics.LinearAlgebra;

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
/// The exact response of the linear model to controls that stay put from the moment of release: one matrix exponential
/// of motion, heading and constant input together for each time asked for.
/// </summary>
public sealed class Release(LateralModel model)
{
    const int Heading = 4, States = 5;

    readonly Dictionary<double, Matrix<double>> transitions = [];

    /// <summary>
    /// From held flight, wings level; then the ailerons go to <paramref name="aileronRad"/>, the rudder stays where it was.
    /// </summary>
    public ReleasedMotion After(double seconds, HeldState from, double aileronRad, Asymmetry asymmetry)
    {
        var d = model.Derivatives;
        var forcing = model.Forcing(
            asymmetry.SideForce + d.CYRudder * from.RudderRad,
            asymmetry.Rolling + asymmetry.WeightNm / model.MomentNm + d.ClRudder * from.RudderRad + d.ClAileron * aileronRad,
            asymmetry.Yawing + d.CnRudder * from.RudderRad + d.CnAileron * aileronRad);

        var start = Vector<double>.Build.Dense(2 * States);
        start[LateralModel.Beta] = from.BetaRad;
        start[LateralModel.YawRate] = from.YawRateRadPerS;
        start.SetSubVector(States, forcing.Count, forcing);

        var end = Transition(seconds) * start;
        return new(end[LateralModel.Bank], end[LateralModel.RollRate], end[LateralModel.YawRate], end[Heading]);
    }

    /// <summary>exp([A I; 0 0]·t): the left half carries the state on, the right half a constant input.</summary>
    Matrix<double> Transition(double seconds)
    {
        if (transitions.TryGetValue(seconds, out var known))
            return known;
        var augmented = Matrix<double>.Build.Dense(2 * States, 2 * States);
        augmented.SetSubMatrix(0, 0, model.System);
        augmented[Heading, LateralModel.YawRate] = 1;
        for (var i = 0; i < States; i++)
            augmented[i, States + i] = 1;
        return transitions[seconds] = MatrixExponential.Of(augmented * seconds);
    }
}
