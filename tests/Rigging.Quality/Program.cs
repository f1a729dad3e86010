using Rigging.Quality;

return args switch
{
    ["report", "by-geometry"] => Report.WriteByGeometry(),
    ["report", .. var rest] => Report.Write(rest is [var rounds] ? int.Parse(rounds, System.Globalization.CultureInfo.InvariantCulture) : Report.Rounds),
    _ when args.Any(arg => arg is "--server" or "--internal-msbuild-node") =>
        await Xunit.MicrosoftTestingPlatform.TestPlatformTestFramework.RunAsync(args, SelfRegisteredExtensions.AddSelfRegisteredExtensions),
    _ => await Xunit.Runner.InProc.SystemConsole.ConsoleRunner.Run(args),
};
