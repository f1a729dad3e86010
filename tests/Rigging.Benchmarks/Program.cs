using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Rigging.Benchmarks;

/// <summary>Prints the ratios against their goals, then the full measurements; with <c>--paired</c> the ratios alone.</summary>
static class Program
{
    static void Main(string[] args)
    {
        var (wing, release, assessment) = (new WingSetUp(), new ReleaseResponse(), new FullAssessment());
        PairedRatio.Print("wing set-up and all responses", 1.5, () => wing.BareFactorAndSolve(), () => wing.SetUpAndAllResponses());
        PairedRatio.Print("release-all to 20 s", 3, () => release.BareExponentialInPlainLoops(), () => release.ReleaseAll());
        PairedRatio.Print("the same, library exponential", 3, () => release.BareExponentialWithTheLibrary(), () => release.ReleaseAll());
        PairedRatio.Print("full assessment", 3, () => assessment.BareLinearAlgebra(), () => assessment.Assessment());
        if (args.Contains("--paired"))
            return;

        BenchmarkRunner.Run(typeof(Program).Assembly, ManualConfig.CreateEmpty()
            .AddJob(Job.ShortRun.WithIterationCount(15).WithToolchain(InProcessEmitToolchain.Instance))
            .AddDiagnoser(MemoryDiagnoser.Default)
            .AddColumnProvider(DefaultColumnProviders.Instance)
            .AddLogger(ConsoleLogger.Default)
            .WithOptions(ConfigOptions.DisableLogFile));
    }
}
