namespace Rigging.Storage.Tests.Faults;

/// <summary>How often: few in every run, ten times as many in a long one (<c>./test.sh --long</c>).</summary>
static class Rounds
{
    public const string Variable = "RIGGING_LONG";

    public static int Of(int ordinary) => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } ? ordinary * 10 : ordinary;
}
