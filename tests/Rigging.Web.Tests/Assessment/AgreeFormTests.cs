using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Web.Assessment;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Assessment;

public class AgreeFormTests
{
    static readonly CorrectionProposal HalfAFlat = new(
        [new(AdjustableControl.LeftEccentric, -15, 15, 0.5, TrailingEdge.Down, "clockwise, looking forward at the rear face", 0.061)], new(-0.15, -0.42, 0.12, "deg/s"), 0.97);

    static (CorrectionAgreed Fact, Typed Typed) Read(CorrectionProposal? proposal, params (string Name, string Value)[] typed)
    {
        var (fields, errors) = (new TypedFields(), new Typed());
        foreach (var (name, value) in typed.Prepend(("confirmed", "true"))) fields[name] = value;
        return (AgreeForm.Read(fields, errors, proposal), errors);
    }

    [Fact]
    public void The_proposed_correction_is_agreed_with_its_prediction_and_read_in_words()
    {
        var (fact, typed) = Read(HalfAFlat, ("plan", "proposed"), ("manual", "MM"), ("section", "57-10"), ("revision", "C"), ("reason", "Singled out."));

        Assert.True(typed.Ok);
        var move = Assert.Single(fact.Moves);
        Assert.Equal((Control.LeftEccentric, -15.0, 15.0), (move.Control, move.FromDeg, move.ToDeg));
        Assert.Equal("Left wing: trailing edge down by ½ flat, eccentric from 15° trailing edge up to 15° trailing edge down; front and rear bushing together. Turn it clockwise, looking forward at the rear face.", move.Instruction);
        Assert.False(fact.OwnPlan);
        Assert.Equal((-0.15, -0.42, 0.12), (fact.PredictedDegPerS, fact.PredictedLowDegPerS, fact.PredictedHighDegPerS));
    }

    [Fact]
    public void A_mechanics_own_move_says_its_way_in_words_and_claims_no_prediction()
    {
        var (fact, typed) = Read(HalfAFlat, ("plan", "own"), ("control", "RightEccentric"), ("from", "30"), ("fromWay", "down"), ("to", "15"), ("toWay", "up"), ("instruction", "Right wing up."));

        Assert.True(typed.Ok, string.Join("; ", typed.Errors));
        Assert.Equal((30.0, -15.0), (fact.Moves[0].FromDeg, fact.Moves[0].ToDeg));
        Assert.True(fact.OwnPlan);
        Assert.Null(fact.PredictedDegPerS);
    }

    [Theory]
    [InlineData("plan", "", "plan")]
    [InlineData("plan", "proposed", "plan")]
    [InlineData("confirmed", "", "confirmed")]
    [InlineData("from", "-30", "from")]
    [InlineData("fromWay", "", "fromWay")]
    [InlineData("to", "far", "to")]
    [InlineData("control", "", "control")]
    public void What_is_missing_or_wrong_is_named_at_its_field(string field, string value, string at)
    {
        var (_, typed) = Read(null, ("plan", "own"), ("control", "LeftEccentric"), ("from", "30"), ("fromWay", "down"), ("to", "15"), ("toWay", "up"), (field, value));

        Assert.Equal([at], typed.Errors.Select(error => error.Field));
    }

    [Theory]
    [InlineData("ST-2 Maintenance Manual, chapter 57-10, revision C (invented)", "ST-2 Maintenance Manual", "chapter 57-10", "C (invented)")]
    [InlineData("Some manual", "Some manual", "", "")]
    [InlineData(null, "", "", "")]
    public void The_manual_on_file_is_offered_in_its_parts(string? onFile, string manual, string section, string revision) =>
        Assert.Equal((manual, section, revision), AgreeForm.DataOnFile(onFile));

    [Theory, InlineData("LeftFlapRod", "book value"), InlineData("AileronNeutral", "book value"), InlineData("RudderTab", "flutter"), InlineData("AileronTab", "flutter")]
    public void Who_plans_to_move_what_only_hides_a_heavy_wing_is_cautioned_there(string control, string said) =>
        Assert.Contains(said, AgreeForm.Mind(control), StringComparison.Ordinal);

    [Theory, InlineData("LeftEccentric"), InlineData(null), InlineData("nonsense")]
    public void Other_plans_are_left_alone(string? control) => Assert.Null(AgreeForm.Mind(control));
}
