using System.Globalization;

namespace Rigging.EndToEnd;

/// <summary>What comes over the line before somebody who has never been here can use a page. The weight is held; the time, over a weak signal, is only measured.</summary>
public class FirstPageTests(RunningSite site)
{
    const string Measure = """
        async () => {
          await document.fonts.ready;
          const [page] = performance.getEntriesByType("navigation");
          const parts = performance.getEntriesByType("resource");
          return [page.transferSize + parts.reduce((sum, part) => sum + part.transferSize, 0), 1 + parts.length, page.domContentLoadedEventEnd, performance.now()];
        }
        """;

    // What browsers' own tools call slow 4G: 1.6 Mbit/s down, 0.75 Mbit/s up, 150 ms.
    static readonly Dictionary<string, object> WeakSignal = new() { ["offline"] = false, ["latency"] = 150, ["downloadThroughput"] = 1_600_000 / 8, ["uploadThroughput"] = 750_000 / 8 };

    /// <summary>Kilobytes over the line, compressed, nothing kept from before. Plain pages are what a phone on the apron loads.</summary>
    [Theory, InlineData("", "/sign-in", 220), InlineData("wren", "/report/QRA-101", 280), InlineData("edda", "/", 450)]
    public async Task A_first_page_weighs_no_more_than_a_weak_signal_carries(string who, string address, double mostKilobytes)
    {
        await using var visitor = who.Length == 0 ? await Visitor.Stranger(site, 390, 844) : await Visitor.Known(site, who, 390, 844);
        var wire = await visitor.Page.Context.NewCDPSessionAsync(visitor.Page);
        await wire.SendAsync("Network.emulateNetworkConditions", WeakSignal);
        await visitor.Goes(address);
        await visitor.Page.Locator("main h1").First.WaitForAsync();
        var usable = await visitor.Page.EvaluateAsync<double>("performance.now()");
        var seen = await visitor.Page.EvaluateAsync<double[]>(Measure);
        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{address}: {seen[0] / 1024:0} KB in {seen[1]:0} requests; document ready after {seen[2]:0} ms, heading in sight after {usable:0} ms"));

        Assert.InRange(seen[0] / 1024, 1, mostKilobytes);
    }
}
