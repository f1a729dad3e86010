using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>Looks at a page as it stands in the browser: what axe finds in each display, and what does not fit its window.</summary>
static class Onlooker
{
    static readonly string[] Displays = ["light", "dark", "contrast"];

    // Everything axe knows that WCAG 2.2 AA asks for, and its rules of good practice.
    static readonly AxeRunOptions Everything = new()
    {
        RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
        ResultTypes = [ResultType.Violations],
    };

    // What another display can change.
    static readonly AxeRunOptions Colours = new()
    {
        RunOnly = new() { Type = "rule", Values = ["color-contrast", "link-in-text-block"] },
        ResultTypes = [ResultType.Violations],
    };

    /// <summary>Faults that are let pass, by rule and place, each with its reason. Nothing else is.</summary>
    public static IReadOnlyList<(string Rule, string Place, string Because)> Exceptions { get; } = [];

    /// <summary>One line for each fault; empty when there is none.</summary>
    public static async Task<IReadOnlyList<string>> Faults(IPage page)
    {
        List<string> faults = [];
        var chosen = await page.EvaluateAsync<string?>("document.documentElement.dataset.theme ?? null");
        foreach (var display in Displays)
        {
            await page.EvaluateAsync("display => document.documentElement.dataset.theme = display", display);
            var seen = await page.RunAxe(display == Displays[0] ? Everything : Colours);
            faults.AddRange(seen.Violations.SelectMany(rule => rule.Nodes
                .Where(node => !Exceptions.Any(known => known.Rule == rule.Id && node.Target.ToString().Contains(known.Place, StringComparison.Ordinal)))
                .Select(node => $"{display}: {rule.Id} ({rule.Help}) at {node.Target}: {node.Html}")));
        }
        await page.EvaluateAsync("display => display ? document.documentElement.dataset.theme = display : delete document.documentElement.dataset.theme", chosen);
        faults.AddRange(await TooWide(page));
        return faults;
    }

    /// <summary>What makes the page scroll sideways.</summary>
    public static async Task<IReadOnlyList<string>> TooWide(IPage page)
    {
        var wide = await page.EvaluateAsync<string[]>("""
            () => {
              const room = document.documentElement.clientWidth;
              if (document.documentElement.scrollWidth <= room) return [];
              const clipped = e => { for (let p = e.parentElement; p; p = p.parentElement) if (getComputedStyle(p).overflowX !== "visible" && p !== document.body && p !== document.documentElement) return true; return false; };
              return [...document.querySelectorAll("body *")].filter(e => e.getBoundingClientRect().right > room + 1 && !clipped(e)).slice(0, 4)
                .map(e => `${e.tagName.toLowerCase()}.${e.className?.baseVal ?? e.className} reaches ${Math.round(e.getBoundingClientRect().right)}: ${e.textContent.trim().slice(0, 60)}`)
                .concat([`the page is ${document.documentElement.scrollWidth} wide`]);
            }
            """);
        return [.. wide.Select(what => string.Create(CultureInfo.InvariantCulture, $"wider than {page.ViewportSize?.Width}: {what}"))];
    }
}
