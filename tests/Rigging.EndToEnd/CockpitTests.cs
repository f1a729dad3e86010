using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>The report on a phone: by taps, without JavaScript, without a signal, sent twice.</summary>
public class CockpitTests(RunningSite site)
{
    const int MostTaps = 12;
    const string Student = "wren@quietvalley.example";

    async Task<Visitor> Phone() => await Visitor.Arrives(site, Student, 390, 844);

    /// <summary>Taps labels as a finger does, and counts.</summary>
    sealed class Finger(IPage page)
    {
        public int Taps { get; private set; }

        public async Task On(string name, string value)
        {
            Taps++;
            await page.Locator($"label:has([name=\"{name}\"][value=\"{value}\"])").ClickAsync();
        }

        public async Task Writes(string name, string words)
        {
            Taps++;
            await page.Locator($"[name=\"{name}\"]").ClickAsync();
            await page.Keyboard.TypeAsync(words);
        }

        public async Task Sends()
        {
            Taps++;
            await page.GetByRole(AriaRole.Button, new() { Name = "Send the report" }).ClickAsync();
        }
    }

    static async Task<Finger> ReportsTheLeast(IPage page)
    {
        var finger = new Finger(page);
        await finger.On("rollsTo", "Left");
        await finger.On("strength", "Slowly");
        await finger.On("doing", "let-go-ball");
        await finger.On("flapDeg", "0");
        await finger.On("aboard", "AloneLeft");
        await finger.On("since", "A few days");
        await finger.On("last", "The pilot does not know");
        await finger.On("redFlags", "none");
        await finger.Writes("words", "Pulls left.");
        return finger;
    }

    [Fact]
    public async Task A_pilot_who_knows_little_reports_everything_that_matters_in_a_dozen_taps()
    {
        var phone = await Phone();
        await phone.Goes("/report/QTB-202");
        await phone.Keeps("report-empty");

        var finger = await ReportsTheLeast(phone.Page);
        await phone.Keeps("report-filled");
        await finger.Sends();
        await phone.Page.WaitForURLAsync("**/receipt/**");

        await phone.Keeps("receipt");
        Assert.True(finger.Taps <= MostTaps, $"{finger.Taps} taps");
        await phone.Page.GetByText("Read S-").ClickAsync();
        foreach (var said in (string[])["Rolls left slowly, hands off, feet keeping the ball centred", "flap 0°", "alone in the left seat", "Fuel on each side: not known.", "A few days", "The pilot does not know"])
            await phone.Sees(said);
        await phone.Keeps("reported-story");
    }

    // As in seed-data/fleet.json.
    static string Cockpit(int aircraft) => $"/cockpit/0199a000-0000-7000-8400-00000000000{aircraft}";

    async Task<IBrowserContext> Anybody(bool javaScript = true)
    {
        var context = await site.Browser.NewContextAsync(new() { BaseURL = site.Address, ViewportSize = new() { Width = 390, Height = 844 }, JavaScriptEnabled = javaScript });
        context.SetDefaultTimeout(180_000);
        return context;
    }

    static Task IsFiled(IPage page) => page.WaitForURLAsync("**/receipt/**", new() { Timeout = 180_000 });

    static Task<string> Number(IPage page) => page.Locator("h1 .mono").InnerTextAsync();

    [Fact]
    public async Task Without_javascript_and_without_an_account_a_dozen_taps_are_enough_too()
    {
        await using var phone = await Anybody(javaScript: false);
        var page = await phone.NewPageAsync();
        await page.GotoAsync(Cockpit(5));

        var finger = await ReportsTheLeast(page);
        await finger.Writes("name", "Robin");
        await finger.Writes("pin", "202526");
        await finger.Sends();

        await IsFiled(page);
        Assert.True(finger.Taps <= MostTaps, $"{finger.Taps} taps");
        Assert.StartsWith("S-", await Number(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_signal_that_dies_in_the_middle_costs_nothing_and_the_report_leaves_by_itself()
    {
        await using var phone = await Anybody();
        var page = await phone.NewPageAsync();
        await page.GotoAsync(Cockpit(4));
        await phone.SetOfflineAsync(true);

        var finger = await ReportsTheLeast(page);
        await finger.Writes("name", "Robin");
        await finger.Writes("pin", "202526");
        await finger.Sends();
        await Assertions.Expect(page.Locator("[data-unsent]")).ToContainTextAsync("No signal: not sent yet.");
        if (Environment.GetEnvironmentVariable("RIGGING_PICTURES") is { Length: > 0 } folder) await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "report-no-signal.png") });
        await phone.SetOfflineAsync(false);

        await IsFiled(page);
        await Assertions.Expect(page.Locator("p.words")).ToHaveTextAsync("Pulls left.");
    }

    [Fact]
    public async Task A_tab_that_was_closed_without_a_signal_sends_its_report_when_it_is_opened_again_and_only_once()
    {
        await using var student = await Phone();
        await student.Goes("/report/QTB-202");
        await student.Page.Context.SetOfflineAsync(true);
        var finger = await ReportsTheLeast(student.Page);
        await finger.Sends();
        await Assertions.Expect(student.Page.Locator("[data-unsent]")).ToContainTextAsync("kept on this phone");
        await student.Page.CloseAsync();

        await student.Page.Context.SetOfflineAsync(false);
        var again = await student.Page.Context.NewPageAsync();
        await again.GotoAsync(site.Address + "/report/QTB-202");
        await IsFiled(again);
        var first = await Number(again);
        await again.GotoAsync(site.Address + "/report/QTB-202");

        await Assertions.Expect(again.Locator("[name=words]")).ToHaveValueAsync("");
        await Assertions.Expect(again.Locator(".lately").GetByText(first, new() { Exact = true })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Signed_out_in_the_middle_what_was_typed_is_back_after_signing_in_and_goes_on_its_way()
    {
        await using var student = await Phone();
        await student.Goes("/report/QTB-202");
        var finger = await ReportsTheLeast(student.Page);
        await student.Page.Context.ClearCookiesAsync(new() { Name = "rigging" });
        await finger.Sends();

        await student.Page.WaitForURLAsync("**/sign-in**");
        await student.Sets(("Form.Name", Student), ("Form.Password", Visitor.Password));
        await student.Presses("Sign in");

        await IsFiled(student.Page);
        await Assertions.Expect(student.Page.Locator("p.words")).ToHaveTextAsync("Pulls left.");
    }

    [Fact]
    public async Task A_thumb_that_hits_send_twice_sends_one_report()
    {
        await using var student = await Phone();
        await student.Goes("/report/QTB-202");
        var before = await student.Page.Locator(".lately q").GetByText("Pulls left.").CountAsync();
        await ReportsTheLeast(student.Page);

        await student.Page.GetByRole(AriaRole.Button, new() { Name = "Send the report" }).DblClickAsync();
        await IsFiled(student.Page);
        var number = await Number(student.Page);
        await student.Goes("/report/QTB-202");

        Assert.Equal(before + 1, await student.Page.Locator(".lately q").GetByText("Pulls left.").CountAsync());
        await Assertions.Expect(student.Page.Locator(".lately").GetByText(number, new() { Exact = true })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_second_persons_stopwatch_fills_the_card_and_the_card_the_flight()
    {
        await using var pilot = await Visitor.Arrives(site, "ilse@quietvalley.example", 390, 844);
        await pilot.Page.Clock.InstallAsync(new() { Time = "2026-03-02T12:00:00Z" });
        await pilot.Goes($"/squawks/{site.Numbers["QRB-102"]}/card");
        await Assertions.Expect(pilot.Page.Locator("[data-watch]").First).ToBeHiddenAsync();

        await pilot.Page.Clock.PauseAtAsync("2026-03-02T14:00:00Z");
        await pilot.Sets(("second", "true"));
        var watch = pilot.Page.Locator("[data-watch]").First;
        foreach (var (side, milliseconds) in ((string, int)[])[("left", 6000), ("left", 6400), ("right", 5000)])
        {
            await watch.Locator($"[data-last={side}]").ClickAsync();
            await watch.Locator("[data-go]").ClickAsync();
            await pilot.Page.Clock.RunForAsync(milliseconds);
            await watch.Locator("[data-deg=\"15\"][data-wing=right]").ClickAsync();
        }
        // Axe waits for the page's own clock.
        await pilot.Page.Clock.ResumeAsync();
        await pilot.Keeps("card");
        await pilot.Presses("Take the readings into the flight");

        await pilot.Page.WaitForURLAsync("**/check-flight**");
        // Mean of the times, and the mean rate over that time.
        await Assertions.Expect(pilot.Page.Locator("[name=\"release1.seconds\"]")).ToHaveValueAsync("5.8");
        await Assertions.Expect(pilot.Page.Locator("[name=\"release1.side\"][value=right]")).ToBeCheckedAsync();
    }
}
