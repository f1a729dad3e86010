using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Adjusters;

public sealed class FoundSettingTests
{
    [Theory]
    [InlineData(-15, -15, -15)]
    [InlineData(10, 12, 11)]
    [InlineData(179, -179, 180)]
    public void Bushings_that_agree_give_one_angle(double front, double rear, double angle) =>
        Assert.Equal(0, Math.IEEERemainder(FoundSetting.From(Side.Left, new(front, rear)).Value!.Angle.Degrees - angle, 360), 1e-12);

    [Theory]
    [InlineData(-15, 15)]
    [InlineData(0, 3.5)]
    [InlineData(0, 180)]
    [InlineData(double.NaN, 0)]
    public void Bushings_that_disagree_stop_the_job(double front, double rear)
    {
        var refused = FoundSetting.From(Side.Right, new(front, rear));

        var refusal = Assert.Single(refused.Refusals);
        Assert.Equal("bushings-disagree", refusal.Code);
        Assert.StartsWith("The right wing's front bushing stands at ", refusal.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(20, 22, 21.0)]
    [InlineData(20, 40, null)]
    public void A_request_says_how_an_eccentric_stands_by_the_same_measure(double front, double rear, double? stands) =>
        Assert.Equal(stands, (Reports.Example with { Settings = new(new(front, rear), null) }).StandsAt(AdjustableControl.LeftEccentric));

    [Theory]
    [InlineData(90, false)]
    [InlineData(-90, false)]
    [InlineData(91, true)]
    [InlineData(-135, true)]
    public void Past_a_quarter_turn_is_accepted_as_found_and_flagged(double deg, bool past) =>
        Assert.Equal(past, FoundSetting.From(Side.Left, new(deg)).Value!.PastQuarterTurn);
}
