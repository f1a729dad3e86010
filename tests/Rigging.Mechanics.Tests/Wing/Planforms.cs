using Rigging.Mechanics.Wing;

namespace Rigging.Mechanics.Tests.Wing;

/// <summary>Wings for checks: span 2 metres times the aspect ratio where it does not matter.</summary>
static class Planforms
{
    const double Flat = 2 * Math.PI;

    public static Planform Of(Published.Row row) => row["planform"] == "elliptic"
        ? Elliptic(row.Number("aspectRatio"))
        : Tapered(row.Number("aspectRatio"), row.Number("taper"));

    public static Planform Elliptic(double aspectRatio)
    {
        const double span = 10;
        var root = 4 * span / (Math.PI * aspectRatio);
        return new(span, span * span / aspectRatio,
            y => root * Math.Sqrt(Math.Max(0, 1 - 4 * y * y / (span * span))), _ => Flat, _ => 0);
    }

    public static Planform Tapered(double aspectRatio, double taper, double slope = Flat)
    {
        const double span = 10;
        var root = 2 * span / (aspectRatio * (1 + taper));
        return Planform.OfStations([new(0, root, 0, slope), new(span / 2, taper * root, 0, slope)]);
    }

    /// <summary>The invented two-seat trainer's wing: constant chord inboard, tapered outboard, strutted.</summary>
    public static Planform Trainer { get; } = Planform.OfStations(
    [
        new(0, 1.58, 0.0349, 6.0),
        new(2.40, 1.58, 0.0349, 6.0),
        new(4.82, 1.05, -0.0087, 6.0),
    ]);
}
