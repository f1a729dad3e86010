using System.Globalization;
using MathNet.Numerics.LinearAlgebra;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Survey;

/// <summary>One station of one wing, by its template or between its marked rivets.</summary>
/// <param name="FromCentreline">Along the span, 0 or more.</param>
/// <param name="Readings">One or more, the level lifted off and laid down anew for each.</param>
public sealed record SurveyStation(Side Wing, Length FromCentreline, IReadOnlyList<ReversedReading> Readings);

/// <summary>The fuselage's own reading fore and aft while one wing was surveyed; nose up positive.</summary>
public sealed record SurveyDatum(Side Wing, IReadOnlyList<ReversedReading> Readings);

/// <summary>What one station came to.</summary>
/// <param name="Incidence">Against the fuselage datum, leading edge up positive.</param>
public sealed record SurveyedStation(Side Wing, Length FromCentreline, MeasuredAngle Incidence);

/// <summary>Incidence and twist of both wings from a digital level.</summary>
/// <param name="Stations">In the order they were given.</param>
/// <param name="PanelDifference">Right minus left, the same all along the panel.</param>
/// <param name="TipDifference">Right minus left at the tip on top of that, growing evenly from where the panel begins; null with one pair of stations.</param>
public sealed record WingSurvey(IReadOnlyList<SurveyedStation> Stations, MeasuredAngle PanelDifference, MeasuredAngle? TipDifference)
{
    /// <summary>Left and right stations pair up within so much.</summary>
    static readonly Length SamePlace = Length.FromMillimeters(20);

    /// <summary>
    /// From readings. A template does not sit twice in the same place: <paramref name="seating"/> is that error, one standard
    /// deviation for a station, and is not averaged away. Refused as <c>level-zero-moved</c> when the level's own zero is not
    /// the same throughout: it was knocked, or one reading was not reversed; as <c>survey-incomplete</c> when a wing has no
    /// datum, a station no partner or nothing was read; <c>station-off-panel</c> outside the adjustable panel.
    /// </summary>
    /// <param name="wing">Where the panel begins and ends.</param>
    /// <param name="datum">One for each wing, read while that wing was surveyed, so that a settling tyre does not count.</param>
    /// <param name="stations">The same places left and right.</param>
    /// <param name="resolution">Of the level.</param>
    /// <param name="seating">Common practice, no source: 0.05° for a template, 0.1° on bare skin.</param>
    public static Answer<WingSurvey> From(
        WingGeometry wing, IReadOnlyList<SurveyDatum> datum, IReadOnlyList<SurveyStation> stations, Angle resolution, Angle seating)
    {
        ArgumentNullException.ThrowIfNull(wing);
        ArgumentNullException.ThrowIfNull(datum);
        ArgumentNullException.ThrowIfNull(stations);
        List<Refusal> refusals = [.. Incomplete(datum, stations), .. OffPanel(wing, stations)];
        if (refusals.Count == 0)
            refusals.AddRange(ZeroMoved([.. datum.SelectMany(d => d.Readings), .. stations.SelectMany(s => s.Readings)], resolution));
        if (refusals.Count > 0)
            return refusals;

        var level = datum.ToDictionary(d => d.Wing, d => MeasuredAngle.Mean(d.Readings, resolution));
        SurveyedStation[] surveyed = [.. stations.Select(station =>
            new SurveyedStation(station.Wing, station.FromCentreline, Seated(MeasuredAngle.Mean(station.Readings, resolution), seating)
                .Less(new(level[station.Wing].Value, Angle.Zero))))];
        var datumSdDeg = Math.Sqrt(level.Values.Sum(angle => Math.Pow(angle.Sd.Degrees, 2)));
        return Fit(wing, surveyed, datumSdDeg);
    }

    /// <summary>Washout of one wing between its innermost and outermost station: the root's incidence less the tip's. Null with one station.</summary>
    public MeasuredAngle? Washout(Side wing)
    {
        var along = Stations.Where(station => station.Wing == wing).OrderBy(station => station.FromCentreline.Meters).ToArray();
        return along.Length < 2 ? null : along[0].Incidence.Less(along[^1].Incidence);
    }

    /// <summary>The same as ground checks of an assessment.</summary>
    public IReadOnlyList<GroundCheck> GroundChecks =>
    [
        Check(GroundCheckKind.PanelIncidenceDifference, PanelDifference),
        .. TipDifference is { } tip ? [Check(GroundCheckKind.TipIncidenceDifference, tip)] : Array.Empty<GroundCheck>(),
    ];

    static AngleCheck Check(GroundCheckKind kind, MeasuredAngle angle) => new(kind, angle.Value.Degrees, angle.Sd.Degrees);

    /// <summary>Least squares of the differences: constant, and linear from the panel's inboard end to the tip.</summary>
    static WingSurvey Fit(WingGeometry wing, SurveyedStation[] surveyed, double datumSdDeg)
    {
        var (panelYM, tipYM) = (wing.PanelInboardYM, wing.SpanM / 2);
        var pairs = surveyed.Where(station => station.Wing == Side.Right)
            .Select(right => (Right: right, Left: Partner(surveyed, right)!))
            .Select(pair => (
                Along: (pair.Right.FromCentreline.Meters - panelYM) / (tipYM - panelYM),
                Difference: pair.Right.Incidence.Less(pair.Left.Incidence)))
            .ToArray();
        // Stations at nearly one place tell no twist, however many there are; a twist drawn through them would be any angle.
        const double leastApart = 0.1;
        var terms = pairs.Max(pair => pair.Along) - pairs.Min(pair => pair.Along) >= leastApart ? 2 : 1;
        var rows = Matrix<double>.Build.Dense(pairs.Length, terms, (i, k) => (k == 0 ? 1 : pairs[i].Along) / pairs[i].Difference.Sd.Degrees);
        var seen = Vector<double>.Build.Dense(pairs.Length, i => pairs[i].Difference.Value.Degrees / pairs[i].Difference.Sd.Degrees);
        var covariance = (rows.TransposeThisAndMultiply(rows)).Inverse();
        var fitted = covariance * rows.TransposeThisAndMultiply(seen);
        // A datum that is off moves every station of its wing alike: the panel takes it all, the twist none.
        var panelSdDeg = Math.Sqrt(covariance[0, 0] + datumSdDeg * datumSdDeg);
        return new(
            surveyed,
            new(Angle.FromDegrees(fitted[0]), Angle.FromDegrees(panelSdDeg)),
            terms < 2 ? null : new(Angle.FromDegrees(fitted[1]), Angle.FromDegrees(Math.Sqrt(covariance[1, 1]))));
    }

    static MeasuredAngle Seated(MeasuredAngle angle, Angle seating) =>
        angle with { Sd = Angle.FromDegrees(Math.Sqrt(Math.Pow(angle.Sd.Degrees, 2) + Math.Pow(seating.Degrees, 2))) };

    static SurveyedStation? Partner(SurveyedStation[] all, SurveyedStation right) =>
        all.FirstOrDefault(left => left.Wing == Side.Left && (left.FromCentreline - right.FromCentreline).Abs() <= SamePlace);

    static IEnumerable<Refusal> Incomplete(IReadOnlyList<SurveyDatum> datum, IReadOnlyList<SurveyStation> stations)
    {
        foreach (var wing in Enum.GetValues<Side>())
            if (datum.Count(d => d.Wing == wing) != 1)
                yield return new("survey-incomplete", $"The fuselage datum wants reading once while the {Wire.Word(wing)} wing is surveyed.");
        if (stations.Count == 0 || stations.Any(station => station.Readings.Count == 0) || datum.Any(d => d.Readings.Count == 0))
            yield return new("survey-incomplete", "Every place wants at least one reading with the level as laid and one with it reversed.");
        foreach (var station in stations.Where(one => stations.Count(other =>
            other.Wing != one.Wing && (other.FromCentreline - one.FromCentreline).Abs() <= SamePlace) != 1))
        {
            yield return new("survey-incomplete", string.Create(CultureInfo.InvariantCulture,
                $"The {Wire.Word(station.Wing)} station {station.FromCentreline.Meters:0.00} m out wants one partner on the other wing, within {SamePlace.Millimeters:0} mm."));
        }
    }

    static IEnumerable<Refusal> OffPanel(WingGeometry wing, IReadOnlyList<SurveyStation> stations) => stations
        .Where(station => !(station.FromCentreline.Meters >= wing.PanelInboardYM && station.FromCentreline.Meters <= wing.SpanM / 2))
        .Select(station => new Refusal("station-off-panel", string.Create(CultureInfo.InvariantCulture,
            $"The {Wire.Word(station.Wing)} station {station.FromCentreline.Meters:0.00} m out is not on the panel, which reaches from {wing.PanelInboardYM:0.00} to {wing.SpanM / 2:0.00} m.")));

    static IEnumerable<Refusal> ZeroMoved(IReadOnlyList<ReversedReading> readings, Angle resolution)
    {
        // Rounding alone parts two zeros by up to one step; a level laid down by hand, by another (judgement, no source).
        const double steps = 3;
        var (least, greatest) = (readings.Min(reading => reading.Zero.Degrees), readings.Max(reading => reading.Zero.Degrees));
        if (!(greatest - least <= steps * resolution.Degrees))
            yield return new("level-zero-moved", string.Create(CultureInfo.InvariantCulture,
                $"The level's own zero comes out between {least:0.00}° and {greatest:0.00}°: it was knocked, or one of the readings was not reversed. Read again."));
    }
}
