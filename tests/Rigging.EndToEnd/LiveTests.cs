using System.Globalization;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>Two people, two browsers: what one records the other sees, without loading anything again.</summary>
public class LiveTests(RunningSite site)
{
    const string Squawk = "QRC-103";

    string Address(string step = "") => string.Create(CultureInfo.InvariantCulture, $"/squawks/{site.Numbers[Squawk]}{step}");

    async Task<Visitor> At(string who, string address)
    {
        var visitor = await Visitor.Known(site, who, 1280, 900);
        await visitor.Goes(address);
        await Assertions.Expect(visitor.Page.Locator("main h1").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        return visitor;
    }

    static async Task Marks(Visitor visitor) => await visitor.Page.EvaluateAsync("window.neverLoadedAgain = true");

    static async Task WasNotLoadedAgain(Visitor visitor) => Assert.True(await visitor.Page.EvaluateAsync<bool>("window.neverLoadedAgain === true"));

    async Task Notes(Visitor who, string text)
    {
        await who.Goes(Address("/other/note"));
        await who.Sets(("text", text));
        await who.Presses("Add it");
        await who.IsAt(Address());
    }

    /// <summary>Pressed before the pause after which a draft goes to the server: the browser's own copy must not come back as something still to be recorded.</summary>
    [Fact]
    public async Task What_was_typed_and_recorded_at_once_is_not_in_the_form_again()
    {
        await using var mechanic = await At("jude", Address());
        await Notes(mechanic, "Pressed as fast as it was typed.");
        await mechanic.Sees("Pressed as fast as it was typed.");

        Assert.Equal("", await mechanic.Page.EvaluateAsync<string>("() => Object.keys(localStorage).filter(key => key.startsWith('draft:')).join()"));
        await mechanic.Goes(Address("/other/note"));
        await Assertions.Expect(mechanic.Page.Locator("[name=text]")).ToHaveValueAsync("");
    }

    [Fact]
    public async Task What_one_person_records_stands_on_the_other_s_open_page()
    {
        await using var inspector = await At("edda", Address());
        await using var mechanic = await At("jude", Address());
        await Marks(inspector);

        await Notes(mechanic, "Looked at the rudder cable once more: nothing.");

        await inspector.Sees("Looked at the rudder cable once more: nothing.");
        await WasNotLoadedAgain(inspector);
    }

    [Fact]
    public async Task A_connection_that_was_cut_comes_back_by_itself_with_what_happened_meanwhile()
    {
        await using var inspector = await Visitor.Known(site, "edda", 1280, 900);
        List<IWebSocketRoute> open = [];
        var cut = false;
        await inspector.Page.RouteWebSocketAsync(url => url.Contains("_blazor", StringComparison.Ordinal), socket =>
        {
            if (cut)
            {
                _ = socket.CloseAsync();
                return;
            }
            socket.ConnectToServer();
            open.Add(socket);
        });
        await inspector.Goes(Address());
        await Assertions.Expect(inspector.Page.Locator("main h1").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        await Marks(inspector);
        await using var mechanic = await At("jude", Address());

        cut = true;
        foreach (var socket in open.ToList()) await socket.CloseAsync();
        await inspector.Sees("Connection lost. Trying again; wait before you go on.");
        await Notes(mechanic, "Written while the inspector's tablet was out of reach.");
        cut = false;

        await inspector.Sees("Written while the inspector's tablet was out of reach.");
        await Assertions.Expect(inspector.Page.GetByText("Connection lost. Trying again").First).ToBeHiddenAsync(new() { Timeout = 180_000 });
        await WasNotLoadedAgain(inspector);
    }
}
