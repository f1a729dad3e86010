namespace Rigging.Quality;

/// <summary>The first rounds of those the report counts, with fixed seeds, held against what is wanted.</summary>
public class QualityTests
{
    /// <summary>A quarter of the report's, for a share of some two hundred wings that are out and of a hundred of the rarer causes.</summary>
    public const int Rounds = 6;

    static readonly Lazy<Quality> Counted = new(() => Quality.OfRounds(Report.Looked, Rounds));

    public static TheoryData<string> Wanted => [.. Threshold.All.Select(threshold => threshold.What)];

    [Fact]
    public void At_least_three_hundred_aeroplanes_are_judged() => Assert.InRange(Counted.Value.Count, 300, int.MaxValue);

    [Theory, MemberData(nameof(Wanted))]
    public void What_is_wanted_of_the_assessment(string what)
    {
        var threshold = Threshold.All.Single(one => one.What == what);

        Assert.True(threshold.Holds(Counted.Value), $"{what}: wanted {threshold.Wanted}, reached {threshold.Reached(Counted.Value)}");
    }

    [Fact]
    public void A_judge_that_is_told_nothing_right_would_say_so()
    {
        var damaged = new Quality([.. Counted.Value.All.Where(one => one.Scenario.Is("damage"))]);

        Assert.DoesNotContain(damaged.All, one => one.TurnsAnEccentric);
        Assert.False(Threshold.All.Single(one => one.What == "highest probability from words alone").Holds(new([.. Counted.Value.All.Where(one => one.HighestProbability > 0.8)])));
    }
}
