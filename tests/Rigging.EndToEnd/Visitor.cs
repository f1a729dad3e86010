using System.Globalization;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>One person at one screen.</summary>
sealed class Visitor(IPage page, RunningSite site) : IAsyncDisposable
{
    public const string Password = "wings-level-2026";

    readonly List<string> amiss = [];

    public IPage Page => page;

    /// <summary>What was amiss on the pages that were kept: nothing should be.</summary>
    public IReadOnlyList<string> Amiss => amiss;

    /// <summary>Somebody who has not signed in.</summary>
    public static async Task<Visitor> Stranger(RunningSite site, int width, int height, string? signedIn = null)
    {
        var context = await site.Browser.NewContextAsync(new() { BaseURL = site.Address, ViewportSize = new() { Width = width, Height = height }, StorageState = signedIn });
        context.SetDefaultTimeout(180_000);
        return new(await context.NewPageAsync(), site);
    }

    public async ValueTask DisposeAsync() => await page.Context.CloseAsync();

    /// <summary>Somebody of the invented school who signed in before.</summary>
    public static async Task<Visitor> Known(RunningSite site, string who, int width, int height) =>
        await Stranger(site, width, height, await site.Cookies($"{who}@quietvalley.example"));

    public static async Task<Visitor> Arrives(RunningSite site, string email, int width, int height)
    {
        var visitor = await Stranger(site, width, height);
        await visitor.Goes("/sign-in");
        await visitor.Sets(("Form.Name", email), ("Form.Password", Password));
        await visitor.Presses("Sign in");
        await visitor.IsAt("/");
        return visitor;
    }

    public async Task Goes(string path)
    {
        var answer = await page.GotoAsync(site.Address + path);
        Assert.True(answer is { Status: < 400 }, $"{path}: {answer?.Status}");
    }

    /// <summary>The invented school's day, which is what its records are dated by.</summary>
    public Task<string> Today() => page.EvaluateAsync<string>("new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Chicago' }).format(new Date())");

    /// <summary>What a list posts for the line that says this.</summary>
    public async Task<string> ChoiceOf(string name, string says) =>
        (await page.Locator($"[name=\"{name}\"] option").Filter(new() { HasText = says }).GetAttributeAsync("value"))!;

    /// <summary>Fills each field by its posted name: types, chooses or ticks, whatever the field is.</summary>
    public async Task Sets(params (string Name, string Value)[] fields)
    {
        foreach (var (name, value) in fields)
        {
            var field = page.Locator($"[name=\"{name}\"]:visible");
            switch (await field.First.EvaluateAsync<string>("e => e.type"))
            {
                case "radio":
                    await page.Locator($"[name=\"{name}\"][value=\"{value}\"]").CheckAsync();
                    break;
                case "checkbox" when value == "true":
                    await field.First.CheckAsync();
                    break;
                case "checkbox":
                    await page.Locator($"[name=\"{name}\"][value=\"{value}\"]").CheckAsync();
                    break;
                case "select-one":
                    await field.First.SelectOptionAsync(value);
                    break;
                default:
                    await field.First.FillAsync(value);
                    await field.First.BlurAsync();
                    break;
            }
        }
    }

    public Task Presses(string button) => page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).First.ClickAsync();

    public async Task Sees(string text) => await Assertions.Expect(page.GetByText(text).First).ToBeVisibleAsync(new() { Timeout = 180_000 });

    /// <summary>Waits for the address; when the page stays where it is, says what it says.</summary>
    public async Task IsAt(string path)
    {
        try
        {
            // What a form was taken in under may still stand behind the address for a moment.
            await page.WaitForURLAsync(url => url.Split("?done=")[0] == site.Address + path, new() { Timeout = 180_000, WaitUntil = WaitUntilState.DOMContentLoaded });
        }
        catch (TimeoutException)
        {
            if (Pictures.Folder is { } folder) await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "stuck.png"), FullPage = true });
            var said = await page.Locator("[data-errors], .error, .remark").AllInnerTextsAsync();
            Assert.Fail($"Wanted to be at {path}, is at {page.Url}, which says: {string.Join(" | ", said)}");
        }
    }

    /// <summary>Reads the text, types the password, signs, and is back at the squawk.</summary>
    public async Task Signs(int squawk, string kind)
    {
        await IsAt(string.Create(CultureInfo.InvariantCulture, $"/squawks/{squawk}/sign/{kind}"));
        await Keeps($"sign-{kind}");
        await Sets(("Form.Password", Password));
        await Presses("Sign");
        await IsAt(string.Create(CultureInfo.InvariantCulture, $"/squawks/{squawk}"));
    }

    /// <summary>Looks the page over as it stands, and keeps a picture of it when a folder for pictures is named.</summary>
    public async Task<IReadOnlyList<string>> Keeps(string name)
    {
        // A live page says first that it is coming.
        await Assertions.Expect(page.Locator("h1").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        List<string> faults = [.. (await Onlooker.Faults(page)).Select(fault => $"{name}: {fault}")];
        amiss.AddRange(faults);
        if (Pictures.Folder is { } folder)
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{name}-{page.ViewportSize!.Width}.png")), FullPage = true });
        return faults;
    }
}
