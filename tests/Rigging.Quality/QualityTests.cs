namespace Rigging.Quality;

/// <summary>The first rounds of those the report counts, with fixed seeds, held against what is wanted.</summary>
public class QualityTests
{
    /// <summary>A quarter of the report's, for a share of some two hundred wings that are out and of a hundred of the rarer causes.</summary>
    public const int Rounds = 6;

    /// <summary>Of those described by their geometry alone: a third of all.</summary>
    public const int RoundsByGeometry = 3;

    static readonly Lazy<Quality> CountedByGeometry = new(() => Quality.ByGeometry(Report.LookedByGeometry, RoundsByGeometry));

    public static TheoryData<string> WantedByGeometry => [.. Threshold.ByGeometry.Select(threshold => threshold.What)];

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

    [Theory, MemberData(nameof(WantedByGeometry))]
    public void What_is_wanted_where_only_the_geometry_is_on_file(string what)
    {
        var threshold = Threshold.ByGeometry.Single(one => one.What == what);

        Assert.True(threshold.Holds(CountedByGeometry.Value), $"{what}: wanted {threshold.Wanted}, reached {threshold.Reached(CountedByGeometry.Value)}");
    }

    [Fact]
    public void A_judge_that_is_told_nothing_right_would_say_so()
    {
        var damaged = new Quality([.. Counted.Value.All.Where(one => one.Scenario.Is("damage"))]);

        Assert.DoesNotContain(damaged.All, one => one.TurnsAnEccentric);
        Assert.False(Threshold.All.Single(one => one.What == "highest probability from words alone").Holds(new([.. Counted.Value.All.Where(one => one.HighestProbability > 0.8)])));
    }
}
