using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Checks;

/// <summary>An evaluation flight as typed, to the entry it makes: a date, who sat where, and its test points.</summary>
sealed partial class FlightForm
{
    public const int MostPoints = 8;

    static readonly JsonSerializerOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    readonly TypedFields fields;
    readonly Airframe airframe;
    readonly Dictionary<string, (string Field, string Name)> places = [];

    FlightForm(TypedFields fields, Airframe airframe) => (this.fields, this.airframe) = (fields, airframe);

    public Typed Typed { get; } = new();

    public EvaluationFlown Fact { get; private set; } = null!;

    public static FlightForm Read(TypedFields fields, Airframe airframe)
    {
        var form = new FlightForm(fields, airframe);
        form.Fact = new(form.Typed.Date(fields["flownOn"], "flownOn", Texts.FlownOn), form.Points().ToJsonString(Plain), fields.Text("remarks"), TrimForm.Read(fields, form.Typed));
        return form;
    }

    /// <summary>The name of a point's field.</summary>
    public static string At(int point, string field) => $"p{point}.{field}";

    public static string SeatField(string seat) => $"seat.{seat}";

    public static string BaggageField(string compartment) => $"baggage.{compartment}";

    /// <summary>A refusal at the field it is about, named as the form names it.</summary>
    public FieldError AtItsField(BrokenRule rule)
    {
        if (rule.Field is not { } given) return new("", rule.Sentence);
        var path = QuotedName().Replace(given, ".$1");
        // The longest known path: a fault inside a reading belongs to the reading.
        var place = places.Where(known => path == known.Key || path.StartsWith(known.Key + ".", StringComparison.Ordinal)).OrderByDescending(known => known.Key.Length).FirstOrDefault();
        if (place.Value.Field is null) return new(path == "testPoints" ? "" : path, rule.Sentence);
        return new(place.Value.Field, rule.Sentence.StartsWith(given + ": ", StringComparison.Ordinal) ? $"{place.Value.Name}: {rule.Sentence[(given.Length + 2)..]}" : rule.Sentence);
    }

    JsonArray Points()
    {
        JsonArray points = [];
        for (var number = 1; number <= MostPoints; number++)
            if (number == 1 || IsUsed(number)) points.Add(Point(number, $"testPoints[{points.Count}]"));
        return points;
    }

    public bool IsUsed(int number) => PointFields.Any(field => fields.Text(At(number, field)) is not null) || airframe.Tanks.Any(tank => fields.Text(At(number, $"fuel.{tank.Name}")) is not null);

    public static bool IsUsed(TypedFields fields, Airframe airframe, int number) => new FlightForm(fields, airframe).IsUsed(number);

    static readonly string[] PointFields =
        ["manoeuvre", "casKt", "pressureAltitudeFt", "oatC", "powerPercent", "flapDeg", "air", "bankDeg", "bankSide", "bankSeconds", "ball", "ballSide", "headingRate", "headingSide", "wheelDeg", "wheelSide", "lastInput"];

    JsonObject Point(int number, string path)
    {
        var point = new JsonObject { ["manoeuvre"] = Manoeuvre(number) };
        Put(point, path, number, "casKt", Say.Airspeed, "kt", needed: true);
        Put(point, path, number, "pressureAltitudeFt", Say.Altitude, "ft", needed: true);
        Put(point, path, number, "oatC", Say.OutsideAirTemperature, "°C", needed: false);
        Put(point, path, number, "powerPercent", Say.Power, "%", needed: false);
        Put(point, path, number, "flapDeg", Say.FlapInText, Say.Degrees, needed: false);
        if (fields.Text(At(number, "air")) is { } air) point["air"] = air;
        if (fields.Text(At(number, "lastInput")) is { } last) point["lastInput"] = last;
        point["load"] = new JsonObject
        {
            ["seatsKg"] = Weights("seatsKg", airframe.Seats.Select(seat => (seat.Name, SeatField(seat.Name), Gaps.Fill(Say.Seat, seat.Name))), path),
            ["fuelL"] = Fuel(number, path),
        };
        if (airframe.Baggage is { Count: > 0 } baggage)
            point["load"]!["baggageKg"] = Weights("baggageKg", baggage.Select(place => (place.Name, BaggageField(place.Name), Gaps.Fill(Say.Baggage, place.Name))), path);
        point["readings"] = Readings(number, path);
        return point;
    }

    string Manoeuvre(int number)
    {
        if (fields[At(number, "manoeuvre")] is { } word && Wire.TryRead<Manoeuvre>(word, out _)) return word;
        Typed.Wrong("not-a-choice", Gaps.Fill(Say.PointManoeuvreNothingChosen, number), At(number, "manoeuvre"));
        return "";
    }

    void Put(JsonObject point, string path, int number, string field, string name, string unit, bool needed)
    {
        var (at, label) = (At(number, field), Gaps.Fill(Say.PointAndWhat, number, name));
        places[$"{path}.{field}"] = (at, label);
        if (needed) point[field] = Typed.Needed(fields[at], at, label, unit);
        else if (Typed.Number(fields[at], at, label, unit) is { } value) point[field] = value;
    }

    JsonObject Weights(string kind, IEnumerable<(string Name, string Field, string Label)> carried, string path)
    {
        JsonObject weights = [];
        var inPounds = fields["seatUnit"] == "lb";
        foreach (var (name, field, label) in carried)
        {
            // Read for every point, complained of once.
            var typed = places.Values.Any(place => place.Field == field) ? new Typed() : Typed;
            places[$"{path}.load.{kind}.{name}"] = (field, label);
            if (typed.Number(fields[field], field, label, inPounds ? "lb" : "kg") is { } weight and not 0) weights[name] = Math.Round(weight * (inPounds ? ByDefinition.KilogramsPerPound : 1), 2);
        }
        return weights;
    }

    JsonObject Fuel(int number, string path)
    {
        JsonObject fuel = [];
        var inGallons = fields["fuelUnit"] == "gal";
        // A later point with no fuel typed was flown with that of the first.
        var from = number > 1 && airframe.Tanks.All(tank => fields.Text(At(number, $"fuel.{tank.Name}")) is null) ? 1 : number;
        foreach (var tank in airframe.Tanks)
        {
            var field = At(from, $"fuel.{tank.Name}");
            var name = Gaps.Fill(Say.PointFuel, from, tank.Name);
            places[$"{path}.load.fuelL.{tank.Name}"] = (field, name);
            var typed = from == number ? Typed : new Typed();
            fuel[tank.Name] = Math.Round(typed.Needed(fields[field], field, name, inGallons ? Say.USGallons : Say.Litres) * (inGallons ? ByDefinition.LitresPerUsGallon : 1), 2);
        }
        return fuel;
    }

    JsonArray Readings(int number, string path)
    {
        JsonArray readings = [];
        void Add(string kind, string field, string name, Action<JsonObject> values)
        {
            places[$"{path}.readings[{readings.Count}]"] = (At(number, field), Gaps.Fill(Say.PointAndWhat, number, name));
            var reading = new JsonObject { ["kind"] = kind };
            values(reading);
            readings.Add(reading);
        }

        if (Sided(number, "bankDeg", "bankSide", Say.BankInText, Say.Degrees) is { } bank)
        {
            var seconds = Typed.Needed(fields[At(number, "bankSeconds")], At(number, "bankSeconds"), Gaps.Fill(Say.PointBankAfter, number), Say.Seconds);
            Add("bank-after", "bankDeg", Say.BankInText, reading => (reading["seconds"], reading["deg"], reading["method"]) = (seconds, bank, fields.Text(At(number, "bankMethod")) ?? "stopwatch-horizon"));
            places[$"{path}.readings[{readings.Count - 1}].seconds"] = (At(number, "bankSeconds"), Gaps.Fill(Say.PointBankAfter, number));
        }
        else if (fields.Text(At(number, "bankSeconds")) is not null && Typed.Ok)
            Typed.Wrong("value-missing", Gaps.Fill(Say.PointBankTimeIsGiven, number), At(number, "bankDeg"));
        if (Sided(number, "ball", "ballSide", Say.Ball, Say.BallWidths) is { } ball)
            Add("ball", "ball", Say.Ball, reading => (reading["widths"], reading["method"]) = (ball, "eye"));
        if (Sided(number, "headingRate", "headingSide", Say.HeadingRate, Say.DegreesPerSecond) is { } rate)
            Add("heading-rate", "headingRate", Say.HeadingRate, reading => (reading["degPerS"], reading["method"]) = (rate, "stopwatch-compass"));
        if (Sided(number, "wheelDeg", "wheelSide", Say.Wheel, Say.Degrees) is { } wheel)
            Add("wheel-angle", "wheelDeg", Say.Wheel, reading => (reading["deg"], reading["method"]) = (wheel, "eye"));
        // Burnt until it flew level: the fuel that was left is the reading.
        if (fields[At(number, "manoeuvre")] == Wire.Word(Mechanics.Contract.Manoeuvre.BalanceFuel))
            Add("fuel-difference", $"fuel.{airframe.Tanks[0].Name}", Say.Fuel, reading => (reading["l"], reading["method"]) = (Math.Round(Difference(number), 2), "eye"));
        if (readings.Count == 0 && !Typed.Errors.Any(error => error.Field?.StartsWith($"p{number}.", StringComparison.Ordinal) == true))
            Typed.Wrong("value-missing", Gaps.Fill(Say.PointNothingWasReadWanted, number), At(number, "bankDeg"));
        return readings;
    }

    /// <summary>Litres, right minus left.</summary>
    double Difference(int number) => airframe.Tanks.Sum(tank =>
        Math.Sign(tank.ArmM) * (new Typed().Number(fields[At(number, $"fuel.{tank.Name}")], "", "") ?? 0)) * (fields["fuelUnit"] == "gal" ? ByDefinition.LitresPerUsGallon : 1);

    /// <summary>A size and its side, right positive; null when nothing was read, or when it was no reading (then there is an error).</summary>
    double? Sided(int number, string sizeField, string sideField, string name, string unit)
    {
        var (at, label, side) = (At(number, sizeField), Gaps.Fill(Say.PointAndWhat, number, name), fields.Text(At(number, sideField)));
        var size = Typed.Number(fields[at], at, label, unit);
        switch (size, side)
        {
            case (null, null):
                return null;
            case (null, "none"):
                return 0;
            case (null, _):
                if (fields.Text(at) is null) Typed.Wrong("value-missing", Gaps.Fill(Say.SideIsChosenAndNoSize, label, unit), at);
                return null;
            case ( < 0, _):
                Typed.Wrong("size-with-sign", Gaps.Fill(Say.HasSignGiveSize, label, fields[at]), at);
                return null;
            case (0, _):
                return 0;
            case (_, "left" or "right"):
                return side == "right" ? size : -size;
            default:
                Typed.Wrong("side-missing", Gaps.Fill(Say.GivenNotToWhichSide, label, fields[at]), At(number, sideField));
                return null;
        }
    }

    public static IReadOnlyList<Choice> Manoeuvres =>
    [
        .. Enum.GetValues<Manoeuvre>().Select(manoeuvre => manoeuvre switch
        {
            Mechanics.Contract.Manoeuvre.ReleaseAll => Choose(manoeuvre, Say.LetGoOfEverything, Say.TrimmedAndLevelHandsAndFeet),
            Mechanics.Contract.Manoeuvre.ReleaseWheel => Choose(manoeuvre, Say.LetGoOfWheelHold, Say.WingsLevelBallCentred),
            Mechanics.Contract.Manoeuvre.HoldNeutral => Choose(manoeuvre, Say.HoldWheelAtItsMarkHold, Say.SameButHoldWheel),
            Mechanics.Contract.Manoeuvre.HoldLevel => Choose(manoeuvre, Say.HoldWingsLevelFeetOff, Say.ReadWhereBallLies),
            Mechanics.Contract.Manoeuvre.HoldStraight => Choose(manoeuvre, Say.HoldWingsLevelAndBall, Say.HandsAndFeetBothHolding),
            _ => Choose(manoeuvre, Say.BurnFuelUntilItFlies, Say.BallCentredOneTank),
        }),
    ];

    static Choice Choose(Manoeuvre manoeuvre, string words, string help) => new(Wire.Word(manoeuvre), words, help);

    /// <summary>A JSON path quotes a name such as front-left.</summary>
    [GeneratedRegex(@"\['([^']*)'\]")]
    private static partial Regex QuotedName();
}
