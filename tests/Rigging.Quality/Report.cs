using System.Globalization;
using System.Runtime.InteropServices;

namespace Rigging.Quality;

/// <summary>The tables of <c>docs/assessment-quality.md</c>, printed and written.</summary>
static class Report
{
    /// <summary>Rounds that were looked at while figures of experience and judgement were chosen, as were so many after those that are counted: they prove nothing any more.</summary>
    public const int Looked = 30;

    /// <summary>Enough for some eight hundred aeroplanes with each of the commoner causes.</summary>
    public const int Rounds = 24;

    public static int Write(int rounds)
    {
        var text = Of(Quality.OfRounds(Looked, rounds));
        Console.WriteLine(text);
        File.WriteAllText(Path.Combine(Root(), "docs", "assessment-quality.md"), text);
        return 0;
    }

    static string Of(Quality quality) => string.Create(CultureInfo.InvariantCulture, $"""
        # How good the assessment is

        Counted on {quality.Count} simulated aeroplanes, whose truth is known, on {TimeProvider.System.GetUtcNow():yyyy-MM-dd}, {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.ProcessArchitecture}. `dotnet run -c Release --project tests/Rigging.Quality -- report` counts anew, prints these tables and writes this file; the tests of `Rigging.Quality` assert them on the first {QualityTests.Rounds * Quality.Round} of these.

        Priors, spreads and the thresholds of credibility were chosen with rounds 1 to {Looked} and {Looked + Rounds + 1} to {Looked + Rounds + Looked} in sight. None of those is counted here: these are rounds {Looked + 1} to {Looked + Rounds}. What an earlier assessment reached on them was known, and four marks it had missed were worked on; the aeroplanes by which it had missed them were not looked at.

        The aeroplanes come from `tests/Rigging.Simulation`, a generator of its own with its own lattice and integrator, which refers to nothing of ours and speaks the contract's JSON (a test holds that). Three invented airframes; each aeroplane differs from its file (damping in roll 12 %, other derivatives and inertias 10 to 20 %, throw of each eccentric 10 %, drawn anew); slow and fast, little and full power, several heights and temperatures, loads as rigged for or not, smooth and light air, four kinds of pilot with their own rounding; every cause by itself, pairs, nothing wrong, words only, fuel gauges that are wrong, a ball or a wheel out of true, old compensation at the eccentrics, damage looked for and not; with and without incidence survey.

        A simulated aeroplane is still a simulated one: the generator was written from the same contract, so what both have wrong this does not show.

        ## What is counted as identifiable
        Decided by truth and evidence alone, never by our answer (`Identifiability` in the generator): one cause is present; the readings that it must give on the aeroplane as filed miss those of every single other cause, at that cause's best size, and those of an aeroplane with nothing wrong, by three standard deviations in all. A deviation holds the reading's own error, its rounding and 15 % of what is expected. Unreported fuel is held to the gauges' 8 L; a contour survey that found nothing holds the contour to what would have been seen; friction needs two releases after opposite inputs that differ; damage needs an inspection that found it.

        ## Thresholds
        | what | wanted | reached | |
        |---|---|---|---|
        {string.Join('\n', Threshold.All.Select(threshold => threshold.Row(quality)))}

        An incidence case is warranted when panel incidence is the one cause, identifiable, the tendency at least one and a half times the limit and the ideal within reach of the eccentrics. Moves that reset a neutral are not counted among those that lessen; a rudder tab is counted by what it leaves of the rudder's offset. What is near its threshold by a case or two is within what another draw of aeroplanes would change: a share of 90 % of 800 has a standard deviation of 1 %. The same goes for an eccentric turned for another cause: on the rounds that were looked at it happened 10 times in 15840, seven of them for fuel that nobody reported while the incidence survey erred the same way by one to three of its deviations.

        ## Calibration of the intervals
        How often the 90 % interval of a cause that is there holds its true amplitude, whatever the evidence; and how often the cause is called likeliest where it is identifiable.

        | cause | interval holds | likeliest where identifiable |
        |---|---|---|
        {string.Join('\n', Quality.Causes.Select(cause => $"| {cause} | {quality.Covered(cause)} | {quality.TopCauseRightOf(cause)} |"))}
        | roll tendency | {quality.TendencyCovered} | |

        ## Calibration of the probabilities
        Of all causes called so likely, on all aeroplanes, so many were there.

        | called | there |
        |---|---|
        {string.Join('\n', Enumerable.Range(0, 10).Select(tenth => $"| {tenth * 10} to {tenth * 10 + 10} % | {quality.ThereWhenCalled(tenth / 10.0, (tenth + 1) / 10.0)} |"))}

        ## Confusion
        Rows are the truth of identifiable aeroplanes, columns the cause called likeliest.

        | |{string.Concat(Quality.Causes.Select(cause => $" {cause} |"))}
        |---|{string.Concat(Quality.Causes.Select(_ => "---|"))}
        {string.Join('\n', Quality.Causes.Select(truth => $"| {truth} |{string.Concat(Quality.Causes.Select(top => quality.Confused(truth, top) is var count and > 0 ? $" {count} |" : " |"))}"))}

        """).ReplaceLineEndings("\n");

    static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "Rigging.sln")))
            folder = folder.Parent;
        return folder.FullName;
    }
}
