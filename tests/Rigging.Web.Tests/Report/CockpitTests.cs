using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Web.Drawings;
using Rigging.Web.Report;
using UglyToad.PdfPig;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Rigging.Web.Tests.Report;

[Collection(InTheHangar.Name)]
public class CockpitTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    async Task<AircraftId> AircraftOf(int number) => (await hangar.Ledger(number)).State.Report!.Aircraft;

    [Fact]
    public async Task Whoever_holds_the_aircrafts_code_reads_what_was_disturbed_and_which_way_it_must_move()
    {
        var number = await hangar.Squawk(School.Approved);
        using var nobody = hangar.Site.Browser();

        var page = await nobody.Open(CockpitEndpoints.Path(await AircraftOf(number)));

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("Crew only", page.Text, StringComparison.Ordinal);
        Assert.All(School.Done.Disturbed, item => Assert.Contains(item, page.Text, StringComparison.Ordinal));
        Assert.Contains("Wheel left: left aileron up, right aileron down.", page.Text, StringComparison.Ordinal);
        Assert.Contains("Not yet check-flown", page.Text, StringComparison.Ordinal);
        Assert.Contains($"S-{number} Approved after work: no passengers until the check flight is logged.", page.Text, StringComparison.Ordinal);
        Assert.Contains(School.Report.Words, page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_cockpit_page_names_nobody_and_quotes_nothing_that_is_over()
    {
        var number = await hangar.Squawk(School.Closed);
        using var nobody = hangar.Site.Browser();

        var page = await nobody.Open(CockpitEndpoints.Path(await AircraftOf(number)));

        Assert.DoesNotContain("Mira", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(School.Report.Words, page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cockpit_page_and_receipt_say_status_reason_limits_and_complaint_before_anything_else()
    {
        var limited = await hangar.Squawk(School.Reported.Do(School.Mechanic, new Squawks.Entries.Called(Squawks.Entries.Call.MayFlyWithLimits, "Slow and steady.", "Two up, by day.")));
        var hard = await hangar.Squawk(School.Empty.Do(School.Pilot, School.Report with { Words = "Bounced it badly.", Happened = [Squawks.Entries.Happening.HardLanding] }));
        using var nobody = hangar.Site.Browser();

        foreach (var (number, wanted) in ((int, string[])[])
        [
            (limited, ["May fly with limits", "By the airworthiness call: Slow and steady.", "Limits in force: Two up, by day.", School.Report.Words]),
            (hard, ["Grounded", "Grounded until a damage inspection is recorded clear: a hard landing.", "Bounced it badly."]),
        ])
            foreach (var address in (string[])[CockpitEndpoints.Path(await AircraftOf(number)), $"/receipt/{(await hangar.Ledger(number)).Id}"])
            {
                var main = (await nobody.Open(address)).Document.QuerySelector("main")!.TextContent;
                var at = wanted.Select(text => main.IndexOf(text, StringComparison.Ordinal)).ToList();
                Assert.All(at, place => Assert.True(place >= 0, $"{address}: {string.Join(", ", at)} of {string.Join(" | ", wanted)}"));
                Assert.True(at.Max() < main.Length / 2 || address.StartsWith("/receipt", StringComparison.Ordinal));
            }
    }

    [Fact]
    public async Task Work_of_long_ago_is_no_news()
    {
        var number = await hangar.Squawk(School.Closed);
        var aircraft = await AircraftOf(number);
        using var nobody = hangar.Site.Browser();

        hangar.Site.Clock.AdvanceDays(Lately.Days + 1);
        try
        {
            Assert.Contains($"No rigging work is on record here in the last {Lately.Days} days.", (await nobody.Open(CockpitEndpoints.Path(aircraft))).Text, StringComparison.Ordinal);
        }
        finally
        {
            hangar.Site.Clock.AdvanceDays(-Lately.Days - 1);
        }
    }

    [Fact]
    public async Task A_code_of_no_aircraft_leads_nowhere()
    {
        using var nobody = hangar.Site.Browser();

        Assert.Equal(HttpStatusCode.NotFound, (await nobody.Open($"/cockpit/{Guid.NewGuid()}")).Status);
    }

    [Theory]
    [InlineData("", 396, 612)]
    [InlineData("?size=a5", 420, 595)]
    public async Task The_placard_carries_the_aircraft_the_address_and_is_one_page(string query, int wide, int tall)
    {
        var id = await AircraftOf(await hangar.Squawk(School.Reported));
        await using var db = hangar.Site.OpenDatabase();
        var registration = (await db.Aircraft.FindAsync([id], Ct))!.Registration;
        using var office = await hangar.As(School.Office);

        var file = await office.Http.GetByteArrayAsync(new Uri($"/aircraft/{registration}/placard.pdf{query}", UriKind.Relative), Ct);

        if (Environment.GetEnvironmentVariable("PRINT_TO") is { Length: > 0 } folder) await File.WriteAllBytesAsync(Path.Combine(folder, $"placard{query.Replace("?size=", "-", StringComparison.Ordinal)}.pdf"), file, Ct);
        using var pdf = PdfDocument.Open(file);
        var page = pdf.GetPage(1);
        var text = string.Join(' ', page.GetWords().Select(word => word.Text));
        Assert.Equal(1, pdf.NumberOfPages);
        Assert.Equal((wide, tall), ((int)Math.Round(page.Width), (int)Math.Round(page.Height)));
        Assert.Contains(registration, text, StringComparison.Ordinal);
        Assert.Contains($"localhost{CockpitEndpoints.Path(id)}", text.Replace(" ", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_reader_of_another_make_reads_the_address_out_of_the_code()
    {
        const string address = "https://hangar.example/cockpit/0199a000-0000-7000-8300-000000000001";
        var drawing = QrCode.Of(address);
        const int scale = 6;
        var edge = (int)drawing.Width * scale;
        var picture = Enumerable.Repeat((byte)255, edge * edge).ToArray();
        foreach (var run in drawing.Marks.OfType<Outline>().Where(mark => mark.Fill!.Role == Role.Ink))
            for (var y = (int)run.Points[0].Y * scale; y < ((int)run.Points[0].Y + 1) * scale; y++)
                for (var x = (int)run.Points[0].X * scale; x < (int)run.Points[1].X * scale; x++) picture[(y * edge) + x] = 0;

        var read = new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(picture, edge, edge, RGBLuminanceSource.BitmapFormat.Gray8))));

        Assert.Equal(address, read?.Text);
    }
}
