using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;
using Rigging.Simulation.Evidence;
using Rigging.Simulation.Motion;

namespace Rigging.Simulation;

/// <summary>Simulated aeroplanes with known truth: the same ones every time, built when asked for.</summary>
public static class Scenarios
{
    static readonly Lazy<IReadOnlyList<Scenario>> Whole = new(() => [.. Of(Round)]);

    /// <summary>How many one round of the catalogue is, each airframe taking its turn.</summary>
    public static int Round => Recipe.Round.Count * AirframeFile.All.Count;

    /// <summary>One round of the catalogue on each airframe.</summary>
    public static IReadOnlyList<Scenario> All => Whole.Value;

    /// <summary>As many as wanted: rounds of the catalogue, airframe by airframe, each with its own seed.</summary>
    public static IEnumerable<Scenario> Of(int count) => Of(AirframeFile.All, count, 20_000);

    /// <summary>The same of aeroplanes of which only the geometry is on file: others, each with its own seed.</summary>
    public static IEnumerable<Scenario> ByGeometry(int count) => Of(AirframeFile.ByGeometry, count, 3_000_000);

    static IEnumerable<Scenario> Of(IReadOnlyList<AirframeFile> airframes, int count, int seed) => Enumerable.Range(0, count).Select(i =>
        Build(airframes[i % airframes.Count], Recipe.Round[i / airframes.Count % Recipe.Round.Count], seed + i));

    static Scenario Build(AirframeFile file, Recipe recipe, int seed)
    {
        var chance = new Chance(seed);
        var present = recipe.Causes.ToList();
        var faults = recipe.Causes.Aggregate(Faults.None, (all, cause) => all.With(cause, Ranges.Draw(cause, recipe.Plain, chance)));
        void Also(string cause, double amplitude)
        {
            faults = faults.With(cause, amplitude);
            present.Add(cause);
        }
        if (recipe.Awkward.Contains("gauges"))
            Also(Faults.Fuel, chance.Sign() * chance.Between(6, 16));
        if (recipe.Awkward.Contains("misaligned-ball"))
            Also(Faults.Ball, chance.Sign() * chance.Between(0.15, 0.5));
        if (recipe.Awkward.Contains("misindexed-wheel"))
            Also(Faults.Neutral, chance.Sign() * chance.Between(0.1, 0.3));
        // Tanks that were dipped are still only good to a litre or so.
        if (!present.Contains(Faults.Fuel))
            faults = faults.With(Faults.Fuel, 1.5 * chance.Normal());

        var aeroplane = new Aeroplane(file, Flyable(file, chance), faults);
        var settings = Settings(recipe, aeroplane, chance);
        var campaign = new Campaign(aeroplane, Pilot.Any(chance), chance);
        campaign.Make(recipe.Evidence, lookForDamage: !recipe.Awkward.Contains("unlooked"));
        var (events, before) = History.Of(recipe, chance);
        var request = new JsonObject
        {
            ["airframe"] = file.Filed,
            ["settings"] = new JsonObject { ["leftEccentricDeg"] = settings.Left, ["rightEccentricDeg"] = settings.Right },
            ["straightBefore"] = before,
            ["events"] = new JsonArray([.. events.Select(x => (JsonNode?)x)]),
            ["testPoints"] = campaign.Log.Points,
            ["groundChecks"] = campaign.Bench.Checks,
        };
        var name = $"{file.Id} {recipe.Evidence} {(present.Count == 0 ? "nothing wrong" : string.Join(" and ", present))}";
        IReadOnlyList<string> kinds = [recipe.Evidence, present.Count switch { 0 => "none", 1 => "single", _ => "pair" }, .. recipe.Awkward, .. present.Contains(Faults.Damage) ? ["damage"] : Array.Empty<string>()];
        return new(name, seed, kinds, request, Answer.Of(aeroplane, present, settings, campaign), aeroplane);
    }

    /// <summary>An aeroplane that no one would fly is drawn again: an undamped Dutch roll, or a spiral that doubles within ten seconds.</summary>
    static Departures Flyable(AirframeFile file, Chance chance)
    {
        while (true)
        {
            var drawn = file.Accuracies.Count == 0 ? Departures.Drawn(chance) : Departures.Drawn(chance, file.Accuracies);
            var aeroplane = new Aeroplane(file, drawn, Faults.None);
            var steady = Modes.Of(aeroplane).All(mode => mode.Real < (mode.Imaginary == 0 ? Math.Log(2) / 10 : -0.05));
            if (steady && (file.Accuracies.Count == 0 || IsSteered(aeroplane)))
                return drawn;
        }
    }

    /// <summary>Of the yaw that the rudder makes, so much is left at least once the sideslip that it takes to centre the ball has had its part.</summary>
    const double LeastSteering = 1.0 / 3;

    /// <summary>Feet can centre the ball: the rudder still turns the nose its way then. Nobody built an aeroplane on which it does not.</summary>
    static bool IsSteered(Aeroplane aeroplane)
    {
        var d = aeroplane.D;
        return 1 - d.CyRudder * d.CnBeta / (d.CyBeta * d.CnRudder) >= LeastSteering;
    }

    /// <summary>Present angles of the eccentrics, degrees. The panel difference of the truth is what the wings have with these.</summary>
    static (double Left, double Right) Settings(Recipe recipe, Aeroplane aeroplane, Chance chance)
    {
        if (recipe.Awkward.Contains("old-compensation"))
            return (chance.Pick(-30.0, -15, 15, 30), chance.Pick(-15.0, 0, 15));
        var panel = aeroplane.Faults[Faults.Panel];
        if (panel == 0 || chance.Once(0.6))
            return (0, 0);
        // The wing that was moved is the wing that is wrong.
        var angle = chance.Pick(15.0, 30);
        return chance.Once(0.5) ? (-Math.Sign(panel) * angle, 0) : (0, Math.Sign(panel) * angle);
    }
}
