using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

public class ExperienceTests
{
    const double PriorSd = 0.2;

    static EarlierCorrection Turned(double measured, double sd = 0.1, bool same = true, AdjustableControl control = AdjustableControl.LeftEccentric) =>
        new(control, 1, measured, sd, same);

    static MeasuredEffect Eccentric(params EarlierCorrection[] earlier) => Experience.Of(earlier).For(AdjustableControl.RightEccentric, PriorSd);

    [Fact]
    public void Without_a_pair_the_model_is_believed_as_far_as_it_is_trusted() =>
        Assert.Equal(new(1, PriorSd, 0), Eccentric());

    /// <summary>Normal with normal: weights 1/0.2² = 25 for the model and 1/0.1² = 100 for the pair, so (25 + 80)/125 and 1/√125.</summary>
    [Fact]
    public void One_pair_counts_by_its_own_precision()
    {
        var effect = Eccentric(Turned(0.8));

        Assert.Equal(0.84, effect.Factor, 1e-12);
        Assert.Equal(1 / Math.Sqrt(125), effect.Sd, 1e-12);
        Assert.Equal(1, effect.Pairs);
    }

    [Fact]
    public void Both_wings_eccentrics_are_one_kind_and_a_tab_is_another()
    {
        Assert.Equal(2, Eccentric(Turned(0.8), Turned(0.8, control: AdjustableControl.RightEccentric)).Pairs);
        Assert.Equal(0, Eccentric(Turned(0.8, control: AdjustableControl.RudderTab)).Pairs);
    }

    [Fact]
    public void Another_aeroplane_of_the_type_teaches_less() =>
        Assert.True(Eccentric(Turned(0.8, same: false)).Factor > Eccentric(Turned(0.8)).Factor);

    [Fact]
    public void Every_pair_narrows_what_is_known() => Gen.Double[0.3, 1.7].List[0, 8].Sample(measured =>
    {
        var pairs = measured.Select(value => Turned(value)).ToArray();
        return Eccentric([.. pairs, Turned(1)]).Sd < Eccentric(pairs).Sd;
    });

    [Fact]
    public void A_plan_on_an_aeroplane_whose_eccentric_does_less_turns_it_further_and_says_what_it_rests_on()
    {
        EarlierCorrection half = new(AdjustableControl.LeftEccentric, 1, 0.5, 0.03, true);
        static double Turn(AssessmentResponse answer) => answer.Correction!.Moves.Sum(move => move.Flats ?? 0);
        var usual = Assessor.Assess(Reports.Example, Trainer.Airframe);
        var taught = Assessor.Assess(Reports.Example with { EarlierCorrections = [half, half] }, Trainer.Airframe);

        Assert.True(Turn(taught) > Turn(usual));
        Assert.Contains(taught.Cautions, caution => caution.Contains("from 2 earlier corrections", StringComparison.Ordinal));
    }
}
