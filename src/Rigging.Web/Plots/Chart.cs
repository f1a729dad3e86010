namespace Rigging.Web.Plots;

/// <summary>
/// A plot as what it shows, before anybody has drawn it: the same for screen and paper, and for whoever has it read out. Units are in the labels.
/// </summary>
/// <param name="Says">The whole in a sentence or two, for whoever does not see it.</param>
/// <param name="Dates">The places along x are days, counted as <see cref="Day"/> counts them.</param>
public sealed record Chart(
    string Title,
    string Across,
    string Up,
    string Says,
    IReadOnlyList<Curve> Curves,
    IReadOnlyList<Dots> Dots,
    IReadOnlyList<Level> Levels,
    IReadOnlyList<Upright> Uprights,
    bool Dates = false)
{
    /// <summary>A moment's place along x, in days.</summary>
    public static double Day(NodaTime.LocalDateTime moment) => moment.ToDateTimeUnspecified().ToOADate();
}

/// <summary>Which of two stories a line or a dot belongs to. They differ by dash, by the dot's shape and by words before they differ by colour.</summary>
public enum Telling { Earlier, Now }

/// <summary>A line with the band in which it lies nine times in ten.</summary>
public sealed record Curve(Telling Telling, string Name, IReadOnlyList<(double X, double Low, double Mean, double High)> Points);

/// <summary>What was read or found.</summary>
public sealed record Dots(Telling Telling, string Name, IReadOnlyList<Dot> Points);

/// <param name="Within">Where it lies nine times in ten, which need not be as far on both sides; null where nobody knows.</param>
/// <param name="Read">What was read, where the dot is drawn as it would be on another flight than its own; null where it is drawn as read.</param>
public sealed record Dot(double X, double Y, (double Low, double High)? Within, ReadElsewhere? Read = null)
{
    /// <param name="give">Half the width in which it lies nine times in ten.</param>
    public static Dot GiveOrTake(double x, double y, double? give, ReadElsewhere? read = null) => new(x, y, give is { } half ? (y - half, y + half) : null, read);
}

/// <summary>A reading as it was taken.</summary>
/// <param name="Value">In the unit of the plot.</param>
/// <param name="Flown">How that flight differed: "at 70 kt, with another load".</param>
public sealed record ReadElsewhere(double Value, string Flown);

/// <summary>A level that must not be passed.</summary>
public sealed record Level(double Y, string Name);

/// <summary>Something that happened at a place along x.</summary>
public sealed record Upright(double X, string Name);
