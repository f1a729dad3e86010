using System.Globalization;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>The database is killed under open pages and comes back. A site of its own: everybody else's would be without one for a moment too.</summary>
public class DatabaseRestartTests
{
    [Fact]
    public async Task Pages_that_were_open_go_on_by_themselves()
    {
        await using var site = new RunningSite();
        await site.InitializeAsync();
        var story = string.Create(CultureInfo.InvariantCulture, $"/squawks/{site.Numbers["QRC-103"]}");
        await using var ramp = await Opens(site, "edda", "/");
        await using var reader = await Opens(site, "edda", story);
        await using var assessor = await Opens(site, "jude", story + "/assessment");
        await assessor.Page.Locator("[name=reason]").First.WaitForAsync();
        Visitor[] open = [ramp, reader, assessor];

        var killed = site.KillDatabase();

        // Its processes outlive it for a moment and still answer: until there is another one.
        while (site.Database == killed || site.Database == 0) await ramp.Page.EvaluateAsync("async () => (await fetch('/health/ready')).status");
        await ramp.Page.WaitForFunctionAsync("async () => (await fetch('/health/ready')).ok", null, new() { PollingInterval = 500, Timeout = 120_000 });
        foreach (var visitor in open) await Assertions.Expect(visitor.Page.Locator("#away")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await using (var mechanic = await Visitor.Known(site, "jude", 820, 1180))
        {
            await mechanic.Goes(story + "/other/note");
            await mechanic.Sets(("text", "Written after the database came back."));
            await mechanic.Presses("Add it");
            await mechanic.IsAt(story);
        }
        await reader.Sees("Written after the database came back.");
        // The page still takes in what is typed, and keeps it.
        await assessor.Page.Locator("[name=reason]").First.FillAsync("Typed after the database came back.");
        await assessor.Page.Locator("[name=reason]").First.BlurAsync();
        foreach (var visitor in open)
        {
            await Assertions.Expect(visitor.Page.Locator("#blazor-error-ui")).ToBeHiddenAsync();
            Assert.True(await visitor.Page.EvaluateAsync<bool>("window.neverLoadedAgain === true"));
        }
    }

    static async Task<Visitor> Opens(RunningSite site, string who, string address)
    {
        var visitor = await Visitor.Known(site, who, 1280, 900);
        await visitor.Goes(address);
        await Assertions.Expect(visitor.Page.Locator("main h1").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        await visitor.Page.EvaluateAsync("window.neverLoadedAgain = true");
        return visitor;
    }
}
