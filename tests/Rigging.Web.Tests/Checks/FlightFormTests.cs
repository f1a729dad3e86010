using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Web.Checks;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Checks;

public class FlightFormTests
{
    static readonly Airframe St2 = ContractReader.ReadAirframe(Api.ApiSite.Airframe).Value!;

    static TypedFields Typical(params (string Name, string Value)[] also)
    {
        var fields = TypedFields.Read(null);
        foreach (var (name, value) in new[]
        {
            ("flownOn", "2026-03-02"), ("seat.left", "77"), ("seat.right", "77"), ("p1.manoeuvre", "release-wheel"), ("p1.casKt", "95"), ("p1.pressureAltitudeFt", "3000"),
            ("p1.fuel.left", "25"), ("p1.fuel.right", "24"), ("p1.bankDeg", "6"), ("p1.bankSide", "left"), ("p1.bankSeconds", "10"),
        }.Concat(also)) fields[name] = value;
        return fields;
    }

    static JsonArray Points(FlightForm form)
    {
        Assert.True(form.Typed.Ok, string.Join("; ", form.Typed.Errors));
        var points = JsonNode.Parse(form.Fact.TestPoints)!.AsArray();
        var request = new JsonObject { ["airframe"] = JsonNode.Parse(Api.ApiSite.Airframe), ["testPoints"] = points.DeepClone() };
        Assert.Empty(ContractReader.ReadRequest(request.ToJsonString()).Faults);
        return points;
    }

    [Fact]
    public void What_was_read_becomes_a_test_point_with_signs_from_words()
    {
        var point = Assert.Single(Points(FlightForm.Read(Typical(("p1.ball", "0.5"), ("p1.ballSide", "right"), ("p1.air", "light")), St2)))!;

        Assert.True(JsonNode.DeepEquals(JsonNode.Parse("""
            { "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000, "air": "light",
              "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 24 } },
              "readings": [ { "kind": "bank-after", "seconds": 10, "deg": -6, "method": "stopwatch-horizon" }, { "kind": "ball", "widths": 0.5, "method": "eye" } ] }
            """), point), point.ToJsonString());
    }

    [Fact]
    public void A_later_point_without_fuel_was_flown_with_that_of_the_first()
    {
        var points = Points(FlightForm.Read(Typical(("p2.manoeuvre", "hold-level"), ("p2.casKt", "95"), ("p2.pressureAltitudeFt", "3000"), ("p2.headingSide", "none"), ("p2.wheelDeg", "4"), ("p2.wheelSide", "right")), St2));

        Assert.Equal(2, points.Count);
        Assert.True(JsonNode.DeepEquals(points[0]!["load"], points[1]!["load"]));
        Assert.Equal(0, points[1]!["readings"]![0]!["degPerS"]!.GetValue<double>());
        Assert.Equal(4, points[1]!["readings"]![1]!["deg"]!.GetValue<double>());
    }

    [Fact]
    public void Gallons_and_pounds_become_litres_and_kilograms()
    {
        var load = Points(FlightForm.Read(Typical(("fuelUnit", "gal"), ("seatUnit", "lb"), ("p1.fuel.left", "10"), ("p1.fuel.right", "5"), ("seat.left", "170"), ("seat.right", "")), St2))[0]!["load"]!;

        Assert.Equal(37.85, load["fuelL"]!["left"]!.GetValue<double>());
        Assert.Equal(77.11, load["seatsKg"]!["left"]!.GetValue<double>());
        Assert.Null(load["seatsKg"]!["right"]);
    }

    [Fact]
    public void Fuel_burnt_until_it_flew_level_is_the_reading_itself()
    {
        var point = Points(FlightForm.Read(Typical(("p1.manoeuvre", "balance-fuel"), ("p1.bankDeg", ""), ("p1.bankSide", ""), ("p1.bankSeconds", ""), ("p1.fuel.left", "12"), ("p1.fuel.right", "25")), St2))[0]!;

        Assert.Equal("fuel-difference", point["readings"]![0]!["kind"]!.GetValue<string>());
        Assert.Equal(13, point["readings"]![0]!["l"]!.GetValue<double>());
    }

    [Theory]
    [InlineData("p1.casKt", "fast", "p1.casKt")]
    [InlineData("p1.casKt", "", "p1.casKt")]
    [InlineData("p1.manoeuvre", "", "p1.manoeuvre")]
    [InlineData("p1.bankSide", "", "p1.bankSide")]
    [InlineData("p1.bankDeg", "-6", "p1.bankDeg")]
    [InlineData("p1.bankDeg", "", "p1.bankDeg")]
    [InlineData("p1.bankSeconds", "", "p1.bankSeconds")]
    [InlineData("p1.fuel.right", "", "p1.fuel.right")]
    [InlineData("seat.left", "heavy", "seat.left")]
    [InlineData("flownOn", "yesterday", "flownOn")]
    public void What_cannot_be_read_is_named_once_at_its_field(string field, string value, string at)
    {
        var form = FlightForm.Read(Typical((field, value), ("p2.manoeuvre", "release-wheel"), ("p2.casKt", "75"), ("p2.pressureAltitudeFt", "3000"), ("p2.ballSide", "none")), St2);

        Assert.Equal([at], form.Typed.Errors.Select(error => error.Field));
    }

    [Fact]
    public void A_rules_refusal_finds_the_field_even_of_a_hyphenated_seat()
    {
        var st4 = ContractReader.ReadAirframe(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "airframes", "st4.json"))).Value!;
        var form = FlightForm.Read(Typical(), st4);

        var error = form.AtItsField(new("test-points-unreadable", "testPoints[0].load.seatsKg['front-left']: 400 given; wanted a number from 0 to 300 kg.", "testPoints[0].load.seatsKg['front-left']"));

        Assert.Equal("seat.front-left", error.Name);
        Assert.Equal("Seat front-left: 400 given; wanted a number from 0 to 300 kg.", error.Message);
        var bank = form.AtItsField(new("test-points-unreadable", "testPoints[0].readings[0].deg: 400 given; wanted a number from -180 to 180 °.", "testPoints[0].readings[0].deg"));
        Assert.Equal(("p1.bankDeg", "Point 1, bank: 400 given; wanted a number from -180 to 180 °."), (bank.Name, bank.Message));
    }
}
