using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>Which way an edge moved, how far, and with which tool, against what the plan and the settings say.</summary>
public class DirectionProofTests
{
    const string Fork = """{ "mmPerTurn": 1.06, "elevationDeg": 35, "strutsApartM": 0.68, "fittingYM": 2.4, "leastTurns": 2, "greatestTurns": 14, "stepTurns": 0.5, "source": "invented" }""";

    static readonly AirframeOnFile Forked = AirframeWith("strutFork", Fork, "strut-at-each-spar");

    static Decision With(MovementMeasured? measured, Func<Facts, Facts>? change = null) => Try(Torqued, Mechanic, Done with { Movements = measured is null ? null : [measured] }, change);

    static BrokenRule Broken(Decision decision) => Assert.Single(Assert.IsType<Decision.Refused>(decision).Broken);

    static MovementMeasured Proof(Decision decision) => Assert.Single(((WorkDone)Assert.IsType<Decision.Accepted>(decision).Entry.Fact).Movements!);

    [Fact]
    public void Words_alone_prove_nothing()
    {
        var rule = Broken(Try(Torqued, Mechanic, Done with { Movements = null, DirectionProof = "Dial indicator at the root trailing edge: 0.9 mm down." }));

        Assert.Equal(("direction-not-proved", "movementLeftEccentric.amount"), (rule.Code, rule.Field));
        Assert.Equal("direction-not-proved", Broken(Try(Torqued, Mechanic, Done with { Movements = [SeenDown with { Control = Control.RightEccentric }] })).Code);
    }

    [Fact]
    public void The_opposite_way_is_refused_whatever_reason_is_given()
    {
        var rule = Broken(With(SeenDown with { Way = Seen.Up, OtherwiseBecause = "The dial was on the other side." }));

        Assert.Equal(("moved-the-wrong-way", "movementLeftEccentric.way"), (rule.Code, rule.Field));
        Assert.Equal("The rear spar was measured to move up; the left wing eccentric was to move it down. Stop: turn it back to where it was found, and find out why before anything else is moved.", rule.Sentence);
    }

    /// <summary>Left where the plan did not want it, the other side of where it was found: that is not what was agreed on, whatever the settings say.</summary>
    [Fact]
    public void A_move_against_the_plan_is_refused_though_the_settings_say_the_same() =>
        Assert.Equal("moved-the-wrong-way", Broken(Try(Torqued, Mechanic, Done with { AsLeft = new(-45, -45, 0, 0), DiffersBecause = "Looked thick.", Movements = [SeenDown with { Way = Seen.Up, Amount = 0.81 }] })).Code);

    [Theory, InlineData(Seen.Still, "did-not-move"), InlineData(Seen.Left, "not-a-choice"), InlineData(Seen.NotRecorded, "not-a-choice")]
    public void An_edge_of_a_wing_goes_up_or_down(Seen way, string code) => Assert.Equal(code, Broken(With(SeenDown with { Way = way })).Code);

    [Fact]
    public void Half_the_size_is_asked_about_and_a_reason_is_kept()
    {
        var rule = Broken(With(SeenDown with { Amount = 0.46 }));

        Assert.Equal(("size-needs-reason", "movementLeftEccentric.otherwiseBecause"), (rule.Code, rule.Field));
        Assert.Contains("moved 0.46\u202Fmm down; 0.93\u202Fmm was to be expected, give or take", rule.Sentence, StringComparison.Ordinal);
        Assert.Equal("size-needs-reason", Broken(With(SeenDown with { Amount = 1.4 })).Code);
        Assert.Equal("The dial touched the fairing.", Proof(With(SeenDown with { Amount = 0.46, OtherwiseBecause = "The dial touched the fairing." })).OtherwiseBecause);
    }

    [Fact]
    public void A_reason_for_a_size_that_is_as_expected_is_none() =>
        Assert.Equal("nothing-differs", Broken(With(SeenDown with { OtherwiseBecause = "The dial touched the fairing." })).Code);

    /// <summary>2 · 1.8 mm · sin 15° is 0.9317 mm at the rear spar, 0.88 m behind the front spar; 1.4 m behind it is 1.4 / 0.88 as much; and atan(0.9317 / 880) as an angle.</summary>
    [Fact]
    public void What_was_to_be_expected_is_where_it_was_measured_and_stands_in_the_entry()
    {
        var atSpar = Proof(With(SeenDown));
        Assert.Equal(("DI-1", 0.01, Today.PlusDays(30)), (atSpar.ToolCode, atSpar.ToolStep, atSpar.CalibrationDue));
        Assert.Equal(0.93, atSpar.Expected!.Value);
        Assert.Equal(Math.Round(0.9317 * 1400 / 880, 2), Proof(With(SeenDown with { Aft = 1400, Amount = 1.48 })).Expected!.Value);
        Assert.Equal(0.9317 / 25.4, Proof(With(SeenDown with { Unit = MovementUnit.Inch, Amount = 0.037 })).Expected!.Value, 4);
    }

    /// <summary>Half a flat is 0.061°, and a level of 0.05° shows one step or two.</summary>
    [Fact]
    public void A_level_that_is_too_coarse_for_the_move_proves_nothing()
    {
        var rule = Broken(With(new(Control.LeftEccentric, Seen.Down, 0.05, MovementUnit.Degree, null, Level.Id)));

        Assert.Equal(("tool-too-coarse", "movementLeftEccentric.tool"), (rule.Code, rule.Field));
        Assert.Contains("INC-1 shows steps of 0.05°, and the move is 0.06°", rule.Sentence, StringComparison.Ordinal);
        var fine = Level with { Scale = new(MovementUnit.Degree, 0.01) };
        Assert.Equal(0.06, Proof(With(new(Control.LeftEccentric, Seen.Down, 0.06, MovementUnit.Degree, null, Level.Id), facts => facts with { Tools = new Dictionary<ToolId, Tool> { [fine.Id] = fine } })).Expected!.Value);
    }

    [Fact]
    public void The_tool_is_on_the_list_in_calibration_and_shows_what_was_read()
    {
        Decision Tool(Tool tool) => With(SeenDown, facts => facts with { Tools = new Dictionary<ToolId, Tool> { [Dial.Id] = tool } });

        Assert.Equal("tool-unknown", Broken(With(SeenDown with { Tool = new(Guid.NewGuid()) })).Code);
        Assert.Equal("tool-out-of-calibration", Broken(Tool(Dial with { CalibrationDue = Today.PlusDays(-1) })).Code);
        Assert.Equal("tool-scale-missing", Broken(Tool(Dial with { Scale = null })).Code);
        Assert.Equal("tool-scale-missing", Broken(With(SeenDown with { Tool = Level.Id })).Code);
        Assert.Equal("value-out-of-range", Broken(With(SeenDown with { Amount = 0 })).Code);
        Assert.Equal("value-out-of-range", Broken(With(SeenDown with { Amount = 400 })).Code);
        Assert.Equal("named-twice", Broken(Try(Torqued, Mechanic, Done with { Movements = [SeenDown, SeenDown] })).Code);
    }

    /// <summary>A turn and a half in of 1.06 mm at 35°: the rear spar comes down 2.77 mm at the strut, 0.234° over 680 mm.</summary>
    [Theory]
    [InlineData(Seen.Up, 2.77, MovementUnit.Millimetre, "moved-the-wrong-way")]
    [InlineData(Seen.Down, 2.75, MovementUnit.Millimetre, null)]
    [InlineData(Seen.Down, 1.4, MovementUnit.Millimetre, "size-needs-reason")]
    [InlineData(Seen.Down, 0.25, MovementUnit.Degree, null)]
    [InlineData(Seen.Down, 0.1, MovementUnit.Degree, "size-needs-reason")]
    public void A_rear_strut_fork_is_proved_at_the_rear_spar_or_with_a_level(Seen way, double amount, MovementUnit unit, string? code)
    {
        var work = Checked
            .Do(Mechanic, HalfAFlat with { Moves = [new(Control.RightStrutFork, null, null, "A turn and a half in.", 10, 8.5)] })
            .Do(Mechanic, new WorkStarted("Padded stand.", null)).Do(Mechanic, new AsFound(BushingAngles.None, null, Adjusters: [new(Control.RightStrutFork, 10)])).Do(Mechanic, Torque).MeasuredAgain();
        var done = Done with
        {
            AsLeft = BushingAngles.None,
            AdjustersAsLeft = [new(Control.RightStrutFork, 8.5)],
            Movements = [new(Control.RightStrutFork, way, amount, unit, null, unit == MovementUnit.Degree ? Level.Id : Dial.Id)],
        };

        Assert.Equal(code, Try(work, Mechanic, done, facts => facts with { Airframe = Forked }) is Decision.Refused refused ? Assert.Single(refused.Broken).Code : null);
    }

    [Theory]
    [InlineData(Control.AileronTab, 0, 2, Seen.Down, null)]
    [InlineData(Control.AileronTab, 0, 2, Seen.Up, "moved-the-wrong-way")]
    [InlineData(Control.RudderTab, 3, -1, Seen.Right, null)]
    [InlineData(Control.RudderTab, 3, -1, Seen.Left, "moved-the-wrong-way")]
    [InlineData(Control.RudderTab, 3, -1, Seen.Down, "not-a-choice")]
    [InlineData(Control.LeftFlapRod, 0, 1, Seen.Down, null)]
    [InlineData(Control.LeftFlapRod, 0, 1, Seen.Up, "moved-the-wrong-way")]
    public void A_tab_and_a_flap_are_proved_by_their_own_edge(Control control, double from, double to, Seen way, string? code)
    {
        var turns = control.InTurns();
        var work = Checked
            .Do(Mechanic, HalfAFlat with { Moves = [new(control, turns ? null : from, turns ? null : to, "As agreed.", turns ? from : null, turns ? to : null)] })
            .Do(Mechanic, new WorkStarted("Not needed.", null)).Do(Mechanic, new AsFound(BushingAngles.None, null, Adjusters: [new(control, from)])).MeasuredAgain();
        // A turn of 1.27 mm on an arm of 75 mm is 0.97°.
        var done = Done with
        {
            AsLeft = BushingAngles.None,
            AdjustersAsLeft = [new(control, to)],
            Movements = [new(control, way, turns ? 0.95 : Math.Abs(to - from), MovementUnit.Degree, null, turns ? Level.Id : Protractor.Id)],
            Surfaces = control switch { Control.RudderTab => [ControlSurface.Rudder], Control.LeftFlapRod => [ControlSurface.Flaps], _ => [ControlSurface.Ailerons] },
            Resets = [],
        };

        Assert.Equal(code, Try(work, Mechanic, done, facts => facts with { Airframe = Rodded }) is Decision.Refused refused ? Assert.Single(refused.Broken).Code : null);
    }

    [Fact]
    public void The_height_of_an_edge_needs_the_place_where_it_was_read()
    {
        var work = Checked.Do(Mechanic, HalfAFlat with { Moves = [new(Control.AileronTab, 0, 5, "5° down.")] })
            .Do(Mechanic, new WorkStarted("Not needed.", null)).Do(Mechanic, new AsFound(BushingAngles.None, null, Adjusters: [new(Control.AileronTab, 0)]));
        WorkDone Tab(double? aft, double amount) => Done with
        {
            AsLeft = BushingAngles.None,
            AdjustersAsLeft = [new(Control.AileronTab, 5)],
            Resets = [],
            Surfaces = [ControlSurface.Ailerons],
            Movements = [new(Control.AileronTab, Seen.Down, amount, MovementUnit.Millimetre, aft, Dial.Id)],
        };

        Assert.Equal("place-missing", Broken(Try(work, Mechanic, Tab(null, 3.5))).Code);
        Assert.Equal(Math.Round(40 * Math.Tan(5 * Math.PI / 180), 2), Proof(Try(work, Mechanic, Tab(40, 3.5))).Expected!.Value);
    }

    [Fact]
    public void What_was_left_as_it_was_found_needs_no_proof() =>
        Assert.IsType<Decision.Accepted>(Try(Torqued, Mechanic, Done with { AsLeft = new(-15, -15, 0, 0), DiffersBecause = "Seized.", Movements = null }));

    [Fact]
    public void The_signed_text_and_the_record_say_it_in_words()
    {
        const string Said = "Direction measured: left wing eccentric: rear spar 0.93\u202Fmm down, with DI-1 (steps of 0.01\u202Fmm, calibration due 2026-04-01); 0.93\u202Fmm was to be expected, give or take 0.13\u202Fmm.";

        Assert.Contains(Said, Worked.Entries[^1].Signature!.Text, StringComparison.Ordinal);
        Assert.Contains(Said, MaintenanceRecord.Compose(Worked, RuleSets.RuleSet.Shipped["united-states"], null, Certifier.Id), StringComparison.Ordinal);
    }
}
