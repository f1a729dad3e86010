using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Motion;

public class ReleaseTests
{
    static readonly LateralModel Model = new(
        new(-0.45, -0.085, -0.46, 0.1, 0.07, -0.045, -0.1, 0.2, -0.006, 0.16, 0.01, -0.065),
        new(640, 850, 1450, 60, 13.9, 9.64), 51, 1.12);

    /// <summary>An independent integration in small steps (fourth-order Runge and Kutta).</summary>
    [Theory, InlineData(0.3), InlineData(10.0), InlineData(40.0)]
    public void The_exact_response_agrees_with_integration_in_small_steps(double seconds)
    {
        HeldState from = new(0.01, 0.004, 0.002, 0.005);
        Asymmetry asymmetry = new(SideForce: 0.001, Rolling: -0.0004, Yawing: 0.0002, WeightNm: 30);

        var exact = new Release(Model).After(seconds, from, 0.001, asymmetry);
        var stepped = Stepped(seconds, from, 0.001, asymmetry);

        Assert.Equal(stepped[LateralModel.Bank], exact.BankRad, 1e-8);
        Assert.Equal(stepped[LateralModel.RollRate], exact.RollRateRadPerS, 1e-8);
        Assert.Equal(stepped[LateralModel.YawRate], exact.YawRateRadPerS, 1e-8);
        Assert.Equal(stepped[4], exact.HeadingChangeRad, 1e-8);
    }

    [Fact]
    public void Held_straight_flight_stays_straight_when_nothing_is_let_go()
    {
        Asymmetry asymmetry = new(Rolling: -0.0004, Yawing: 0.0002, WeightNm: 30);
        var held = new HeldFlight(Model, 3.5).Straight(asymmetry);

        var after = new Release(Model).After(10, held, held.AileronRad, asymmetry);

        Assert.Equal(0, after.BankRad, 1e-10);
        Assert.Equal(0, after.HeadingChangeRad, 1e-10);
        Assert.Equal(0, new HeldFlight(Model, 3.5).BallWidths(held, asymmetry), 1e-10);
    }

    static double[] Stepped(double seconds, HeldState from, double aileronRad, Asymmetry asymmetry)
    {
        const int steps = 20000;
        var d = Model.Derivatives;
        var push = Model.Accelerations(
            asymmetry.SideForce + d.CYRudder * from.RudderRad,
            asymmetry.Rolling + asymmetry.WeightNm / Model.MomentNm + d.ClRudder * from.RudderRad + d.ClAileron * aileronRad,
            asymmetry.Yawing + d.CnRudder * from.RudderRad + d.CnAileron * aileronRad);
        var state = Vector<double>.Build.Dense([from.BetaRad, 0, from.YawRateRadPerS, 0, 0]);
        var h = seconds / steps;
        for (var i = 0; i < steps; i++)
        {
            var k1 = Slope(state);
            var k2 = Slope(state + h / 2 * k1);
            var k3 = Slope(state + h / 2 * k2);
            var k4 = Slope(state + h * k3);
            state += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        return state.ToArray();

        Vector<double> Slope(Vector<double> x)
        {
            var slope = Model.System * x.SubVector(0, 4);
            return Vector<double>.Build.Dense([slope[0] + push.BetaRadPerS, slope[1] + push.RollRadPerS2, slope[2] + push.YawRadPerS2, slope[3], x[LateralModel.YawRate]]);
        }
    }
}
