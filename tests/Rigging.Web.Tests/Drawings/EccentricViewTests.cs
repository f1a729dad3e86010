using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Drawings;

public sealed class EccentricViewTests
{
    const double HoleRadius = 27, MiddleX = 170;

    static EccentricTurn Turn(double asFound, double asLeft, Side wing = Side.Left, BushingIn? fitting = BushingIn.FuselageFitting, Spanwise? offset = Spanwise.Inboard) =>
        new(wing, asFound, asLeft, 75, 6, fitting, offset);

    static Point Hole(Drawing drawing, Pen pen) => Assert.Single(drawing.Marks.OfType<Arc>(), arc => arc.Radius == HoleRadius && arc.Pen == pen).Centre;

    static Arc? Arrow(Drawing drawing) => drawing.Marks.OfType<Arc>().SingleOrDefault(arc => arc.Pen == Pen.Reach);

    /// <summary>
    /// By hand. Looking forward at the left wing the fuselage is to the right, so a hole that lies inboard at neutral lies right of the middle;
    /// looking aft at the same wing, or forward at the right one, it lies left. Where the bushing is in the fuselage fitting the hole carries the
    /// wing, so lowering takes the hole down the paper; where it is in the wing fitting the bushing carries the wing and the hole goes up in it.
    /// </summary>
    [Theory]
    [InlineData(Side.Left, Face.Rear, BushingIn.FuselageFitting, 1, true)]
    [InlineData(Side.Left, Face.Front, BushingIn.FuselageFitting, -1, false)]
    [InlineData(Side.Right, Face.Rear, BushingIn.FuselageFitting, -1, false)]
    [InlineData(Side.Right, Face.Front, BushingIn.FuselageFitting, 1, true)]
    [InlineData(Side.Left, Face.Rear, BushingIn.WingFitting, 1, false)]
    [InlineData(Side.Right, Face.Rear, BushingIn.WingFitting, -1, true)]
    public void The_hole_lies_where_it_lies_and_the_turn_lowers(Side wing, Face face, BushingIn fitting, int inboardOnPaper, bool clockwise)
    {
        var drawing = EccentricView.Draw(Turn(0, 30, wing, fitting), face);
        var fall = Hole(drawing, Pen.AsLeft).Y - Hole(drawing, Pen.AsFound).Y;

        Assert.Equal(inboardOnPaper, Math.Sign(Hole(drawing, Pen.AsFound).X - MiddleX));
        Assert.True(fitting == BushingIn.FuselageFitting ? fall > 0 : fall < 0);
        Assert.Equal($"Turn the eccentric ½ flat {(clockwise ? "clockwise" : "counter-clockwise")}: trailing edge down", drawing.Title);
    }

    /// <summary>Drawn and spoken direction come by different ways: the arrow's sweep and the adjuster's word must agree for all sixteen cases, up and down.</summary>
    [Fact]
    public void The_arrow_turns_the_way_the_words_say()
    {
        foreach (var wing in Enum.GetValues<Side>())
            foreach (var face in Enum.GetValues<Face>())
                foreach (var fitting in Enum.GetValues<BushingIn>())
                    foreach (var offset in Enum.GetValues<Spanwise>())
                        foreach (var edge in Enum.GetValues<TrailingEdge>())
                        {
                            var change = edge == TrailingEdge.Down ? 30 : -30;
                            var drawing = EccentricView.Draw(Turn(0, change, wing, fitting, offset), face);
                            var words = Turning.For(wing, face, fitting, offset, edge);
                            var hole = Hole(drawing, Pen.AsLeft).Y - Hole(drawing, Pen.AsFound).Y;

                            Assert.Equal(words == Rotation.Clockwise, Arrow(drawing)!.SweepDeg > 0);
                            Assert.Equal((edge == TrailingEdge.Down) == (fitting == BushingIn.FuselageFitting), hole > 0);
                        }
    }

    [Theory, InlineData(-15, 15, 30), InlineData(15, -15, -30), InlineData(40, -20, -60)]
    public void The_arrow_sweeps_the_turn_itself(double asFound, double asLeft, double sweep) =>
        Assert.Equal(sweep, Arrow(EccentricView.Draw(Turn(asFound, asLeft), Face.Rear))!.SweepDeg, 9);

    [Fact]
    public void The_other_face_sees_the_mirror_image()
    {
        var rear = Arrow(EccentricView.Draw(Turn(-15, 15), Face.Rear))!;
        var front = Arrow(EccentricView.Draw(Turn(-15, 15), Face.Front))!;

        Assert.Equal(-rear.SweepDeg, front.SweepDeg, 9);
        Assert.Equal(2 * MiddleX - rear.At(1).X, front.At(1).X, 9);
        Assert.Equal(rear.At(1).Y, front.At(1).Y, 9);
    }

    /// <summary>A direction that is not on file must not be hinted at.</summary>
    [Theory, InlineData(null, Spanwise.Inboard), InlineData(BushingIn.WingFitting, null), InlineData(null, null)]
    public void Without_bushing_data_there_is_no_turn_only_up_or_down(BushingIn? fitting, Spanwise? offset)
    {
        var drawing = EccentricView.Draw(Turn(-15, 15, fitting: fitting, offset: offset), Face.Rear);

        Assert.Empty(drawing.Marks.OfType<Arc>());
        Assert.DoesNotContain("clockwise", Svg.Of(drawing), StringComparison.Ordinal);
        Assert.Equal("Move the eccentric ½ flat: trailing edge down", drawing.Title);
    }

    /// <summary>By hand: sin 110° = 0.940, sin 60° = 0.866. A smaller angle, yet the spar rises less than a tenth of the throw: the edge goes up. From 110° to 80° (0.985) it goes down.</summary>
    [Theory, InlineData(110, 60, "trailing edge up"), InlineData(110, 80, "trailing edge down"), InlineData(110, 70, "trailing edge back to the same height")]
    public void Past_a_quarter_turn_the_height_decides_not_the_angle(double asFound, double asLeft, string effect) =>
        Assert.EndsWith(effect, EccentricView.Draw(Turn(asFound, asLeft) with { StopDeg = 90 }, Face.Rear).Title, StringComparison.Ordinal);

    [Theory, InlineData(true), InlineData(false)]
    public void An_eccentric_left_alone_shows_no_arrow(bool known)
    {
        var drawing = EccentricView.Draw(known ? Turn(15, 15) : Turn(15, 15, fitting: null), Face.Rear);

        Assert.Equal("The eccentric stays as found", drawing.Title);
        Assert.Null(Arrow(drawing));
    }

    [Fact]
    public void The_viewpoint_is_always_said() => Assert.Equal("right wing, front face, looking aft", EccentricView.Draw(Turn(0, 30, Side.Right), Face.Front).Viewpoint);
}
