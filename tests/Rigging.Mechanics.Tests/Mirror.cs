using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests;

/// <summary>The same aeroplane and report seen in a mirror: left is right, and every signed number turns round.</summary>
static class Mirror
{
    public static Airframe Of(Airframe airframe) => airframe with
    {
        Eccentric = airframe.Eccentric is { NeutralOffset: { } offset } eccentric
            ? eccentric with { NeutralOffset = new(offset.Right, offset.Left) }
            : airframe.Eccentric,
        Ailerons = airframe.Ailerons with
        {
            FixedTab = airframe.Ailerons.FixedTab is { } tab ? tab with { Side = Of(tab.Side) } : null,
        },
        Derivatives = airframe.Derivatives with
        {
            SlipstreamClAtFullPower = -airframe.Derivatives.SlipstreamClAtFullPower,
            SlipstreamCnAtFullPower = -airframe.Derivatives.SlipstreamCnAtFullPower,
        },
        Tanks = [.. airframe.Tanks.Select(tank => tank with { ArmM = -tank.ArmM })],
        Seats = [.. airframe.Seats.Select(seat => seat with { ArmM = -seat.ArmM })],
    };

    public static AssessmentRequest Of(AssessmentRequest request) => request with
    {
        Settings = request.Settings is { } settings ? new(settings.RightEccentricDeg, settings.LeftEccentricDeg) : null,
        TestPoints = [.. request.TestPoints.Select(Of)],
        GroundChecks = [.. request.GroundChecks.Select(Of)],
    };

    static TestPoint Of(TestPoint point) => point with
    {
        LastInput = point.LastInput is { } side ? Of(side) : null,
        Readings = [.. point.Readings.Select(Of)],
    };

    static Reading Of(Reading reading) => reading switch
    {
        BankAfter bank => bank with { Deg = -bank.Deg },
        TimeToBank time => time with { Deg = -time.Deg },
        RollRate rate => rate with { DegPerS = -rate.DegPerS },
        HeadingRate rate => rate with { DegPerS = -rate.DegPerS },
        HeadingChange change => change with { Deg = -change.Deg },
        BallReading ball => ball with { Widths = -ball.Widths },
        WheelAngle angle => angle with { Deg = -angle.Deg },
        WheelForce force => force with { N = -force.N },
        FuelDifference fuel => fuel with { L = -fuel.L },
        Rolls { Side: RollSide.Left } rolls => rolls with { Side = RollSide.Right },
        Rolls { Side: RollSide.Right } rolls => rolls with { Side = RollSide.Left },
        _ => reading,
    };

    static GroundCheck Of(GroundCheck check) => check switch
    {
        AngleCheck angle => angle with { Deg = -angle.Deg },
        AileronTabCheck tab => tab with { Side = Of(tab.Side) },
        BallOffsetCheck ball => ball with { Widths = -ball.Widths },
        _ => check,
    };

    static Side Of(Side side) => side == Side.Left ? Side.Right : Side.Left;
}
