using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Cables;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Adjusters;

public class FoundAngleTests
{
    static readonly Eccentric Eccentric = Eccentric.On(Trainer.Airframe).Value!;

    /// <summary>
    /// By hand, left wing, bushing in the fuselage fitting, hole inboard at neutral, seen from behind: inboard is to the right, so
    /// neutral is 3 o'clock. The wing hangs on the hole: at 4 o'clock it has gone down 30°, at 2 up 30°. From the front the same hole is
    /// at 8 and at 10.
    /// </summary>
    [Theory]
    [InlineData(Side.Left, Face.Rear, 3, 0)]
    [InlineData(Side.Left, Face.Rear, 4, 30)]
    [InlineData(Side.Left, Face.Rear, 2, -30)]
    [InlineData(Side.Left, Face.Front, 8, 30)]
    [InlineData(Side.Left, Face.Front, 10, -30)]
    [InlineData(Side.Right, Face.Rear, 8, 30)]
    [InlineData(Side.Right, Face.Front, 4, 30)]
    [InlineData(Side.Left, Face.Rear, 7, 120)]
    public void The_mark_tells_the_angle(Side wing, Face face, double hour, double expectedDeg) =>
        Assert.Equal(expectedDeg, FoundAngle.FromClock(Eccentric, wing, face, hour, 0.5).Value!.Angle.Degrees, 1e-9);

    /// <summary>By hand: the wing carries the bushing, so the hole at 4 o'clock, dipped, means the wing has gone up.</summary>
    [Fact]
    public void With_the_bushing_in_the_wing_the_same_mark_means_the_opposite()
    {
        var inWing = Eccentric.On(Bushing.Airframe(0.0018, 0.88, bushingIn: BushingIn.WingFitting, offset: new(Spanwise.Inboard, Spanwise.Inboard))).Value!;

        Assert.Equal(-30, FoundAngle.FromClock(inWing, Side.Left, Face.Rear, 4, 0.5).Value!.Angle.Degrees, 1e-9);
    }

    /// <summary>By hand: half an hour is 15°, evenly likely either way: 15/√3 = 8.66°.</summary>
    [Fact]
    public void Half_an_hour_is_a_standard_deviation_of_nine_degrees() =>
        Assert.Equal(8.66, FoundAngle.FromClock(Eccentric, Side.Left, Face.Rear, 4, 0.5).Value!.Sd.Degrees, 0.01);

    [Fact]
    public void Without_the_bushings_data_the_mark_says_nothing() => Assert.Equal("bushing-not-on-file",
        Assert.Single(FoundAngle.FromClock(Eccentric.On(Bushing.Airframe(0.0018, 0.88, bushingIn: null)).Value!, Side.Left, Face.Rear, 4, 0.5).Refusals).Code);

    [Theory, InlineData(-1), InlineData(13), InlineData(double.NaN)]
    public void There_are_twelve_hours(double hour) =>
        Assert.Equal("no-such-hour", Assert.Single(FoundAngle.FromClock(Eccentric, Side.Left, Face.Rear, hour, 0.5).Refusals).Code);

    [Fact]
    public void Incidence_before_and_after_a_known_turn_gives_the_angle_back_as_one_of_two() => Gen.Select(Gen.Double[-170, 170], Gen.Double[30, 90]).Sample((startDeg, turnDeg) =>
    {
        var (start, turn) = (Angle.FromDegrees(startDeg), Angle.FromDegrees(turnDeg));
        // Small angles: the difference of the two arc tangents is that of the drops to a millionth.
        var change = Angle.FromRadians((Eccentric.DropAt(start + turn) - Eccentric.DropAt(start)) / Eccentric.SparSpacing);
        var found = FoundAngle.FromTurn(Eccentric, turn, new(change, Angle.FromDegrees(0.01)));
        return found.Value!.Candidates.Any(candidate => Math.Abs(Math.IEEERemainder(candidate.Angle.Degrees - startDeg, 360)) < 0.1);
    });

    [Fact]
    public void A_turn_that_the_level_cannot_see_says_nothing() => Assert.Equal("turn-too-small",
        Assert.Single(FoundAngle.FromTurn(Eccentric, Angle.FromDegrees(10), new(Angle.FromDegrees(0.01), Angle.FromDegrees(0.1))).Refusals).Code);

    [Fact]
    public void More_change_than_the_throw_can_make_is_refused() => Assert.Equal("beyond-throw",
        Assert.Single(FoundAngle.FromTurn(Eccentric, Angle.FromDegrees(60), new(Angle.FromDegrees(0.3), Angle.FromDegrees(0.01))).Refusals).Code);

    /// <summary>By hand: 1.8 mm·(1 − cos 60°) = 0.9 mm out of neutral; over 880 mm 0.0586°; at the tip, 4.32 m on, 4.42 mm.</summary>
    [Fact]
    public void A_flat_from_neutral_sweeps_the_wing_a_little()
    {
        var effects = EccentricSideEffects.Of(Move(0, 60), Trainer.Airframe.Wing);

        Assert.Equal(0.9, effects.AlongSpan.Millimeters, 1e-9);
        Assert.Equal(Spanwise.Outboard, effects.Goes);
        Assert.Equal(0.0586, effects.Sweep.Degrees, 1e-4);
        Assert.Equal(4.418, effects.TipMoves.Millimeters, 1e-3);
        Assert.Equal(SweepWay.Forward, effects.TipGoes);
    }

    [Fact]
    public void Turning_back_takes_the_sweep_back()
    {
        var (out_, back) = (EccentricSideEffects.Of(Move(0, 60), Trainer.Airframe.Wing), EccentricSideEffects.Of(Move(60, 0), Trainer.Airframe.Wing));

        Assert.Equal(out_.AlongSpan.Meters, back.AlongSpan.Meters, 1e-15);
        Assert.Equal((Spanwise.Inboard, SweepWay.Aft), (back.Goes!.Value, back.TipGoes!.Value));
    }

    [Fact]
    public void Across_neutral_to_the_same_angle_nothing_moves_along_the_span() =>
        Assert.Null(EccentricSideEffects.Of(Move(-20, 20), Trainer.Airframe.Wing).Goes);

    /// <summary>By hand: 0.9 mm of 4 m is 2.25·10⁻⁴; of 250 kN that is 56.25 N at most.</summary>
    [Fact]
    public void A_cable_along_the_rear_spar_feels_it() => Assert.Equal(56.25,
        EccentricSideEffects.Of(Move(0, 60), Trainer.Airframe.Wing).TensionAtMost(new CableExpansion(250_000, CableExpansion.CarbonSteel, CableExpansion.AluminiumAlloy), Length.FromMeters(4)).Newtons, 1e-6);

    static EccentricMove Move(double fromDeg, double toDeg) => EccentricMove.Plan(Eccentric, Side.Left, Angle.FromDegrees(fromDeg), Angle.FromDegrees(toDeg)).Value!;
}
