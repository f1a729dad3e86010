using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Desk;

public sealed class FractionsTests
{
    [Theory]
    [InlineData("12.5", 12.5), InlineData("12,5", 12.5), InlineData("−3", -3), InlineData("3/64", 0.046875), InlineData("1 3/8", 1.375), InlineData("1⅜", 1.375), InlineData("½", 0.5), InlineData("-1 1/2", -1.5)]
    public void A_number_is_read_as_a_workshop_writes_it(string typed, double value) => Assert.Equal(value, Fractions.Read(typed));

    [Theory, InlineData("3/0"), InlineData("1 5/4"), InlineData("a/b"), InlineData("1.5 1/2"), InlineData("1/2 3"), InlineData("NaN"), InlineData("")]
    public void What_is_no_number_is_none(string typed) => Assert.Null(Fractions.Read(typed));

    [Theory, InlineData(0.046875, "3/64"), InlineData(1.375, "1 3/8"), InlineData(2, "2"), InlineData(-0.5, "−1/2"), InlineData(0, "0"), InlineData(-0.001, "0")]
    public void A_number_is_written_to_the_nearest_sixty_fourth(double value, string written) => Assert.Equal(written, Fractions.Of(value));
}
