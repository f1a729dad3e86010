using Rigging.Squawks.Entries;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

public class AdjusterFormTests
{
    static readonly Control[] Controls = [Control.LeftStrutFork, Control.LeftFlapRod, Control.AileronTab, Control.RudderTab];

    static (IReadOnlyList<AdjusterSetting>? Settings, Typed Typed) Read(string json)
    {
        var typed = new Typed();
        return (AdjusterForm.Read(TypedFields.Read(json), typed, "found.", Controls), typed);
    }

    [Fact]
    public void A_size_and_a_way_are_a_setting_and_a_fork_needs_no_way()
    {
        var (settings, typed) = Read("""
            { "found.adjusterLeftStrutFork": "8.5", "found.adjusterLeftFlapRod": "1 1/2", "found.adjusterLeftFlapRodWay": "minus",
              "found.adjusterAileronTab": "2", "found.adjusterAileronTabWay": "plus", "found.adjusterRudderTab": "0" }
            """);

        Assert.True(typed.Ok);
        Assert.Equal([new(Control.LeftStrutFork, 8.5), new(Control.LeftFlapRod, -1.5), new(Control.AileronTab, 2), new(Control.RudderTab, 0)], settings!);
    }

    [Fact]
    public void Nothing_entered_is_nothing_recorded()
    {
        var (settings, typed) = Read("{}");

        Assert.Null(settings);
        Assert.True(typed.Ok);
    }

    [Theory]
    [InlineData("2", "side-missing", "found.adjusterAileronTabWay")]
    [InlineData("-2", "size-with-sign", "found.adjusterAileronTab")]
    [InlineData("two", "not-a-number", "found.adjusterAileronTab")]
    public void What_cannot_be_read_is_asked_for_again_at_its_field(string entered, string code, string field)
    {
        var (_, typed) = Read($$"""{ "found.adjusterAileronTab": "{{entered}}" }""");

        var error = Assert.Single(typed.Errors);
        Assert.Equal((code, field), (error.Code, error.Field));
    }
}
