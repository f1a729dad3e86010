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

    public static IReadOnlyList<Choice> BankSides => [new("left", Say.LeftWingWentDown), new("level", Say.ItStayedLevel), new("right", Say.RightWingWentDown)];

    public static IReadOnlyList<Choice> BallSides => [new("left", Say.LeftOfCentre), new("centre", Say.InCentre), new("right", Say.RightOfCentre)];

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
        var (altitude, oat, power) = (typed.Needed(fields["pressureAltitudeFt"], "pressureAltitudeFt", Texts.Altitude, "ft"), typed.Number(fields["oatC"], "oatC", Texts.OutsideAir, "°C"), typed.Needed(fields["powerPercent"], "powerPercent", Texts.Power, "%"));
        var air = fields["air"] is "smooth" or "light" or "moderate" ? fields["air"] : null;
        if (air is null) typed.Wrong("not-a-choice", Say.AirNothingChosenChooseOne, "air");
        var (fuel, seats) = (Fuel(), Seats());
        JsonObject Point(string row, string manoeuvre, JsonObject reading)
        {
            var point = new JsonObject
            {
                ["manoeuvre"] = manoeuvre,
                ["casKt"] = typed.Needed(fields[$"{row}.casKt"], $"{row}.casKt", Texts.Airspeed, "kt"),
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
        var side = Side(row, Say.WhichWingWentDown);
        var bank = side == "level" ? typed.Number(fields[$"{row}.bankDeg"], $"{row}.bankDeg", Say.Bank, Say.Degrees) ?? 0 : typed.Needed(fields[$"{row}.bankDeg"], $"{row}.bankDeg", Say.Bank, Say.Degrees);
        if (bank < 0) typed.Wrong("value-out-of-range", Gaps.Fill(Say.BankHasSignWanted, fields[$"{row}.bankDeg"]), $"{row}.bankDeg");
        if (side == "level" && bank != 0) typed.Wrong("contradiction", Gaps.Fill(Say.BankAndItStayedLevelCannot, fields[$"{row}.bankDeg"]), $"{row}.bankDeg");
        if (fields["method"] is not ("stopwatch-horizon" or "instrument" or "eye")) typed.Wrong("not-a-choice", Say.HowItWasReadNothingChosen, "method");
        return new()
        {
            ["kind"] = "bank-after",
            ["seconds"] = typed.Needed(fields[$"{row}.seconds"], $"{row}.seconds", Say.Time, Say.Seconds),
            ["deg"] = side == "left" ? -bank : bank,
            ["method"] = fields["method"],
        };
    }

    JsonObject BallReading()
    {
        var side = Side(Held, Say.WhereBallWas);
        var widths = side == "centre" ? typed.Number(fields[$"{Held}.widths"], $"{Held}.widths", Texts.Ball, Say.Widths) ?? 0 : typed.Needed(fields[$"{Held}.widths"], $"{Held}.widths", Texts.Ball, Say.Widths);
        if (widths < 0) typed.Wrong("value-out-of-range", Gaps.Fill(Say.BallHasSignWanted, fields[$"{Held}.widths"]), $"{Held}.widths");
        if (side == "centre" && widths != 0) typed.Wrong("contradiction", Gaps.Fill(Say.BallWidthsAndInCentreCannot, fields[$"{Held}.widths"]), $"{Held}.widths");
        return new() { ["kind"] = "ball", ["widths"] = side == "left" ? -widths : widths, ["method"] = "eye" };
    }

    string? Side(string row, string name)
    {
        var choices = row == Held ? BallSides : BankSides;
        if (choices.Any(choice => choice.Value == fields[$"{row}.side"])) return fields[$"{row}.side"];
        typed.Wrong("not-a-choice", Gaps.Fill(Say.NothingChosenChooseOne, name), $"{row}.side");
        return null;
    }

    JsonObject Fuel()
    {
        if (fields["fuelUnit"] is not ("L" or "gal")) typed.Wrong("not-a-choice", Say.FuelUnitNothingChosen, "fuelUnit");
        var fuel = new JsonObject();
        foreach (var tank in airframe.Tanks)
        {
            var amount = typed.Needed(fields[FuelField(tank)], FuelField(tank), Gaps.Fill(Say.Fuel, tank.Name));
            fuel[tank.Name] = Round(fields["fuelUnit"] == "gal" ? Volume.FromUsGallons(amount).Liters : amount);
        }
        return fuel;
    }

    JsonObject Seats()
    {
        if (fields["seatUnit"] is not ("kg" or "lb")) typed.Wrong("not-a-choice", Say.WeightUnitNothingChosen, "seatUnit");
        var seats = new JsonObject();
        foreach (var seat in airframe.Seats)
            if (typed.Number(fields[SeatField(seat)], SeatField(seat), Gaps.Fill(Say.Seat, seat.Name)) is { } weight and not 0)
                seats[seat.Name] = Round(fields["seatUnit"] == "lb" ? Mass.FromPounds(weight).Kilograms : weight);
        if (seats.Count == 0 && typed.Ok) typed.Wrong("value-missing", Say.SeatsNobodyIsEnteredWanted, airframe.Seats.Count > 0 ? SeatField(airframe.Seats[0]) : "");
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
            _ when parts[1] == "casKt" || parts[1].StartsWith("readings", StringComparison.Ordinal) => $"{row}.{(parts[^1] == "deg" ? "bankDeg" : parts[^1])}",
            var shared => shared,
        };
    }

    /// <summary>What the form calls the value at such a path; null where it has no word for it.</summary>
    public static string? NameOf(string path) => path.Split('.') switch
    {
        [_, "load", "fuelL", var tank] => Gaps.Fill(Say.Fuel, tank),
        [_, "load", "seatsKg", var seat] => Gaps.Fill(Say.Seat, seat),
        [_, "casKt"] => Texts.Airspeed,
        [_, "pressureAltitudeFt"] => Texts.Altitude,
        [_, "powerPercent"] => Texts.Power,
        [_, "oatC"] => Texts.OutsideAir,
        [.., "deg"] => Say.Bank,
        [.., "seconds"] => Say.Time,
        [.., "widths"] => Texts.Ball,
        _ => null,
    };

    static double Round(double value) => Math.Round(value, 2);
}
