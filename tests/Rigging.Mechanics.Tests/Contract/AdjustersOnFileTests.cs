using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Contract;

public class AdjustersOnFileTests
{
    static readonly string Complete = new (string Path, string Json)[]
    {
        ("wing.bracing", "\"strut-at-each-spar\""),
        ("strutFork", """
            { "mmPerTurn": 1.06, "elevationDeg": 32, "strutsApartM": 0.82, "fittingYM": 2.6, "leastTurns": 2, "greatestTurns": 14, "stepTurns": 0.5,
              "source": "invented for the demonstration", "enteredBy": "the office" }
            """),
        ("flapRod", """{ "mmPerTurn": 1.06, "hornArmMm": 62, "lengtheningLowers": true, "leastTurns": -5, "greatestTurns": 5, "stepTurns": 0.5, "source": "measured" }"""),
        ("ailerons.fixedTab.bend", """{ "maxDeg": 20, "gainIs": "measured", "source": "two flights" }"""),
        ("rudder.fixedTabBend", """{ "maxDeg": 25, "gainIs": "upper-bound", "source": "thin aerofoil", "enteredBy": "the office" }"""),
    }.Aggregate(Examples.Airframe, (text, edit) => Examples.Edited(text, edit.Path, edit.Json));

    [Fact]
    public void Every_adjuster_is_read_and_acts()
    {
        var airframe = ContractReader.ReadAirframe(Complete).Value!;
        var aeroplane = new Aeroplane(airframe);

        Assert.True(StrutFork.On(aeroplane, Side.Right, airframe.StrutFork!).Ok);
        Assert.True(FlapRod.On(Side.Left, airframe.FlapRod!).Ok);
        Assert.Equal(20, TabBend.OfAileron(airframe).Value!.Greatest);
        Assert.Equal("tab-gain-not-measured", Assert.Single(TabBend.OfRudder(airframe).Refusals).Code);
    }

    [Fact]
    public void They_survive_writing_and_reading()
    {
        var airframe = ContractReader.ReadAirframe(Complete).Value!;
        var again = ContractReader.ReadAirframe(ContractWriter.Write(airframe)).Value!;

        Assert.Equal(airframe.StrutFork, again.StrutFork);
        Assert.Equal(airframe.FlapRod, again.FlapRod);
        Assert.Equal(airframe.Ailerons, again.Ailerons);
        Assert.Equal(airframe.Rudder, again.Rudder);
        Assert.Equal("the office", again.StrutFork!.EnteredBy);
    }

    [Theory]
    [InlineData("strutFork.fittingYM", "0.4", "$.strutFork.fittingYM", "more than the wing's panelInboardYM")]
    [InlineData("strutFork.fittingYM", "5", "$.strutFork.fittingYM", "less than half the span")]
    [InlineData("strutFork.elevationDeg", "0", "$.strutFork.elevationDeg", "a number from 5 to 85 °")]
    [InlineData("strutFork.greatestTurns", "2", "$.strutFork.greatestTurns", "more than leastTurns")]
    [InlineData("strutFork.source", null, "$.strutFork.source", "a text")]
    [InlineData("strutFork.side", "\"left\"", "$.strutFork.side", "only the fields mmPerTurn, ")]
    [InlineData("flapRod.lengtheningLowers", null, "$.flapRod.lengtheningLowers", "true or false")]
    [InlineData("flapRod.stepTurns", "0", "$.flapRod.stepTurns", "a number from 0.1 to 2 turns")]
    [InlineData("flapRod.greatestTurns", "-6", "$.flapRod.greatestTurns", "more than leastTurns")]
    [InlineData("ailerons.fixedTab.bend.gainIs", "\"guessed\"", "$.ailerons.fixedTab.bend.gainIs", "one of measured, upper-bound")]
    [InlineData("ailerons.fixedTab.bend.source", null, "$.ailerons.fixedTab.bend.source", "a text")]
    [InlineData("rudder.fixedTabBend.maxDeg", "90", "$.rudder.fixedTabBend.maxDeg", "a number from 1 to 60 °")]
    public void A_spoilt_adjuster_is_refused_by_field(string path, string? json, string faultAt, string wanted)
    {
        var fault = Assert.Single(ContractReader.ReadAirframe(Examples.Edited(Complete, path, json)).Faults);

        Assert.Equal(faultAt, fault.Path);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }
}
