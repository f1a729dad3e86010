using System.Net;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Tests;
using Rigging.Web.FlightCard;
using UglyToad.PdfPig;

namespace Rigging.Web.Tests.FlightCard;

[Collection(InTheHangar.Name)]
public sealed class CardTests(Hangar hangar)
{
    static CancellationToken Ct => TestContext.Current.CancellationToken;

    static Airframe Airframe => School.Airframe.Read();

    async Task<string> Print(int number, string query = "")
    {
        using var pilot = await hangar.As(School.Pilot);
        var file = await pilot.Http.GetByteArrayAsync(new Uri($"/squawks/{number}/card.pdf{query}", UriKind.Relative), Ct);
        if (Environment.GetEnvironmentVariable("PRINT_TO") is { Length: > 0 } folder) await File.WriteAllBytesAsync(Path.Combine(folder, $"card-{number}{query.Replace("?size=", "-", StringComparison.Ordinal)}.pdf"), file, Ct);
        using var pdf = PdfDocument.Open(file);
        var (wide, tall) = query.EndsWith("a5", StringComparison.Ordinal) ? (420, 595) : (396, 612);
        Assert.All(pdf.GetPages(), page => Assert.Equal((wide, tall), ((int)Math.Round(page.Width), (int)Math.Round(page.Height))));
        return string.Join(' ', pdf.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
    }

    [Theory]
    [InlineData("")]
    [InlineData("?size=a5")]
    public async Task The_card_for_a_check_flight_says_what_was_disturbed_what_to_fly_and_what_to_mind(string query)
    {
        var number = await hangar.Squawk(School.Approved);

        var text = await Print(number, query);

        Assert.All(
            (string[])["Check flight card", $"S-{number}", "left rear spar attachment", "left aileron cables", "Wheel left: left aileron up, right aileron down.", "No passengers, no students.",
                "second person times", "At 30° of bank stop", "3 times after a turn to the left", "Look out", "smooth air", "Let go of the wheel", "last turn to the left", "fuel left, start", "each flap setting", "never exceed"],
            wanted => Assert.Contains(wanted, text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_card_for_an_evaluation_flight_has_the_points_that_the_assessment_asks_for()
    {
        var number = await hangar.Squawk(School.Checked);

        var text = await Print(number);

        Assert.Contains("Evaluation flight card", text, StringComparison.Ordinal);
        Assert.Contains("by the assessment of what is on record", text, StringComparison.Ordinal);
        Assert.Matches(@"1 (Let go|Hold|Wheel|Burn)", text);
    }

    [Fact]
    public async Task The_card_of_an_aircraft_whose_damage_is_in_doubt_says_that_and_nothing_to_take_up()
    {
        var reported = await hangar.Squawk(School.Empty.Do(School.Pilot, School.Report with { Happened = [Squawks.Entries.Happening.HardLanding] }));
        var approved = await hangar.Squawk(School.Approved.Do(School.Office, new Squawks.Entries.Called(Squawks.Entries.Call.Grounded, "The hirer rang.", null, [], [Squawks.Entries.Happening.HardLanding])));
        using var pilot = await hangar.As(School.Pilot);

        foreach (var number in (int[])[reported, approved])
        {
            var page = await pilot.Open($"/squawks/{number}/card");
            Assert.Null(page.Document.QuerySelector("form[data-card]"));
            foreach (var text in (string[])[page.Document.QuerySelector("main")!.TextContent, await Print(number)])
            {
                Assert.Contains("Damage is in doubt: there are no points to take up.", text, StringComparison.Ordinal);
                Assert.DoesNotMatch(@"(?i)\bfly\b", text);
            }
        }
    }

    [Fact]
    public async Task A_grounded_aircraft_has_a_card_that_says_so_first()
    {
        var number = await hangar.Squawk(School.Reported);

        var text = await Print(number);

        Assert.Contains("Not to be flown now", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_point_on_a_card_lies_inside_the_airframes_speeds()
    {
        var (airframe, tests) = (Airframe, (string[])["test-point:release-wheel@75kt,flap10", "test-point:hold-level@95kt,power40", "test-point:release-wheel@95kt,last-input-left-and-right", "ground-check:flap-difference", "measure:fuel-and-seats"]);

        var points = tests.Select(test => CardPoint.Of(test, airframe)).OfType<CardPoint>().ToList();

        Assert.Equal(
            [(Manoeuvre.ReleaseWheel, 75.0, 10.0, airframe.Reference.PowerPercent, false), (Manoeuvre.HoldLevel, 95, 0, 40, false), (Manoeuvre.ReleaseWheel, 95, 0, airframe.Reference.PowerPercent, true)],
            points.Select(point => (point.Manoeuvre, point.CasKt, point.FlapDeg, point.PowerPercent, point.BothSides)));
    }

    [Fact]
    public async Task Times_from_both_sides_come_back_in_the_evaluation_flights_own_form()
    {
        var number = await hangar.Squawk(School.Checked);
        using var pilot = await hangar.As(School.Pilot);
        var card = await pilot.Open($"/squawks/{number}/card");
        var point = card.Document.QuerySelectorAll("[data-point]").First(part => part.QuerySelector("[data-watch]") is not null).GetAttribute("data-point");
        Dictionary<string, string> read = new() { ["air"] = "light", ["oatC"] = "12" };
        foreach (var (side, seconds) in ((string, string[])[])[("left", ["5,0", "5.2", "4.8"]), ("right", ["6", "6", "6"])])
            for (var i = 1; i <= Card.Repeats; i++)
                (read[$"c{point}.{side}{i}.s"], read[$"c{point}.{side}{i}.deg"], read[$"c{point}.{side}{i}.wing"]) = (seconds[i - 1], "15", "left");

        var sent = await pilot.Submit(card, read);
        var flight = await pilot.Open($"/squawks/{number}/flight");

        Assert.StartsWith($"/squawks/{number}/flight", sent.Location, StringComparison.Ordinal);
        string? Value(string name) => flight.Document.QuerySelector($"[name='{name}']") is { } field ? field.GetAttribute("value") ?? field.QuerySelector("option[selected]")?.GetAttribute("value") ?? field.TextContent : null;
        Assert.Equal(("5", "15", "left", "left", "light", "12"), (Value("p1.bankSeconds"), Value("p1.bankDeg"), Value("p1.bankSide"), Value("p1.lastInput"), Value("p1.air"), Value("p1.oatC")));
        Assert.Equal(("6", "15", "left", "right"), (Value("p2.bankSeconds"), Value("p2.bankDeg"), Value("p2.bankSide"), Value("p2.lastInput")));
        Assert.Contains("5.2", Value("remarks"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_readings_of_a_check_flight_come_back_in_its_own_form()
    {
        var number = await hangar.Squawk(School.Approved);
        using var pilot = await hangar.As(School.Pilot);
        var card = await pilot.Open($"/squawks/{number}/card");

        var sent = await pilot.Submit(card, new()
        {
            ["second"] = "true",
            ["air"] = "smooth",
            ["c1.left1.s"] = "10",
            ["c1.left1.deg"] = "3",
            ["c1.left1.wing"] = "right",
            ["c1.right1.s"] = "10",
            ["c1.right1.wing"] = "level",
            ["c4.ball"] = "0.5",
            ["c4.ballSide"] = "left",
        });
        var flight = await pilot.Open($"/squawks/{number}/check-flight");

        Assert.StartsWith($"/squawks/{number}/check-flight", sent.Location, StringComparison.Ordinal);
        string? Value(string name) => flight.Document.QuerySelector($"[name='{name}'][checked]")?.GetAttribute("value") ?? flight.Document.QuerySelector($"[name='{name}']")?.GetAttribute("value");
        Assert.Equal(("10", "1.5", "right", "95"), (Value("release1.seconds"), Value("release1.bankDeg"), Value("release1.side"), Value("release1.casKt")));
        Assert.Equal(("0.5", "left", "smooth", "second"), (Value("held.widths"), Value("held.side"), Value("air"), Value("crew")));
    }

    [Fact]
    public async Task What_cannot_be_read_on_the_card_stands_beside_its_box_and_nothing_is_lost()
    {
        var number = await hangar.Squawk(School.Approved);
        using var pilot = await hangar.As(School.Pilot);

        var page = await pilot.Submit(await pilot.Open($"/squawks/{number}/card"), new() { ["c1.left1.s"] = "soon", ["c1.left2.s"] = "9", ["c1.left2.deg"] = "15" });

        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("“soon” is not a number", page.Text, StringComparison.Ordinal);
        Assert.Contains("which wing went down", page.Text, StringComparison.Ordinal);
        Assert.Equal("soon", page.Document.QuerySelector("[name='c1.left1.s']")?.GetAttribute("value"));
    }
}
