using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

public class TypedFieldsTests
{
    [Fact]
    public void What_was_posted_comes_back_from_a_draft_as_it_was_typed()
    {
        var posted = TypedFields.Of(new FormCollection(new Dictionary<string, StringValues> { ["manHours"] = "two", ["parts"] = new(["nut", "bolt"]), ["ticked"] = "true" }));

        var again = TypedFields.Read(posted.ToJson());

        Assert.Equal("two", again["manHours"]);
        Assert.Equal("nut", again["parts"]);
        Assert.True(again.Ticked("ticked"));
        Assert.Equal(posted.ToJson(), again.ToJson());
    }

    [Fact]
    public void Secrets_and_the_frameworks_own_fields_are_no_part_of_it()
    {
        var posted = TypedFields.Of(new FormCollection(new Dictionary<string, StringValues> { ["password"] = "x", ["__RequestVerificationToken"] = "y", ["_handler"] = "z" }));

        Assert.Equal("{}", posted.ToJson());
    }

    [Theory, InlineData(null), InlineData(""), InlineData("[]"), InlineData("{\"a\":"), InlineData("3"), InlineData("null")]
    public void A_draft_that_cannot_be_read_is_an_empty_form(string? json) => Assert.False(TypedFields.Read(json).Any);

    [Fact]
    public void A_draft_may_hold_anything_under_a_name()
    {
        var typed = TypedFields.Read("""{"a":1,"a":2,"b":null,"c":{"d":[]},"e":[],"f":[true]}""");

        Assert.Equal("2", typed["a"]);
        Assert.Null(typed["b"]);
        Assert.Equal("""{"d":[]}""", typed["c"]);
        Assert.Null(typed["e"]);
        Assert.True(typed.Ticked("f"));
    }

    [Fact]
    public void A_part_of_the_form_that_was_taken_in_is_forgotten_and_the_rest_stays()
    {
        var typed = TypedFields.Read("""{"torque.reached":"190","torque.fastener":"bolt","done.manHours":"2"}""");

        typed.Clear("torque.");

        Assert.Equal("""{"done.manHours":"2"}""", typed.ToJson());
    }

    [Theory, InlineData("14:05", true), InlineData(" 14:05:00 ", true), InlineData("2 pm", false), InlineData("24:00", false), InlineData(null, false)]
    public void A_time_is_read_as_a_form_sends_it_with_seconds_or_without(string? text, bool reads)
    {
        var typed = new Typed();

        var time = typed.Time(text, "happenedTime", "At about");

        Assert.Equal(reads, typed.Ok);
        if (reads) Assert.Equal(new NodaTime.LocalTime(14, 5), time);
    }
}
