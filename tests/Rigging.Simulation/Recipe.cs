using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation;

/// <summary>What a scenario is about: how much evidence, what is wrong, and what makes it awkward.</summary>
public sealed record Recipe(string Evidence, params IReadOnlyList<string> Causes)
{
    public IReadOnlyList<string> Awkward { get; init; } = [];

    /// <summary>The cause is plain to see: drawn from the upper part of its range.</summary>
    public bool Plain { get; init; }

    static readonly string[] Singles = [.. Faults.Proportional];

    static readonly string[][] Pairs =
    [
        [Faults.Panel, Faults.Fuel], [Faults.Panel, Faults.Rudder], [Faults.Float, Faults.Neutral], [Faults.Panel, Faults.Flap], [Faults.Tip, Faults.Contour],
        [Faults.Rudder, Faults.Slipstream], [Faults.Rudder, Faults.Ball], [Faults.Panel, Faults.Float], [Faults.Panel, Faults.Tip], [Faults.Rudder, Faults.Flap],
    ];

    /// <summary>One round of the catalogue, for one airframe.</summary>
    public static IReadOnlyList<Recipe> Round { get; } =
    [
        .. Singles.SelectMany(cause => Twice(new("full", cause))),
        .. Singles.Select(cause => new Recipe("full", cause) { Plain = true }),
        .. Repeated(8, new("full", Faults.Panel)),
        .. Repeated(10, new Recipe("full", Faults.Panel) { Plain = true }),
        .. Singles.Select(cause => new Recipe("no-survey", cause)),
        .. Singles.Select(cause => new Recipe("flight-only", cause)),
        .. Singles.Select(cause => new Recipe("two-point", cause)),
        .. Singles.Select(cause => new Recipe("vague", cause)),
        .. Pairs.Select(pair => new Recipe("full", pair)),
        .. Repeated(2, new Recipe("full", Faults.Friction)), new("flight-only", Faults.Friction),
        .. Repeated(2, new Recipe("full", Faults.Damage) { Awkward = ["found"] }), .. Repeated(2, new Recipe("no-survey", Faults.Damage) { Awkward = ["unlooked"] }),
        new("full", Faults.Panel) { Awkward = ["gauges"] }, new("full", Faults.Rudder) { Awkward = ["gauges"] }, new("full") { Awkward = ["gauges"] },
        new("full", Faults.Panel) { Awkward = ["misaligned-ball"] }, new("full", Faults.Float) { Awkward = ["misaligned-ball"] },
        new("full", Faults.Panel) { Awkward = ["misindexed-wheel"] }, new("full", Faults.Flap) { Awkward = ["misindexed-wheel"] },
        .. Repeated(2, new Recipe("full") { Awkward = ["old-compensation"] }), new("full", Faults.Flap) { Awkward = ["old-compensation"] },
        .. Repeated(3, new("full")), new("no-survey"), new("two-point"), new("vague"),
    ];

    static IEnumerable<Recipe> Twice(Recipe recipe) => Repeated(2, recipe);

    static IEnumerable<Recipe> Repeated(int times, Recipe recipe) => Enumerable.Repeat(recipe, times);
}
