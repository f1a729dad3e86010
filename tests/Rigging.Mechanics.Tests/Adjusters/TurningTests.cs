using CsCheck;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Adjusters;

public sealed class TurningTests
{
    static readonly Gen<(Side Wing, Face Face, BushingIn In, Spanwise Offset, TrailingEdge Wanted)> Cases = Gen.Select(
        Gen.Enum<Side>(), Gen.Enum<Face>(), Gen.Enum<BushingIn>(), Gen.Enum<Spanwise>(), Gen.Enum<TrailingEdge>());

    [Fact]
    public void The_table_reasoned_by_hand_is_met_in_all_sixteen_rows()
    {
        var rows = Published.Table("turning-direction-by-hand.csv");

        Assert.Equal(16, rows.Select(row => (row["wing"], row["face"], row["bushing_in"], row["neutral_offset"])).Distinct().Count());
        Assert.All(rows, row =>
        {
            var turn = Turning.For(Word<Side>(row["wing"]), Word<Face>(row["face"]), Word<BushingIn>(row["bushing_in"]), Word<Spanwise>(row["neutral_offset"]), TrailingEdge.Down);

            Assert.Equal(row["turn"], Wire.Word(turn!.Value));
        });
    }

    [Fact]
    public void Up_is_the_other_way_than_down() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Opposite(Turning.For(wing, face, fitting, offset, wanted), Turning.For(wing, face, fitting, offset, Other(wanted))));

    [Fact]
    public void The_other_wing_seen_from_the_same_face_turns_the_other_way() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Opposite(Turning.For(wing, face, fitting, offset, wanted), Turning.For(Other(wing), face, fitting, offset, wanted)));

    [Fact]
    public void The_same_turn_seen_from_the_other_face_is_the_other_way() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Opposite(Turning.For(wing, face, fitting, offset, wanted), Turning.For(wing, Other(face), fitting, offset, wanted)));

    [Fact]
    public void The_bushing_in_the_other_fitting_turns_the_other_way() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Opposite(Turning.For(wing, face, fitting, offset, wanted), Turning.For(wing, face, Other(fitting), offset, wanted)));

    [Fact]
    public void The_other_neutral_offset_turns_the_other_way() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Opposite(Turning.For(wing, face, fitting, offset, wanted), Turning.For(wing, face, fitting, Other(offset), wanted)));

    [Fact]
    public void Without_bushing_data_no_rotation_is_named() => Cases.Sample((wing, face, fitting, offset, wanted) =>
        Turning.For(wing, face, null, offset, wanted) is null && Turning.For(wing, face, fitting, null, wanted) is null);

    [Fact]
    public void A_rotation_is_said_with_the_face_it_is_seen_at()
    {
        Assert.Equal("clockwise, looking forward at the rear face", Turning.Words(Rotation.Clockwise, Face.Rear));
        Assert.Equal("counter-clockwise, looking aft at the front face", Turning.Words(Rotation.CounterClockwise, Face.Front));
    }

    static bool Opposite(Rotation? one, Rotation? other) => one is not null && other is not null && one != other;

    static T Other<T>(T value) where T : struct, Enum => Enum.GetValues<T>().Single(candidate => !candidate.Equals(value));

    static T Word<T>(string word) where T : struct, Enum => Wire.TryRead<T>(word, out var value) ? value : throw new InvalidDataException(word);
}
