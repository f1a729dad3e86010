using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests;

/// <summary>The invented two-seat trainer of the demonstration: every figure is invented.</summary>
static class Trainer
{
    public static Load TwoUp { get; } = Aboard(leftKg: 77, rightKg: 77, leftL: 25, rightL: 25);

    public static Airframe Airframe { get; } = new(
        "st2", "ST-2 two-seat strut-braced trainer (invented)", "ST-2 Maintenance Manual, chapter 57-10, revision C (invented)",
        new(9.64, 1.2, Bracing.SingleStrutAtFrontSpar,
            [new(0, 1.58, 2, 6), new(2.40, 1.58, 2, 6), new(4.82, 1.05, -0.5, 6)], 0.88, 0.50),
        new(1.8, 6, 90, BushingIn.FuselageFitting, new(Spanwise.Inboard, Spanwise.Inboard), null, "invented for the demonstration"),
        new(2.75, 4.65, 0.22, new(Side.Right, 0.35), 4, 6),
        new(0.60, 2.70, 0.25),
        new(0.30),
        new(640, 850, 1450, 0),
        new(-0.45, -0.085, 0.10, 0.070, -0.045, -0.100, 0.16, 0.010, -0.065, -0.006, -0.0005, -0.0010),
        [new("left", -1.30, 42), new("right", 1.30, 42)],
        FuelSelector.LeftRightBoth,
        [new("left", -0.30), new("right", 0.30)],
        3.5,
        new(46, 85, 96, 108, 140),
        new(95, 3000, 65, TwoUp),
        new(0.5, 0.5, 0.5));

    public static Load Aboard(double leftKg, double rightKg, double leftL, double rightL) => new(
        new Dictionary<string, double> { ["left"] = leftKg, ["right"] = rightKg },
        new Dictionary<string, double> { ["left"] = leftL, ["right"] = rightL });

    /// <summary>A test point two up, fuel even, 9 °C at 3000 ft, reference power, smooth air, unless said otherwise.</summary>
    public static TestPoint Point(Manoeuvre manoeuvre, double casKt, params Reading[] readings) => new(
        manoeuvre, casKt, 3000, 9, 65, 0, TwoUp, AirState.Smooth, null, null, readings);

    /// <summary>Let go for ten seconds with the ball centred, the bank read by stopwatch and horizon.</summary>
    public static TestPoint LetGo(double casKt, double bankDeg) => Point(Manoeuvre.ReleaseWheel, casKt, new BankAfter(10, bankDeg) { Method = ReadingMethod.StopwatchHorizon });
}
