using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

public class AssessorTests
{
    const double RadPerDeg = Math.PI / 180;

    static readonly TestPoint[] GoodPoints =
    [
        Trainer.LetGo(75, 0),
        Trainer.LetGo(105, 0),
        Trainer.Point(Manoeuvre.HoldNeutral, 95, new BankAfter(10, 0) { Method = ReadingMethod.StopwatchHorizon }),
        Trainer.Point(Manoeuvre.HoldLevel, 95, new BallReading(0), new HeadingRate(0) { Method = ReadingMethod.StopwatchCompass }),
    ];

    [Fact]
    public void The_contract_example_is_left_wing_heavy_by_panel_incidence_first()
    {
        var response = Reports.Example.Assess();

        Assert.True(response.RollTendency!.Mean < -0.4);
        Assert.Equal(Cause.PanelIncidenceDifference, response.Causes.MaxBy(cause => cause.Probability)!.Cause);
        Assert.InRange(response.Of(Cause.PanelIncidenceDifference).Amplitude!.Mean, 0.05, 0.11);
        Assert.Equal([Prerequisite.Ball, Prerequisite.Ailerons, Prerequisite.Cables, Prerequisite.Rudder], response.Prerequisites);
    }

    [Fact]
    public void Every_cause_of_the_catalogue_is_assessed_from_good_evidence()
    {
        var response = Reports.Example.Assess();

        Assert.Equal(Enum.GetValues<Cause>(), response.Causes.Select(cause => cause.Cause));
        foreach (var cause in response.Causes)
        {
            Assert.NotNull(cause.Probability);
            Assert.Equal(cause.Probability is null, cause.Amplitude is null && cause.Explains is null);
        }
    }

    [Fact]
    public void A_cause_that_nothing_reported_bears_on_is_null()
    {
        // Feet on the pedals hide whatever the rudder does.
        var response = Reports.Of(GoodPoints[0]).Assess();

        Assert.Null(response.Of(Cause.RudderOrFinOffset).Probability);
        Assert.NotNull(response.Of(Cause.PanelIncidenceDifference).Probability);
    }

    public static TheoryData<Cause, double> Planted => new()
    {
        { Cause.PanelIncidenceDifference, 0.15 },
        { Cause.PanelIncidenceDifference, -0.15 },
        { Cause.AileronFloat, 0.8 },
        { Cause.RudderOrFinOffset, -3 },
        { Cause.FlapDifference, 0.8 },
    };

    /// <summary>The readings are the motion model's own, rounded as people round.</summary>
    [Theory, MemberData(nameof(Planted))]
    public void A_planted_cause_is_found_with_its_size_and_sign(Cause cause, double amplitude)
    {
        var points = GoodPoints.Select(point => Reports.Flown(Trainer.Airframe, point, flight => cause switch
        {
            Cause.PanelIncidenceDifference => amplitude * RadPerDeg * flight.PanelIncidence,
            Cause.FlapDifference => amplitude * RadPerDeg * flight.FlapDifference,
            Cause.AileronFloat => new(AileronFloatRad: amplitude * RadPerDeg),
            _ => new(RudderOffsetRad: amplitude * RadPerDeg),
        }));
        // A flap and a panel fly alike; the ground checks tell them apart.
        var request = Reports.Of([.. points]) with
        {
            GroundChecks =
            [
                new AngleCheck(GroundCheckKind.FlapDifference, cause == Cause.FlapDifference ? amplitude : 0, 0.1),
                new AngleCheck(GroundCheckKind.PanelIncidenceDifference, cause == Cause.PanelIncidenceDifference ? amplitude : 0, 0.05),
            ],
        };

        var response = request.Assess();

        var found = response.Of(cause);
        Assert.Equal(cause, response.Causes.MaxBy(c => c.Probability)!.Cause);
        Assert.True(found.Probability > 0.8, $"{found.Probability}");
        Assert.InRange(amplitude, found.Amplitude!.Low, found.Amplitude.High);
        Assert.True(found.Explains > 0.8, $"{found.Explains}");
    }

    [Fact]
    public void However_well_a_bent_panel_is_measured_what_it_rolls_is_known_to_a_tenth()
    {
        var request = Reports.Of() with
        {
            GroundChecks = [new ClearanceCheck(GroundCheckKind.DamageInspection, false), new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 1.2, 0.01)],
        };

        var evidence = new Evidence(request, new(Trainer.Airframe), Practice.Usual);
        var bent = evidence.Posterior.Explanations.Single(explanation => explanation.Present is [(int)Cause.DamageOrMisassembly]);

        // A tenth of what is read; the level's own hundredth of a degree and the prior hardly count beside it.
        Assert.InRange(Math.Sqrt(bent.Covariance[0]) / Math.Abs(bent.Amplitudes[bent.Traces[0]]), 0.09, 0.11);
        var set = evidence.Posterior.Explanations.Single(explanation => explanation.Present is [(int)Cause.PanelIncidenceDifference]);
        Assert.Equal(0.01, Math.Sqrt(set.Covariance[0]), 1e-3);
    }

    [Fact]
    public void A_flap_and_a_panel_fly_alike_and_the_answer_says_so()
    {
        var points = GoodPoints.Select(point => Reports.Flown(Trainer.Airframe, point, flight => 0.15 * RadPerDeg * flight.PanelIncidence));

        var response = Reports.Of([.. points]).Assess();

        Assert.Contains(response.Indistinguishable, group =>
            group.Contains(Cause.PanelIncidenceDifference) && group.Contains(Cause.FlapDifference));
        Assert.Contains(response.NextTests, test => test.Test == "ground-check:flap-difference");
    }

    [Fact]
    public void Vague_evidence_gives_a_vague_answer()
    {
        var vague = Reports.Of(Trainer.Point(Manoeuvre.ReleaseWheel, 90, new Rolls(RollSide.Left, RollStrength.Slowly))).Assess();
        var sharp = Reports.Example.Assess();

        Assert.True(vague.RollTendency!.Mean < 0);
        Assert.True(vague.RollTendency.High - vague.RollTendency.Low > sharp.RollTendency!.High - sharp.RollTendency.Low);
        Assert.True(vague.Causes.Max(cause => cause.Probability) < 0.7);
    }

    [Fact]
    public void A_correction_that_changed_nothing_speaks_against_its_cause()
    {
        var before = Reports.Example.Assess().Of(Cause.PanelIncidenceDifference).Probability!.Value;
        var request = Reports.Example with
        {
            Events = [.. Reports.Example.Events, new(EventKind.CorrectionWithoutEffect, Cause.PanelIncidenceDifference)],
        };

        Assert.True(request.Assess().Of(Cause.PanelIncidenceDifference).Probability < before - 0.1);
    }

    [Fact]
    public void A_wing_that_was_off_makes_its_incidence_more_credible()
    {
        var without = Reports.Example with { Events = [] };

        Assert.True(without.Assess().Of(Cause.PanelIncidenceDifference).Probability
            < Reports.Example.Assess().Of(Cause.PanelIncidenceDifference).Probability);
    }

    [Fact]
    public void The_reported_load_goes_to_its_own_line_and_not_to_a_cause()
    {
        var heavy = Trainer.Aboard(77, 77, 20, 35);
        var points = GoodPoints.Select(point => Reports.Flown(Trainer.Airframe, point with { Load = heavy }, _ => default));

        var response = Reports.Of([.. points]).Assess();

        // Fifteen litres at about 0.068 °/s each, worked out by hand in the direction tests.
        Assert.InRange(response.LoadContribution!.Mean, 0.85, 1.15);
        Assert.InRange(response.RollTendency!.Mean, -0.25, 0.25);
        Assert.True(response.Of(Cause.PanelIncidenceDifference).Probability < 0.2);
    }

    [Fact]
    public void Suggested_test_points_keep_inside_the_airframes_speeds()
    {
        var slow = Trainer.Airframe with { SpeedsKt = new(40, 60, 70, 75, 90) };

        var tests = Assessor.Assess(Reports.Example, slow).NextTests;

        foreach (var test in tests.Where(test => test.Test.StartsWith("test-point:release-wheel", StringComparison.Ordinal)))
            Assert.InRange(int.Parse(test.Test.Split('@')[1][..^2], System.Globalization.CultureInfo.InvariantCulture), 40, 75);
        Assert.True(tests.Count > 0 && tests.All(test => test.Bits > 0 && test.Minutes > 0));
    }

    [Fact]
    public void Readings_that_a_manoeuvre_cannot_show_are_left_aside_and_said()
    {
        var response = Reports.Of(Trainer.Point(Manoeuvre.HoldLevel, 95, new BankAfter(10, 5), new BallReading(0))).Assess();

        Assert.Contains(response.Cautions, caution => caution.Contains("bank-after", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_request_gives_the_same_answer_to_the_last_digit() =>
        Assert.Equal(ContractWriter.Write(Reports.Example.Assess()), ContractWriter.Write(Reports.Example.Assess()));

    [Fact]
    public void Every_answer_can_be_written_and_holds_honest_probabilities() => Reports.Any.Sample(request =>
    {
        var response = request.Assess();
        ContractWriter.Write(response);
        Assert.All(response.Causes, cause => Assert.True(cause.Probability is null or (> 0 and < 1)));
        Assert.All(response.Causes, cause => Assert.True(cause.Amplitude is null || cause.Amplitude.Low <= cause.Amplitude.High));
        Assert.NotEqual(response.Correction is null, response.Refusals.Count == 0);
    }, iter: 100);
}
