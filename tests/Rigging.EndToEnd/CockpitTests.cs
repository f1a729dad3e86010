using Microsoft.Playwright;

namespace Rigging.EndToEnd;

/// <summary>The report on a phone: by taps, without JavaScript, without a signal, sent twice.</summary>
public class CockpitTests(RunningSite site)
{
    const int MostTaps = 12;
    const string Student = "wren@quietvalley.example";

    async Task<Visitor> Phone(string email = Student) => await Visitor.Arrives(site, email, 390, 844);

    /// <summary>Taps labels as a finger does, and counts.</summary>
    sealed class Finger(IPage page)
    {
        public int Taps { get; private set; }

        public async Task On(string name, string value)
        {
            Taps++;
            await page.Locator($"label:has([name=\"{name}\"][value=\"{value}\"])").ClickAsync();
        }

        public async Task Writes(string name, string words)
        {
            Taps++;
            await page.Locator($"[name=\"{name}\"]").ClickAsync();
            await page.Keyboard.TypeAsync(words);
        }

        public async Task Sends()
        {
            Taps++;
            await page.GetByRole(AriaRole.Button, new() { Name = "Send the report" }).ClickAsync();
        }
    }

    static async Task<Finger> ReportsTheLeast(IPage page)
    {
        var finger = new Finger(page);
        await finger.On("rollsTo", "Left");
        await finger.On("strength", "Slowly");
        await finger.On("doing", "let-go-ball");
        await finger.On("flapDeg", "0");
        await finger.On("aboard", "AloneLeft");
        await finger.On("since", "A few days");
        await finger.On("last", "The pilot does not know");
        await finger.On("redFlags", "none");
        await finger.Writes("words", "Pulls left.");
        return finger;
    }

    [Fact]
    public async Task A_pilot_who_knows_little_reports_everything_that_matters_in_a_dozen_taps()
    {
        var phone = await Phone();
        await phone.Goes("/report/QTB-202");
        await phone.Keeps("report-empty");

        var finger = await ReportsTheLeast(phone.Page);
        await phone.Keeps("report-filled");
        await finger.Sends();
        await phone.Page.WaitForURLAsync("**/receipt/**");

        await phone.Keeps("receipt");
        Assert.True(finger.Taps <= MostTaps, $"{finger.Taps} taps");
        await phone.Page.GetByText("Read S-").ClickAsync();
        foreach (var said in (string[])["Rolls left slowly, hands off, feet keeping the ball centred", "flap 0°", "alone in the left seat", "Fuel on each side: not known.", "A few days", "The pilot does not know"])
            await phone.Sees(said);
        await phone.Keeps("reported-story");
    }
}
