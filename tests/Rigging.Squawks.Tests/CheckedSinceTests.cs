using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>What was measured before work still speaks after it, as far as the work is known in numbers.</summary>
public class CheckedSinceTests
{
    static readonly AirframeOnFile Forked = AirframeWith("strutFork",
        """{ "mmPerTurn": 1.27, "fittingYM": 2.8, "strutsApartM": 0.88, "elevationDeg": 35, "leastTurns": 4, "greatestTurns": 14, "stepTurns": 0.5, "source": "invented" }""", "strut-at-each-spar");

    static Ledger Surveyed => Checked.Do(Mechanic, Measured(Check.FlapDifference, 1.2)).Do(Mechanic, Measured(Check.TipIncidenceDifference, 0.4)).Do(Mechanic, Measured(Check.PanelIncidenceDifference, 0.1));

    static Ledger Moved(PlannedMove move, double? from, double? to)
    {
        var control = move.Control;
        AdjusterSetting[]? Stands(double? at) => at is { } value ? [new(control, value)] : null;
        var found = Surveyed.Do(Mechanic, HalfAFlat with { Moves = [move] }).Do(Mechanic, new WorkStarted("Padded stand.", null))
            .Do(Mechanic, new AsFound(new(null, null, null, null), "Looked at.", Adjusters: Stands(from)));
        return (control.MovesIncidence() ? found.Do(Mechanic, Torque) : found)
            .Once(Done with { AsLeft = new(null, null, null, null), OtherAsLeft = "Set.", AdjustersAsLeft = Stands(to), Surfaces = MovedBy(control) });
    }

    static double? Degrees(Ledger ledger, AirframeOnFile onFile, GroundCheckKind kind) =>
        EvidenceRequest.Of(ledger, onFile).Read().GroundChecks.OfType<AngleCheck>().SingleOrDefault(check => check.Kind == kind)?.Deg;

    /// <summary>By hand: half a turn of 1.27 mm on a horn of 75 mm is atan(0.635/75) = 0.485°; the right rod shorter, its flap comes up by that.</summary>
    [Fact]
    public void A_flap_check_is_carried_on_by_what_the_rod_did()
    {
        var ledger = Moved(new(Control.RightFlapRod, null, null, "Right rod half a turn in.", 1, 0.5), 1, 0.5);

        Assert.Equal(1.2 - 0.485, Degrees(ledger, Rodded, GroundCheckKind.FlapDifference)!.Value, 0.001);
        Assert.Equal(0.1, Degrees(ledger, Rodded, GroundCheckKind.PanelIncidenceDifference));
        Assert.False(CheckedSince.Of(ledger, Rodded).IsOvertaken(ledger.Entries.Last(entry => entry.Fact is GroundChecked { Check: Check.FlapDifference })));
    }

    [Fact]
    public void A_tip_check_is_carried_on_by_what_the_fork_did()
    {
        var onFile = Forked;
        var ledger = Moved(new(Control.RightStrutFork, null, null, "Right fork a turn and a half out.", 9, 10.5), 9, 10.5);

        // Longer on the right takes incidence off there: less of a difference, by the equal-roll measure more than the 0.216° a level shows.
        Assert.InRange(Degrees(ledger, onFile, GroundCheckKind.TipIncidenceDifference)!.Value, 0.4 - 0.4, 0.4 - 0.216);
    }

    [Fact]
    public void A_panel_check_is_carried_on_by_what_the_eccentric_did()
    {
        var ledger = Torqued.Do(Mechanic, Done);
        var before = Checked.Do(Mechanic, Measured(Check.PanelIncidenceDifference, 0.1)).Do(Mechanic, HalfAFlat).Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, Found).Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done);

        var change = Assert.Single(EvidenceRequest.Of(ledger, School.Airframe).Read().TestPoints[0].MovedSince!).Amplitude;
        Assert.Equal(0.1 + change, Degrees(before, School.Airframe, GroundCheckKind.PanelIncidenceDifference)!.Value, 1e-9);
    }

    [Fact]
    public void A_tab_stands_where_it_was_left_and_need_not_be_measured_again()
    {
        var ledger = Moved(new(Control.RudderTab, null, null, "Bend the rudder tab from 0° to 4° left.", 0, 4), 0, 3.5);

        Assert.Equal(3.5, Degrees(ledger, School.Airframe, GroundCheckKind.RudderTab));
        Assert.Equal(3.5, EvidenceRequest.Of(ledger, School.Airframe).Read().StandsAt(AdjustableControl.RudderTab));
    }

    [Fact]
    public void What_was_moved_by_nobody_knows_how_much_overtakes_the_check()
    {
        var ledger = Moved(new(Control.RightFlapRod, null, null, "Right rod in until the flaps sit alike."), null, null);

        Assert.Null(Degrees(ledger, Rodded, GroundCheckKind.FlapDifference));
        Assert.Equal(0.4, Degrees(ledger, Rodded, GroundCheckKind.TipIncidenceDifference));
        Assert.True(CheckedSince.Of(ledger, Rodded).IsOvertaken(ledger.Entries.Last(entry => entry.Fact is GroundChecked { Check: Check.FlapDifference })));
    }

    [Fact]
    public void Without_the_rods_data_on_file_nobody_knows_how_much_either() =>
        Assert.Null(Degrees(Moved(new(Control.RightFlapRod, null, null, "Right rod half a turn in.", 1, 0.5), 1, 0.5), School.Airframe, GroundCheckKind.FlapDifference));

    static string Timed(double deg, params double[] speeds) => $"[{string.Join(", ", speeds.Select(casKt => FormattableString.Invariant($$"""
        { "manoeuvre": "release-wheel", "casKt": {{casKt}}, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
          "readings": [{ "kind": "bank-after", "seconds": 10, "deg": {{deg}}, "method": "eye" }] }
        """)))}]";

    /// <summary>Six flights before a quarter of what was needed, one vague one after it: the one alone would let it pass.</summary>
    [Fact]
    public void A_flight_that_the_flights_before_a_known_move_speak_against_is_not_accepted_by_itself()
    {
        var before = Checked.Do(Pilot, new EvaluationFlown(Today, Timed(-16, 75, 85, 95, 105, 95, 105).Replace("eye", "stopwatch-horizon", StringComparison.Ordinal), null));
        var flown = before.Do(Mechanic, HalfAFlat).Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, Found).Do(Mechanic, Torque).MeasuredAgain().Do(Mechanic, Done)
            .Do(Inspector, Inspection).Do(Certifier, Approval).Do(Pilot, Flight with { TestPoints = Timed(-1, 95) });

        var verdict = LedgerVerdict.Of(flown, School.Airframe)!;

        Assert.True(verdict.Fact.Explanation.Contains("speak of it", StringComparison.Ordinal), verdict.Fact.Verdict + ": " + verdict.Fact.Explanation);
        Assert.Equal(VerdictWord.NotEnoughEvidence, verdict.Fact.Verdict);
    }
}
