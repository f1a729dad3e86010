using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Components;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>Every page that has an address, as the person who uses it most finds it in the invented school.</summary>
public partial class EveryPageTests(RunningSite site, EveryPageTests.Screens screens) : IClassFixture<EveryPageTests.Screens>
{
    /// <summary>One screen for each person, so that not every page loads what all pages share.</summary>
    public sealed class Screens(RunningSite site) : IAsyncLifetime
    {
        readonly Dictionary<string, Visitor> visitors = [];

        public ValueTask InitializeAsync() => ValueTask.CompletedTask;

        internal async Task<Visitor> Of(string who) => visitors.TryGetValue(who, out var known)
            ? known
            : visitors[who] = who == Nobody ? await Visitor.Stranger(site, 390, 844) : await Visitor.Known(site, who, 390, 844);

        public async ValueTask DisposeAsync()
        {
            foreach (var visitor in visitors.Values) await visitor.DisposeAsync();
        }
    }

    const string Pilot = "ilse", Student = "wren", Mechanic = "jude", Inspector = "edda", Office = "mina", Nobody = "";

    /// <summary>Addresses; an aircraft's registration stands for the number of its newest squawk.</summary>
    static readonly (string Who, string Address)[] Places =
    [
        (Nobody, "/sign-in"), (Nobody, "/not-found"), (Nobody, "/setup"), (Nobody, "/invitation"), (Mechanic, "/account"), (Office, "/security"), (Office, "/people/1"), (Mechanic, "/airframes/st2"), (Mechanic, "/airframes/st2/1"),
        (Office, "/"), (Student, "/"), (Office, "/aircraft"), (Office, "/aircraft/QRA-101"), (Office, "/people"), (Office, "/tools"), (Office, "/tools/TW-1"), (Office, "/school"), (Office, "/school/manuals"), (Office, "/school/verify"),
        (Student, "/report"), (Student, "/report/QRA-101"), (Student, "/receipt/0199a000-0000-7000-8500-000000000006"), (Nobody, "/receipt/0199a000-0000-7000-8500-000000000001"), (Nobody, "/cockpit/0199a000-0000-7000-8400-000000000002"), (Pilot, "/squawks/{QRC-103}/card"), (Pilot, "/squawks/{QRB-102}/card"),
        (Office, "/squawks/{QTB-202}"), (Mechanic, "/squawks/{QRC-103}"), (Inspector, "/squawks/{QTA-201}"), (Pilot, "/squawks/{QRB-102}"), (Office, "/squawks/{QRA-101}"),
        (Mechanic, "/squawks/{QTB-202}/call"), (Mechanic, "/squawks/{QRC-103}/checks"), (Mechanic, "/squawks/{QRC-103}/checks?check=panel-incidence-difference"), (Mechanic, "/squawks/{QRC-103}/checks?check=marks"),
        (Pilot, "/squawks/{QRC-103}/flight"), (Mechanic, "/squawks/{QRC-103}/assessment"), (Mechanic, "/squawks/{QVA-301}/assessment"), (Mechanic, "/squawks/{QTA-201}/work"), (Mechanic, "/squawks/{QRD-104}/work"), (Mechanic, "/squawks/{QRD-104}"), (Mechanic, "/squawks/{QTA-201}/photograph"), (Inspector, "/squawks/{QTA-201}/inspection"),
        (Inspector, "/squawks/{QTA-201}/approval"), (Pilot, "/squawks/{QRB-102}/check-flight"), (Inspector, "/squawks/{QRA-101}/verdict"), (Inspector, "/squawks/{QRB-102}/closing"),
        (Inspector, "/squawks/{QTA-201}/sign/independent-inspection"), (Mechanic, "/squawks/{QRC-103}/other"), (Mechanic, "/squawks/{QRC-103}/other/hand-over"), (Mechanic, "/squawks/{QRC-103}/other/resume"),
        (Mechanic, "/squawks/{QRC-103}/other/another-round"), (Mechanic, "/squawks/{QRC-103}/other/withdraw-correction"), (Mechanic, "/squawks/{QRC-103}/other/no-fault-found"), (Mechanic, "/squawks/{QRC-103}/other/wait"), (Mechanic, "/squawks/{QRC-103}/other/total-time"), (Mechanic, "/squawks/{QRC-103}/other/join"),
        (Mechanic, "/squawks/{QRC-103}/other/note"), (Mechanic, "/squawks/{QRA-101}/other/torque-recheck"), (Mechanic, "/squawks/{QRC-103}/other/within-limits"),
    ];

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Gap();

    /// <summary>Phone; in a long run tablet and desktop too.</summary>
    public static IEnumerable<TheoryDataRow<string, string, int, int>> Looks() =>
        from size in Sizes.Asked((390, 844))
        from place in Places
        select new TheoryDataRow<string, string, int, int>(place.Who, place.Address, size.Width, size.Height);

    [Fact]
    public void Every_page_is_among_those_that_are_looked_at()
    {
        var looked = Places.Select(place => Gap().Replace(place.Address.Split('?')[0], "§")).ToHashSet();
        var pages = typeof(Program).Assembly.GetTypes().SelectMany(type => type.GetCustomAttributes<RouteAttribute>()).Select(route => route.Template)
            .Where(template => !looked.Any(address => Fits(template, address))).ToList();
        Assert.True(pages.Count == 0, "Not looked at: " + string.Join(", ", pages));
    }

    static bool Fits(string template, string address)
    {
        var (wanted, given) = (template.Split('/'), address.Split('/'));
        return wanted.Length == given.Length && wanted.Zip(given).All(pair => pair.First == pair.Second || pair.First.StartsWith('{'));
    }

    [Theory, MemberData(nameof(Looks))]
    public async Task A_page_stands_up_to_axe_to_the_keyboard_and_to_being_enlarged(string who, string address, int width, int height)
    {
        var visitor = await screens.Of(who);
        var page = visitor.Page;
        await page.SetViewportSizeAsync(width, height);
        await page.GotoAsync(site.Address + Gap().Replace(address, gap => site.Numbers[gap.Value[1..^1]].ToString(CultureInfo.InvariantCulture)));
        await Assertions.Expect(page.Locator("main h1").First).ToBeVisibleAsync(new() { Timeout = 180_000 });
        List<string> faults = [.. await visitor.Keeps(NameOf(address)), .. await Keyboard.Walks(page), .. await Onlooker.TooWideEnlarged(page)];

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    static string NameOf(string address) => address == "/" ? "ramp" : Regex.Replace(address.Trim('/').Replace("squawks/", "", StringComparison.Ordinal), "[^A-Za-z0-9]+", "-").Trim('-').ToLowerInvariant();
}
