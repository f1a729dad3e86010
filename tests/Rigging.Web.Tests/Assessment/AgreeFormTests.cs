using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;
using Rigging.Web.Assessment;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Assessment;

public class AgreeFormTests
{
    static readonly CorrectionProposal HalfAFlat = new(
        [new(AdjustableControl.LeftEccentric, -15, 15, 0.5, TrailingEdge.Down, "clockwise, looking forward at the rear face", 0.061)], new(-0.15, -0.42, 0.12, "deg/s"), 0.97);

    static (CorrectionAgreed Fact, Typed Typed) Read(CorrectionProposal? proposal, params (string Name, string Value)[] typed)
    {
        var (fields, errors) = (new TypedFields(), new Typed());
        foreach (var (name, value) in typed.Prepend(("confirmed", "true"))) fields[name] = value;
        return (AgreeForm.Read(fields, errors, proposal), errors);
    }

    [Fact]
    public void The_proposed_correction_is_agreed_with_its_prediction_and_read_in_words()
    {
        var (fact, typed) = Read(HalfAFlat, ("plan", "proposed"), ("manual", "MM"), ("section", "57-10"), ("revision", "C"), ("reason", "Singled out."));

        Assert.True(typed.Ok);
        var move = Assert.Single(fact.Moves);
        Assert.Equal((Control.LeftEccentric, -15.0, 15.0), (move.Control, move.FromDeg, move.ToDeg));
        Assert.Equal("Left wing: trailing edge down by ½ flat, eccentric from 15° trailing edge up to 15° trailing edge down; front and rear bushing together. Turn it clockwise, looking forward at the rear face.", move.Instruction);
        Assert.False(fact.OwnPlan);
        Assert.Equal((-0.15, -0.42, 0.12), (fact.PredictedDegPerS, fact.PredictedLowDegPerS, fact.PredictedHighDegPerS));
    }

    [Fact]
    public void A_mechanics_own_move_says_its_way_in_words_and_claims_no_prediction()
    {
        var (fact, typed) = Read(HalfAFlat, ("plan", "own"), ("control", "RightEccentric"), ("from", "30"), ("fromWay", "plus"), ("to", "15"), ("toWay", "minus"), ("instruction", "Right wing up."));

        Assert.True(typed.Ok, string.Join("; ", typed.Errors));
        Assert.Equal((30.0, -15.0), (fact.Moves[0].FromDeg, fact.Moves[0].ToDeg));
        Assert.True(fact.OwnPlan);
        Assert.Null(fact.PredictedDegPerS);
    }

    static WhatIf What(AirframeOnFile onFile)
    {
        var made = LedgerAssessment.Of(School.Checked, onFile);
        return new(made.Elsewhere!, onFile.Read(), made.Request);
    }

    [Fact]
    public void Turns_of_a_rod_are_planned_in_numbers_and_foreseen()
    {
        TypedFields fields = new() { ["confirmed"] = "true", ["plan"] = "own", ["control"] = "LeftFlapRod", ["from"] = "1 1/2", ["fromWay"] = "plus", ["to"] = "0", ["instruction"] = "Check nut to the manual." };
        var typed = new Typed();

        var fact = AgreeForm.Read(fields, typed, null, What(School.Rodded));

        Assert.True(typed.Ok, string.Join("; ", typed.Errors));
        Assert.Equal((1.5, 0.0, null, null), (fact.Moves[0].FromTurns, fact.Moves[0].ToTurns, fact.Moves[0].FromDeg, fact.Moves[0].ToDeg));
        Assert.Equal("Left flap rod, 1.5 turns in: now 1.5 turns out from the length of the drawing, then at the length of the drawing. Check nut to the manual.", fact.Moves[0].Instruction);
        var foreseen = AgreeForm.Foreseen(fields, What(School.Rodded))!;
        Assert.Equal((foreseen.After.Mean, foreseen.After.Low), (fact.PredictedDegPerS, fact.PredictedLowDegPerS));
        // The left flap comes up: its wing loses lift and goes down, further than it does now.
        Assert.True(foreseen.After.Mean < foreseen.Before.Mean);
    }

    [Fact]
    public void What_is_moved_reads_as_the_numbers_do_whatever_is_added_to_them() =>
        Assert.Equal("Right wing eccentric: now 30° trailing edge down, then 15° trailing edge up; front and rear bushing together.",
            Read(HalfAFlat, ("plan", "own"), ("control", "RightEccentric"), ("from", "30"), ("fromWay", "plus"), ("to", "15"), ("toWay", "minus")).Fact.Moves[0].Instruction);

    [Fact]
    public void Only_what_the_airframe_has_is_offered()
    {
        var offered = AgreeForm.OwnControls(School.Airframe.Read()).Select(choice => choice.Value).ToList();

        Assert.Contains("LeftEccentric", offered);
        Assert.Contains("LeftFlapRod", offered);
        Assert.DoesNotContain("LeftStrutFork", offered);
        Assert.DoesNotContain("RepairOrReplace", offered);
    }

    [Theory, InlineData(-15.0, "15", "minus"), InlineData(0.0, "0", null), InlineData(1.5, "1.5", "plus")]
    public void How_it_stands_on_record_is_typed_in_as_people_type_it(double stands, string size, string? way) => Assert.Equal((size, way), AgreeForm.Typed(stands));

    [Theory, InlineData("AileronTab"), InlineData("RudderTab"), InlineData("RightStrutFork")]
    public void Any_other_control_may_be_planned_in_words_alone(string control)
    {
        var (fact, typed) = Read(null, ("plan", "own"), ("control", control), ("instruction", "As the manual says."));

        Assert.True(typed.Ok, string.Join("; ", typed.Errors));
        Assert.Equal((null, null), fact.Moves[0].Numbers());
        Assert.Null(fact.PredictedDegPerS);
    }

    [Fact]
    public void Degrees_of_a_tab_need_their_way() =>
        Assert.Equal(["toWay"], Read(null, ("plan", "own"), ("control", "AileronTab"), ("from", "0"), ("to", "3"), ("instruction", "Bend it.")).Typed.Errors.Select(error => error.Field));

    [Fact]
    public void Every_adjuster_on_file_that_somebody_recorded_can_be_supposed_to_move()
    {
        var ledger = School.Checked.Do(School.Mechanic, School.Found with { Adjusters = [new(Control.LeftFlapRod, 1), new(Control.RightFlapRod, 0)] });
        var made = LedgerAssessment.Of(ledger, School.Rodded);
        var what = new WhatIf(made.Elsewhere!, School.Rodded.Read(), made.Request);

        Assert.Equal([Control.LeftEccentric, Control.RightEccentric, Control.LeftFlapRod, Control.RightFlapRod, Control.RudderTab], what.Adjusters.Select(slider => slider.Control).Order());
        var rod = what.Adjusters.Single(slider => slider.Control == Control.LeftFlapRod);
        Assert.Equal((1.0, -5.0, 5.0, 0.5), (rod.Found, rod.Least, rod.Greatest, rod.Step));
        var turned = what.Start.With(rod, 0);
        Assert.Equal(what.After(new(Control.LeftFlapRod, null, null, "", 1, 0))!.After.Mean, what.Expected(turned).Mean, 1e-9);
        Assert.Empty(turned.With(rod, 1).Moved);
    }

    [Theory]
    [InlineData("plan", "", "plan")]
    [InlineData("plan", "proposed", "plan")]
    [InlineData("confirmed", "", "confirmed")]
    [InlineData("from", "-30", "from")]
    [InlineData("fromWay", "", "fromWay")]
    [InlineData("to", "far", "to")]
    [InlineData("control", "", "control")]
    public void What_is_missing_or_wrong_is_named_at_its_field(string field, string value, string at)
    {
        var (_, typed) = Read(null, ("plan", "own"), ("control", "LeftEccentric"), ("from", "30"), ("fromWay", "plus"), ("to", "15"), ("toWay", "minus"), (field, value));

        Assert.Equal([at], typed.Errors.Select(error => error.Field));
    }

    [Theory]
    [InlineData("ST-2 Maintenance Manual, chapter 57-10, revision C (invented)", "ST-2 Maintenance Manual", "chapter 57-10", "C (invented)")]
    [InlineData("Some manual", "Some manual", "", "")]
    [InlineData(null, "", "", "")]
    public void The_manual_on_file_is_offered_in_its_parts(string? onFile, string manual, string section, string revision) =>
        Assert.Equal((manual, section, revision), AgreeForm.DataOnFile(onFile));

    [Theory, InlineData("LeftFlapRod", "book value"), InlineData("AileronNeutral", "book value"), InlineData("RudderTab", "flutter"), InlineData("AileronTab", "flutter")]
    public void Who_plans_to_move_what_only_hides_a_heavy_wing_is_cautioned_there(string control, string said) =>
        Assert.Contains(said, AgreeForm.Mind(control), StringComparison.Ordinal);

    [Theory, InlineData("LeftEccentric"), InlineData(null), InlineData("nonsense")]
    public void Other_plans_are_left_alone(string? control) => Assert.Null(AgreeForm.Mind(control));
}
