using System.Text.Json.Nodes;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Web.Demo;
using UnitsNet;

namespace Rigging.Web.Tests.Demo;

/// <summary>What the stories' people read off is what the mechanics would have shown them, give or take a plausible error.</summary>
public class SeedReadingsTests
{
    const double RadPerDeg = Math.PI / 180;
    const double Allowed = 2.5;

    static readonly SeedFolder Seeds = SeedFolder.Read(SeedFolder.Shipped);

    public static TheoryData<string> Stories => [.. Seeds.Stories.Select(seed => seed.File)];

    [Theory, MemberData(nameof(Stories))]
    public void Every_reading_agrees_with_the_mechanics(string file)
    {
        var story = Story(file);
        foreach (var (point, causes) in Points(story))
            foreach (var reading in point.Readings)
            {
                var (predicted, read) = (Predicted(story, point, reading, causes), Value(reading));
                Assert.True(Math.Abs(read - predicted) <= Allowed * Sd(reading), $"{file}: {reading} in {point.Manoeuvre} at {point.CasKt} kt; the model says {predicted:0.00}.");
            }
    }

    [Fact]
    public void No_story_is_too_good_to_be_true() => Assert.Contains(
        Seeds.Stories.SelectMany(seed => Points(seed.Story).SelectMany(p => p.Point.Readings.Select(reading => Math.Abs(Value(reading) - Predicted(seed.Story, p.Point, reading, p.Causes)) / Sd(reading)))),
        off => off > 0.3);

    [Theory, MemberData(nameof(Stories))]
    public void What_was_measured_on_the_ground_is_the_truth_give_or_take_the_tool(string file)
    {
        var story = Story(file);
        foreach (var (act, i) in story.Acts.Select((act, i) => (act, i)).Where(numbered => numbered.act.Kind == "ground-check"))
        {
            // What is measured with the joint torqued again is the aircraft as left.
            var (check, truly) = (act.Fact!, story.Acts.Take(i).Any(before => before.Kind == "torque-application") ? story.BehindIt.After ?? story.BehindIt.Before : story.BehindIt.Before);
            double? truth = (string?)check["check"] switch
            {
                "panel-incidence-difference" => truly.PanelIncidenceDifferenceDeg,
                "tip-incidence-difference" => truly.TipIncidenceDifferenceDeg,
                "flap-difference" => truly.FlapDifferenceDeg,
                "aileron-float" => truly.AileronFloatDeg,
                // Nobody's ball is out in these stories, and nobody's neutral.
                "ball-offset" or "aileron-neutral-offset" => 0,
                _ => null,
            };
            if (truth is { } deg) Assert.InRange((double)check["value"]!, deg - 0.2, deg + 0.2);
        }
    }

    [Theory, MemberData(nameof(Stories))]
    public void After_the_work_the_panels_stand_where_the_eccentric_put_them(string file)
    {
        var story = Story(file);
        if (story.Acts.FirstOrDefault(act => act.Kind == "work-done") is not { } work) return;
        var eccentric = Eccentric.On(Airframe(story)).Value!;
        var found = story.Acts.Last(act => act.Kind == "as-found").Fact!["bushings"]!;
        double Change(string bushing) => found[bushing] is not { } from ? 0
            : eccentric.IncidenceChange(Angle.FromDegrees((double)from), Angle.FromDegrees((double)work.Fact!["asLeft"]![bushing]!)).Degrees;

        var after = story.BehindIt.Before.PanelIncidenceDifferenceDeg + Change("rightFrontDeg") - Change("leftFrontDeg");

        Assert.Equal(after, story.BehindIt.After!.PanelIncidenceDifferenceDeg, 3);
    }

    static StorySeed Story(string file) => Seeds.Stories.Single(seed => seed.File == file).Story;

    static Airframe Airframe(StorySeed story) => ContractReader.ReadAirframe(Seeds.Airframes[Seeds.Aircraft(story.Aircraft)!.Airframe]).Value!;

    static IEnumerable<(TestPoint Point, TrueCauses Causes)> Points(StorySeed story)
    {
        var causes = story.BehindIt.Before;
        foreach (var act in story.Acts)
        {
            if (act.Kind == "work-done") causes = story.BehindIt.After!;
            if (act.Fact?["testPoints"] is not { } points) continue;
            var request = new JsonObject { ["airframe"] = JsonNode.Parse(Seeds.Airframes[Seeds.Aircraft(story.Aircraft)!.Airframe]), ["testPoints"] = points.DeepClone() };
            foreach (var point in ContractReader.ReadRequest(request.ToJsonString()).Value!.TestPoints) yield return (point, causes);
        }
    }

    static double Predicted(StorySeed story, TestPoint point, Reading reading, TrueCauses causes)
    {
        var flight = new Aeroplane(Airframe(story)).At(point);
        return PilotReading.Predict(flight, point.Manoeuvre, reading, flight.Of(point.Load) + flight.Slipstream
            + causes.PanelIncidenceDifferenceDeg * RadPerDeg * flight.PanelIncidence
            + causes.TipIncidenceDifferenceDeg * RadPerDeg * flight.TipIncidence
            + causes.FlapDifferenceDeg * RadPerDeg * flight.FlapDifference
            + new Asymmetry(AileronFloatRad: causes.AileronFloatDeg * RadPerDeg, RudderOffsetRad: causes.RudderOrFinOffsetDeg * RadPerDeg))!.Value;
    }

    static double Value(Reading reading) => reading switch
    {
        BankAfter bank => bank.Deg,
        BallReading ball => ball.Widths,
        HeadingRate rate => rate.DegPerS,
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, "a kind of reading that no story had before"),
    };

    // As in the contract's defaults for smooth air, with rounding.
    static double Sd(Reading reading) => reading switch
    {
        BankAfter bank => 1.5 + 0.05 * Math.Abs(bank.Deg),
        BallReading => 0.12,
        _ => 0.1,
    };
}
