namespace Rigging.Mechanics.Motion;

/// <summary>Everything that makes one side of the aeroplane differ from the other, constant through a manoeuvre.</summary>
/// <param name="SideForce">Side force coefficient, right positive.</param>
/// <param name="Rolling">Rolling moment coefficient, right wing down positive.</param>
/// <param name="Yawing">Yawing moment coefficient, nose right positive.</param>
/// <param name="WeightNm">Rolling moment of weights off the centreline, newton metres, right wing down positive.</param>
/// <param name="AileronFloatRad">Where the ailerons stand when the wheel is let go, radians of each, right wing down positive.</param>
/// <param name="AileronNeutralRad">Where they stand with the wheel at its rigged neutral, the same way.</param>
/// <param name="RudderOffsetRad">Rudder, or a fin offset as so much rudder, with the feet off; trailing edge left positive.</param>
/// <param name="BallOffsetWidths">What the ball shows in true balance, right positive.</param>
public readonly record struct Asymmetry(
    double SideForce = 0,
    double Rolling = 0,
    double Yawing = 0,
    double WeightNm = 0,
    double AileronFloatRad = 0,
    double AileronNeutralRad = 0,
    double RudderOffsetRad = 0,
    double BallOffsetWidths = 0)
{
    public static Asymmetry operator +(Asymmetry one, Asymmetry other) => new(
        one.SideForce + other.SideForce,
        one.Rolling + other.Rolling,
        one.Yawing + other.Yawing,
        one.WeightNm + other.WeightNm,
        one.AileronFloatRad + other.AileronFloatRad,
        one.AileronNeutralRad + other.AileronNeutralRad,
        one.RudderOffsetRad + other.RudderOffsetRad,
        one.BallOffsetWidths + other.BallOffsetWidths);

    public static Asymmetry operator *(double times, Asymmetry one) => new(
        times * one.SideForce,
        times * one.Rolling,
        times * one.Yawing,
        times * one.WeightNm,
        times * one.AileronFloatRad,
        times * one.AileronNeutralRad,
        times * one.RudderOffsetRad,
        times * one.BallOffsetWidths);

    public static Asymmetry Add(Asymmetry one, Asymmetry other) => one + other;

    public static Asymmetry Multiply(double times, Asymmetry one) => times * one;
}
