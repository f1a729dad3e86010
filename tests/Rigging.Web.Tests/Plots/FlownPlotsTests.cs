using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Web.Plots;
using Control = Rigging.Mechanics.Contract.AdjustableControl;

namespace Rigging.Web.Tests.Plots;

/// <summary>Plots tell the truth: what was before the work, and what was read.</summary>
public class FlownPlotsTests
{
    static Ledger SignedTwice => School.Worked
        .Do(School.Inspector, School.Inspection with { Passed = false, Findings = "Stripe missing." })
        .Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done);

    static CheckFlown Flown(double kt, double fuelRight) => School.Flight with
    {
        TestPoints = $$"""
            [{"manoeuvre":"release-wheel","casKt":{{kt}},"pressureAltitudeFt":3000,"oatC":9,"powerPercent":65,"flapDeg":0,
              "load":{"seatsKg":{"left":77,"right":77},"fuelL":{"left":25,"right":{{fuelRight}} } },"air":"smooth","readings":[{"kind":"bank-after","seconds":10,"deg":1}]}]
            """,
    };

    [Fact]
    public void Before_the_work_is_before_its_first_signature_however_often_it_was_signed()
    {
        Assert.Equal(-15, FlownEvidence.BeforeWork(School.Worked, School.Airframe)!.Request.StandsAt(Control.LeftEccentric));
        Assert.Equal(-15, FlownEvidence.BeforeWork(SignedTwice, School.Airframe)!.Request.StandsAt(Control.LeftEccentric));

        var plots = FlownPlots.Of(SignedTwice.Do(School.Inspector, School.Inspection).Do(School.Certifier, School.Approval).Do(School.Pilot, Flown(95, 25)), School.Airframe);
        var (before, after) = (plots[0].Curves[0], plots[0].Curves[1]);
        Assert.True(before.Points[^1].Mean < after.Points[^1].Mean - 1, plots[0].Says);
    }

    [Fact]
    public void Before_the_work_of_a_second_round_is_after_the_first_rounds_flight()
    {
        var second = School.Flown.Do(School.Mechanic, School.Verdict(VerdictWord.AdjustAgain)).Do(School.Mechanic, new RoundOpened("Not cured."));
        Assert.Equal(-15, FlownEvidence.BeforeWork(second, School.Airframe)!.Request.StandsAt(Control.LeftEccentric));

        var worked = second.Do(School.Mechanic, School.HalfAFlat with { Moves = [new(Squawks.Entries.Control.LeftEccentric, 15, 45, "Half a flat more.")] })
            .Do(School.Mechanic, new WorkStarted("Padded stand.", null)).Do(School.Mechanic, School.Found with { Bushings = new(15, 15, 0, 0) })
            .Do(School.Mechanic, School.Torque).MeasuredAgain().Do(School.Mechanic, School.Done with { AsLeft = new(45, 45, 0, 0) });
        Assert.Equal(15, FlownEvidence.BeforeWork(worked, School.Airframe)!.Request.StandsAt(Control.LeftEccentric));
    }

    [Fact]
    public void A_reading_drawn_as_on_another_flight_says_what_was_read_and_how_that_flight_differed()
    {
        var ledger = School.Approved.Do(School.Pilot, Flown(85, 40));

        var chart = FlownPlots.Of(ledger, School.Airframe)[0];

        var reported = Assert.Single(chart.Dots.Single(dots => dots.Telling == Telling.Earlier).Points);
        Assert.Equal((-6.0, "at 95\u202Fkt, with another load"), (reported.Read!.Value, reported.Read.Flown));
        Assert.NotEqual(-6, reported.Y, 1);
        Assert.Contains("as read, 10\u202Fs: 6° left wing down (at 95\u202Fkt, with another load)", chart.Says, StringComparison.Ordinal);
        // The flight that is drawn is drawn as read.
        Assert.Null(Assert.Single(chart.Dots.Single(dots => dots.Telling == Telling.Now).Points).Read);
    }
}
