namespace Rigging.Quality;

/// <summary>The first round of simulated aeroplanes, with fixed seeds, held against what is wanted.</summary>
public class QualityTests
{
    static readonly Lazy<Quality> First = new(() => Quality.OfRounds(0, 1));

    public static TheoryData<string> Wanted => [.. Threshold.All.Select(threshold => threshold.What)];

    [Fact]
    public void At_least_three_hundred_aeroplanes_are_judged() => Assert.InRange(First.Value.Count, 300, int.MaxValue);

    [Theory, MemberData(nameof(Wanted))]
    public void What_is_wanted_of_the_assessment(string what)
    {
        var threshold = Threshold.All.Single(one => one.What == what);

        Assert.True(threshold.Holds(First.Value), $"{what}: wanted {threshold.Wanted}, reached {threshold.Reached(First.Value)}");
    }

    [Fact]
    public void A_judge_that_is_told_nothing_right_would_say_so()
    {
        var damaged = new Quality([.. First.Value.All.Where(one => one.Scenario.Is("damage"))]);

        Assert.DoesNotContain(damaged.All, one => one.TurnsAnEccentric);
        Assert.False(Threshold.All.Single(one => one.What == "highest probability from words alone").Holds(new([.. First.Value.All.Select(one => one).Where(one => one.HighestProbability > 0.8)])));
    }
}
