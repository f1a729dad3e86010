using System.Reflection;
using CsCheck;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

public class DirectionsTests
{
    [Fact]
    public void A_side_is_said_in_words_and_never_by_a_sign()
    {
        Assert.Equal("6° left wing down", Directions.Bank(-6));
        Assert.Equal("6° right wing down", Directions.Bank(6));
        Assert.Equal("0.5\u202Fwidth right of centre", Directions.Ball(0.5));
        Assert.Equal("2\u202Fwidths left of centre", Directions.Ball(-2));
        Assert.Equal("15° trailing edge up", Directions.TrailingEdge(-15));
        Assert.Equal("2° trailing edge left", Directions.RudderTrailingEdge(2));
        Assert.Equal("left flap 0.1° lower", Directions.Difference(-0.1, "flap", "lower"));
        Assert.Equal("0.12\u202F°/s left wing down", Directions.RollRate(-0.12));
    }

    [Fact]
    public void What_rounds_to_nothing_has_no_side()
    {
        Assert.Equal("wings level", Directions.Bank(-0.001));
        Assert.Equal("centred", Directions.Ball(0));
        Assert.Equal("both flaps alike", Directions.Difference(0.004, "flap", "lower"));
    }

    /// <summary>"No roll" is less than a hundredth of a degree a second; nobody notices a twentieth.</summary>
    [Fact]
    public void No_roll_is_said_only_of_what_nobody_notices_and_a_side_only_of_what_goes_there() =>
        Gen.Select(Gen.Double[-4, 15], Gen.Bool, (power, left) => (left ? -1 : 1) * Math.Pow(10, power)).Sample(degPerS =>
        {
            var said = Directions.RollRate(degPerS);
            Assert.Equal(Math.Abs(degPerS) < 0.005, said == "no roll");
            Assert.True(said == "no roll" || said.EndsWith(degPerS < 0 ? "left wing down" : "right wing down", StringComparison.Ordinal));
        });

    [Fact]
    public void What_no_reading_could_be_has_no_number_of_its_own()
    {
        Assert.Equal("90\u202F°/s left wing down", Directions.RollRate(-90));
        Assert.Equal("more than 90\u202F°/s left wing down", Directions.RollRate(-58967231732224));
        Assert.Equal("more than 90\u202F°/s right wing down", Directions.RollRate(double.PositiveInfinity));
        Assert.Equal("not known", Directions.RollRate(double.NaN));
        Assert.Equal("more than 3\u202Fwidths right of centre", Directions.Ball(400));
        Assert.Equal("left panel more than 45° more incidence", Directions.Difference(-1e4, "panel", "more incidence"));
        Assert.Equal("not known", Directions.Difference(double.NaN, "panel", "more incidence"));
        Assert.Equal("2\u202F°/s left wing down, nine times in ten between 1 and more than 90\u202F°/s", Directions.Expected(-2, -400, -1));
    }

    /// <summary>Every choice a ledger can hold has words, and no two of one kind the same.</summary>
    [Fact]
    public void Every_value_has_its_own_words()
    {
        var kinds = typeof(Words).GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Where(method => method.Name == nameof(Words.Of) && method.GetParameters() is [{ ParameterType.IsEnum: true }]).ToList();

        Assert.True(kinds.Count >= 20);
        foreach (var kind in kinds)
        {
            var said = kind.GetParameters()[0].ParameterType.GetEnumValues().Cast<object>().Select(value => (string)kind.Invoke(null, [value])!).ToList();
            Assert.DoesNotContain("", said);
            Assert.Distinct(said);
        }
    }
}
