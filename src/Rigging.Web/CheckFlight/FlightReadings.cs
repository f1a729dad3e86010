using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using UnitsNet;

namespace Rigging.Web.CheckFlight;

/// <summary>The pilot's readings as typed, made into test points in the assessment's form: sides chosen in words become signs here and nowhere else.</summary>
sealed class FlightReadings(TypedFields fields, Typed typed, Airframe airframe)
{
    /// <summary>Rows for letting go of the wheel at different speeds.</summary>
    public static readonly IReadOnlyList<string> Releases = ["release1", "release2", "release3"];

    public const string Held = "held";

    public static readonly IReadOnlyList<Choice> BankSides = [new("left", "Left wing went down"), new("level", "It stayed level"), new("right", "Right wing went down")];

    public static readonly IReadOnlyList<Choice> BallSides = [new("left", "Left of centre"), new("centre", "In the centre"), new("right", "Right of centre")];

    public static string FuelField(Tank tank) => $"fuel-{tank.Name}";

    public static string SeatField(Seat seat) => $"seat-{seat.Name}";

    static readonly string[] RowFields = ["casKt", "seconds", "bankDeg", "widths", "side"];

    /// <summary>Whether anything was entered in a row.</summary>
    bool Given(string row) => RowFields.Any(field => fields.Text($"{row}.{field}") is not null);

    /// <summary>The rows that were given, in the order of their test points.</summary>
    public IReadOnlyList<string> Rows => [.. Releases.Append(Held).Where(Given)];

    /// <summary>A JSON array; empty when nothing was read.</summary>
    public string ToJson()
    {
        if (Rows.Count == 0) return "[]";
        var (altitude, oat, power) = (typed.Needed(fields["pressureAltitudeFt"], "pressureAltitudeFt", "Altitude", "ft"), typed.Number(fields["oatC"], "oatC", "Outside air", "°C"), typed.Needed(fields["powerPercent"], "powerPercent", "Power", "%"));
        var air = fields["air"] is "smooth" or "light" or "moderate" ? fields["air"] : null;
        if (air is null) typed.Wrong("not-a-choice", "Air: nothing chosen. Choose one.", "air");
        var (fuel, seats) = (Fuel(), Seats());
        JsonObject Point(string row, string manoeuvre, JsonObject reading)
        {
            var point = new JsonObject
            {
                ["manoeuvre"] = manoeuvre,
                ["casKt"] = typed.Needed(fields[$"{row}.casKt"], $"{row}.casKt", "Airspeed", "kt"),
                ["pressureAltitudeFt"] = altitude,
                ["powerPercent"] = power,
                ["flapDeg"] = 0,
                ["load"] = new JsonObject { ["seatsKg"] = seats.DeepClone(), ["fuelL"] = fuel.DeepClone() },
                ["air"] = air,
                ["readings"] = new JsonArray(reading),
            };
            if (oat is { } celsius) point["oatC"] = celsius;
            return point;
        }
        return new JsonArray([.. Rows.Select(row => (JsonNode)(row == Held ? Point(row, "hold-level", BallReading()) : Point(row, "release-wheel", BankReading(row))))]).ToJsonString();
    }

    JsonObject BankReading(string row)
    {
        var side = Side(row, "Which wing went down");
        var bank = side == "level" ? typed.Number(fields[$"{row}.bankDeg"], $"{row}.bankDeg", "Bank", "degrees") ?? 0 : typed.Needed(fields[$"{row}.bankDeg"], $"{row}.bankDeg", "Bank", "degrees");
        if (bank < 0) typed.Wrong("value-out-of-range", $"Bank: “{fields[$"{row}.bankDeg"]}” has a sign. Wanted the degrees alone; the side is chosen beside it.", $"{row}.bankDeg");
        if (side == "level" && bank != 0) typed.Wrong("contradiction", $"Bank: {fields[$"{row}.bankDeg"]}° and “it stayed level” cannot both be. Choose the side, or leave the degrees empty.", $"{row}.bankDeg");
        if (fields["method"] is not ("stopwatch-horizon" or "instrument" or "eye")) typed.Wrong("not-a-choice", "How it was read: nothing chosen. Choose one.", "method");
        return new()
        {
            ["kind"] = "bank-after",
            ["seconds"] = typed.Needed(fields[$"{row}.seconds"], $"{row}.seconds", "Time", "seconds"),
            ["deg"] = side == "left" ? -bank : bank,
            ["method"] = fields["method"],
        };
    }

    JsonObject BallReading()
    {
        var side = Side(Held, "Where the ball was");
        var widths = side == "centre" ? typed.Number(fields[$"{Held}.widths"], $"{Held}.widths", "Ball", "widths") ?? 0 : typed.Needed(fields[$"{Held}.widths"], $"{Held}.widths", "Ball", "widths");
        if (widths < 0) typed.Wrong("value-out-of-range", $"Ball: “{fields[$"{Held}.widths"]}” has a sign. Wanted the widths alone; the side is chosen beside it.", $"{Held}.widths");
        if (side == "centre" && widths != 0) typed.Wrong("contradiction", $"Ball: {fields[$"{Held}.widths"]} widths and “in the centre” cannot both be. Choose the side, or leave the widths empty.", $"{Held}.widths");
        return new() { ["kind"] = "ball", ["widths"] = side == "left" ? -widths : widths, ["method"] = "eye" };
    }

    string? Side(string row, string name)
    {
        var choices = row == Held ? BallSides : BankSides;
        if (choices.Any(choice => choice.Value == fields[$"{row}.side"])) return fields[$"{row}.side"];
        typed.Wrong("not-a-choice", $"{name}: nothing chosen. Choose one.", $"{row}.side");
        return null;
    }

    JsonObject Fuel()
    {
        if (fields["fuelUnit"] is not ("L" or "gal")) typed.Wrong("not-a-choice", "Fuel unit: nothing chosen. Choose one.", "fuelUnit");
        var fuel = new JsonObject();
        foreach (var tank in airframe.Tanks)
        {
            var amount = typed.Needed(fields[FuelField(tank)], FuelField(tank), $"Fuel {tank.Name}");
            fuel[tank.Name] = Round(fields["fuelUnit"] == "gal" ? Volume.FromUsGallons(amount).Liters : amount);
        }
        return fuel;
    }

    JsonObject Seats()
    {
        if (fields["seatUnit"] is not ("kg" or "lb")) typed.Wrong("not-a-choice", "Weight unit: nothing chosen. Choose one.", "seatUnit");
        var seats = new JsonObject();
        foreach (var seat in airframe.Seats)
            if (typed.Number(fields[SeatField(seat)], SeatField(seat), $"Seat {seat.Name}") is { } weight and not 0)
                seats[seat.Name] = Round(fields["seatUnit"] == "lb" ? Mass.FromPounds(weight).Kilograms : weight);
        if (seats.Count == 0 && typed.Ok) typed.Wrong("value-missing", "Seats: nobody is entered. Wanted the weight of each person aboard, the pilot at least.", airframe.Seats.Count > 0 ? SeatField(airframe.Seats[0]) : "");
        return seats;
    }

    /// <summary>The form's field that a fault in the test points speaks of.</summary>
    /// <param name="path">Such as <c>testPoints[0].load.fuelL.left</c>.</param>
    public string FieldOf(string path)
    {
        var parts = path.Split('.');
        var index = parts[0].IndexOf('[', StringComparison.Ordinal);
        var row = index > 0 && int.TryParse(parts[0][(index + 1)..].TrimEnd(']'), out var point) && point < Rows.Count ? Rows[point] : Releases[0];
        return parts.Length < 2 ? $"{row}.casKt" : parts[1] switch
        {
            "load" when parts is [_, _, "fuelL", var tank] => $"fuel-{tank}",
            "load" when parts is [_, _, "seatsKg", var seat] => $"seat-{seat}",
            "load" => airframe.Tanks.Count > 0 ? FuelField(airframe.Tanks[0]) : "",
            "readings" or "casKt" => $"{row}.{(parts[^1] == "deg" ? "bankDeg" : parts[^1])}",
            var shared => shared,
        };
    }

    static double Round(double value) => Math.Round(value, 2);
}
