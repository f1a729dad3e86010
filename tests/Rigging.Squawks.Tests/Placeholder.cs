namespace Rigging.Squawks.Tests;

public sealed class Placeholder
{
    [Fact]
    public void Builds() => Assert.True(true);
}
