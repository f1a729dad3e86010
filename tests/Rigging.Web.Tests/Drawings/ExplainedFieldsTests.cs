using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Drawings;

/// <summary>What a student pilot may not know is drawn where it is asked for first, and not again at every row.</summary>
[Collection(InTheHangar.Name)]
public sealed class ExplainedFieldsTests(Hangar hangar)
{
    const string Bank = "Bank: 10° left wing down", Ball = "The ball: 0.5\u202Fwidth right of centre", Heading = "Heading drift: 20° to the left", Wheel = "The wheel, from its mark: 20° to the right";

    async Task<IEnumerable<string>> Drawn(string address)
    {
        using var mechanic = await hangar.As(School.Mechanic);
        return (await mechanic.Open(address)).Document.QuerySelectorAll("figure.of-field b").Select(title => title.TextContent);
    }

    [Fact]
    public async Task On_the_evaluation_flights_page() => Assert.Equal([Bank, Ball, Heading, Wheel], await Drawn($"/squawks/{await hangar.Squawk(School.Called)}/flight"));

    [Fact]
    public async Task On_the_check_flights_page() => Assert.Equal([Bank, Ball], await Drawn($"/squawks/{await hangar.Squawk(School.Approved)}/check-flight"));

    /// <summary>Which points it has is the assessment's choice; whatever they ask for is drawn.</summary>
    [Fact]
    public async Task On_the_card_of_an_evaluation_flight()
    {
        using var mechanic = await hangar.As(School.Mechanic);

        var card = (await mechanic.Open($"/squawks/{await hangar.Squawk(School.Checked)}/card")).Document;

        (string Field, string Title)[] explained = [("data-watch", Bank), ("ball\"", Ball), ("heading30\"", Heading), ("wheelDeg\"", Wheel)];
        var asked = explained.Where(one => card.DocumentElement.OuterHtml.Contains(one.Field, StringComparison.Ordinal)).Select(one => one.Title).ToHashSet();
        Assert.NotEmpty(asked);
        Assert.Equal(asked.Order(), card.QuerySelectorAll("figure.of-field b").Select(title => title.TextContent).Order());
    }

    [Fact]
    public async Task On_the_card_of_a_check_flight() => Assert.Equal([Bank, Ball], await Drawn($"/squawks/{await hangar.Squawk(School.Approved)}/card"));

    [Fact]
    public async Task On_the_report()
    {
        await hangar.Squawk(School.Called); // A school without an aircraft has nothing to report.

        Assert.Equal([Bank], await Drawn("/report"));
    }
}
