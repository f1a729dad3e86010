using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;
using UglyToad.PdfPig;

namespace Rigging.Web.Tests.Work;

[Collection(InTheHangar.Name)]
public sealed class LooseTagTests(Hangar hangar)
{
    [Fact]
    public async Task A_tag_says_what_is_loose_on_which_aircraft_and_who_left_it()
    {
        var number = await hangar.Squawk(School.InWork.Do(School.Mechanic, new WorkHandedOver("Left bolt out of torque, both bushings free.", "Left rear bolt LOOSE, do not move.")));
        using var browser = await hangar.As(School.Mechanic);

        using var answer = await browser.Http.GetAsync(new Uri($"/squawks/{number}/loose-tag.pdf", UriKind.Relative), TestContext.Current.CancellationToken);
        using var document = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken));
        var text = string.Join(' ', document.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));

        Assert.Equal(1, document.NumberOfPages);
        Assert.All((string[])["LOOSE", "DO NOT MOVE", "Left rear bolt LOOSE, do not move.", "Mira Mechanic", $"S-{number}"], words => Assert.Contains(words, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_nothing_is_loose_there_is_no_tag()
    {
        var number = await hangar.Squawk(School.InWork);
        using var browser = await hangar.As(School.Mechanic);

        using var answer = await browser.Http.GetAsync(new Uri($"/squawks/{number}/loose-tag.pdf", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(System.Net.HttpStatusCode.NotFound, answer.StatusCode);
    }
}
