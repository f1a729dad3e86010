using System.Net;
using AngleSharp.Html.Dom;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.Security;

/// <summary>The forms that lead to a signature, every text of theirs meant to run: it comes back as text, also above the signature. The forms before them are tried in a browser.</summary>
[Collection(InTheHangar.Name)]
public sealed class TypedToRunTests(Hangar hangar)
{
    const string Payload = """<img src=x onerror="window.ran=1">"><script>window.ran=1</script>';drop table ledger_entry;--{{7*7}} javascript:window.ran=1""";

    static readonly Dictionary<string, (Ledger At, Person Who)> Forms = new()
    {
        ["inspection"] = (School.Worked, School.Inspector),
        ["check-flight"] = (School.Approved, School.Pilot),
        ["closing"] = (School.Judged, School.Inspector),
        ["other/no-fault-found"] = (School.Called, School.Inspector),
        ["other/within-limits"] = (School.Called, School.Inspector),
        ["photograph"] = (School.Worked, School.Mechanic),
    };

    public static TheoryData<string> Pages => [.. Forms.Keys];

    [Theory, MemberData(nameof(Pages))]
    public async Task What_is_typed_to_run_comes_back_as_text(string form)
    {
        var number = await hangar.Squawk(Forms[form].At);
        using var browser = await hangar.As(Forms[form].Who);
        var page = await browser.Open($"/squawks/{number}/{form}");
        var fields = page.Document.QuerySelectorAll("main form input:not([type=hidden]):not([type=radio]):not([type=checkbox]):not([type=file]), main form textarea").Select(field => field.GetAttribute("name")!).Distinct().ToList();
        Assert.NotEmpty(fields);

        // All of it, which is refused, and the long texts alone with every box ticked, which leads on where nothing else is wrong.
        await Look(browser, await browser.Submit(page, With(fields)), shown: true);
        var texts = With(page.Document.QuerySelectorAll("main form textarea").Select(field => field.GetAttribute("name")!));
        foreach (var box in page.Document.QuerySelectorAll("main form input[type=checkbox]")) texts[box.GetAttribute("name")!] = "true";
        await Look(browser, await browser.Submit(page, texts), shown: texts.ContainsValue(Payload));
    }

    static Dictionary<string, string> With(IEnumerable<string> fields) => new(fields.Select(name => KeyValuePair.Create(name, Payload)));

    static async Task Look(Browser browser, Page answer, bool shown)
    {
        if (answer.Status == HttpStatusCode.Redirect) answer = await browser.Follow(answer);
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        Assert.DoesNotContain(answer.Document.All, element => element.Attributes.Any(attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal)));
        Assert.DoesNotContain(answer.Document.QuerySelectorAll("script"), script => script.TextContent.Contains("ran", StringComparison.Ordinal));
        var said = string.Concat(answer.Document.QuerySelectorAll("main textarea, main input").Select(field => field is IHtmlTextAreaElement area ? area.Value : field.GetAttribute("value"))) + answer.Document.QuerySelector("main")!.TextContent;
        if (shown) Assert.Contains(Payload, said, StringComparison.Ordinal);
    }
}
