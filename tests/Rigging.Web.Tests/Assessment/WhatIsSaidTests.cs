using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;
using Rigging.Web.Assessment;
using Rigging.Web.Desk;
using Rigging.Web.Drawings;

namespace Rigging.Web.Tests.Assessment;

/// <summary>Words about an estimate never claim more than its interval holds.</summary>
public class WhatIsSaidTests
{
    static readonly Airframe Airframe = School.Airframe.Read();
    static readonly Equivalents Worth = new(new Aeroplane(Airframe));

    /// <summary>Wide and narrow, near none and far from it, lopsided, and with an end exactly on zero.</summary>
    static readonly Gen<(Estimate Estimate, double? Limit)> Estimates = Gen.Select(Gen.Double[-9, 9], Gen.Double[-9, 9], Gen.Double[0, 1], Gen.Int[0, 5], Gen.Double[0.1, 2], Gen.Bool,
        (one, other, share, kind, limit, limited) =>
        {
            var (low, high) = (Math.Min(one, other), Math.Max(one, other));
            if (kind == 1) (low, high) = (low / 100, high / 100);
            if (kind == 2) (low, high) = (0, high - low);
            if (kind == 3) (low, high) = (low - high, 0);
            if (kind == 4) (low, high) = (low / 10, high / 10);
            return (new Estimate(low + share * (high - low), low, high, "deg/s"), limited ? (double?)limit : null);
        });

    [Fact]
    public void No_sentence_about_an_estimate_contradicts_its_interval() => Estimates.Sample(one =>
    {
        var (estimate, limit) = one;
        var headline = AssessmentWords.Tendency(estimate, Airframe.Reference, limit);
        string[] said =
        [
            headline[..headline.IndexOf(':', StringComparison.Ordinal)],
            First(Directions.Expected(estimate.Mean, estimate.Low, estimate.High)),
            First(Directions.Expected(estimate.Mean, estimate.Low, estimate.High, Directions.Ball)),
            AeroplaneView.FromRate(estimate.Mean, estimate.Low, estimate.High, limit).Title,
            Directions.Short(estimate.Mean, estimate.Low, estimate.High, Directions.Bank) is var bank && bank.StartsWith("between", StringComparison.Ordinal) ? "" : bank,
        ];
        foreach (var words in said)
        {
            if (Says(words, "left")) Assert.True(estimate.High <= 0, $"{words}: {estimate}");
            if (Says(words, "right")) Assert.True(estimate.Low >= 0, $"{words}: {estimate}");
            if (words.StartsWith("No roll", StringComparison.OrdinalIgnoreCase)) Assert.True(-WhatIsKnown.UnfeltDegPerS <= estimate.Low && estimate.High <= WhatIsKnown.UnfeltDegPerS || Math.Abs(estimate.Mean) < 0.005, $"{words}: {estimate}");
            if (Says(words, "limit")) Assert.True(-limit!.Value <= estimate.Low && estimate.High <= limit.Value, $"{words}: {estimate}");
        }
        // What would take it out names a side as well.
        if (Worth.Of(estimate) is { } coins) Assert.True(estimate.Low >= 0 || estimate.High <= 0, $"{coins}: {estimate}");
        Assert.DoesNotContain("level", headline, StringComparison.OrdinalIgnoreCase);
    }, iter: 2000);

    static string First(string sentence) => sentence.Split(',')[0];

    static bool Says(string words, string word) => words.Contains(word, StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void A_tendency_from_seven_left_to_two_right_is_not_known_which_way()
    {
        var wide = new Estimate(-2.6, -7.3, 2.1, "deg/s");

        Assert.StartsWith("Not known which way: nine times in ten between 7.3\u202F°/s left wing down and 2.1\u202F°/s right wing down, with hands off", AssessmentWords.Tendency(wide, Airframe.Reference), StringComparison.Ordinal);
        Assert.Equal("not known which way, nine times in ten between 7.3\u202F°/s left wing down and 2.1\u202F°/s right wing down", Directions.Expected(-2.6, -7.3, 2.1));
        Assert.Null(Worth.Of(wide));
        Assert.Contains(Worth.Says(wide), line => line.Contains("between", StringComparison.Ordinal));
    }

    [Fact]
    public void No_roll_is_no_answer_to_a_complaint_of_yaw()
    {
        var yaw = School.Report with { RollsTo = Squawks.Entries.Side.None, BallWidths = -0.5, BankDeg = null, BankAfterS = null };
        Assert.True(AssessmentWords.IsOfYaw(yaw));
        Assert.False(AssessmentWords.IsOfYaw(School.Report with { BallWidths = -0.5 }));

        Assert.StartsWith("No roll to speak of; the complaint is of yaw:", AssessmentWords.Tendency(new(0, -0.03, 0.03, "deg/s"), Airframe.Reference, 0.5, ofYaw: true), StringComparison.Ordinal);
        Assert.StartsWith("The roll is inside its limit; the complaint is of yaw:", AssessmentWords.Tendency(new(0, -0.3, 0.3, "deg/s"), Airframe.Reference, 0.5, ofYaw: true), StringComparison.Ordinal);
        Assert.Equal("Feet off and the wings held level: ball 0.5\u202Fwidth left of centre, nine times in ten between 0.8\u202Fwidth left of centre and 0.2\u202Fwidth left of centre.", AssessmentWords.Yaw(new(-0.5, -0.8, -0.2, "widths")));
    }
}
