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

    const string StrutFork = """{ "mmPerTurn": 1.27, "fittingYM": 2.8, "strutsApartM": 0.88, "elevationDeg": 35, "leastTurns": 4, "greatestTurns": 14, "stepTurns": 0.5, "source": "invented" }""";

    /// <summary>Set from here to there between two timed flights, no eccentric touched.</summary>
    static Ledger Set(params (Control Control, double? From, double? To)[] moves)
    {
        static List<AdjusterSetting>? Settings(IEnumerable<(Control Control, double? Value)> all) => [.. all.Where(one => one.Value is not null).Select(one => new AdjusterSetting(one.Control, one.Value!.Value))];
        var agreed = School.Checked.Do(School.Mechanic, School.HalfAFlat with { Moves = [.. moves.Select(move => new PlannedMove(move.Control, null, null, "As the manual says."))] })
            .Do(School.Mechanic, new WorkStarted("Padded stand under the strut fitting.", null))
            .Do(School.Mechanic, School.Found with { Other = "Counted.", Adjusters = Settings(moves.Select(move => (move.Control, move.From))) });
        var left = moves.Where(move => move.Control.MovesIncidence()).Aggregate(agreed, (ledger, _) => ledger.Do(School.Mechanic, School.Torque))
            .MeasuredAgain()
            .Do(School.Mechanic, School.Done with { AsLeft = School.Found.Bushings, OtherAsLeft = "Counted.", AdjustersAsLeft = Settings(moves.Select(move => (move.Control, move.To))), Surfaces = School.MovedBy(moves.Select(move => move.Control)) });
        return left
            .Do(School.Inspector, School.Inspection with { Observations = [.. left.State.ControlsToSee.Select(asked => asked with { Seen = asked.Expected })] })
            .Do(School.Certifier, School.Approval)
            .Do(School.Pilot, School.Flight with { TestPoints = Timed(-1) });
    }

    /// <summary>By hand: a turn of the rod is atan(1.27/75) = 0.97° of flap, and a left flap that hangs lower lifts its wing: right wing down.</summary>
    [Fact]
    public void Turns_of_a_flap_rod_are_a_lesson()
    {
        var lesson = Assert.Single(Lessons.Of(Set((Control.LeftFlapRod, 0, 0.5)), School.Rodded, sameAircraft: true));

        Assert.Equal(AdjustableControl.LeftFlapRod, lesson.Control);
        Assert.InRange(lesson.ModelledDegPerS, 0.3, 3);
    }

    [Fact]
    public void Degrees_of_an_aileron_tab_are_a_lesson()
    {
        // Bent down, the tab on the right drives its aileron up: the right wing goes down.
        var lesson = Assert.Single(Lessons.Of(Set((Control.AileronTab, 0, 2)), School.Airframe, sameAircraft: true));

        Assert.Equal(AdjustableControl.AileronTab, lesson.Control);
        Assert.InRange(lesson.ModelledDegPerS, 0.1, 20);
    }

    [Fact]
    public void Turns_of_a_strut_fork_are_a_lesson()
    {
        // A longer strut takes incidence off the left wing: left wing down.
        var lesson = Assert.Single(Lessons.Of(Set((Control.LeftStrutFork, 8, 8.5)), School.AirframeWith("strutFork", StrutFork, "strut-at-each-spar"), sameAircraft: true));

        Assert.Equal(AdjustableControl.LeftStrutFork, lesson.Control);
        Assert.InRange(lesson.ModelledDegPerS, -5, -0.1);
    }

    [Fact]
    public void Where_nobody_counted_or_several_were_moved_at_once_nothing_is_learned()
    {
        Assert.Empty(Lessons.Of(Set((Control.AileronTab, null, 2)), School.Airframe, sameAircraft: true));
        Assert.Empty(Lessons.Of(Set((Control.AileronTab, 0, null)), School.Airframe, sameAircraft: true));
        Assert.Empty(Lessons.Of(Set((Control.AileronTab, 0, 2), (Control.LeftFlapRod, 0, 1)), School.Rodded, sameAircraft: true));
    }

    [Fact]
    public void A_rudder_tab_does_nothing_to_the_roll_with_the_ball_centred_and_teaches_nothing_by_it() =>
        Assert.Empty(Lessons.Of(Set((Control.RudderTab, 0, 2)), School.Airframe, sameAircraft: true));

    [Fact]
    public void A_counted_move_leaves_the_flights_before_it_speaking_and_says_it_beside_them()
    {
        var onFile = School.Rodded;
        var request = EvidenceRequest.Of(Set((Control.LeftFlapRod, 1, 0)), onFile).Read();

        var moved = Assert.Single(request.TestPoints[0].MovedSince!);
        Assert.Equal((Cause.FlapDifference, 0.970), (moved.Cause, Math.Round(moved.Amplitude, 3)));
        Assert.Null(request.TestPoints[^1].MovedSince);
        Assert.Equal(0, request.Settings!.LeftFlapRodTurns);
    }
}
