using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>The doors, in a browser: passkeys, what a page may run, and what people type that is meant to run.</summary>
public class DoorTests(RunningSite site)
{
    [Fact]
    public async Task A_passkey_signs_its_owner_in_and_signs_an_entry()
    {
        var inspector = await Visitor.Arrives(site, "edda@quietvalley.example", 1280, 900);
        await WithAKey(inspector.Page);
        await inspector.Goes("/account");
        await inspector.Sets(("passkeyName", "hangar tablet"), ("password", Visitor.Password));
        await inspector.Presses("Add a passkey");
        await inspector.Sees("Your passkey is added.");
        await inspector.Presses("Sign out");
        await inspector.IsAt("/sign-in");
        await inspector.Presses("Sign in with a passkey");
        await inspector.IsAt("/");

        var n = await Reported("QTA-201", "Nothing much, but look at it.");
        var mechanic = await Visitor.Arrives(site, "jude@quietvalley.example", 1280, 900);
        await mechanic.Goes($"/squawks/{n}/call");
        await mechanic.Sets(("call", "NoRiggingHold"), ("reason", "Looked it over."));
        await mechanic.Presses("Make the call");
        await mechanic.IsAt($"/squawks/{n}");
        await inspector.Goes($"/squawks/{n}/other/no-fault-found");
        await inspector.Sets(("evaluation", "Surveyed; nothing found."), ("everythingRefitted", "true"));
        await inspector.Presses("Go on to sign");
        await inspector.IsAt($"/squawks/{n}/sign/no-fault-found");
        await inspector.Presses("Sign with a passkey");
        await inspector.IsAt($"/squawks/{n}");
        await inspector.Sees("no fault found");
    }

    /// <summary>A device with a key, as the browser's own tools make one.</summary>
    static async Task WithAKey(IPage page)
    {
        var tools = await page.Context.NewCDPSessionAsync(page);
        await tools.SendAsync("WebAuthn.enable");
        await tools.SendAsync("WebAuthn.addVirtualAuthenticator", new()
        {
            ["options"] = new Dictionary<string, object>
            {
                ["protocol"] = "ctap2",
                ["transport"] = "internal",
                ["hasResidentKey"] = true,
                ["hasUserVerification"] = true,
                ["isUserVerified"] = true,
                ["automaticPresenceSimulation"] = true,
            },
        });
    }

    const string Payload = """<img src=x onerror="window.ran=1">"><script>window.ran=1</script>';drop table ledger_entry;--{{7*7}} javascript:window.ran=1""";

    [Fact]
    public async Task What_is_typed_to_run_comes_back_as_it_was_typed_and_runs_nowhere()
    {
        var everybody = await Visitor.Arrives(site, "jude@quietvalley.example", 1280, 900);
        await Watched(everybody.Page);
        var n = await Reported("QTA-201", Payload, Payload);
        // As a pilot would send it from the page, and as anything else that can be typed on a step's page.
        foreach (var path in (string[])[$"/squawks/{n}/call", $"/squawks/{n}/checks?check=flap-difference", $"/squawks/{n}/checks?check=cable-tension", $"/squawks/{n}/checks?check=damage-inspection", $"/squawks/{n}/checks?check=marks",
            $"/squawks/{n}/other/join", $"/squawks/{n}/other/note", $"/squawks/{n}/other/wait", $"/squawks/{n}/other/total-time", $"/squawks/{n}/other/hand-over", "/report/QTA-201"])
        {
            await IsTypedInto(everybody, path);
        }
        foreach (var path in (string[])["/", $"/squawks/{n}", "/aircraft/QTA-201", $"/squawks/{n}/assessment"])
        {
            await ShowsItWhole(everybody, path);
        }
        await everybody.Goes($"/squawks/{n}");
        await everybody.Sees(Payload);
    }

    /// <summary>The forms that lead to a signature, and the office's registers.</summary>
    [Fact]
    public async Task Nor_does_it_run_on_the_forms_of_those_who_sign_and_of_the_office()
    {
        foreach (var (who, paths) in ((string, string[])[])
        [
            ("edda", [$"/squawks/{site.Numbers["QTA-201"]}/inspection", $"/squawks/{site.Numbers["QRC-103"]}/other/no-fault-found", $"/squawks/{site.Numbers["QRC-103"]}/other/within-limits"]),
            ("ilse", [$"/squawks/{site.Numbers["QRB-102"]}/check-flight", $"/squawks/{site.Numbers["QRC-103"]}/flight"]),
            ("jude", [$"/squawks/{site.Numbers["QRC-103"]}/photograph"]),
            ("mina", ["/people", "/tools", "/aircraft"]),
        ])
        {
            await using var somebody = await Visitor.Known(site, who, 1280, 900);
            await Watched(somebody.Page);
            foreach (var path in paths) await IsTypedInto(somebody, path);
        }
    }

    /// <summary>There every letter goes to the server as it is typed, and comes back with the page.</summary>
    [Fact]
    public async Task Nor_at_the_work_where_every_letter_is_kept_as_it_is_typed()
    {
        var n = site.Numbers["QRD-104"];
        await using var mechanic = await Visitor.Known(site, "sol", 820, 1180);
        await Watched(mechanic.Page);
        await mechanic.Goes($"/squawks/{n}/work");
        var record = mechanic.Page.GetByRole(AriaRole.Button, new() { Name = "Record the handover" });
        await record.WaitForAsync(new() { Timeout = 60_000 });
        await mechanic.Page.GetByText("Yes, something is loose").ClickAsync();
        await mechanic.Page.GetByLabel("What is loose and must not be moved").WaitForAsync();
        var fields = mechanic.Page.Locator("main input[type=text]:not([disabled]), main textarea:not([disabled])");
        Assert.True(await fields.CountAsync() > 1, "There is nothing to type in.");
        foreach (var field in await fields.AllAsync()) await field.FillAsync(Payload);
        // Late, too: the day and the hour are typed like everything else here.
        await mechanic.Page.GetByText("It happened earlier: a late entry").Last.ClickAsync();
        var evening = DateOnly.Parse(await mechanic.Today(), CultureInfo.InvariantCulture).AddDays(-1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        await mechanic.Page.Locator("[name='handover.happenedOn']").FillAsync(evening);
        await mechanic.Page.Locator("[name='handover.happenedTime']").FillAsync("20:15");
        await record.ClickAsync();
        await mechanic.Sees("The handover is on record.");
        await RanNothing(mechanic.Page, "/work");
        foreach (var path in (string[])[$"/squawks/{n}/work", $"/squawks/{n}", "/aircraft/QRD-104", "/"])
        {
            await ShowsItWhole(mechanic, path);
        }
        await mechanic.Goes($"/squawks/{n}");
        await mechanic.Sees(Payload);
        await mechanic.Sees($"It happened {evening} 20:15");
    }

    [Fact]
    public async Task No_page_breaks_the_sites_own_policy()
    {
        var office = await Visitor.Arrives(site, "jude@quietvalley.example", 1280, 900);
        await Watched(office.Page);
        foreach (var path in (string[])["/", "/account", "/report", "/squawks/1", "/squawks/1/checks", "/squawks/1/assessment", "/squawks/1/work", "/squawks/1/call", "/squawks/1/inspection", "/squawks/1/approval", "/squawks/1/check-flight",
            "/squawks/1/verdict", "/squawks/1/closing", "/squawks/1/other", "/people", "/tools", "/aircraft", "/school", "/school/verify"])
        {
            await office.Page.GotoAsync(site.Address + path);
            await office.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
            await RanNothing(office.Page, path);
        }
    }

    [Theory]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("https://elsewhere.example/")]
    [InlineData("javascript:window.ran=1")]
    public async Task Signing_in_leads_nowhere_else(string elsewhere)
    {
        var page = await (await site.Browser.NewContextAsync()).NewPageAsync();
        await page.GotoAsync($"{site.Address}/sign-in?ReturnUrl={Uri.EscapeDataString(elsewhere)}");
        await page.Locator("[name=\"Form.Name\"]").FillAsync("wren@quietvalley.example");
        await page.Locator("[name=\"Form.Password\"]").FillAsync(Visitor.Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await page.WaitForURLAsync(site.Address + "/");
    }

    /// <summary>Types it into every field for text of the page's form, sends the form, and finds it where it belongs.</summary>
    static async Task IsTypedInto(Visitor somebody, string path)
    {
        await somebody.Goes(path);
        var typed = await somebody.Page.EvaluateAsync<int>("""
            text => { const fields = [...document.querySelectorAll("main form input[type=text], main form input[type=search], main form input[type=email], main form input:not([type]), main form textarea")].filter(f => !f.disabled);
                  for (const field of fields) { field.removeAttribute("maxlength"); field.value = text; field.dispatchEvent(new Event("input", { bubbles: true })); } return fields.length; }
            """, Payload);
        Assert.True(typed > 0, $"{path}: there is nothing to type in.");
        await somebody.Page.EvaluateAsync("document.querySelector('main form button.primary').form.setAttribute('novalidate', '')");
        await somebody.Page.EvaluateAsync("document.body.dataset.before = 'yes'");
        await somebody.Page.Locator("main form button.primary:visible").First.ClickAsync();
        await Assertions.Expect(somebody.Page.Locator("body[data-before]")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        // In its field where it was refused; in the squawk's story, a moment later, where it was taken in.
        if (!await somebody.Page.EvaluateAsync<bool>("text => [...document.querySelectorAll('input, textarea')].some(field => field.value === text)", Payload)) await somebody.Sees(Payload);
        await RanNothing(somebody.Page, path);
    }

    /// <summary>Notes whatever the policy stops, on every page opened from now on.</summary>
    static async Task Watched(IPage page)
    {
        page.Dialog += (_, dialog) => Assert.Fail($"A dialog opened: {dialog.Message}");
        await page.AddInitScriptAsync("window.stopped = []; document.addEventListener('securitypolicyviolation', e => window.stopped.push(`${e.effectiveDirective} ${e.blockedURI} ${e.sample}`));");
    }

    static async Task RanNothing(IPage page, string path)
    {
        var (ran, stopped) = (await page.EvaluateAsync<JsonElement?>("window.ran ?? null"), await page.EvaluateAsync<string[]>("window.stopped ?? []"));
        Assert.True(ran is null or { ValueKind: JsonValueKind.Null }, $"{path}: a script ran.");
        Assert.True(stopped.Length == 0, $"{path}: the policy stopped {string.Join("; ", stopped)}");
    }

    /// <summary>Nothing of it runs, and words without a place to break them push nothing out of the window.</summary>
    static async Task ShowsItWhole(Visitor reader, string path)
    {
        var before = reader.Page.ViewportSize!;
        await reader.Goes(path);
        await reader.Page.WaitForLoadStateAsync(LoadState.NetworkIdle);
        await RanNothing(reader.Page, path);
        await reader.Page.SetViewportSizeAsync(390, 844);
        var wide = (string[])[.. await Onlooker.TooWide(reader.Page), .. await Onlooker.TooWideEnlarged(reader.Page)];
        await reader.Page.SetViewportSizeAsync(before.Width, before.Height);
        Assert.True(wide.Length == 0, $"{path}: {string.Join('\n', wide)}");
    }

    async Task<int> Reported(string registration, string words, string? sinceWhen = null)
    {
        var pilot = await Visitor.Arrives(site, "wren@quietvalley.example", 390, 844);
        await Watched(pilot.Page);
        await pilot.Goes($"/report/{registration}");
        await pilot.Page.GetByText("Do you know more of its history?").ClickAsync();
        await pilot.Sets(("words", words), ("rollsTo", "Left"), ("strength", "Slowly"), ("doing", "let-go-ball"), ("redFlags", "none"),
            ("fuelMethod", "Dip"), ("fuelUnit", "l"), ("fuelLeftL", "25"), ("fuelRightL", "25"), ("aboard", "TwoUp"), ("sinceWhen", sinceWhen ?? "today"), ("happened", "Repaint"));
        await pilot.Presses("Send the report");
        await pilot.Page.WaitForURLAsync("**/receipt**");
        await RanNothing(pilot.Page, "/receipt");
        return int.Parse((await pilot.Page.Locator("h1 .mono").InnerTextAsync())["S-".Length..], CultureInfo.InvariantCulture);
    }
}
