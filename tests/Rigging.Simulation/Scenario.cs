using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;

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

    /// <summary>True change of panel difference (right minus left, degrees) that the moves make.</summary>
    public double PanelChangeDeg(JsonNode? moves) => Remedy.Applied(Aeroplane, moves).Faults[Faults.Panel] - Aeroplane.Faults[Faults.Panel];

    public override string ToString() => $"{Name} (seed {Seed})";
}
