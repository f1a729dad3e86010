using System.Text.Json.Nodes;
using Rigging.Simulation;
using Rigging.Simulation.Aeroplanes;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Simulated;

public class ScenarioTests
{
    [Fact]
    public void There_are_enough_of_them_over_every_cause_on_three_airframes()
    {
        Assert.True(Scenarios.All.Count >= 360);
        Assert.Equal(3, Scenarios.All.Select(scenario => scenario.Aeroplane.File.Id).Distinct().Count());
        string[] all = [.. Faults.Proportional, Faults.Friction, Faults.Damage];
        foreach (var cause in all)
            Assert.Contains(Scenarios.All, scenario => scenario.Truth.Present.SequenceEqual([cause]));
        foreach (var kind in new[] { "full", "no-survey", "flight-only", "two-point", "vague", "none", "pair", "gauges", "misaligned-ball", "misindexed-wheel", "damage", "old-compensation" })
            Assert.Contains(Scenarios.All, scenario => scenario.Is(kind));
    }

    [Fact]
    public void They_are_the_same_every_time()
    {
        var again = Scenarios.Of(40).ToArray();
        Assert.Equal(Scenarios.All.Take(40).Select(s => s.Request.ToJsonString()), again.Select(s => s.Request.ToJsonString()));
    }

    [Fact]
    public void More_of_them_are_others()
    {
        var round = Scenarios.All.Count;
        var next = Scenarios.Of(round + 1).Last();
        Assert.NotEqual(Scenarios.All[0].Request.ToJsonString(), next.Request.ToJsonString());
    }

    [Fact]
    public void Every_request_is_of_the_contract() =>
        Assert.All(Scenarios.All, scenario => Assert.Empty(ContractReader.ReadRequest(scenario.Request.ToJsonString()).Faults));

    [Fact]
    public void Undoing_the_whole_difference_leaves_nothing()
    {
        foreach (var scenario in Scenarios.All.Where(s => s.Truth.Present.SequenceEqual([Faults.Panel])).Take(10))
        {
            var half = scenario.Truth.IdealPanelMoveDeg / 2;
            JsonArray moves = [Fork("right", half), Fork("left", -half)];
            Assert.Equal(0, scenario.TendencyAfter(moves), 6);
        }

        static JsonObject Fork(string side, double change) => new() { ["control"] = side + "-strut-fork", ["incidenceChangeDeg"] = change };
    }

    [Fact]
    public void The_right_panel_turned_up_rolls_further_left()
    {
        var scenario = Scenarios.All[0];
        JsonArray moves = [new JsonObject { ["control"] = "right-eccentric", ["fromDeg"] = 0, ["toDeg"] = 30 }];
        Assert.True(scenario.TendencyAfter(moves) < scenario.Truth.RollTendencyDegPerS - 0.2);
    }
}
