using Rigging.Mechanics.Contract;
using Rigging.Web.Assessment;

namespace Rigging.Web.Tests.Assessment;

/// <summary>Each kind of move reads as what is done to that control: nothing of an eccentric stands in the words for a rod.</summary>
public class InstructionTests
{
    public static TheoryData<Move, string> Moves => new()
    {
        {
            new(AdjustableControl.RightEccentric, 0, -15, 0.25, TrailingEdge.Up, null, -0.03),
            "Right wing: trailing edge up by ¼ flat, eccentric from neutral to 15° trailing edge up; front and rear bushing together. The way to turn is not on file: find it by measurement."
        },
        {
            new(AdjustableControl.LeftStrutFork, null, null, null, TrailingEdge.Down, "1 turns in, from 8 to 7", 0.1, 8, 7),
            "Left rear strut fork, one turn in: now 8 turns out from fully in, then 7 turns out from fully in. That wing’s trailing edge goes down."
        },
        {
            new(AdjustableControl.RightFlapRod, null, null, null, TrailingEdge.Up, "2 turns in, from 2 to 0", null, 2, 0),
            "Right flap rod, 2 turns in: now 2 turns out from the length of the drawing, then at the length of the drawing. That flap’s trailing edge goes up."
        },
        { new(AdjustableControl.AileronTab, 0, -3, null, TrailingEdge.Up, null, null), "Aileron tab, bent 3° up: now straight, then 3° trailing edge up." },
        { new(AdjustableControl.RudderTab, 1, 3.5, null, null, "trailing edge left, looking forward", null), "Rudder tab, bent 2.5° to the left: now 1° trailing edge left, then 3.5° trailing edge left." },
        { new(AdjustableControl.AileronNeutral, 1.2, 0, null, null, null, null), "Ailerons, about 1.2° right wing down with the wheel centred: set cables and neutral to the book." },
    };

    [Theory, MemberData(nameof(Moves))]
    public void A_move_reads_as_what_is_done_to_that_control(Move move, string words) => Assert.Equal(words, AssessmentWords.Instruction(move));

    [Fact]
    public void A_sentence_of_the_mechanics_is_read_without_its_codes() =>
        Assert.Equal("Not used: cable tension; beside it contour or fairing.", AssessmentWords.Sentence("Not used: cable-tension; beside it contour-or-fairing."));
}
