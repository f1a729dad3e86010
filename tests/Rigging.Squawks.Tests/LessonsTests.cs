using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Tests;

public class LessonsTests
{
    /// <summary>Timed at the reference with the load it is rigged for, air smooth.</summary>
    static string Timed(double deg) => FormattableString.Invariant($$"""
        [{ "manoeuvre": "release-wheel", "casKt": 95, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
           "readings": [{ "kind": "bank-after", "seconds": 10, "deg": {{deg}}, "method": "stopwatch-horizon" }] }]
        """);

    static Ledger Turned(double afterDeg) => School.Approved.Do(School.Pilot, School.Flight with { TestPoints = Timed(afterDeg) });

    static EarlierCorrection Lesson(double afterDeg) => Assert.Single(Lessons.Of(Turned(afterDeg), School.Airframe, sameAircraft: true));

    [Fact]
    public void A_turn_between_two_timed_flights_is_one_lesson()
    {
        var lesson = Lesson(-1);

        // Half a flat, 0.061° more on the left panel: the left wing comes up, some 0.5 °/s.
        Assert.InRange(lesson.ModelledDegPerS, 0.3, 0.7);
        Assert.InRange(lesson.SdDegPerS, 0.02, 1);
        Assert.True(lesson.SameAeroplane);
    }

    [Fact]
    public void The_less_it_rolls_afterwards_the_more_the_turn_did() =>
        Assert.True(Lesson(0).MeasuredDegPerS > Lesson(-4).MeasuredDegPerS);

    [Fact]
    public void Before_a_flight_after_it_a_turn_teaches_nothing() =>
        Assert.Empty(Lessons.Of(School.Approved, School.Airframe, sameAircraft: true));

    [Fact]
    public void A_replaced_wing_takes_what_was_learned_of_the_old_one_with_it()
    {
        var current = School.Empty.Do(School.Pilot, School.Report with { Happened = [Happening.WingReplaced] });

        Assert.Single(Lessons.Of(School.Checked, [Turned(-1)], School.Airframe));
        Assert.Empty(Lessons.Of(current, [Turned(-1)], School.Airframe));
    }

    [Fact]
    public void A_lesson_goes_on_record_with_the_assessment_that_used_it()
    {
        var made = LedgerAssessment.Of(School.Checked, School.Airframe, [Lesson(-1)]);

        Assert.Single(made.Request.EarlierCorrections!);
        Assert.Contains(made.Response.Cautions, caution => caution.Contains("from 1 earlier correction ", StringComparison.Ordinal));
    }
}
