using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Web.Checks;

namespace Rigging.Web.Tests.Checks;

public class MarkOnTheHeadTests
{
    static readonly EccentricOnFile Known = ContractReader.ReadAirframe(Api.ApiSite.Airframe).Value!.Eccentric!;

    /// <summary>
    /// By hand, for a bushing in the fuselage fitting, offset inboard at neutral. The wing hangs on the bolt hole, so a hole that dips lowers the trailing edge.
    /// Left wing, rear face, looking forward: inboard is to the right, so neutral is 3 o'clock and the mark dips towards 4, 5, 6 o'clock.
    /// Right wing, rear face: inboard is to the left, neutral is 9 o'clock and the mark dips towards 8, 7, 6. Looking aft, left and right change places.
    /// </summary>
    [Theory]
    [InlineData(Side.Left, Face.Rear, 3, 0)]
    [InlineData(Side.Left, Face.Rear, 4, 30)]
    [InlineData(Side.Left, Face.Rear, 2.5, -15)]
    [InlineData(Side.Left, Face.Rear, 6, 90)]
    [InlineData(Side.Left, Face.Rear, 12, -90)]
    [InlineData(Side.Right, Face.Rear, 9, 0)]
    [InlineData(Side.Right, Face.Rear, 8, 30)]
    [InlineData(Side.Right, Face.Rear, 9.5, -15)]
    [InlineData(Side.Left, Face.Front, 9, 0)]
    [InlineData(Side.Left, Face.Front, 8.5, 15)]
    [InlineData(Side.Right, Face.Front, 3, 0)]
    [InlineData(Side.Right, Face.Front, 3.5, 15)]
    [InlineData(Side.Left, Face.Rear, 9, 180)]
    public void A_mark_that_dips_lowers_the_trailing_edge(Side wing, Face face, double clock, double angleDeg) =>
        Assert.Equal(angleDeg, MarkOnTheHead.AngleDeg(clock, wing, face, Known)!.Value, 9);

    /// <summary>Bushing in the wing fitting: the wing goes against the hole, so everything turns about.</summary>
    [Fact]
    public void In_the_wing_fitting_a_mark_that_dips_raises_it() =>
        Assert.Equal(-30, MarkOnTheHead.AngleDeg(4, Side.Left, Face.Rear, Known with { BushingIn = BushingIn.WingFitting })!.Value, 9);

    [Fact]
    public void Both_faces_say_the_same_of_one_mark()
    {
        for (var clock = 0.25; clock < 12; clock += 0.25)
            Assert.Equal(MarkOnTheHead.AngleDeg(clock, Side.Left, Face.Rear, Known)!.Value, MarkOnTheHead.AngleDeg(12 - clock, Side.Left, Face.Front, Known)!.Value, 9);
    }

    [Fact]
    public void Without_the_bushings_data_nobody_can_say()
    {
        Assert.Null(MarkOnTheHead.AngleDeg(3, Side.Left, Face.Rear, Known with { BushingIn = null }));
        Assert.Null(MarkOnTheHead.AngleDeg(3, Side.Left, Face.Rear, Known with { NeutralOffset = null }));
    }

    [Theory]
    [InlineData("2:30", 2.5)]
    [InlineData("12", 12.0)]
    [InlineData("2.5", 2.5)]
    [InlineData("2,5", 2.5)]
    [InlineData("12:45", 12.75)]
    [InlineData("13", null)]
    [InlineData("-1", null)]
    [InlineData("2:60", null)]
    [InlineData("2:5", null)]
    [InlineData("half two", null)]
    [InlineData("1:30:00", null)]
    public void A_clock_is_read_as_people_write_it(string text, double? hours) => Assert.Equal(hours, MarkOnTheHead.ReadClock(text));
}
