using ArchUnitNET.Fluent;
using ArchUnitNET.Loader;
using static ArchUnitNET.Fluent.ArchRuleDefinition;

namespace Rigging.Web.Tests.Architecture;

/// <summary>The loaded house, with the test assembly in it so that planted violations can be caught.</summary>
static class House
{
    public static readonly ArchUnitNET.Domain.Architecture Loaded = new ArchLoader().LoadAssemblies(
        typeof(Rigging.Mechanics.Contract.Airframe).Assembly,
        typeof(Rigging.Squawks.Rules.Squawk).Assembly,
        typeof(Rigging.Storage.RiggingDb).Assembly,
        typeof(Program).Assembly,
        typeof(House).Assembly).Build();

    /// <summary>Types in a namespace use nothing whose full name matches. Referenced types outside the house count: a rule without them sleeps.</summary>
    public static IArchRule Uses(string from, string nothingMatching) =>
        Types().That().ResideInNamespaceMatching(from).Should().NotDependOnAny(Types(includeReferenced: true).That().HaveFullNameMatching(nothingMatching));

    public static bool Holds(IArchRule rule) => rule.HasNoViolations(Loaded);

    public static bool HasTypesIn(string space) => Types().That().ResideInNamespaceMatching(space).GetObjects(Loaded).Any();
}
