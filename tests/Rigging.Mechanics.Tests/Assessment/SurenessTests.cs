using Rigging.Mechanics.Assessment;

namespace Rigging.Mechanics.Tests.Assessment;

public class SurenessTests
{
    /// <summary>What is inferred is never certain and never ruled out.</summary>
    [Theory, InlineData(0.9999, 99), InlineData(0.984, 98), InlineData(0.5, 50), InlineData(0.004, 1), InlineData(0, 1), InlineData(1, 99)]
    public void A_probability_is_read_in_whole_per_cent_from_1_to_99(double probability, double percent) => Assert.Equal(percent, Sureness.Percent(probability));
}
