using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>Goes through a page with the Tab key alone.</summary>
static class Keyboard
{
    // What the key must reach: everything shown that can be acted on; of a group of radio buttons, one.
    const string Mark = """
        () => {
          window.walked = [];
          const shown = e => e.checkVisibility({ visibilityProperty: true, opacityProperty: false }) && !e.closest("[inert]");
          const groups = new Set();
          window.wanted = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")]
            .filter(e => e.tabIndex >= 0 && !e.matches(":disabled") && e.type !== "hidden" && shown(e))
            .filter(e => e.type !== "radio" || !groups.has(e.name) && groups.add(e.name));
          document.activeElement?.blur();
          scrollTo(0, 0);
          return window.wanted.length;
        }
        """;

    const string Look = """
        () => {
          const e = document.activeElement;
          // Between the last and the first the focus is the browser's own; only coming back to where it was is the end.
          if (!e || e === document.body) return "";
          // A date has several stops of its own.
          if (window.walked.at(-1) === e) return "";
          if (window.walked.includes(e)) return "end";
          window.walked.push(e);
          const name = `${e.tagName.toLowerCase()} “${(e.innerText || e.getAttribute("aria-label") || e.name || e.href || "").trim().slice(0, 40)}”`;
          const box = e.getBoundingClientRect();
          const style = getComputedStyle(e);
          const near = e.closest("label");
          const outlined = s => s && s.outlineStyle !== "none" && parseFloat(s.outlineWidth) > 0;
          if (!outlined(style) && !(near && outlined(getComputedStyle(near))) && style.boxShadow === "none") return `nothing shows that ${name} has the focus`;
          if (box.bottom < 0 || box.top > innerHeight || box.right < 0 || box.left > innerWidth) return `${name} has the focus out of sight`;
          return "";
        }
        """;

    const string Missed = """
        () => window.wanted.filter(e => e.isConnected && !window.walked.some(w => w === e || (e.type === "radio" && w.type === "radio" && w.name === e.name)))
          .map(e => `${e.tagName.toLowerCase()} “${(e.innerText || e.name || "").trim().slice(0, 40)}” is not reached`)
        """;

    /// <summary>One line for each fault.</summary>
    public static async Task<IReadOnlyList<string>> Walks(IPage page)
    {
        List<string> faults = [];
        var wanted = await page.EvaluateAsync<int>(Mark);
        for (var step = 0; step < 4 * wanted + 20; step++)
        {
            await page.Keyboard.PressAsync("Tab");
            var said = await page.EvaluateAsync<string>(Look);
            if (said == "end") break;
            if (said.Length > 0) faults.Add(said);
        }
        faults.AddRange(await page.EvaluateAsync<string[]>(Missed));
        return faults;
    }
}
