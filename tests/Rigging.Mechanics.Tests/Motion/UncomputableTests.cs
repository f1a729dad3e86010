using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Tests.Assessment;
using Rigging.Mechanics.Verification;

namespace Rigging.Mechanics.Tests.Motion;

/// <summary>Figures that determine no steady flight are refused with a code and the fields, and never answered.</summary>
public class UncomputableTests
{
    static readonly AssessmentRequest Flown = Reports.Of(Trainer.LetGo(70, -7), Trainer.LetGo(100, -10));

    static Airframe With(Func<LateralDerivatives, LateralDerivatives> change) => Trainer.Airframe with { Derivatives = change(Trainer.Airframe.Derivatives) };

    /// <summary>All of sideslip and rudder from one fin at one arm, 0.436 of the span.</summary>
    static readonly Airframe FinOnly = With(d => d with { CYBeta = -0.205, CnBeta = 0.205 * 0.436, CYRudder = 0.155, CnRudder = -0.155 * 0.436 });

    [Fact]
    public void Rudder_and_sideslip_of_one_fin_at_one_arm_are_refused_by_name_and_nothing_is_answered()
    {
        var refusal = Assert.Single(new Aeroplane(FinOnly).Refusals);
        Assert.Equal("rudder-like-sideslip", refusal.Code);
        Assert.Contains("look at derivatives.cYBeta, derivatives.cnBeta, derivatives.cYRudder, derivatives.cnRudder", refusal.Sentence, StringComparison.Ordinal);

        var answer = Assessor.Assess(Flown, FinOnly);
        Assert.Equal([refusal], answer.Refusals);
        Assert.Equal([refusal], ContractWriter.ReadBack(ContractWriter.Write(answer))!.Refusals);
        Assert.True(answer is { RollTendency: null, LoadContribution: null, NextTests: [], Correction: null });
        Assert.All(answer.Causes, cause => Assert.Equal((null, null), (cause.Probability, cause.Amplitude)));
        Assert.Null(Outlook.Of(Flown, FinOnly, Practice.Usual));
        var judged = CheckFlight.Judge(Flown, FinOnly, fuelMeasured: true);
        Assert.True(judged is { Verdict: Verdict.NotEnoughEvidence, RollTendency: null, LoadContribution: null });
        Assert.Equal([refusal.Sentence], judged.Reasons);
    }

    /// <summary>The very singular file may miss singularity by a rounding: so may one that is a few percent beside it, and neither is a number.</summary>
    [Theory]
    [InlineData(1), InlineData(0.97), InlineData(1.05), InlineData(1.15)]
    public void Near_singular_is_as_good_as_singular_and_no_number_comes_of_it(double share)
    {
        var near = FinOnly with { Derivatives = FinOnly.Derivatives with { CYBeta = share * FinOnly.Derivatives.CYBeta } };
        var point = new Aeroplane(near).Reference;

        Assert.True(point.Held.RudderApart < HeldFlight.LeastRudderApart);
        Assert.True(double.IsNaN(point.RollTendencyDegPerS(new(WeightNm: 200))));
        Assert.True(double.IsNaN(PilotReading.Predict(point, Manoeuvre.ReleaseWheel, new BankAfter(10, 0), new(WeightNm: 200))!.Value));
        Assert.Null(new PilotsCurrency(point).LitresThatNull(1));
        Assert.NotEmpty(new Aeroplane(near).Refusals);
    }

    /// <summary>By hand for the trainer, ailerons' yaw left out: 0.45·0.065 = 0.0293 and 0.16·0.070 = 0.0112 leave 0.0181 of 0.0405.</summary>
    [Fact]
    public void How_far_rudder_and_sideslip_are_apart_is_what_it_is_by_hand_and_no_unit_changes_it()
    {
        var apart = new Aeroplane(With(d => d with { CnAileron = 0 })).Reference.Held.RudderApart;
        var scaled = new Aeroplane(With(d => d with { CnAileron = 0, CYRudder = 10 * d.CYRudder, CnRudder = 10 * d.CnRudder })).Reference.Held.RudderApart;

        Assert.Equal(0.0181 / 0.0405, apart, 0.002);
        Assert.Equal(apart, scaled, 1e-12);
    }

    [Fact]
    public void What_is_estimated_among_the_figures_is_asked_for()
    {
        var estimated = FinOnly with { Estimated = [new(EstimableFigure.CYBeta, -0.205, "fin", "none", 40)] };

        Assert.EndsWith("fill in derivatives.cYBeta.", Assert.Single(new Aeroplane(estimated).Refusals).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_other_figure_that_no_flight_can_have_is_refused_by_its_own_code()
    {
        void Refuses(string code, string field, Airframe airframe)
        {
            var refusal = Assert.Single(new Aeroplane(airframe).Refusals);
            Assert.Equal(code, refusal.Code);
            Assert.Contains(field, refusal.Sentence, StringComparison.Ordinal);
            Assert.Equal([refusal], Assessor.Assess(Flown, airframe).Refusals);
        }

        Refuses("nose-not-held", "derivatives.cnBeta", With(d => d with { CnBeta = -0.01 }));
        Refuses("nose-not-held", "derivatives.cnBeta", With(d => d with { CnBeta = 0.005 }));
        Refuses("roll-not-damped", "derivatives.clP", With(d => d with { ClP = -0.02 }));
        Refuses("ailerons-too-weak", "derivatives.clAileron", With(d => d with { ClAileron = 0.001, CnAileron = 0 }));
        Refuses("ailerons-too-weak", "ailerons", Trainer.Airframe with { Ailerons = Trainer.Airframe.Ailerons with { OutboardYM = 2.751 }, Derivatives = Trainer.Airframe.Derivatives with { CnAileron = 0 } });
        Refuses("panel-too-narrow", "wing.panelInboardYM", Trainer.Airframe with { Wing = Trainer.Airframe.Wing with { PanelInboardYM = 4.819 } });
        Refuses("rudder-without-effect", "derivatives.cnRudder", With(d => d with { CYRudder = 0, ClRudder = 0.01, CnRudder = 0 }));
    }

    [Fact]
    public void An_aeroplane_that_flies_has_no_refusal() => Assert.Empty(new Aeroplane(Trainer.Airframe).Refusals);
}
