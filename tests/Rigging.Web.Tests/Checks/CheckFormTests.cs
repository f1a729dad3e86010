using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Tests;
using Rigging.Web.Checks;
using Rigging.Web.Desk;

namespace Rigging.Web.Tests.Checks;

public class CheckFormTests
{
    static TypedFields Fields(params (string Name, string Value)[] typed)
    {
        var fields = TypedFields.Read(null);
        foreach (var (name, value) in typed) fields[name] = value;
        return fields;
    }

    static (GroundChecked Check, Typed Typed) Read(Check check, params (string, string)[] typed)
    {
        var errors = new Typed();
        return (CheckForm.Read(Fields(typed), errors, CheckSheet.Of(check), null), errors);
    }

    [Fact]
    public void Every_check_has_a_sheet_and_the_seven_prerequisites_come_first_in_the_trades_order()
    {
        Assert.Equal(Enum.GetValues<Check>().Order(), CheckSheet.All.Select(sheet => sheet.Check).Order());
        Assert.Equal(Enum.GetValues<Squawks.Entries.Prerequisite>(), CheckSheet.All.Take(7).Select(sheet => CheckUnits.Serves(sheet.Check)!.Value));
        Assert.DoesNotContain(CheckSheet.All.Skip(7), sheet => sheet.IsPrerequisite);
    }

    /// <summary>Signs as the contract has them: right minus left, trailing edge down, incidence up, ball right, right wing down positive; a rudder tab trailing edge left.</summary>
    [Theory]
    [InlineData(Check.FlapDifference, "right flap hangs lower")]
    [InlineData(Check.BallOffset, "ball lies right")]
    [InlineData(Check.PanelIncidenceDifference, "right panel has more incidence")]
    [InlineData(Check.TipIncidenceDifference, "right tip has more incidence")]
    [InlineData(Check.AileronFloat, "right aileron up, left aileron down")]
    [InlineData(Check.AileronNeutralOffset, "right aileron up, left aileron down")]
    [InlineData(Check.AileronTab, "bent down")]
    [InlineData(Check.RudderTab, "tab bent to the left")]
    public void The_words_for_a_side_stand_for_its_sign(Check check, string positive)
    {
        Assert.Equal(positive, CheckSheet.Of(check).Plus);
        Assert.Equal(0.5, Read(check, ("way", "plus"), ("value", "0.5"), ("side", "Right")).Check.Value);
        Assert.Equal(-0.5, Read(check, ("way", "minus"), ("value", "0,5"), ("side", "Right")).Check.Value);
        Assert.Equal(0.0, Read(check, ("way", "none"), ("side", "Right")).Check.Value);
    }

    [Theory]
    [InlineData("", "0.5", "way")]
    [InlineData("plus", "", "value")]
    [InlineData("plus", "-0.5", "value")]
    [InlineData("none", "0.5", "value")]
    [InlineData("plus", "half a degree", "value")]
    public void What_does_not_go_together_is_named_at_its_field(string way, string value, string field)
    {
        var (_, typed) = Read(Check.FlapDifference, ("way", way), ("value", value));

        Assert.Equal([field], typed.Errors.Select(error => error.Field));
        if (value.Length > 0 && field == "value") Assert.Contains(value, typed.Errors[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Pounds_and_fahrenheit_become_newtons_and_celsius()
    {
        var (check, typed) = Read(Check.CableTension, ("cable", "left aileron"), ("value", "36"), ("unit", "lbf"), ("sd", "2"), ("temperatureC", "68"), ("temperatureUnit", "F"));

        Assert.True(typed.Ok);
        Assert.Equal(36 * 4.4482216152605, check.Value!.Value, 3);
        Assert.Equal(2 * 4.4482216152605, check.Sd!.Value, 3);
        Assert.Equal(20, check.TemperatureC!.Value, 6);
    }

    [Fact]
    public void Cables_are_not_on_record_while_one_that_the_file_names_is_not_measured()
    {
        GroundChecked Of(string cable) => School.Tension(cable, 160) with { CablesOnFile = ["left aileron", "right aileron"] };
        CheckState State(Ledger ledger) => ChecksSoFar.StateOf(ledger, CheckedSince.Of(ledger, null), Check.CableTension);
        var one = School.Called.Once(Of("left aileron"));

        Assert.Equal((CheckState.Missing, CheckState.Recorded), (State(one), State(one.Once(Of("right aileron")))));
    }

    [Fact]
    public void Each_check_makes_a_reading_that_the_assessment_understands()
    {
        foreach (var sheet in CheckSheet.All)
        {
            var (check, typed) = Read(sheet.Check, ("way", "plus"), ("value", "0.5"), ("cable", "left"), ("side", "Left"), ("clear", "yes"), ("finding", "seen"), ("sd", "0.1"),
                ("fuel0", "25"), ("surface", "aileron-left"), ("upDeg", "20"), ("downDeg", "15"));
            Assert.True(typed.Ok, $"{sheet.Check}: {string.Join("; ", typed.Errors)}");
            Assert.Equal(sheet.Wanted is Wanted.Sided or Wanted.Force, check.Value is not null);
            Assert.Equal(sheet.Wanted == Wanted.Look, check.Clear is not null);
        }
    }
}
