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

    /// <summary>The table worked out by hand: where the hole lies, where it goes, and which way round. Words and drawing must both say so.</summary>
    public static TheoryData<Side, Face, BushingIn, Spanwise, TrailingEdge, string, string, string> ByHand()
    {
        TheoryData<Side, Face, BushingIn, Spanwise, TrailingEdge, string, string, string> rows = [];
        foreach (var line in File.ReadLines(Path.Combine(Repository.Home, "tests", "Rigging.Web.Tests", "Data", "eccentric-by-hand.csv")).Where(line => !line.StartsWith('#')).Skip(1))
        {
            var cell = line.Split(',');
            rows.Add(Enum.Parse<Side>(cell[0]), Enum.Parse<Face>(cell[1]), Enum.Parse<BushingIn>(cell[2]), Enum.Parse<Spanwise>(cell[3]), Enum.Parse<TrailingEdge>(cell[4]), cell[5], cell[6], cell[7]);
        }
        return rows;
    }

    [Theory, MemberData(nameof(ByHand))]
    public void Words_and_drawing_say_what_was_worked_out_by_hand(Side wing, Face face, BushingIn fitting, Spanwise offset, TrailingEdge wanted, string holeAtNeutral, string holeGoes, string turn)
    {
        var down = wanted == TrailingEdge.Down;
        var drawing = EccentricView.Draw(Turn(0, down ? 30 : -30, wing, fitting, offset), face);
        var (found, left) = (Hole(drawing, Pen.AsFound), Hole(drawing, Pen.AsLeft));

        Assert.Equal(turn, Wire.Word(Turning.For(wing, face, fitting, offset, wanted)!.Value));
        Assert.Equal($"Turn the eccentric ½ flat {turn}: trailing edge {(down ? "down" : "up")}", drawing.Title);
        Assert.Equal(holeAtNeutral == "right", found.X > MiddleX);
        Assert.Equal(holeGoes == "down", left.Y > found.Y);
        Assert.Equal(turn == "clockwise", Arrow(drawing)!.SweepDeg > 0);
    }

    [Fact]
    public void The_table_by_hand_holds_every_case() => Assert.Equal(32, ByHand().Select(row => (row.Data.Item1, row.Data.Item2, row.Data.Item3, row.Data.Item4, row.Data.Item5)).Distinct().Count());

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
