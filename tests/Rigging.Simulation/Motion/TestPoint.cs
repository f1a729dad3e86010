using System.Text.Json.Nodes;

namespace Rigging.Simulation.Motion;

/// <summary>Fuel in litres per tank and people in kilograms per seat, by the airframe file's names.</summary>
public sealed record Load(IReadOnlyDictionary<string, double> SeatsKg, IReadOnlyDictionary<string, double> FuelL)
{
    public const double KgPerLitre = 0.72;

    public static Load Of(JsonObject json) => new(Values(json["seatsKg"]), Values(json["fuelL"]));

    public JsonObject Json => new() { ["seatsKg"] = Object(SeatsKg), ["fuelL"] = Object(FuelL) };

    static Dictionary<string, double> Values(JsonNode? node) => node?.AsObject().ToDictionary(x => x.Key, x => (double)x.Value!) ?? [];

    static JsonObject Object(IReadOnlyDictionary<string, double> values) => new(values.Select(x => KeyValuePair.Create(x.Key, (JsonNode?)x.Value)));
}

/// <summary>One manoeuvre at one speed, power and load. Power is a fraction of full power; last input −1 left, 1 right, 0 not said.</summary>
public sealed record TestPoint(string Manoeuvre, double CasKt, double PressureAltitudeFt, double OatC, double Power, Load Load)
{
    public const string ReleaseAll = "release-all";
    public const string ReleaseWheel = "release-wheel";
    public const string HoldNeutral = "hold-neutral";
    public const string HoldLevel = "hold-level";
    public const string HoldStraight = "hold-straight";
    public const string BalanceFuel = "balance-fuel";

    public string Air { get; init; } = "smooth";

    public int LastInput { get; init; }

    public int? Repeat { get; init; }
}

/// <summary>What was read: the contract's kind, with its time or angle argument where it has one.</summary>
public sealed record Quantity(string Kind, double Argument = 0);
