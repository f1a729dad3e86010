using System.Globalization;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

public class WordsTests
{
    /// <summary>Every enum that has words at all, found by its <c>Words.Of</c>.</summary>
    public static TheoryData<Type> Vocabularies =>
        [.. typeof(Words).GetMethods().Where(m => m.Name == nameof(Words.Of)).Select(m => m.GetParameters()[0].ParameterType)];

    static string Of(Type type, object value) => (string)typeof(Words).GetMethod(nameof(Words.Of), [type])!.Invoke(null, [value])!;

    [Theory, MemberData(nameof(Vocabularies))]
    public void Every_value_has_its_own_words(Type vocabulary)
    {
        var words = Enum.GetValues(vocabulary).Cast<object>().Select(value => Of(vocabulary, value)).ToArray();

        Assert.All(words, word => Assert.Matches(@"^[a-z][a-z, -]*[a-z]$", word));
        Assert.Equal(words.Length, words.Distinct().Count());
    }

    [Fact]
    public void Nothing_that_stands_in_an_entry_is_without_words()
    {
        // Written as its own column in a report, where the page words the whole question; the record never prints them.
        Type[] wordedByThePage = [typeof(RollStrength), typeof(Hands), typeof(Feet), typeof(FuelMethod), typeof(Side), typeof(TurnedPart), typeof(Lubrication)];
        var vocabularies = typeof(Words).GetMethods().Where(m => m.Name == nameof(Words.Of)).Select(m => m.GetParameters()[0].ParameterType);

        var enums = typeof(Fact).Assembly.GetTypes().Where(type => type.IsEnum && type.IsPublic && type.Namespace == typeof(Fact).Namespace);
        Assert.Empty(enums.Except(vocabularies).Except(wordedByThePage));
    }

    [Theory, InlineData(0, "0"), InlineData(-0.001, "0"), InlineData(-0.4, "−0.4"), InlineData(15, "15"), InlineData(1234.5, "1234.5"), InlineData(0.125, "0.12"), InlineData(-1e6, "−1000000")]
    public void Numbers_have_a_proper_minus_and_no_idle_zeros(double value, string words)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(words, Words.Number(value));
        }
        finally { CultureInfo.CurrentCulture = before; }
    }

    [Fact]
    public void Nothing_recorded_is_said_and_never_a_zero() => Assert.Equal("not recorded", Words.Degrees(null));

    [Theory]
    [InlineData(Control.AileronTab, 2, "aileron tab 2° trailing edge down")]
    [InlineData(Control.AileronTab, 0, "aileron tab straight")]
    [InlineData(Control.RudderTab, -1.5, "rudder tab 1.5° trailing edge right")]
    [InlineData(Control.LeftFlapRod, -1, "left flap rod 1 turn in from the length of the drawing")]
    [InlineData(Control.RightFlapRod, 0, "right flap rod at the length of the drawing")]
    [InlineData(Control.LeftStrutFork, 8.5, "left rear strut fork 8.5 turns out from fully in")]
    public void A_setting_is_said_in_words_and_without_a_sign(Control control, double value, string words) => Assert.Equal(words, Words.Setting(new(control, value)));
}
