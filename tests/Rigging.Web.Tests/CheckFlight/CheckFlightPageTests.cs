using System.Net;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.CheckFlight;

[Collection(InTheHangar.Name)]
public sealed class CheckFlightPageTests(Hangar hangar)
{
    static Dictionary<string, string> Log(params (string Field, string Value)[] also)
    {
        (string Field, string Value)[] flight =
        [
            ("readWhatWasDisturbed", "true"), ("controlsCheckedBeforeFlight", "true"), ("flownOn", "2026-03-02"), ("durationH", "0.8"), ("crew", "second"), ("secondCrewDuty", "times and writes down the readings"), ("passengers", "0"), ("students", "0"),
            ("fuelMethod", "Dip"), ("fuelUnit", "L"), ("fuel-left", "25"), ("fuel-right", "25"), ("seatUnit", "kg"), ("seat-left", "77"), ("seat-right", "77"),
            ("pressureAltitudeFt", "3000"), ("powerPercent", "65"), ("air", "smooth"), ("method", "stopwatch-horizon"), ("release1.casKt", "95"), ("release1.seconds", "10"), ("release1.side", "level"),
            ("stallsFlown", "yes"), ("everyFlapSetting", "yes"), ("remarks", "Straight."), ("satisfactory", "yes"),
        ];
        return flight.Concat(also).ToDictionary(field => field.Field, field => field.Value);
    }

    async Task<(int Squawk, Page Sign)> Logged(Browser pilot, params (string Field, string Value)[] also)
    {
        var squawk = await hangar.Squawk(School.Approved);
        var answer = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/check-flight"), Log(also));
        Assert.Equal(HttpStatusCode.Redirect, answer.Status);
        return (squawk, await pilot.Follow(answer));
    }

    [Fact]
    public async Task How_the_trims_stood_is_signed_with_the_flight_and_a_verdict_on_a_held_one_is_not_enough_evidence()
    {
        using var pilot = await hangar.As(School.Pilot);

        var (squawk, sign) = await Logged(pilot, ("rollTrim", "RightWingDown"), ("autopilot", "Off"));
        Assert.Contains("Trims and autopilot: roll trim off neutral, right wing down; autopilot off.", sign.Text, StringComparison.Ordinal);
        await pilot.Submit(sign, new() { ["Form.Password"] = TestSite.Password });

        Assert.Equal(new(RollTrim.RightWingDown, null, FlownAutopilot.Off), Assert.IsType<CheckFlown>((await hangar.Ledger(squawk)).Entries[^1].Fact).Trims);
        using var mechanic = await hangar.As(School.Mechanic);
        var verdict = (await mechanic.Open($"/squawks/{squawk}/verdict")).Document.QuerySelector("main")!.TextContent;
        Assert.Contains("roll trim at “off neutral, right wing down”: that may roll it, or hide that it rolls. Fly it again with the trims at neutral and the autopilot off.", verdict, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_flight_without_it_is_logged_as_ever_and_what_is_no_choice_is_named_at_its_field()
    {
        using var pilot = await hangar.As(School.Pilot);

        var (squawk, sign) = await Logged(pilot);
        Assert.DoesNotContain("Trims and autopilot", sign.Text, StringComparison.Ordinal);

        var wrong = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/check-flight"), Log(("autopilot", "asleep")));
        Assert.Contains("Autopilot: “asleep” is not one of the choices", wrong.Document.QuerySelector("#autopilot-error")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_check_pilot_reads_the_readings_above_the_signature_and_no_hash()
    {
        using var pilot = await hangar.As(School.Pilot);

        var (_, sign) = await Logged(pilot);

        Assert.Contains("seats left 77\u202Fkg, right 77\u202Fkg, fuel left 25\u202FL, right 25\u202FL: wings level after 10\u202Fs (stopwatch and horizon).", sign.Document.QuerySelector("blockquote")!.TextContent, StringComparison.Ordinal);
        Assert.DoesNotContain("sha-256", sign.Document.QuerySelector("blockquote")!.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_seat_filled_on_a_flight_flown_alone_is_asked_about_at_the_crew()
    {
        using var pilot = await hangar.As(School.Pilot);
        var squawk = await hangar.Squawk(School.Approved);

        var answer = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/check-flight"), With(Log(), ("crew", "alone")));

        Assert.Contains("Flown alone, and 2 seats are filled (left, right)", answer.Document.QuerySelector("#crew-error")!.TextContent, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("release1.casKt", "180", "Airspeed: 180\u202Fkt given; wanted 46\u202Fkt, where it stalls, to 140\u202Fkt, which it never exceeds.")]
    [InlineData("release1.bankDeg", "75", "Bank: −75° given; wanted at most 60° either way.")]
    [InlineData("fuel-right", "400", "400 given; wanted at most the tank's 42 L.")]
    public async Task A_reading_beyond_the_aircraft_is_refused_at_its_field(string field, string value, string says)
    {
        using var pilot = await hangar.As(School.Pilot);
        var squawk = await hangar.Squawk(School.Approved);

        var answer = await pilot.Submit(await pilot.Open($"/squawks/{squawk}/check-flight"), With(With(With(Log(), ("release1.side", "left")), ("release1.bankDeg", "5")), (field, value)));

        Assert.Contains(says, answer.Document.QuerySelector($"#{field.Replace('.', '-').ToLowerInvariant()}-error")!.TextContent, StringComparison.Ordinal);
    }

    static Dictionary<string, string> With(Dictionary<string, string> fields, (string Field, string Value) other) => new(fields) { [other.Field] = other.Value };

    [Fact]
    public async Task The_certifier_is_not_asked_whether_the_work_changed_how_it_flies()
    {
        using var certifier = await hangar.As(School.Certifier);
        var squawk = await hangar.Squawk(School.Inspected);

        var page = await certifier.Open($"/squawks/{squawk}/approval");

        Assert.Empty(page.Document.QuerySelectorAll("main form input[type=radio], main form textarea"));
        var sign = await certifier.Follow(await certifier.Submit(page, []));
        Assert.Contains("This work may have changed how the aircraft flies.", sign.Text, StringComparison.Ordinal);
    }
}
