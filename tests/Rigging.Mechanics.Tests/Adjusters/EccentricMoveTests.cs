using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Adjusters;

public sealed class EccentricMoveTests
{
    static readonly Eccentric Example = Eccentric.On(Bushing.Example).Value!;

    /// <summary>By hand: 1.8 mm × (sin 15° + sin 15°) = 0.9317 mm over 880 mm is 0.001059 rad, 0.0607°.</summary>
    [Fact]
    public void Half_a_flat_on_the_left_eccentric_reads_as_a_mechanic_needs_it()
    {
        var move = Plan(Side.Left, -15, 15);

        Assert.Equal(0.5, move.Flats, 12);
        Assert.Equal(0.0607, move.IncidenceChange.Degrees, 0.00005);
        Assert.Equal(TrailingEdge.Down, move.TrailingEdge);
        Assert.Equal(
            "Left wing, trailing edge down: ½ flat, from −15° to 15°, incidence +0.061°; front and rear bushing together; "
            + "counter-clockwise, looking aft at the front face; clockwise, looking forward at the rear face.",
            move.ToString());
    }

    [Fact]
    public void The_answer_carries_the_move_in_the_contract_s_form()
    {
        var move = Plan(Side.Left, -15, 15).ToContract();

        Assert.Equal((AdjustableControl.LeftEccentric, -15d, 15d), (move.Control, move.FromDeg, move.ToDeg));
        Assert.Equal("clockwise, looking forward at the rear face", move.Turn);
        Assert.Equal(TrailingEdge.Down, move.TrailingEdge);
    }

    [Fact]
    public void Without_bushing_data_only_up_or_down_is_said()
    {
        var unknown = Eccentric.On(Bushing.Example with { Eccentric = Bushing.Example.Eccentric! with { BushingIn = null } }).Value!;
        var move = EccentricMove.Plan(unknown, Side.Right, Angle.Zero, Angle.FromDegrees(-30)).Value!;

        Assert.Null(move.AtFrontFace);
        Assert.Null(move.ToContract().Turn);
        Assert.Equal(TrailingEdge.Up, move.ToContract().TrailingEdge);
        Assert.DoesNotContain("clockwise", move.ToString(), StringComparison.Ordinal);
        Assert.Contains("trailing edge up", move.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(90, 95)]
    [InlineData(90, -90.5)]
    [InlineData(60, 61)]
    [InlineData(120, 100)]
    public void No_move_is_planned_past_the_stop_or_a_quarter_turn(double maxAngleDeg, double toDeg)
    {
        var refused = EccentricMove.Plan(Bushing.With(0.0018, 0.88, maxAngleDeg: maxAngleDeg), Side.Left, Angle.Zero, Angle.FromDegrees(toDeg));

        Assert.Equal("at-stops", Assert.Single(refused.Refusals).Code);
    }

    [Fact]
    public void A_move_to_where_it_stands_is_refused() =>
        Assert.Equal("nothing-to-turn", Assert.Single(EccentricMove.Plan(Example, Side.Left, Angle.FromDegrees(10), Angle.FromDegrees(10)).Refusals).Code);

    [Fact]
    public void From_past_a_quarter_turn_the_head_turns_back_though_the_height_returns()
    {
        var move = Plan(Side.Left, 120, 60);

        Assert.True(move.CrossesEndOfThrow);
        Assert.Null(move.TrailingEdge);
        Assert.Equal(Plan(Side.Left, 30, 0).AtRearFace, move.AtRearFace);
    }

    [Fact]
    public void Undoing_a_move_turns_the_other_way_by_as_much() => Gen.Select(Gen.Enum<Side>(), Gen.Double[-80, 0], Gen.Double[1, 80]).Sample((wing, from, to) =>
    {
        var (there, back) = (Plan(wing, from, to), Plan(wing, to, from));
        return Math.Abs(there.Flats - back.Flats) < 1e-12
            && Math.Abs((there.IncidenceChange + back.IncidenceChange).Degrees) < 1e-12
            && there.TrailingEdge == TrailingEdge.Down && back.TrailingEdge == TrailingEdge.Up
            && there.AtFrontFace != back.AtFrontFace && there.AtRearFace != back.AtRearFace && there.AtFrontFace != there.AtRearFace;
    });

    static EccentricMove Plan(Side wing, double fromDeg, double toDeg) => EccentricMove.Plan(Example, wing, Angle.FromDegrees(fromDeg), Angle.FromDegrees(toDeg)).Value!;
}
