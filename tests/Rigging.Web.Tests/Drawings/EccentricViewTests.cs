using Rigging.Mechanics.Contract;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class EccentricViewTests
{
    const double HoleRadius = 27, MiddleX = 170;

    static Point Hole(Drawing drawing, Pen pen) => Assert.Single(drawing.Marks.OfType<Arc>(), arc => arc.Radius == HoleRadius && arc.Pen == pen).Centre;

    static Arc? Turn(Drawing drawing) => drawing.Marks.OfType<Arc>().SingleOrDefault(arc => arc.Pen == Pen.Reach);

    /// <summary>
    /// By hand, neutral offset inboard, bushing in the fuselage fitting, so that the hole carries the wing: looking forward at the left wing the fuselage is
    /// to the right, so at neutral the hole lies right of the middle and lowering it is a clockwise turn. Looking aft at the same wing all of it is mirrored.
    /// </summary>
    [Theory]
    [InlineData(Side.Left, Face.Rear, true, 1)]
    [InlineData(Side.Left, Face.Front, false, -1)]
    [InlineData(Side.Right, Face.Rear, false, -1)]
    [InlineData(Side.Right, Face.Front, true, 1)]
    public void The_hole_lies_inboard_at_neutral_and_goes_down_when_lowering(Side wing, Face face, bool loweringIsClockwise, int inboardOnPaper)
    {
        var drawing = EccentricView.Draw(wing, face, 0, 30, 75, "½ flat", new BushingSeen(NeutralInboard: true, loweringIsClockwise));

        Assert.Equal(inboardOnPaper, Math.Sign(Hole(drawing, Pen.AsFound).X - MiddleX));
        Assert.True(Hole(drawing, Pen.AsLeft).Y > Hole(drawing, Pen.AsFound).Y);
        Assert.Contains(loweringIsClockwise ? " clockwise" : "counter-clockwise", drawing.Title, StringComparison.Ordinal);
        Assert.EndsWith("trailing edge down", drawing.Title, StringComparison.Ordinal);
    }

    [Theory, InlineData(-15, 15, 30), InlineData(15, -15, -30), InlineData(40, -20, -60)]
    public void The_arrow_sweeps_the_turn_itself(double asFound, double asLeft, double sweep) =>
        Assert.Equal(sweep, Turn(EccentricView.Draw(Side.Left, Face.Rear, asFound, asLeft, 75, "", new BushingSeen(true, true)))!.SweepDeg, 9);

    [Fact]
    public void The_other_face_sees_the_turn_the_other_way()
    {
        var rear = Turn(EccentricView.Draw(Side.Left, Face.Rear, -15, 15, 75, "", new BushingSeen(true, true)))!;
        var front = Turn(EccentricView.Draw(Side.Left, Face.Front, -15, 15, 75, "", new BushingSeen(true, false)))!;

        Assert.Equal(-rear.SweepDeg, front.SweepDeg, 9);
        Assert.Equal(2 * MiddleX - rear.At(1).X, front.At(1).X, 9);
        Assert.Equal(rear.At(1).Y, front.At(1).Y, 9);
    }

    /// <summary>A direction that is not on file must not be hinted at.</summary>
    [Fact]
    public void Without_bushing_data_there_is_no_turn_only_up_or_down()
    {
        var drawing = EccentricView.Draw(Side.Left, Face.Rear, -15, 15, 75, "½ flat", bushing: null);

        Assert.Empty(drawing.Marks.OfType<Arc>());
        Assert.DoesNotContain("clockwise", Svg.Of(drawing), StringComparison.Ordinal);
        Assert.Equal("Move the eccentric ½ flat: trailing edge down", drawing.Title);
    }

    [Theory, InlineData(true), InlineData(false)]
    public void An_eccentric_left_alone_shows_no_arrow(bool known)
    {
        var drawing = EccentricView.Draw(Side.Right, Face.Rear, 15, 15, 75, "", known ? new BushingSeen(true, true) : null);

        Assert.Equal("The eccentric stays as found", drawing.Title);
        Assert.DoesNotContain(drawing.Marks, mark => mark is Arc { Pen.Role: Role.Accent, Radius: > 100 });
    }

    [Fact]
    public void The_viewpoint_is_always_said() =>
        Assert.Equal("right wing, front face, looking aft", EccentricView.Draw(Side.Right, Face.Front, 0, 30, 75, "½ flat", new BushingSeen(true, true)).Viewpoint);
}
