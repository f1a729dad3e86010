using System.Globalization;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>Looks at a page as it stands in the browser: what axe finds in each display, and what does not fit its window.</summary>
static class Onlooker
{
    static readonly string Axe = new BundledAxeScriptProvider().GetScript();

    // In the first display everything axe knows that WCAG 2.2 AA asks for, and its rules of good practice; in the others what another display can change.
    // Axe is run in the page itself: the package's own way opens a page beside it for every run, which costs seconds.
    const string Look = """
        async () => {
          const root = document.documentElement, chosen = root.dataset.theme, faults = [];
          const everything = { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] };
          const colours = { type: "rule", values: ["color-contrast", "link-in-text-block"] };
          for (const display of ["light", "dark", "contrast"]) {
            root.dataset.theme = display;
            const seen = await axe.run(document, { runOnly: display === "light" ? everything : colours, resultTypes: ["violations"] });
            for (const rule of seen.violations) for (const node of rule.nodes)
              faults.push([rule.id, node.target.flat().join(" "), `${display}: ${rule.id} (${rule.help}) at ${node.target}: ${node.html}`]);
          }
          if (chosen === undefined) delete root.dataset.theme; else root.dataset.theme = chosen;
          return faults;
        }
        """;

    /// <summary>Faults that are let pass, by rule and place, each with its reason. Nothing else is.</summary>
    public static IReadOnlyList<(string Rule, string Place, string Because)> Exceptions { get; } = [];

    /// <summary>One line for each fault; empty when there is none.</summary>
    public static async Task<IReadOnlyList<string>> Faults(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window")) await page.EvaluateAsync(Axe);
        var seen = await page.EvaluateAsync<string[][]>(Look);
        return
        [
            .. seen.Where(fault => !Exceptions.Any(known => known.Rule == fault[0] && fault[1].Contains(known.Place, StringComparison.Ordinal))).Select(fault => fault[2]),
            .. await TooWide(page),
            .. await RunTogether(page),
        ];
    }

    /// <summary>Sentences with no space between them, as where one was put behind another by a condition.</summary>
    static async Task<IReadOnlyList<string>> RunTogether(IPage page) => await page.EvaluateAsync<string[]>("""
        () => [...document.querySelector("main").innerText.matchAll(/.{0,30}[a-z)”][.:;,][A-Z][a-z]+/g)].map(found => `run together: ${found[0]}`)
        """);

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

    /// <summary>What does not fit when letters are twice as large, and when the whole page is enlarged four times.</summary>
    public static async Task<IReadOnlyList<string>> TooWideEnlarged(IPage page)
    {
        await page.SetViewportSizeAsync(1280, 900);
        await page.EvaluateAsync("document.documentElement.style.fontSize = '200%'");
        var twice = await TooWide(page);
        await page.EvaluateAsync("document.documentElement.style.fontSize = ''");
        // A window of 1280 at four times the size: what WCAG asks of a page that is enlarged.
        await page.SetViewportSizeAsync(320, 256);
        return [.. twice, .. await TooWide(page)];
    }
}
