using System.Globalization;
using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>A picture taken at the aircraft, as the mechanic sends it and as everybody sees it afterwards.</summary>
public class PhotographTests(RunningSite site)
{
    // A grey dot: eight by eight points, so small that it can stand here.
    static byte[] Picture => Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAgAAAAICAAAAADhZOFXAAAADklEQVR42mNogAIGyhgAgIQgARDoahcAAAAASUVORK5CYII=");

    [Fact]
    public async Task A_photograph_is_kept_though_something_else_was_missing_and_is_seen_in_the_story()
    {
        var address = string.Create(CultureInfo.InvariantCulture, $"/squawks/{site.Numbers["QRA-101"]}");
        await using var mechanic = await Visitor.Known(site, "jude", 820, 1180);
        await mechanic.Goes(address + "/photograph");
        await mechanic.Sets(("of", "BeforeWork"));
        await mechanic.Page.Locator("#photo").SetInputFilesAsync(new FilePayload { Name = "mark.png", MimeType = "image/png", Buffer = Picture });
        await mechanic.Presses("Keep it");
        await mechanic.Sees("Write what the picture shows.");

        await mechanic.Sets(("caption", "Left rear bushing, mark at two o'clock."));
        await mechanic.Presses("Keep it");
        await mechanic.IsAt(address);

        await mechanic.Sees("Photograph, before the work");
        var picture = mechanic.Page.GetByAltText("Photo 1 of 1, by Jude Arkwell");
        await picture.ScrollIntoViewIfNeededAsync();
        await Assertions.Expect(picture).ToHaveJSPropertyAsync("naturalWidth", 8, new() { Timeout = 180_000 });
    }
}
