using Rigging.Mechanics.Adjusters;

namespace Rigging.Mechanics.Tests.Adjusters;

public sealed class FlatsInWordsTests
{
    [Theory]
    [InlineData(0, "0 flats")]
    [InlineData(0.125, "⅛ flat")]
    [InlineData(0.25, "¼ flat")]
    [InlineData(0.5, "½ flat")]
    [InlineData(0.5000001, "½ flat")]
    [InlineData(0.75, "¾ flat")]
    [InlineData(0.43, "0.43 flat")]
    [InlineData(1, "1 flat")]
    [InlineData(1.5, "1½ flats")]
    [InlineData(2, "2 flats")]
    [InlineData(2.1, "2.1 flats")]
    public void Flats_are_said_as_people_say_them(double flats, string words) => Assert.Equal(words, FlatsInWords.Of(flats));

    [Theory]
    [InlineData(-0.5)]
    [InlineData(double.NaN)]
    public void A_negative_turn_has_no_words(double flats) => Assert.Throws<ArgumentOutOfRangeException>(() => FlatsInWords.Of(flats));
}
