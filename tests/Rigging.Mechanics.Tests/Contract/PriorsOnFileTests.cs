using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Assessment;

namespace Rigging.Mechanics.Tests.Contract;

/// <summary>What a school knows better of its type than the usual figures of experience.</summary>
public class PriorsOnFileTests
{
    static readonly string WithPrior = Examples.Edited(Examples.Airframe, "priors", """[{ "cause": "flap-difference", "probability": 0.6, "reason": "Its rods bend." }]""");

    [Fact]
    public void A_cause_that_is_common_on_a_type_is_more_credible_there_and_the_answer_says_why()
    {
        var words = Reports.Of(Trainer.Point(Manoeuvre.ReleaseWheel, 95, new Rolls(RollSide.Left, RollStrength.Slowly)));

        var own = Assessor.Assess(words, ContractReader.ReadAirframe(WithPrior).Value!);

        var usual = Practice.Usual.Prior(Cause.FlapDifference);
        var (before, after) = (words.Assess().Of(Cause.FlapDifference), own.Of(Cause.FlapDifference));
        Assert.True(usual.Probability < 0.6 && after.Probability > before.Probability + 0.1, $"{before.Probability} {after.Probability}");
        Assert.Contains(own.Cautions, caution => caution.Contains("flap-difference (Its rods bend)", StringComparison.Ordinal));
    }

    [Fact]
    public void What_an_entry_leaves_out_stays_usual()
    {
        var own = Practice.Usual.For(ContractReader.ReadAirframe(WithPrior).Value!);

        Assert.Equal(Practice.Usual.Prior(Cause.FlapDifference).Spread, own.Prior(Cause.FlapDifference).Spread);
        Assert.Equal(Practice.Usual.Prior(Cause.AileronFloat), own.Prior(Cause.AileronFloat));
        Assert.Equal(Practice.Usual.ModelError, own.ModelError);
    }

    [Fact]
    public void They_survive_writing_and_reading()
    {
        var airframe = ContractReader.ReadAirframe(WithPrior).Value!;

        Assert.Equal(airframe.Priors, ContractReader.ReadAirframe(ContractWriter.Write(airframe)).Value!.Priors);
    }

    [Theory]
    [InlineData("""[{ "cause": "gremlins", "reason": "seen" }]""", "$.priors[0].cause", "one of fuel-and-loading")]
    [InlineData("""[{ "cause": "slipstream", "probability": 0, "reason": "seen" }]""", "$.priors[0].probability", "a number from 0.001 to 0.9")]
    [InlineData("""[{ "cause": "slipstream", "spread": -1, "reason": "seen" }]""", "$.priors[0].spread", "a number from 0.0001 to 1000")]
    [InlineData("""[{ "cause": "slipstream", "probability": 0.2 }]""", "$.priors[0].reason", "a text")]
    [InlineData("""[{ "cause": "slipstream", "reason": "one" }, { "cause": "slipstream", "reason": "two" }]""", "$.priors", "each cause once")]
    public void A_spoilt_one_is_refused_by_field(string json, string faultAt, string wanted)
    {
        var fault = Assert.Single(ContractReader.ReadAirframe(Examples.Edited(Examples.Airframe, "priors", json)).Faults);

        Assert.Equal(faultAt, fault.Path);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }
}
