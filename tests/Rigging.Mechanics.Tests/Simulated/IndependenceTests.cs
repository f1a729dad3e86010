using Rigging.Simulation;

namespace Rigging.Mechanics.Tests.Simulated;

/// <summary>A generator that leaned on what it is to judge would agree with it for the wrong reason.</summary>
public class IndependenceTests
{
    static IEnumerable<string?> HouseUsedBy(Type type) =>
        type.Assembly.GetReferencedAssemblies().Select(used => used.Name).Where(name => name!.StartsWith("Rigging.", StringComparison.Ordinal));

    [Fact]
    public void The_generator_uses_nothing_of_the_house() => Assert.Empty(HouseUsedBy(typeof(Scenarios)));

    [Fact]
    public void That_rule_would_see_this_very_test() => Assert.NotEmpty(HouseUsedBy(typeof(IndependenceTests)));
}
