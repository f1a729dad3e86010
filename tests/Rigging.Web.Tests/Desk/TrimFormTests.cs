using Rigging.Squawks.Entries;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

public class TrimFormTests
{
    static (TrimsFlown? Trims, Typed Typed) Read(string json)
    {
        var typed = new Typed();
        return (TrimForm.Read(TypedFields.Read(json), typed), typed);
    }

    [Theory]
    [InlineData("""{ "rollTrim": "Neutral", "yawTrim": "NoseLeft", "autopilot": "Disconnected" }""", RollTrim.Neutral, YawTrim.NoseLeft, FlownAutopilot.Disconnected)]
    [InlineData("""{ "rollTrim": "LeftWingDown", "yawTrim": "", "autopilot": "" }""", RollTrim.LeftWingDown, null, null)]
    [InlineData("""{ "yawTrim": "NotFitted" }""", null, YawTrim.NotFitted, null)]
    public void What_was_chosen_is_recorded_and_nothing_else(string json, RollTrim? roll, YawTrim? yaw, FlownAutopilot? autopilot)
    {
        var (trims, typed) = Read(json);

        Assert.True(typed.Ok);
        Assert.Equal(new(roll, yaw, autopilot), trims);
    }

    [Theory, InlineData("{}"), InlineData("""{ "rollTrim": "", "yawTrim": "", "autopilot": "" }""")]
    public void Nothing_chosen_is_nothing_recorded_and_nothing_wrong(string json)
    {
        var (trims, typed) = Read(json);

        Assert.Null(trims);
        Assert.True(typed.Ok);
    }

    [Theory, InlineData("rollTrim", "NoseLeft"), InlineData("yawTrim", "a bit left"), InlineData("autopilot", "2")]
    public void What_is_none_of_the_choices_is_named_at_its_field(string field, string value)
    {
        var error = Assert.Single(Read($$"""{ "{{field}}": "{{value}}" }""").Typed.Errors);

        Assert.Equal(("not-a-choice", field), (error.Code, error.Field));
        Assert.Contains(value, error.Sentence, StringComparison.Ordinal);
    }
}
