using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>One person at one screen.</summary>
sealed class Visitor(IPage page, RunningSite site)
{
    public const string Password = "wings-level-2026";

    public IPage Page => page;

    public static async Task<Visitor> Arrives(RunningSite site, string email, int width, int height)
    {
        var context = await site.Browser.NewContextAsync(new() { BaseURL = site.Address, ViewportSize = new() { Width = width, Height = height } });
        var visitor = new Visitor(await context.NewPageAsync(), site);
        await visitor.Goes("/sign-in");
        await visitor.Fills("E-mail address", email);
        await visitor.Fills("Password", Password);
        await visitor.Presses("Sign in");
        await Assertions.Expect(page(visitor).GetByRole(AriaRole.Button, new() { Name = "Sign out" })).ToBeVisibleAsync();
        return visitor;

        static IPage page(Visitor v) => v.Page;
    }

    public async Task Goes(string path)
    {
        var answer = await page.GotoAsync(site.Address + path);
        Assert.True(answer is { Status: < 400 }, $"{path}: {answer?.Status}");
    }

    public Task Fills(string label, string text) => page.GetByLabel(label, new() { Exact = false }).First.FillAsync(text);

    public Task Chooses(string label) => page.GetByLabel(label, new() { Exact = true }).First.CheckAsync();

    public Task Presses(string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).First.ClickAsync();

    public Task Sees(string text) => Assertions.Expect(page.GetByText(text).First).ToBeVisibleAsync();

    public async Task Keeps(string name)
    {
        if (Environment.GetEnvironmentVariable("RIGGING_PICTURES") is { Length: > 0 } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, name + ".png"), FullPage = true });
    }
}
