using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

public class OutlookTests
{
    static readonly ReferencePoint Reference = Trainer.Airframe.Reference;

    /// <summary>Two speeds, the wing heavy by more at the higher: something of the wing, not of the load.</summary>
    static AssessmentRequest Flown => Reports.Of(
        Trainer.LetGo(70, -7),
        Trainer.LetGo(100, -10));

    static Outlook Expecting(AssessmentRequest request) => Outlook.Of(request, Trainer.Airframe, Practice.Usual)!;

    [Fact]
    public void At_the_reference_it_says_what_the_assessment_says()
    {
        var answer = Assessor.Assess(Flown, Trainer.Airframe);
        var expected = Expecting(Flown).RollTendency(new(Reference.CasKt, Reference.Load));

        Assert.Equal(answer.RollTendency!.Mean, expected.Mean, 1e-9);
        Assert.Equal(answer.RollTendency.Low, expected.Low, 1e-9);
    }

    [Fact]
    public void Fuel_on_the_high_side_and_less_incidence_on_the_high_side_both_help()
    {
        var outlook = Expecting(Flown);
        var now = outlook.RollTendency(new(Reference.CasKt, Reference.Load)).Mean;
        var withFuel = outlook.RollTendency(new(Reference.CasKt, Trainer.Aboard(77, 77, 20, 30))).Mean;
        var turned = outlook.RollTendency(new(Reference.CasKt, Reference.Load, [new(AdjustableControl.LeftEccentric, 0, 15)])).Mean;

        Assert.True(now < 0);
        Assert.True(withFuel > now);
        Assert.True(turned > now);
    }

    [Fact]
    public void A_move_that_is_thought_of_is_less_certain_than_none()
    {
        var outlook = Expecting(Flown);
        static double Width(Estimate estimate) => estimate.High - estimate.Low;

        Assert.True(Width(outlook.RollTendency(new(Reference.CasKt, Reference.Load, [new(AdjustableControl.LeftEccentric, -60, 60)]))) > Width(outlook.RollTendency(new(Reference.CasKt, Reference.Load))));
    }

    [Fact]
    public void The_bank_grows_along_the_manoeuvre_and_passes_by_what_was_read()
    {
        var outlook = Expecting(Flown);
        Estimate At(double seconds) => outlook.Expected(Flown.TestPoints[1], new BankAfter(seconds, 0))!;

        Assert.True(At(2).Mean > At(6).Mean && At(6).Mean > At(10).Mean);
        Assert.InRange(-10, At(10).Low - 2, At(10).High + 2);
        Assert.Null(outlook.Expected(Flown.TestPoints[0], new FuelDifference(0)));
    }

    [Fact]
    public void A_reading_against_all_others_misfits_most_and_moves_most()
    {
        var odd = Flown with
        {
            TestPoints = [.. Flown.TestPoints, .. Flown.TestPoints, Trainer.LetGo(85, 9)],
        };
        var outlook = Expecting(odd);

        Assert.Equal(4, outlook.Fits.MaxBy(fit => Math.Abs(fit.Misfit))!.Point);
        var most = outlook.Influences().MaxBy(influence => Math.Abs(influence.TendencyDegPerS))!;
        Assert.Equal(4, most.Point);
        Assert.True(most.TendencyDegPerS > 0);
    }

    [Fact]
    public void A_survey_that_finds_the_wings_alike_speaks_against_the_panel()
    {
        var surveyed = Flown with { GroundChecks = [new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0, 0.03)] };

        var survey = Assert.Single(Expecting(surveyed).Influences(), influence => influence.Point is null);

        Assert.Equal(Cause.PanelIncidenceDifference, survey.Cause);
        Assert.True(survey.With < survey.Without);
    }

    [Fact]
    public void With_nothing_observed_there_is_no_outlook() =>
        Assert.Null(Outlook.Of(Reports.Of(), Trainer.Airframe, Practice.Usual));
}
