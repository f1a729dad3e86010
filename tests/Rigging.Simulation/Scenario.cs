using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Evidence;

namespace Rigging.Simulation;

/// <summary>What is so about one simulated aeroplane. Degrees, °/s, right wing down positive.</summary>
public sealed record Truth(
    IReadOnlyDictionary<string, double> Amplitudes,
    IReadOnlyList<string> Present,
    double RollTendencyDegPerS,
    double IdealPanelMoveDeg,
    double SensitivityDegPerSPerPanelDeg,
    bool Identifiable,
    IncidenceMove? Warranted);

/// <summary>
/// The incidence move that would cure it: the change of panel difference (right minus left, degrees), half a flat in the same measure,
/// and the wing to move first (left, right, or null where either is right: no eccentric stands off neutral in the way of the cure).
/// </summary>
public sealed record IncidenceMove(double PanelChangeDeg, double HalfFlatDeg, string? Wing);

/// <summary>One simulated aeroplane: the request as the contract has it, and the truth that the request does not tell.</summary>
public sealed class Scenario(string name, int seed, IReadOnlyList<string> kinds, JsonObject request, Truth truth, Aeroplane aeroplane)
{
    public string Name { get; } = name;

    public int Seed { get; } = seed;

    /// <summary>Tags: full, no-survey, flight-only, two-point, vague; single, pair, none; gauges, misaligned-ball, misindexed-wheel, damage, old-compensation.</summary>
    public IReadOnlyList<string> Kinds { get; } = kinds;

    public JsonObject Request => request.DeepClone().AsObject();

    public Truth Truth { get; } = truth;

    public Aeroplane Aeroplane { get; } = aeroplane;

    public bool Is(string kind) => Kinds.Contains(kind);

    /// <summary>True tendency (°/s) once the moves of an answer are made on the true aeroplane.</summary>
    public double TendencyAfter(JsonNode? moves) => Remedy.Applied(Aeroplane, moves).TendencyDegPerS;

    /// <summary>
    /// The check flight once the moves are made, on another day and by any of the pilots: let go at three speeds, the tanks dipped anew. The ground
    /// checks stand, but for the panels, which were moved.
    /// </summary>
    public JsonObject CheckFlight(JsonNode? moves)
    {
        var chance = new Chance(Seed + 1_000_000);
        var moved = Remedy.Applied(Aeroplane, moves);
        var campaign = new Campaign(moved.With(moved.Faults.With(Faults.Fuel, 1.5 * chance.Normal())), Pilot.Any(chance), chance);
        campaign.Make("check-flight", lookForDamage: false);
        var told = Request;
        return new()
        {
            ["airframe"] = told["airframe"]!.DeepClone(),
            ["testPoints"] = campaign.Log.Points,
            ["groundChecks"] = new JsonArray([.. told["groundChecks"]!.AsArray().Where(check => (string)check!["kind"]! != Faults.Panel).Select(check => check!.DeepClone())]),
        };
    }

    /// <summary>
    /// Everything that was told before the moves of eccentrics, with what they did by the airframe's file beside it, and the check flight after them as
    /// one body of evidence.
    /// </summary>
    /// <param name="flight">Of <see cref="CheckFlight"/>.</param>
    public JsonObject Afterwards(JsonNode? moves, JsonObject flight)
    {
        var filed = Remedy.Applied(new(Aeroplane.File, Departures.None, Faults.None), moves).Faults[Faults.Panel];
        var told = Request;
        foreach (var point in told["testPoints"]!.AsArray())
            point!["movedSince"] = new JsonArray(new JsonObject { ["cause"] = Faults.Panel, ["amplitude"] = filed });
        foreach (var survey in told["groundChecks"]!.AsArray().Where(check => (string)check!["kind"]! == Faults.Panel))
            survey!["deg"] = (double)survey["deg"]! + filed;
        foreach (var point in flight["testPoints"]!.AsArray())
            told["testPoints"]!.AsArray().Add(point!.DeepClone());
        return told;
    }

    /// <summary>True change of panel difference (right minus left, degrees) that the moves make.</summary>
    public double PanelChangeDeg(JsonNode? moves) => Remedy.Applied(Aeroplane, moves).Faults[Faults.Panel] - Aeroplane.Faults[Faults.Panel];

    public override string ToString() => $"{Name} (seed {Seed})";
}
