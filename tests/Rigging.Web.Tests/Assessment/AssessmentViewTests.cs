using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Web.Assessment;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Assessment;

public class AssessmentViewTests
{
    static SquawkFile File(Ledger ledger, Func<Squawks.Rules.Facts, Squawks.Rules.Facts>? change = null) => new(ledger, (change ?? (facts => facts))(School.Facts(School.Mechanic)),
        new(School.Aircraft, "Q-TEST", "7", "ST-2", 1200), new(new Dictionary<Squawks.People.PersonId, string>(), new Dictionary<Squawks.People.CertificateId, string>(), []),
        new("Invented Flying School", NodaTime.DateTimeZone.Utc, "united-states"));

    [Fact]
    public void What_is_recorded_is_what_was_shown_and_it_is_recorded_once()
    {
        var view = AssessmentView.Of(File(School.Checked));

        Assert.False(view.IsRecorded);
        var recorded = School.Checked.Do(School.Mechanic, view.Assessment!.Fact);
        Assert.True(AssessmentView.Of(File(recorded)).IsRecorded);
        Assert.False(AssessmentView.Of(File(recorded.Do(School.Mechanic, School.Measured(Check.PanelIncidenceDifference, 0.3)))).IsRecorded);
    }

    [Fact]
    public void A_report_that_does_not_fit_the_airframe_is_named_and_breaks_no_page()
    {
        var view = AssessmentView.Of(File(School.Empty.Once(School.Report with { FuelRightL = 300 })));

        Assert.Contains(view.Assessment!.Assumed, sentence => sentence.StartsWith("300 L was reported in the right tank", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_an_airframe_on_file_nothing_is_computed() =>
        Assert.Null(AssessmentView.Of(File(School.Checked, facts => facts with { Airframe = null })).Assessment);

    [Fact]
    public void Causes_come_likeliest_first_and_those_not_assessed_last()
    {
        var causes = AssessmentView.Of(File(School.Checked)).Causes.ToList();

        Assert.Equal(Enum.GetValues<Cause>().Order(), causes.Select(cause => cause.Cause).Order());
        Assert.Equal(causes.Select(cause => cause.Probability ?? -1).OrderDescending(), causes.Select(cause => cause.Probability ?? -1));
        Assert.Null(causes[^1].Probability);
    }

    [Theory]
    [InlineData(Cause.PanelIncidenceDifference, 0.08, "right panel 0.08° more incidence")]
    [InlineData(Cause.FlapDifference, -0.2, "left flap 0.2° lower")]
    [InlineData(Cause.FuelAndLoading, -6, "6\u202FL more on the left than reported")]
    [InlineData(Cause.AileronFloat, 0.3, "0.3° toward right wing down")]
    [InlineData(Cause.Slipstream, -0.4, "0.4 of the usual slipstream less")]
    [InlineData(Cause.ControlFriction, 4, "4\u202FN at the wheel rim")]
    [InlineData(Cause.RudderOrFinOffset, 1.5, "1.5° of rudder, trailing edge left")]
    public void How_large_a_cause_is_stands_in_words_without_a_sign(Cause cause, double amplitude, string words) =>
        Assert.Equal(words, AssessmentWords.Amplitude(cause, amplitude, new(new(School.Airframe.Read()))));

    [Fact]
    public void Every_test_that_is_proposed_reads_as_a_sentence_of_the_trade()
    {
        foreach (var test in AssessmentView.Of(File(School.Called)).Assessment!.Response.NextTests.Select(next => next.Test))
            Assert.DoesNotMatch("ground-check|test-point|measure:|@", AssessmentWords.Test(test));
        Assert.Equal("In the air at 75\u202Fkt: wheel let go, feet keeping the ball centred", AssessmentWords.Test("test-point:release-wheel@75kt"));
        Assert.Equal("In the air at 75\u202Fkt, flap 10°: wheel let go, feet keeping the ball centred", AssessmentWords.Test("test-point:release-wheel@75kt,flap10"));
        Assert.Equal(["much", "something", "little"], ((double[])[0.9, 0.2, 0.02]).Select(AssessmentWords.Tells));
        Assert.Equal("On the ground: contour and fairing survey", AssessmentWords.Test("ground-check:contour-survey"));
    }

    [Fact]
    public void Every_piece_of_evidence_says_whether_it_agrees_and_what_it_did()
    {
        var lines = AssessmentView.Of(File(School.Checked)).Evidence;

        Assert.Contains(lines, line => line.What.StartsWith("6° left wing down after 10\u202Fs", StringComparison.Ordinal) && line.Did.Contains("moved the tendency by", StringComparison.Ordinal));
        Assert.Contains(lines, line => line.What == "On the ground: flaps at the up stop, right minus left");
    }

    [Fact]
    public void The_sliders_begin_where_the_assessment_stands_and_go_as_far_as_the_airframe_does()
    {
        var view = AssessmentView.Of(File(School.Checked));
        var what = view.What!;

        Assert.Equal(view.Assessment!.Response.RollTendency!.Mean, what.Expected(what.Start).Mean, 1e-9);
        Assert.InRange(what.SpeedsKt.From, 46, 95);
        Assert.True(what.SpeedsKt.To <= 108);
        Assert.True(what.MostFuelL > 0);
        Assert.True(what.Expected(what.Start with { FuelL = 10 }).Mean > what.Expected(what.Start).Mean);
    }
}
