using CsCheck;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;
using Check = Rigging.Squawks.Entries.Check;

namespace Rigging.Squawks.Tests;

/// <summary>A check counts by what it measured, with what, and against what the airframe file allows.</summary>
public class CheckValueTests
{
    /// <summary>Two cables with limits at 20 °C, one of which says how it stretches; ailerons with limits. Invented.</summary>
    static readonly AirframeOnFile WithLimits = AirframeOnFile.Of("st2", 3, AirframeWith("cables", """
        [ { "name": "left aileron", "tension": { "leastN": 150, "greatestN": 190, "degC": 20, "source": "Manual 27-10",
            "stretch": { "stiffnessN": 400000, "expansionPerK": 0.0000117, "airframeExpansionPerK": 0.0000234 } } },
          { "name": "right aileron", "tension": { "leastN": 150, "greatestN": 190, "degC": 20, "source": "Manual 27-10" } } ]
        """).Json.Replace("\"cables\"", """
        "travel": [ { "surface": "ailerons", "upLeastDeg": 19, "upGreatestDeg": 21, "downLeastDeg": 14, "downGreatestDeg": 16, "alikeWithinDeg": 1, "source": "Manual 27-10" } ], "cables"
        """, StringComparison.Ordinal))!;

    static Decision TryOn(AirframeOnFile airframe, Ledger ledger, Fact fact) => School.Try(ledger, Mechanic, fact, facts => facts with { Airframe = airframe });

    static Ledger Limited(Ledger ledger, Fact fact) => TryOn(WithLimits, ledger, fact) switch
    {
        Decision.Accepted { Entry: var entry } => ledger.With(entry),
        Decision.Refused { Broken: var broken } => throw new InvalidOperationException(string.Join("; ", broken)),
        _ => throw new InvalidOperationException(),
    };

    static void RefusedOn(string code, Ledger ledger, Fact fact) =>
        Assert.Contains(code, Assert.IsType<Decision.Refused>(TryOn(WithLimits, ledger, fact)).Broken.Select(broken => broken.Code));

    static GroundChecked Last(Ledger ledger) => (GroundChecked)ledger.Entries[^1].Fact;

    /// <summary>Whatever is entered by whomever in whatever order: what the gate takes for checked was measured, or said not to apply by somebody with a reason.</summary>
    [Fact]
    public void No_ledger_of_allowed_entries_passes_the_gate_with_a_check_without_its_value() => Walks.All.Sample(steps =>
    {
        foreach (var moment in Walks.Walk(steps))
        {
            var checks = moment.After.Entries.Select(entry => entry.Fact).OfType<GroundChecked>().ToList();
            foreach (var prerequisite in Enum.GetValues<Prerequisite>().Except(moment.After.State.MissingPrerequisites))
            {
                Assert.Contains(checks, check => CheckUnits.Serves(check.Check) == prerequisite && (check.HasItsValue() || !string.IsNullOrWhiteSpace(check.NotApplicableReason)));
            }
            if (moment.Decision is Decision.Accepted { Entry.Fact: CorrectionAgreed agreed } && agreed.Moves.Any(move => move.Control.MovesIncidence()))
                Assert.Contains(checks, check => check is { Check: Check.FuelAndSeats, Fuel.Count: > 0 });
        }
    }, iter: 150);

    [Theory, InlineData(Check.FuelAndSeats, Prerequisite.FuelAndSeats), InlineData(Check.FlapDifference, Prerequisite.Flaps), InlineData(Check.RudderTab, Prerequisite.Rudder)]
    public void What_an_older_ledger_tells_in_words_only_ticks_nothing_off(Check check, Prerequisite prerequisite)
    {
        var told = School.Called.Once(Measured(check, null) with { Finding = "Don't know." });

        Assert.Contains(prerequisite, told.State.MissingPrerequisites);
        Assert.DoesNotContain(prerequisite, School.Called.Once(Measured(check, null) with { NotApplicableReason = "There is none." }).State.MissingPrerequisites);
    }

    [Fact]
    public void Fuel_in_words_is_not_fuel_measured_for_the_assessment_either()
    {
        var told = School.Called.Once(Measured(Check.FuelAndSeats, null) with { Finding = "Don't know." });

        Assert.False(EvidenceRequest.Of(told, School.Airframe).Read().FuelAndSeatsMeasured);
        Assert.Contains(Mechanics.Contract.Prerequisite.FuelAndSeats, LedgerAssessment.Of(told, School.Airframe).Response.Prerequisites);
        Assert.DoesNotContain(Mechanics.Contract.Prerequisite.FuelAndSeats, LedgerAssessment.Of(School.Called.Do(Mechanic, Checks[0]), School.Airframe).Response.Prerequisites);
    }

    [Fact]
    public void Every_cable_that_the_file_names_is_measured_before_the_cables_are()
    {
        var one = Limited(School.Called, Tension("left aileron", 165, 20));
        Assert.Contains(Prerequisite.Cables, one.State.MissingPrerequisites);

        var both = Limited(one, Tension("right aileron", 165, 20));
        Assert.DoesNotContain(Prerequisite.Cables, both.State.MissingPrerequisites);
        RefusedOn("cable-unknown", one, Tension("balance cable", 165, 20));
    }

    [Fact]
    public void A_file_that_names_another_cable_later_closes_the_gate_again()
    {
        Assert.DoesNotContain(Prerequisite.Cables, Checked.State.MissingPrerequisites);

        var refused = Assert.IsType<Decision.Refused>(TryOn(WithLimits, Checked, HalfAFlat));

        Assert.Contains("right aileron", Assert.Single(refused.Broken).Sentence, StringComparison.Ordinal);
    }

    /// <summary>By hand: 400 kN · (23.4 − 11.7)·10⁻⁶ = 4.68 N per kelvin, so 10 K colder is 46.8 N less: 103.2 to 143.2 N.</summary>
    [Theory, InlineData(20, 149.9, false), InlineData(20, 150, true), InlineData(20, 190.1, false), InlineData(10, 143, true), InlineData(10, 144, false), InlineData(10, 103, false)]
    public void A_tension_is_held_against_the_files_limits_carried_to_its_temperature(double degC, double newtons, bool within)
    {
        var limit = Assert.Single(Last(Limited(School.Called, Tension("left aileron", newtons, degC))).Limits!);

        Assert.Equal((within, degC != 20), (limit.IsWithin(), limit.Estimated));
    }

    [Fact]
    public void Where_the_file_cannot_say_what_is_allowed_at_this_temperature_that_is_said_and_not_guessed()
    {
        var cold = Last(Limited(School.Called, Tension("right aileron", 165, 5)));

        Assert.Null(cold.Limits);
        Assert.Contains("on file at 20 °C only", cold.NoLimitsBecause, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cable_outside_its_limits_is_set_right_before_incidence_is_moved_or_with_it()
    {
        var slack = Limited(Limited(Checks.Where(check => check.Check != Check.CableTension).Aggregate(School.Called, Limited), Tension("left aileron", 120, 20)), Tension("right aileron", 165, 20));

        RefusedOn("out-of-limits-first", slack, HalfAFlat);
        Assert.IsType<Decision.Accepted>(TryOn(WithLimits, slack, HalfAFlat with { Moves = [.. HalfAFlat.Moves, new(Control.CableTension, null, null, "Left aileron cable to 170 N.")] }));
        Assert.IsType<Decision.Accepted>(TryOn(WithLimits, Limited(slack, Tension("left aileron", 165, 20)), HalfAFlat));
    }

    static Ledger JustTorquedWithLimits => ((Fact[])[.. Checks.Where(check => check.Check != Check.CableTension), Tension("left aileron", 165, 20), Tension("right aileron", 165, 20),
        HalfAFlat, new WorkStarted("Padded stand.", null), Found, Torque]).Aggregate(School.Called, Limited);

    [Fact]
    public void What_the_move_changed_is_measured_again_with_numbers_inside_the_limits_before_the_work_is_signed()
    {
        var work = JustTorquedWithLimits;
        RefusedOn("resets-missing", work, Done);
        Assert.Equal(["tension, left aileron", "tension, right aileron", "travel, left aileron", "travel, right aileron"], RecheckRules.Asked(work.State, WithLimits).Select(recheck => recheck.Name));

        var all = ((Fact[])[Tension("left aileron", 165, 20), Tension("right aileron", 120, 20), Travel(Side.Left, 19.2, 15), Travel(Side.Right, 20.8, 15)]).Aggregate(work, Limited);
        var refused = Assert.IsType<Decision.Refused>(TryOn(WithLimits, all, Done)).Broken;
        Assert.Equal(["left-out-of-limits", "left-out-of-limits"], refused.Select(broken => broken.Code));
        Assert.Contains("right aileron: 120 N, below 150 N to 190 N".Replace(" N", "\u00a0N", StringComparison.Ordinal), refused[0].Sentence, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("right less left up: 1.6°, above −1° to 1°", refused[1].Sentence, StringComparison.OrdinalIgnoreCase);

        var right = Limited(Limited(all, Tension("right aileron", 160, 20)), Travel(Side.Right, 19.8, 15));
        Assert.IsType<Decision.Accepted>(TryOn(WithLimits, right, Done));
        Assert.Contains("Measured again: Left aileron 19.2° up, 15° down, with PR-1.", Squawk.TextToSign(right, Done, School.Facts(Mechanic) with { Airframe = WithLimits }), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void What_was_measured_before_the_joint_was_torqued_is_not_measured_again()
    {
        Assert.IsType<Decision.Accepted>(School.Try(Torqued, Mechanic, Done));
        Refuses("resets-missing", Torqued.Do(Mechanic, Torque), Done);
        // The torque was entered late: it happened before the cables were measured.
        var start = Noon - NodaTime.Duration.FromHours(2);
        var late = Agreed.Do(Mechanic, new WorkStarted("Padded stand.", null, start)).Do(Mechanic, Found with { HappenedAt = start }).MeasuredAgain()
            .Do(Mechanic, Torque with { HappenedAt = Noon - NodaTime.Duration.FromHours(1) });
        Assert.IsType<Decision.Accepted>(School.Try(late, Mechanic, Done));
    }

    [Fact]
    public void Without_a_limit_on_file_the_mechanic_says_what_the_manual_allows()
    {
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.JustTorqued, Mechanic, Tension("left aileron", 160) with { Finding = null }));
        Assert.Equal(["limit-not-said"], refused.Broken.Select(broken => broken.Code));
    }

    [Fact]
    public void A_cable_that_the_aircraft_does_not_have_is_not_measured_again()
    {
        var rods = School.Called.Do(Mechanic, Measured(Check.CableTension, null) with { NotApplicableReason = "Push rods all the way." });
        var work = ((Fact[])[.. Checks.Where(check => check.Check != Check.CableTension), HalfAFlat, new WorkStarted("Padded stand.", null), Found, Torque, Travel(Side.Left, 20, 15), Travel(Side.Right, 20, 15)])
            .Aggregate(rods, (ledger, fact) => ledger.Do(Mechanic, fact));

        Assert.IsType<Decision.Accepted>(School.Try(work, Mechanic, Done));
    }

    /// <summary>A survey of both wings at two stations by a level whose own zero is off by 0.4°, in steps of 0.05°.</summary>
    static LevelSurvey Survey(double leftRoot, double rightRoot, double leftTip, double rightTip, double zero = 0.4, bool reversed = true)
    {
        LevelReading At(Side wing, double? out_, double deg) => new(wing, out_, deg + zero, (reversed ? -deg : deg) + zero);
        return new(0.05, 0.05, [At(Side.Left, null, 1), At(Side.Right, null, 1), At(Side.Left, 1, leftRoot), At(Side.Right, 1, rightRoot), At(Side.Left, 4, leftTip), At(Side.Right, 4, rightTip)]);
    }

    [Fact]
    public void A_levelled_survey_comes_to_the_panels_and_the_tips_difference_and_their_error()
    {
        var check = Last(School.Called.Do(Mechanic, Measured(Check.PanelIncidenceDifference, null) with { Tool = Protractor.Id, Survey = Survey(2, 2.3, 1, 1.3) }));

        Assert.Equal((0.3, 0), (check.Value!.Value, check.TipValue!.Value));
        Assert.InRange(check.Sd!.Value, 0.05, 0.2);
        var request = EvidenceRequest.Of(School.Called.Do(Mechanic, check), School.Airframe).Read();
        Assert.Equal([(Mechanics.Contract.GroundCheckKind.PanelIncidenceDifference, 0.3), (Mechanics.Contract.GroundCheckKind.TipIncidenceDifference, 0.0)],
            request.GroundChecks.OfType<Mechanics.Contract.AngleCheck>().Select(angle => (angle.Kind, angle.Deg)));
    }

    [Fact]
    public void A_reading_that_was_not_reversed_is_found()
    {
        var survey = Survey(2, 2.3, 1, 1.3);
        var wrong = survey with { Readings = [.. survey.Readings.Take(5), survey.Readings[5] with { ReversedDeg = survey.Readings[5].AsLaidDeg }] };

        Refuses("level-zero-moved", School.Called, Measured(Check.PanelIncidenceDifference, null) with { Tool = Protractor.Id, Survey = wrong });
    }

    [Fact]
    public void A_reading_beyond_the_levels_range_is_found() => Refuses("tool-out-of-range", School.Called,
        Measured(Check.PanelIncidenceDifference, null) with { Tool = Narrow.Id, Survey = Survey(2, 2.3, 1, 1.3) }, tools: Narrow);

    static readonly Tool Narrow = Protractor with { Id = new(Guid.Parse("00000000-0000-7000-8000-0000000000b9")), Code = "IN-9", Kind = ToolKind.Inclinometer, High = 2 };

    [Theory, InlineData(Check.CableTension), InlineData(Check.ControlFriction)]
    public void A_force_is_not_taken_from_a_tool_whose_range_nobody_knows(Check check)
    {
        var tool = Tensiometer with { Kind = check == Check.CableTension ? ToolKind.Tensiometer : ToolKind.SpringScale, Low = null };
        Refuses("tool-range-missing", School.Called, Tension("left aileron", 160) with { Check = check, Cable = check == Check.CableTension ? "left aileron" : null }, tools: tool);
    }

    /// <summary>Every check by every kind of tool: what the table does not name is refused, out of calibration it is refused whatever it is.</summary>
    [Fact]
    public void A_tool_of_another_kind_and_one_out_of_calibration_is_refused_for_every_check()
    {
        foreach (var check in Enum.GetValues<Check>())
        {
            foreach (var kind in Enum.GetValues<ToolKind>())
            {
                var tool = Tensiometer with { Kind = kind, Low = 0, High = 1000 };
                var codes = Codes(With(check) with { Tool = tool.Id }, tool);
                Assert.Equal(!ToolRules.Fitting(check).Contains(kind), codes.Contains("tool-wrong-kind"));
                if (ToolRules.Fitting(check).Contains(kind))
                    Assert.Equal(["tool-out-of-calibration"], Codes(With(check) with { Tool = tool.Id }, tool with { CalibrationDue = Today.PlusDays(-1) }));
            }
        }

        static IReadOnlyList<string> Codes(GroundChecked check, Tool tool) =>
            School.Try(School.Called, Mechanic, check, facts => facts with { Tools = new Dictionary<ToolId, Tool> { [tool.Id] = tool } }) is Decision.Refused { Broken: var broken }
                ? [.. broken.Select(rule => rule.Code)] : [];
    }

    static GroundChecked With(Check check) => check switch
    {
        Check.FuelAndSeats => Checks[0],
        Check.DamageInspection or Check.ContourSurvey => Measured(check, null) with { Clear = true, Finding = "Looked at." },
        Check.CableTension => Tension("left aileron", 160),
        Check.ControlTravel => Travel(Side.Left, 20, 15),
        Check.AileronTab => Measured(check, 2) with { Side = Side.Left },
        _ => Measured(check, 0.1),
    };

    static void Refuses(string code, Ledger ledger, Fact fact, Person? who = null, Tool? tools = null) =>
        Assert.Contains(code, Assert.IsType<Decision.Refused>(School.Try(ledger, who ?? Mechanic, fact,
            facts => tools is null ? facts : facts with { Tools = new Dictionary<ToolId, Tool> { [tools.Id] = tools } })).Broken.Select(broken => broken.Code));
}
