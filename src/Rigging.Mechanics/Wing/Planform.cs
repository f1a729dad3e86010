namespace Rigging.Mechanics.Wing;

/// <summary>The wing at one distance from the centreline; both wings are built alike.</summary>
/// <param name="YM">Distance from the centreline, metres, zero or more.</param>
/// <param name="ChordM">Chord, metres, more than zero.</param>
/// <param name="IncidenceRad">Incidence, radians, leading edge up positive.</param>
/// <param name="SectionLiftSlopePerRad">Lift slope of the section, per radian; a thin flat plate has 2π.</param>
public readonly record struct Station(double YM, double ChordM, double IncidenceRad, double SectionLiftSlopePerRad);

/// <summary>
/// A wing seen from above, symmetric about the centreline, its quarter-chord line straight and unswept (the usual
/// strutted trainer). Chord, incidence and section lift slope depend on the distance from the centreline.
/// </summary>
public sealed class Planform
{
    readonly Func<double, double> chordM;
    readonly Func<double, double> sectionLiftSlopePerRad;
    readonly Func<double, double> incidenceRad;

    /// <summary>A wing from smooth functions of the distance from the centreline, metres.</summary>
    public Planform(
        double spanM,
        double areaM2,
        Func<double, double> chordM,
        Func<double, double> sectionLiftSlopePerRad,
        Func<double, double> incidenceRad)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(spanM);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(areaM2);
        (SpanM, AreaM2) = (spanM, areaM2);
        (this.chordM, this.sectionLiftSlopePerRad, this.incidenceRad) = (chordM, sectionLiftSlopePerRad, incidenceRad);
    }

    /// <summary>Tip to tip, metres.</summary>
    public double SpanM { get; }

    /// <summary>Both wings and the part through the fuselage, square metres.</summary>
    public double AreaM2 { get; }

    public double AspectRatio => SpanM * SpanM / AreaM2;

    /// <summary>A wing from stations, straight lines between them. The first is at the centreline, the last at the tip.</summary>
    public static Planform OfStations(IReadOnlyList<Station> stations)
    {
        if (stations.Count < 2)
            throw new ArgumentException("A wing needs at least two stations.", nameof(stations));
        for (var i = 0; i + 1 < stations.Count; i++)
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(stations[i].YM, stations[i + 1].YM, nameof(stations));

        var halfAreaM2 = stations[0].YM * stations[0].ChordM;
        for (var i = 0; i + 1 < stations.Count; i++)
            halfAreaM2 += (stations[i + 1].YM - stations[i].YM) * (stations[i].ChordM + stations[i + 1].ChordM) / 2;
        return new(
            2 * stations[^1].YM,
            2 * halfAreaM2,
            y => Between(stations, y, station => station.ChordM),
            y => Between(stations, y, station => station.SectionLiftSlopePerRad),
            y => Between(stations, y, station => station.IncidenceRad));
    }

    public double ChordAt(double yM) => chordM(Math.Abs(yM));

    public double SectionLiftSlopeAt(double yM) => sectionLiftSlopePerRad(Math.Abs(yM));

    public double IncidenceAt(double yM) => incidenceRad(Math.Abs(yM));

    static double Between(IReadOnlyList<Station> stations, double yM, Func<Station, double> value)
    {
        if (yM <= stations[0].YM)
            return value(stations[0]);
        var outer = 1;
        while (outer + 1 < stations.Count && stations[outer].YM < yM)
            outer++;
        var (from, to) = (stations[outer - 1], stations[outer]);
        var along = Math.Min(1, (yM - from.YM) / (to.YM - from.YM));
        return value(from) + along * (value(to) - value(from));
    }
}
