using System.Text.Json.Nodes;
using Microsoft.Extensions.DependencyInjection;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Tests;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Fleet;

namespace Rigging.Web.Tests.Fleet;

[Collection(InTheHangar.Name)]
public class AirframePageTests(Hangar hangar)
{
    static Airframe Changed(Action<JsonObject> change)
    {
        var file = JsonNode.Parse(School.Airframe.Json)!.AsObject();
        change(file);
        var read = ContractReader.ReadAirframe(file.ToJsonString());
        return read.Value ?? throw new InvalidOperationException(string.Join("; ", read.Faults));
    }

    [Fact]
    public async Task The_wing_stands_there_by_two_theories_and_the_motions_by_name()
    {
        using var browser = await hangar.As(School.Mechanic);

        var page = await browser.Open($"/airframes/{School.Airframe.Id}/{School.Airframe.Version}");

        Assert.Contains("Damping in roll", page.Text, StringComparison.Ordinal);
        Assert.Contains("Lifting line", page.Text, StringComparison.Ordinal);
        Assert.Contains("Dutch roll", page.Text, StringComparison.Ordinal);
        Assert.Contains("solo left", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_not_on_record_is_said_to_be_missing()
    {
        using var browser = await hangar.As(School.Mechanic);

        Assert.Contains("There is no airframe file nowhere", (await browser.Open("/airframes/nowhere")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_file_leaves_out_is_listed_as_estimated_with_its_accuracy()
    {
        var sheet = AirframeSheet.Of(Changed(file =>
        {
            file["fin"] = new JsonObject { ["areaM2"] = 1.6, ["armM"] = 4.3, ["heightM"] = 0.7, ["liftSlopePerRad"] = 3.0 };
            file["derivatives"]!.AsObject().Remove("cnR");
        }), 1);

        var only = Assert.Single(sheet.Estimated);
        Assert.Contains("Damping in yaw", only.Figure, StringComparison.Ordinal);
        Assert.True(only.AccuracyPercent > 0);
    }

    /// <summary>Sideslip and rudder of one fin at one arm: the figures that once answered ten kilograms with no roll.</summary>
    [Fact]
    public void A_file_whose_figures_determine_no_flight_says_why_and_which_fields_and_answers_nothing_else()
    {
        var sheet = AirframeSheet.Of(Changed(file =>
        {
            var derivatives = file["derivatives"]!;
            (derivatives["cYBeta"], derivatives["cnBeta"], derivatives["cYRudder"], derivatives["cnRudder"]) = (-0.205, 0.0893, 0.155, -0.0675);
        }), 1);

        Assert.Contains("derivatives.cYBeta", Assert.Single(sheet.Refused), StringComparison.Ordinal);
        Assert.Empty(sheet.Currency);
        Assert.Empty(sheet.Loads);
        var coins = new Equivalents(new Aeroplane(sheet.Airframe));
        Assert.Null(coins.Of(1));
        Assert.Null(coins.Flats(1));
        Assert.Empty(coins.Says(new(1, 1, 1, "deg/s")));
    }

    [Fact]
    public void By_geometry_alone_each_seat_weighs_and_what_would_make_the_estimates_better_is_asked_for()
    {
        var sheet = AirframeSheet.Of(Changed(file =>
        {
            file["fin"] = new JsonObject { ["areaM2"] = 1.1, ["armM"] = 4.2, ["heightM"] = 0.6, ["liftSlopePerRad"] = 2.6 };
            file["rudder"]!["areaM2"] = 0.45;
            file.Remove("derivatives");
        }), 1);

        Assert.Empty(sheet.Refused);
        Assert.Contains(sheet.Currency, line => line.Contains("left", StringComparison.Ordinal) && line.Contains("0.2", StringComparison.Ordinal));
        Assert.Contains("wing.position", sheet.Missing[^3], StringComparison.Ordinal);
        Assert.Contains("fuselage", sheet.Missing[^2], StringComparison.Ordinal);
        Assert.Contains("propeller", sheet.Missing[^1], StringComparison.Ordinal);
        Assert.DoesNotContain(AirframeSheet.Of(Changed(_ => { }), 1).Missing, line => line.Contains("fuselage", StringComparison.Ordinal));
    }

    [Fact]
    public void An_unlikely_figure_is_named_by_its_place_in_the_file() =>
        Assert.Contains(AirframeSheet.Of(Changed(file => file["mass"]!["ixxKgM2"] = 85), 1).Warnings, warning => warning.Path == "$.mass.ixxKgM2");

    [Fact]
    public void What_is_not_on_file_says_what_it_refuses()
    {
        var sheet = AirframeSheet.Of(Changed(file => { file.Remove("eccentric"); file.Remove("limits"); }), 1);

        Assert.Contains(sheet.Missing, line => line.StartsWith("The eccentric", StringComparison.Ordinal));
        Assert.Contains(sheet.Missing, line => line.StartsWith("Limits", StringComparison.Ordinal));
    }

    /// <summary>A wing that drops to one side is held up by weight on the other, and the sentence says that this is what holds it up.</summary>
    [Theory, InlineData(-0.7, "right"), InlineData(0.7, "left")]
    public void A_heavy_wing_is_worth_fuel_and_people_on_the_other_side(double degPerS, string light)
    {
        var coins = new Equivalents(new Aeroplane(School.Airframe.Read()));

        var said = coins.Of(degPerS)!.Replace('\u202F', ' ').Replace('\u00A0', ' ');

        Assert.StartsWith("It would stay level with ", said, StringComparison.Ordinal);
        Assert.Matches($@"\d L \([\d.]+ US gal\) more in the {light} tank", said);
        Assert.Matches($@"kg more in the {light} seat \(\d+ % of a person\)", said);
        Assert.Null(coins.Of(0.01));
    }

    [Fact]
    public void Alone_in_the_left_seat_it_drops_the_left_wing() =>
        Assert.Contains(new Equivalents(new Aeroplane(School.Airframe.Read())).AtCommonLoads(0),
            load => load.Name == "solo left" && load.Feels.EndsWith("left wing down", StringComparison.Ordinal));

    [Fact]
    public async Task The_load_an_aircraft_is_rigged_for_is_chosen_with_a_reason_and_judged_at()
    {
        var number = await hangar.Squawk(School.Called);
        await using var db = hangar.Site.OpenDatabase();
        var aircraft = (await hangar.Ledger(number)).State.Report!.Aircraft;
        var registration = db.Aircraft.Single(row => row.Id == aircraft).Registration;
        using var browser = await hangar.As(School.Office);

        var chosen = await browser.Submit(await browser.Open("/aircraft"), new()
        {
            ["rigged.registration"] = registration,
            ["rigged.load"] = "solo left",
            ["rigged.reason"] = "Hired out solo.",
        }, "form:has([name='rigged.load'])");
        var page = await browser.Follow(chosen);

        Assert.Contains("Chosen by Olaf Office: Hired out solo.", page.Text, StringComparison.Ordinal);
        Assert.Contains($"solo left, {Squawks.Rules.Directions.RollRate(0)}", page.Text, StringComparison.Ordinal);
        var (_, facts) = (await hangar.Site.Services.GetRequiredService<LedgerStore>().Look((await hangar.Ledger(number)).Id, TestContext.Current.CancellationToken))!.Value;
        Assert.Equal(["left"], facts.Airframe!.Read().Reference.Load.SeatsKg.Keys);
    }

    [Fact]
    public async Task A_load_that_the_airframe_does_not_have_is_refused_by_name()
    {
        using var browser = await hangar.As(School.Office);
        await hangar.Squawk(School.Called);
        await using var db = hangar.Site.OpenDatabase();

        var refused = await browser.Submit(await browser.Open("/aircraft"), new()
        {
            ["rigged.registration"] = db.Aircraft.First().Registration,
            ["rigged.load"] = "on the wing",
            ["rigged.reason"] = "None.",
        }, "form:has([name='rigged.load'])");

        Assert.Contains("has no load called on the wing", refused.Text, StringComparison.Ordinal);
    }
}
