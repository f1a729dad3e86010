using System.Globalization;

namespace Rigging.Quality;

/// <summary>One thing that is wanted of the assessment.</summary>
/// <param name="Wanted">In words.</param>
/// <param name="Reached">What was counted, as it is printed.</param>
/// <param name="IsReached">Held against what is wanted.</param>
/// <param name="Holds">What the tests assert on one round: the same, or what is reached where that is less, with room for the draw where it is a count of few.</param>
sealed record Threshold(string What, string Wanted, Func<Quality, string> Reached, Func<Quality, bool> IsReached, Func<Quality, bool> Holds)
{
    public string Row(Quality quality) => $"| {What} | {Wanted} | {Reached(quality)} | {(IsReached(quality) ? "reached" : "**not reached**")} |";

    public override string ToString() => What;

    public const string Width = "median 90 % interval of the tendency, full evidence";

    const string ForOthers = "eccentric turned for another cause";

    /// <summary>What the report counted where never is wanted: it is not reached, and the tests hold that it is no worse.</summary>
    const double OfGeometry = 4.0 / 3168;

    public static IReadOnlyList<Threshold> All { get; } =
    [
        Least("likeliest cause right where identifiable", 0.9, quality => quality.TopCauseRight),
        Between("roll tendency inside its 90 % interval", 0.85, 0.97, quality => quality.TendencyCovered),
        .. Quality.Causes.Select(cause => Between($"90 % interval of {cause}", 0.85, 0.97, quality => quality.Covered(cause))),
        Least("warranted incidence: right wing, right way, within half a flat", 0.9, quality => quality.IdealMove),
        new(ForOthers, "never", quality => quality.EccentricForOthers.ToString(), quality => quality.EccentricForOthers.Of == 0, quality => quality.EccentricForOthers.Of == 0),
        Least("moves lessen what they act on", 0.99, quality => quality.Lessens),
        Least("true tendency afterwards inside the predicted 90 % interval", 0.85, quality => quality.PredictionHolds),
        Between("true tendency inside the 90 % interval of the check flight's verdict", 0.85, 0.97, quality => quality.VerdictCovered),
        Between("the same by all flights, before and after the move", 0.85, 0.97, quality => quality.AssessedAfterCovered),
        Least("accepted, and inside the limit", 0.9, quality => quality.AcceptedAndInside),
        Least("to be adjusted again, and outside the limit", 0.6, quality => quality.AgainAndOutside),
        Most(Width, 1, "°/s", quality => quality.MedianWidth),
        Most("highest probability from words alone", 0.8, "", quality => quality.HighestWhenVague),
        Least("damage present: nothing moved, damage not ruled out", 1, quality => quality.DamageHeld),
    ];

    /// <summary>Of files that have the geometry alone the same is wanted, but for how narrow an interval is.</summary>
    public static IReadOnlyList<Threshold> ByGeometry { get; } =
    [
        .. All.Where(threshold => threshold.What != Width).Select(threshold => threshold.What == ForOthers
            ? threshold with { Holds = quality => quality.EccentricForOthers is var counted && counted.Fraction <= OfGeometry + Draw(OfGeometry, counted.All) }
            : threshold),
    ];

    static Threshold Least(string what, double least, Func<Quality, Share> share) => new(
        what, Percent("at least {0:0} %", least), quality => share(quality).ToString(), quality => share(quality).Fraction >= least,
        quality => share(quality) is var counted && counted.Fraction >= least - Draw(least, counted.All));

    static Threshold Between(string what, double least, double most, Func<Quality, Share> share) => new(
        what, $"{Percent("{0:0}", least)} to {Percent("{0:0} %", most)}", quality => share(quality).ToString(),
        quality => share(quality).Fraction is var fraction && fraction >= least && fraction <= most,
        quality => share(quality) is var counted && counted.Fraction >= least - Draw(least, counted.All) && counted.Fraction <= most + Draw(most, counted.All));

    static Threshold Most(string what, double most, string unit, Func<Quality, double> value)
    {
        string Said(double number) => string.Create(CultureInfo.InvariantCulture, $"{number:0.00} {unit}").TrimEnd();
        return new(what, $"at most {Said(most)}", quality => Said(value(quality)), quality => value(quality) <= most, quality => value(quality) <= most);
    }

    /// <summary>Two standard deviations of a share of so many: what another draw may change. Of what must always hold, nothing.</summary>
    static double Draw(double share, int count) => 2 * Math.Sqrt(share * (1 - share) / count);

    static string Percent(string format, double share) => string.Format(CultureInfo.InvariantCulture, format, 100 * share);
}
