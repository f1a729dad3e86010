using CsCheck;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Survey;
using UnitsNet;

namespace Rigging.Mechanics.Tests.Survey;

public class WingSurveyTests
{
    static readonly WingGeometry Wing = Trainer.Airframe.Wing;
    static readonly Angle Step = Angle.FromDegrees(0.05), Seating = Angle.FromDegrees(0.05);

    /// <summary>By hand: shown 1.7 and, turned round, −1.3: the angle is (1.7 + 1.3)/2 = 1.5 and the level's zero 0.2.</summary>
    [Fact]
    public void Reversing_the_level_cancels_its_zero()
    {
        var reading = Read(1.7, -1.3);

        Assert.Equal(1.5, reading.True.Degrees, 1e-12);
        Assert.Equal(0.2, reading.Zero.Degrees, 1e-12);
    }

    static readonly Gen<(double Panel, double Tip, double Zero, double LeftDatum, double RightDatum)> Wings =
        Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Double[-0.5, 0.5], Gen.Double[-3, 3], Gen.Double[-3, 3]);

    [Fact]
    public void Panel_and_twist_come_back_whatever_the_zero_of_the_level_and_the_attitude() => Wings.Sample(wing =>
    {
        var survey = Survey(wing.Panel, wing.Tip, wing.Zero, wing.LeftDatum, wing.RightDatum).Value!;
        return Math.Abs(survey.PanelDifference.Value.Degrees - wing.Panel) < 1e-9
            && Math.Abs(survey.TipDifference!.Value.Degrees - wing.Tip) < 1e-9;
    });

    [Fact]
    public void A_mirrored_survey_turns_both_round() => Wings.Sample(wing =>
    {
        var one = Survey(wing.Panel, wing.Tip, wing.Zero, wing.LeftDatum, wing.RightDatum).Value!;
        var mirrored = Survey(-wing.Panel, -wing.Tip, wing.Zero, wing.RightDatum, wing.LeftDatum).Value!;
        return Math.Abs((one.PanelDifference.Value + mirrored.PanelDifference.Value).Degrees) < 1e-9
            && Math.Abs((one.TipDifference!.Value + mirrored.TipDifference!.Value).Degrees) < 1e-9;
    });

    /// <summary>
    /// By hand: reading step 0.05/√12/√2 = 0.0102°, with the seating 0.05 that is 0.0510 for a station and 0.0722 for a pair. Two
    /// pairs, at 1/6 and 5/6 of the panel: slope sd = 0.0722·√2/(2/3) = 0.153.
    /// </summary>
    [Fact]
    public void The_uncertainty_is_that_of_step_and_seating()
    {
        var survey = Survey(0.2, 0, 0.1, 0, 0).Value!;

        Assert.Equal(0.153, survey.TipDifference!.Sd.Degrees, 0.001);
        Assert.InRange(survey.PanelDifference.Sd.Degrees, 0.07, 0.11);
    }

    [Fact]
    public void Readings_that_scatter_count_as_they_scatter()
    {
        ReversedReading[] apart = [Read(1.0, -1.0), Read(1.4, -1.4), Read(1.2, -1.2)];

        var mean = MeasuredAngle.Mean(apart, Step);

        Assert.Equal(1.2, mean.Value.Degrees, 1e-12);
        Assert.Equal(0.2 / Math.Sqrt(3), mean.Sd.Degrees, 1e-12);
    }

    [Fact]
    public void It_becomes_two_ground_checks_with_their_uncertainty()
    {
        var checks = Survey(0.2, -0.3, 0, 0, 0).Value!.GroundChecks.Cast<AngleCheck>().ToArray();

        Assert.Equal([GroundCheckKind.PanelIncidenceDifference, GroundCheckKind.TipIncidenceDifference], checks.Select(check => check.Kind));
        Assert.Equal(0.2, checks[0].Deg, 1e-9);
        Assert.Equal(-0.3, checks[1].Deg, 1e-9);
        Assert.All(checks, check => Assert.True(check.SdDeg > 0.01));
    }

    [Fact]
    public void Washout_is_root_less_tip()
    {
        var survey = Survey(0, 0, 0, 0, 0).Value!;

        // Stations at 1/6 and 5/6 of the panel; the test wing is built with 2° at the panel's root and −1° at its tip.
        Assert.Equal(2, survey.Washout(Side.Left)!.Value.Degrees, 1e-9);
    }

    [Fact]
    public void One_pair_of_stations_says_nothing_of_the_twist()
    {
        var survey = Survey(0.2, 0, 0, 0, 0, places: 1).Value!;

        Assert.Equal(0.2, survey.PanelDifference.Value.Degrees, 1e-9);
        Assert.Null(survey.TipDifference);
        Assert.Single(survey.GroundChecks);
    }

    [Fact]
    public void A_reading_that_was_not_reversed_is_found_out()
    {
        var stations = Stations(0.2, 0, 0.1, 2).ToArray();
        stations[0] = stations[0] with { Readings = [Read(2.1, 2.1)] };

        var refused = WingSurvey.From(Wing, Datum(0.1, 0, 0), stations, Step, Seating);

        Assert.Equal("level-zero-moved", Assert.Single(refused.Refusals).Code);
    }

    /// <summary>Two pairs 6 cm apart on a panel of 4.3 m that read 0.1° differently: through them a twist of 7° would go.</summary>
    [Fact]
    public void Stations_at_nearly_one_place_tell_no_twist_and_their_mean_is_the_panels()
    {
        SurveyStation[] stations = [.. new[] { (YM: 2.00, Difference: 0.1), (YM: 2.06, Difference: 0.2) }.SelectMany(place => new SurveyStation[]
        {
            new(Side.Left, Length.FromMeters(place.YM), [Shown(1, 0)]),
            new(Side.Right, Length.FromMeters(place.YM), [Shown(1 + place.Difference, 0)]),
        })];

        var survey = WingSurvey.From(Wing, Datum(0, 0, 0), stations, Step, Seating).Value!;

        Assert.Null(survey.TipDifference);
        Assert.Equal(0.15, survey.PanelDifference.Value.Degrees, 1e-9);
    }

    [Fact]
    public void A_station_without_a_partner_a_missing_datum_and_a_place_off_the_panel_are_each_named()
    {
        var stations = Stations(0, 0, 0, 2).Skip(1).Append(new(Side.Left, Length.FromMeters(0.1), [Read(1, -1)])).ToArray();

        var refused = WingSurvey.From(Wing, [Datum(0, 0, 0)[0]], stations, Step, Seating);

        Assert.Contains(refused.Refusals, r => r.Code == "survey-incomplete" && r.Sentence.Contains("datum", StringComparison.Ordinal));
        Assert.Contains(refused.Refusals, r => r.Code == "survey-incomplete" && r.Sentence.Contains("partner", StringComparison.Ordinal));
        Assert.Contains(refused.Refusals, r => r.Code == "station-off-panel");
    }

    [Fact]
    public void The_published_twist_tolerance_comes_out_as_its_example_says()
    {
        var row = Published.Table("twist-tolerance-published.csv").Single();
        Angle Minutes(string column) => Angle.FromArcminutes(row.Number(column));
        var limits = new TwistLimits(Minutes("agreeWithinMin"), Minutes("belowMin"), Minutes("aboveMin"), "training manual, see the data file");

        var (least, greatest) = limits.RangeAt(Minutes("fuselageMin"));

        Assert.Equal(row.Number("leastMin"), least.Arcminutes, 1e-9);
        Assert.Equal(row.Number("greatestMin"), greatest.Arcminutes, 1e-9);
        Assert.Empty(limits.Faults(Minutes("fuselageMin"), least, least + limits.AgreeWithin));
        Assert.Single(limits.Faults(Minutes("fuselageMin"), least, least + limits.AgreeWithin + Angle.FromArcminutes(1)));
        Assert.Equal(2, limits.Faults(Minutes("fuselageMin"), least - Angle.FromArcminutes(1), greatest).Count);
    }

    static ReversedReading Read(double asLaid, double reversed) => new(Angle.FromDegrees(asLaid), Angle.FromDegrees(reversed));

    static ReversedReading Shown(double trueDeg, double zeroDeg) => Read(trueDeg + zeroDeg, -trueDeg + zeroDeg);

    static SurveyDatum[] Datum(double zero, double left, double right) =>
        [new(Side.Left, [Shown(left, zero)]), new(Side.Right, [Shown(right, zero)])];

    static IEnumerable<SurveyStation> Stations(double panel, double tip, double zero, int places, double leftDatum = 0, double rightDatum = 0)
    {
        foreach (var along in new[] { 1.0 / 6, 5.0 / 6 }.Take(places))
        {
            var place = Length.FromMeters(Wing.PanelInboardYM + along * (Wing.SpanM / 2 - Wing.PanelInboardYM));
            var built = 2 - 3 * along;
            var half = (panel + tip * along) / 2;
            yield return new(Side.Left, place, [Shown(built - half + leftDatum, zero)]);
            yield return new(Side.Right, place, [Shown(built + half + rightDatum, zero)]);
        }
    }

    static Answer<WingSurvey> Survey(double panel, double tip, double zero, double leftDatum, double rightDatum, int places = 2) =>
        WingSurvey.From(Wing, Datum(zero, leftDatum, rightDatum), [.. Stations(panel, tip, zero, places, leftDatum, rightDatum)], Step, Seating);
}
