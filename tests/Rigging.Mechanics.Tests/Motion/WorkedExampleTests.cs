using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Motion;

/// <summary>The worked example of docs/mechanics.md, step by step; the hand figures are those printed there.</summary>
public class WorkedExampleTests
{
    static readonly FlightPoint Point = new Aeroplane(Trainer.Airframe).Reference;
    static readonly Eccentric Eccentric = Eccentric.On(Trainer.Airframe).Value!;
    static readonly Angle LeftPanel = Eccentric.IncidenceAt(Angle.FromDegrees(-30));
    static readonly double DegPerS = Point.RollTendencyDegPerS(-LeftPanel.Radians * Point.PanelIncidence);

    [Fact]
    public void Step_1_the_air()
    {
        Assert.Equal(1463, Point.Model.DynamicPressurePa, 5.0);
        Assert.Equal(51.1, Point.Model.TrueAirspeedMPerS, 0.1);
        Assert.Equal(10.6, Point.Model.RateUnitRadPerS, 0.05);
    }

    [Fact]
    public void Step_2_the_eccentric()
    {
        Assert.Equal(-0.9, Eccentric.DropAt(Angle.FromDegrees(-30)).Millimeters, 1e-9);
        Assert.Equal(-0.0586, LeftPanel.Degrees, 5e-5);
    }

    [Fact]
    public void Steps_3_and_4_it_rolls_left_a_little_slower_than_the_elliptic_wing() => Assert.InRange(DegPerS, -0.53, -0.43);

    [Fact]
    public void Step_5_some_eight_litres_on_the_right_hide_it()
    {
        Assert.Equal(91.8, 10 * LateralLoad.MomentPerLitreNm(Trainer.Airframe, 0.72), 0.05);
        Assert.InRange(new PilotsCurrency(Point).LitresThatNull(DegPerS)!.Value, 6.5, 8.5);
    }

    [Fact]
    public void Step_6_half_a_flat_takes_it_out()
    {
        var move = EccentricMove.Plan(Eccentric, Rigging.Mechanics.Contract.Side.Left, Angle.FromDegrees(-30), Angle.Zero).Value!;

        Assert.Equal(0.5, move.Flats, 1e-12);
        Assert.Equal(0, (LeftPanel + move.IncidenceChange).Degrees, 1e-12);
    }
}
