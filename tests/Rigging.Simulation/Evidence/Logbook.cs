using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Motion;

namespace Rigging.Simulation.Evidence;

/// <summary>One number as it was written down, with what it takes to predict it for another aeroplane.</summary>
public sealed record Written(TestPoint Point, Quantity Quantity, double Value, double Deviation);

/// <summary>What a pilot brings home from one aeroplane: test points of the contract's form.</summary>
public sealed class Logbook(Aeroplane aeroplane, Pilot pilot, Chance chance)
{
    readonly JsonArray points = [];
    readonly List<Written> written = [];

    public JsonArray Points => points;

    public IReadOnlyList<Written> Written => written;

    /// <summary>What it will do, so that a pilot stops a manoeuvre in time.</summary>
    public double Expects(TestPoint point, Quantity quantity) => Instruments.Shows(aeroplane, point, quantity)!.Value;

    /// <summary>Flies the point and writes the quantities down; one that never shows is left out, a point without any is not recorded.</summary>
    public void Fly(TestPoint point, params IEnumerable<Quantity> quantities)
    {
        JsonNode?[] readings = [.. quantities.Select(quantity => Read(point, quantity)).OfType<JsonObject>()];
        if (readings.Length > 0)
            points.Add(Form(point, new(readings)));
    }

    /// <summary>A report in words: which way it rolls when let go, and how fast it feels; a person's feeling is good to a fifth.</summary>
    public void Describe(TestPoint point)
    {
        var rate = Instruments.Shows(aeroplane, point, new("roll-rate"))!.Value * Math.Exp(0.2 * chance.Normal()) + 0.1 * chance.Normal();
        var strength = Math.Abs(rate) switch { < 0.5 => "barely", <= 3 => "slowly", _ => "briskly" };
        var reading = new JsonObject { ["kind"] = "rolls", ["side"] = Math.Abs(rate) < 0.15 ? "none" : rate < 0 ? "left" : "right" };
        if (Math.Abs(rate) >= 0.15)
            reading["strength"] = strength;
        points.Add(Form(point, [reading]));
    }

    /// <summary>Widths; a ball that lies there is no reading.</summary>
    const double EndOfTube = 3;

    JsonObject? Read(TestPoint point, Quantity quantity)
    {
        if (Instruments.Shows(aeroplane, point, quantity) is not { } truth)
            return null;
        var honesty = pilot.Of(quantity.Kind);
        var turbulence = Honesty.Turbulence(point.Air);
        var value = honesty.Read(truth, turbulence, chance);
        if (quantity.Kind == "time-to-bank" && value <= 0 || quantity.Kind == "ball" && Math.Abs(value) > EndOfTube)
            return null;
        written.Add(new(point, quantity, value, Spread(quantity, value, honesty.WithRounding(truth, turbulence))));
        var reading = new JsonObject { ["kind"] = quantity.Kind };
        switch (quantity.Kind)
        {
            case "bank-after" or "heading-change":
                (reading["seconds"], reading["deg"]) = (quantity.Argument, value);
                break;
            case "time-to-bank":
                (reading["deg"], reading["seconds"]) = (quantity.Argument, value);
                break;
            default:
                reading[UnitOf(quantity.Kind)] = value;
                break;
        }
        reading["method"] = pilot.Method(quantity.Kind);
        if (!Pilot.HasDefault(quantity.Kind))
            reading["sd"] = honesty.Deviation(truth) * turbulence;
        return reading;
    }

    // A time to a bank is judged as the bank at that time, whose deviation is the time's times the roll rate.
    static double Spread(Quantity quantity, double value, double deviation) =>
        quantity.Kind == "time-to-bank" ? deviation * Math.Abs(quantity.Argument) / value : deviation;

    static string UnitOf(string kind) => kind switch
    {
        "ball" => "widths",
        "wheel-force" => "n",
        "wheel-angle" => "deg",
        "fuel-difference" => "l",
        _ => "degPerS",
    };

    static JsonObject Form(TestPoint point, JsonArray readings)
    {
        var form = new JsonObject
        {
            ["manoeuvre"] = point.Manoeuvre,
            ["casKt"] = point.CasKt,
            ["pressureAltitudeFt"] = point.PressureAltitudeFt,
            ["oatC"] = Math.Round(point.OatC, 1),
            ["powerPercent"] = Math.Round(point.Power * 100),
            ["flapDeg"] = 0,
            ["load"] = point.Load.Json,
            ["air"] = point.Air,
        };
        if (point.LastInput != 0)
            form["lastInput"] = point.LastInput < 0 ? "left" : "right";
        if (point.Repeat is { } repeat)
            form["repeat"] = repeat;
        form["readings"] = readings;
        return form;
    }
}
