using System.Globalization;
using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation;

/// <summary>
/// The moves of an answer, made on the true aeroplane. An eccentric goes from one angle to another with its true throw; a strut fork changes
/// its panel's incidence as stated. A rod, tab or neutral with angles moves by their difference; one without angles is a reset, and the
/// mechanic sets it right.
/// </summary>
public static class Remedy
{
    public static Aeroplane Applied(Aeroplane aeroplane, JsonNode? moves) =>
        aeroplane.With(moves?.AsArray().OfType<JsonObject>().Aggregate(aeroplane.Faults, (faults, move) => After(aeroplane, faults, move)) ?? aeroplane.Faults);

    static Faults After(Aeroplane aeroplane, Faults faults, JsonObject move)
    {
        var control = (string)move["control"]!;
        var right = control.StartsWith("right", StringComparison.Ordinal);
        var wing = right ? 1 : -1;
        var change = Number(move, "toDeg") - Number(move, "fromDeg") ?? Number(move, "changeDeg");
        var (tabOnRight, tabGain) = aeroplane.File.AileronTab;
        return control switch
        {
            "left-eccentric" or "right-eccentric" => faults.Plus(Faults.Panel, wing *
                (aeroplane.EccentricDeg(right, Number(move, "toDeg")!.Value) - aeroplane.EccentricDeg(right, Number(move, "fromDeg")!.Value))),
            "left-strut-fork" or "right-strut-fork" => faults.Plus(Faults.Panel, wing * (Number(move, "incidenceChangeDeg") ?? change ?? 0)),
            "left-flap-rod" or "right-flap-rod" => change is { } flap ? faults.Plus(Faults.Flap, wing * flap) : faults.With(Faults.Flap, 0),
            "aileron-neutral" => change is { } neutral ? faults.Plus(Faults.Neutral, neutral) : faults.With(Faults.Neutral, 0),
            // A tab drives its surface the other way; trailing edge down on the left rolls right, on the right rolls left.
            "aileron-tab" => change is { } tab ? faults.Plus(Faults.Float, (tabOnRight ? 1 : -1) * tabGain * tab) : faults,
            "rudder-tab" => change is { } tab ? faults.Plus(Faults.Rudder, -aeroplane.File.RudderTabGain * tab) : faults,
            _ => throw new ArgumentException($"No aeroplane has a {control}."),
        };
    }

    // Read as text: a number put into a node by hand may be whole, one that was parsed never is.
    static double? Number(JsonObject move, string name) =>
        move[name] is JsonValue value ? double.Parse(value.ToJsonString(), CultureInfo.InvariantCulture) : null;
}
