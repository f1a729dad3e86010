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

    /// <summary>Of those described by their geometry alone: looked at while the error of estimated figures was worked on.</summary>
    public const int LookedByGeometry = 6;

    /// <summary>Of the same: a third of all rounds that are counted.</summary>
    public const int RoundsByGeometry = 12;

    public static int Write(int rounds)
    {
        var counted = Quality.OfRounds(Looked, rounds);
        return Write($"{Of(counted, Overall([counted, .. LookedAt()]))}\n{ByGeometry()}");
    }

    /// <summary>Counts the aeroplanes described by their geometry alone, and leaves the rest of the report as it stands.</summary>
    public static int WriteByGeometry()
    {
        var rest = File.ReadAllText(Path.Combine(Root(), Document)).Split(HeadByGeometry)[0].TrimEnd();
        return Write($"{rest}\n\n{ByGeometry()}");
    }

    static int Write(string text)
    {
        Console.WriteLine(text);
        File.WriteAllText(Path.Combine(Root(), Document), text);
        return 0;
    }

    static string Document => Path.Combine("docs", "assessment-quality.md");

    const string HeadByGeometry = "## Aeroplanes of which only the geometry is on file";

    static string ByGeometry()
    {
        var quality = Quality.ByGeometry(LookedByGeometry, RoundsByGeometry);
        return string.Create(CultureInfo.InvariantCulture, $"""
            {HeadByGeometry}
            Counted on {quality.Count} more, on {TimeProvider.System.GetUtcNow():yyyy-MM-dd}; `dotnet run -c Release --project tests/Rigging.Quality -- report by-geometry` counts these alone. They are a third of all rounds counted. Their file has wing, tail, fuselage, mass, tanks and seats, and no derivative and no inertia. The aeroplane has its own: they stand in the generator, and each departs from them by the accuracy that the estimates are said to have (a test holds both against the estimates). Everything else is as above, the catalogue too; identifiable is a cause where it still is with each figure that is not on file out by its accuracy.

            Rounds 1 to {LookedByGeometry} of these were looked at while the error of estimated figures was worked on, and are not counted; these are rounds {LookedByGeometry + 1} to {LookedByGeometry + RoundsByGeometry}, which nobody had looked at. The same is wanted as above, except of the width of the interval: {Threshold.All.Single(threshold => threshold.What == Threshold.Width).Reached(quality)} here.

            | what | wanted | reached | |
            |---|---|---|---|
            {string.Join('\n', Threshold.ByGeometry.Select(threshold => threshold.Row(quality)))}

            | cause | likeliest where identifiable | taken for |
            |---|---|---|
            {string.Join('\n', Quality.Causes.Select(cause => $"| {cause} | {quality.TopCauseRightOf(cause)} | {TakenFor(quality, cause)} |"))}

            """).ReplaceLineEndings("\n");
    }

    static string TakenFor(Quality quality, string cause) => string.Join(", ", Quality.Causes
        .Where(other => other != cause && quality.Confused(cause, other) > 0)
        .Select(other => string.Create(CultureInfo.InvariantCulture, $"{other} {quality.Confused(cause, other)}")));

    /// <summary>The rounds that were looked at, a few at a time: all of them at once would need gigabytes.</summary>
    static IEnumerable<Quality> LookedAt()
    {
        for (var first = 0; first < 2 * Looked + Rounds; first += Few)
            if (first < Looked || first >= Looked + Rounds)
                yield return Quality.OfRounds(first, Few);
    }

    const int Few = 6;

    static (string What, Share Share)[] Overall(IEnumerable<Quality> all)
    {
        Share[] sum = [];
        foreach (var shares in all.Select(quality => (Share[])[.. Quality.Causes.Select(quality.Covered), quality.TendencyCovered, quality.IdealMove, quality.EccentricForOthers]))
            sum = sum.Length == 0 ? shares : [.. sum.Zip(shares, (one, other) => one + other)];
        return [.. Quality.Causes.Select(cause => $"90 % interval of {cause}").Concat(
            ["90 % interval of the roll tendency", "warranted incidence: right wing, right way, within half a flat", "eccentric turned for another cause"]).Zip(sum)];
    }

    static string Of(Quality quality, (string What, Share Share)[] overall) => string.Create(CultureInfo.InvariantCulture, $"""
        # How good the assessment is

        Counted on {quality.Count} simulated aeroplanes, whose truth is known, on {TimeProvider.System.GetUtcNow():yyyy-MM-dd}, {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}, {RuntimeInformation.ProcessArchitecture}. `dotnet run -c Release --project tests/Rigging.Quality -- report` counts anew, prints these tables and writes this file; the tests of `Rigging.Quality` assert them on the first {QualityTests.Rounds * Quality.Round} of these.

        Priors, spreads and the thresholds of credibility were chosen with rounds 1 to {Looked} and {Looked + Rounds + 1} to {Looked + Rounds + Looked} in sight. None of those is counted here: these are rounds {Looked + 1} to {Looked + Rounds}. What earlier assessments reached on them was known, and the marks they had missed were worked on, the interval of a skin or fairing last; the aeroplanes by which they had missed them were not looked at.

        The aeroplanes come from `tests/Rigging.Simulation`, a generator of its own with its own lattice and integrator, which refers to nothing of ours and speaks the contract's JSON (a test holds that). Three invented airframes; each aeroplane differs from its file (damping in roll 12 %, other derivatives and inertias 10 to 20 %, throw of each eccentric 10 %, drawn anew); slow and fast, little and full power, several heights and temperatures, loads as rigged for or not, smooth and light air, four kinds of pilot with their own rounding; every cause by itself, pairs, nothing wrong, words only, fuel gauges that are wrong, a ball or a wheel out of true, old compensation at the eccentrics, damage looked for and not; with and without incidence survey.

        A simulated aeroplane is still a simulated one: the generator was written from the same contract, so what both have wrong this does not show.

        ## What is counted as identifiable
        Decided by truth and evidence alone, never by our answer (`Identifiability` in the generator): one cause is present; the readings that it must give on the aeroplane as filed miss those of every single other cause, at that cause's best size, and those of an aeroplane with nothing wrong, by three standard deviations in all. A deviation holds the reading's own error, its rounding and 15 % of what is expected. Unreported fuel is held to the gauges' 8 L; a contour survey that found nothing holds the contour to what would have been seen; friction needs two releases after opposite inputs that differ; damage needs an inspection that found it.

        ## Thresholds
        | what | wanted | reached | |
        |---|---|---|---|
        {string.Join('\n', Threshold.All.Select(threshold => threshold.Row(quality)))}

        An incidence case is warranted when panel incidence is the one cause, identifiable, the tendency at least one and a half times the limit and the ideal within reach of the eccentrics. Moves that reset a neutral are not counted among those that lessen; a rudder tab is counted by what it leaves of the rudder's offset. What is near its threshold by a case or two is within what another draw of aeroplanes would change: a share of 90 % of 800 has a standard deviation of 1 %.

        Wherever an eccentric was turned the aeroplane is flown again: three releases on another day, by any of the pilots, the tanks dipped anew, and the check flight judged. Three releases settled {quality.Settled}; the others want more points. What is left after an adjustment was taken for a cause like any other until these flights were counted, on the rounds that were looked at: the verdict’s interval then held the truth in 57 of 100, that of all flights together in 52.

        ## Over all rounds
        The same, counted with the rounds that were looked at: more aeroplanes, so less of the draw, but some of them were in sight while figures were chosen. The draw is two standard deviations of a share of so many.

        | what | over all | draw |
        |---|---|---|
        {string.Join('\n', overall.Select(one => string.Create(CultureInfo.InvariantCulture, $"| {one.What} | {one.Share} | {100 * one.Share.Draw.From:0.00} to {100 * one.Share.Draw.To:0.00} % |")))}

        Intervals of a skin or fairing hold nearly always where little was flown or only words were said: its size here is drawn evenly between two bounds, and an interval that knows little of it covers both. Where everything was flown and measured they hold in 94 to 95 of 100. Part of what made them wider still was ours: a rolling moment was taken to be as uncertain as a degree of panel, and is less so; that was found, and put right, on the rounds that were looked at.

        Ten aeroplanes had an eccentric turned for another cause when those were counted one by one: seven had fuel that nobody reported while the incidence survey erred the same way by one to three of its deviations, two a twist that the survey took for a panel, and one nothing at all. With fuel measured, as the squawk’s rules ask before a wing may be turned, six of the eight without a twist would have been left alone. To ask more of the evidence was tried: refusing where unreported fuel is 70 % likely prevents two of the ten and leaves one in a hundred of the wings that are out as they are; 85 % for the panel prevents five and leaves two in a hundred.

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
