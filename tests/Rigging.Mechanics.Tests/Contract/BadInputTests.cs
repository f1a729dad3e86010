using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public sealed class BadInputTests
{
    /// <summary>Where the example is spoilt, with what (null removes it), where the fault is reported and what was wanted.</summary>
    [Theory]
    [InlineData("wing.stations[1].chordM", "-1.2", "$.wing.stations[1].chordM", "a number from 0.1 to 10 m")]
    [InlineData("wing.stations[1].chordM", "\"1.2\"", "$.wing.stations[1].chordM", "a number from 0.1 to 10 m")]
    [InlineData("wing.stations[1].chordM", null, "$.wing.stations[1].chordM", "a number from 0.1 to 10 m")]
    [InlineData("wing.stations[1].yM", "4.9", "$.wing.stations[2].yM", "more than 4.9")]
    [InlineData("wing.stations[1].yM", "0", "$.wing.stations[1].yM", "more than 0")]
    [InlineData("wing.stations[0].yM", "0.3", "$.wing.stations[0].yM", "the first station at the centreline")]
    [InlineData("wing.stations[2].yM", "4.7", "$.wing.stations[2].yM", "the last station at half the span")]
    [InlineData("wing.stations", "[]", "$.wing.stations", "a list of 2 to 60")]
    [InlineData("wing.stations", "{}", "$.wing.stations", "a list of 2 to 60")]
    [InlineData("wing.stations[2]", "7", "$.wing.stations[2]", "an object")]
    [InlineData("wing", null, "$.wing", "an object")]
    [InlineData("wing", "[]", "$.wing", "an object")]
    [InlineData("wing.bracing", "\"single strut\"", "$.wing.bracing", "one of single-strut-at-front-spar, cantilever, ")]
    [InlineData("wing.bracing", "\"Cantilever\"", "$.wing.bracing", "one of ")]
    [InlineData("wing.bracing", "1", "$.wing.bracing", "one of ")]
    [InlineData("wing.panelInboardYM", "4.9", "$.wing.panelInboardYM", "less than half the span")]
    [InlineData("wing.sweepDeg", "3", "$.wing.sweepDeg", "only the fields spanM, ")]
    [InlineData("id", "\"\"", "$.id", "a text of 1 to 60 characters")]
    [InlineData("id", "\"a\\u0000b\"", "$.id", "a text of 1 to 60 characters")]
    [InlineData("name", "null", "$.name", "a text of 1 to 200 characters")]
    [InlineData("eccentric.headFlats", "6.5", "$.eccentric.headFlats", "a whole number from 3 to 24")]
    [InlineData("eccentric.throwMm", "0", "$.eccentric.throwMm", "a number from 0.05 to 20 mm")]
    [InlineData("eccentric.neutralOffset.left", "\"down\"", "$.eccentric.neutralOffset.left", "one of inboard, outboard")]
    [InlineData("eccentric.neutralOffset.right", null, "$.eccentric.neutralOffset.right", "one of inboard, outboard")]
    [InlineData("eccentric.source", null, "$.eccentric.source", "a text")]
    [InlineData("eccentric.fastener.torqueInLb", "[190, 160]", "$.eccentric.fastener.torqueInLb", "least torque first")]
    [InlineData("eccentric.fastener.torqueInLb", "[190]", "$.eccentric.fastener.torqueInLb", "two numbers")]
    [InlineData("eccentric.fastener.torqueInLb[1]", "-5", "$.eccentric.fastener.torqueInLb[1]", "a number from 1 to 20000 in-lb")]
    [InlineData("eccentric.fastener.includesPrevailing", "\"no\"", "$.eccentric.fastener.includesPrevailing", "true or false")]
    [InlineData("ailerons.outboardYM", "2.0", "$.ailerons.outboardYM", "more than inboardYM")]
    [InlineData("ailerons.outboardYM", "5.0", "$.ailerons.outboardYM", "at most half the span")]
    [InlineData("flaps.chordFraction", "1.5", "$.flaps.chordFraction", "a number from 0.05 to 0.6")]
    [InlineData("mass.ixzKgM2", "1200", "$.mass.ixzKgM2", "a product of inertia smaller")]
    [InlineData("derivatives.cnRudder", "0.065", "$.derivatives.cnRudder", "a number from -5 to 0")]
    [InlineData("derivatives.clP", "0.4", "$.derivatives.clP", "a number from -5 to -0.01")]
    [InlineData("tanks[1].name", "\"left\"", "$.tanks", "a different name for each")]
    [InlineData("speedsKt.neverExceed", "100", "$.speedsKt.neverExceed", "more than maxStructuralCruise")]
    [InlineData("speedsKt.neverExceed", "900", "$.speedsKt.neverExceed", "a number from 15 to 400 kt")]
    [InlineData("reference.load.fuelL.left", "50", "$.reference.load.fuelL.left", "at most the tank's 42 L")]
    [InlineData("reference.load.fuelL.centre tank", "5", "$.reference.load.fuelL['centre tank']", "only tanks of the airframe: left, right")]
    [InlineData("limits.incidenceStepFlats", "0", "$.limits.incidenceStepFlats", "a number from 0.05 to 3 flats")]
    [InlineData("ballDegPerWidth", "true", "$.ballDegPerWidth", "a number from 0.5 to 20 ° per width")]
    public void A_spoilt_airframe_is_refused_by_field(string path, string? json, string faultAt, string wanted) =>
        RefusedOnce(ContractReader.ReadAirframe(Examples.Edited(Examples.Airframe, path, json)), faultAt, wanted);

    [Theory]
    [InlineData("testPoints[0].casKt", "900", "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("testPoints[0].casKt", null, "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("testPoints[0].casKt", "null", "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("testPoints[0].casKt", "\"NaN\"", "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("testPoints[0].manoeuvre", "\"let-go\"", "$.testPoints[0].manoeuvre", "one of release-all, release-wheel, hold-neutral, hold-level, hold-straight, balance-fuel")]
    [InlineData("testPoints[0].manoeuvre", null, "$.testPoints[0].manoeuvre", "one of release-all")]
    [InlineData("testPoints[0].pressureAltitudeFt", null, "$.testPoints[0].pressureAltitudeFt", "a number from -2000 to 30000 ft")]
    [InlineData("testPoints[0].oatC", "200", "$.testPoints[0].oatC", "a number from -60 to 60 °C")]
    [InlineData("testPoints[0].powerPercent", "-5", "$.testPoints[0].powerPercent", "a number from 0 to 100 %")]
    [InlineData("testPoints[0].air", "\"rough\"", "$.testPoints[0].air", "one of smooth, light, moderate")]
    [InlineData("testPoints[0].lastInput", "\"none\"", "$.testPoints[0].lastInput", "one of left, right")]
    [InlineData("testPoints[0].repeat", "0", "$.testPoints[0].repeat", "a whole number from 1 to 1000")]
    [InlineData("testPoints[0].load", null, "$.testPoints[0].load", "an object")]
    [InlineData("testPoints[0].load.fuelL.left", "-1", "$.testPoints[0].load.fuelL.left", "a number from 0 to 2000 L")]
    [InlineData("testPoints[0].load.fuelKgPerL", "7", "$.testPoints[0].load.fuelKgPerL", "a number from 0.6 to 0.9 kg/L")]
    [InlineData("testPoints[0].readings", "[]", "$.testPoints[0].readings", "a list of 1 to 100")]
    [InlineData("testPoints[0].readings", null, "$.testPoints[0].readings", "a list of 1 to 100")]
    [InlineData("testPoints[0].readings[0].deg", "400", "$.testPoints[0].readings[0].deg", "a number from -180 to 180 °")]
    [InlineData("testPoints[0].readings[0].seconds", "0", "$.testPoints[0].readings[0].seconds", "a number from 0.1 to 600 s")]
    [InlineData("testPoints[0].readings[0].kind", "\"bank\"", "$.testPoints[0].readings[0].kind", "one of bank-after, ")]
    [InlineData("testPoints[0].readings[0].kind", null, "$.testPoints[0].readings[0].kind", "one of bank-after, ")]
    [InlineData("testPoints[0].readings[0].method", "\"guess\"", "$.testPoints[0].readings[0].method", "one of stopwatch-horizon, ")]
    [InlineData("testPoints[0].readings[0].widths", "0.2", "$.testPoints[0].readings[0].widths", "only the fields kind, seconds, deg, method, sd")]
    [InlineData("testPoints[0].readings[0].sd", "0", "$.testPoints[0].readings[0].sd", "a number from 0.0001 to 1000")]
    [InlineData("testPoints[0].readings[0]", """{ "kind": "rolls", "side": "left" }""", "$.testPoints[0].readings[0].strength", "one of barely, slowly, briskly")]
    [InlineData("testPoints[0].readings[0]", """{ "kind": "time-to-bank", "deg": 0, "seconds": 5 }""", "$.testPoints[0].readings[0].deg", "a bank other than 0")]
    [InlineData("testPoints", null, "$.testPoints", "a list of 0 to 200")]
    [InlineData("groundChecks[1].sd", "0.1", "$.groundChecks[1].sd", "sd or sdDeg, not both")]
    [InlineData("groundChecks[2].clear", null, "$.groundChecks[2].clear", "true or false")]
    [InlineData("groundChecks[2].clear", "\"yes\"", "$.groundChecks[2].clear", "true or false")]
    [InlineData("groundChecks[0].kind", "\"flap\"", "$.groundChecks[0].kind", "one of panel-incidence-difference, ")]
    [InlineData("events[0]", "\"bang\"", "$.events[0]", "one of hard-landing, ")]
    [InlineData("events[0]", "\"correction-without-effect\"", "$.events[0]", "or correction-without-effect: and one of fuel-and-loading")]
    [InlineData("events[0]", "\"correction-without-effect:luck\"", "$.events[0]", "one of hard-landing, ")]
    [InlineData("settings.leftEccentricDeg", "200", "$.settings.leftEccentricDeg", "a number from -180 to 180 °")]
    [InlineData("settings.leftEccentricDeg", """{ "front": 1 }""", "$.settings.leftEccentricDeg.rear", "a number from -180 to 180 °")]
    [InlineData("settings.leftStrut", "2", "$.settings.leftStrut", "only the fields leftEccentricDeg, rightEccentricDeg")]
    [InlineData("straightBefore", "\"maybe\"", "$.straightBefore", "true or false")]
    [InlineData("trims", "5", "$.trims", "none, or an object with roll and yaw")]
    [InlineData("autopilot", "\"on\"", "$.autopilot", "one of unknown, none, off, disconnected")]
    [InlineData("airframeId", null, "$.airframeId", "an airframeId, or an airframe written out")]
    [InlineData("remarks", "\"hello\"", "$.remarks", "only the fields airframeId, ")]
    public void A_spoilt_request_is_refused_by_field(string path, string? json, string faultAt, string wanted) =>
        RefusedOnce(ContractReader.ReadRequest(Examples.Edited(Examples.Request, path, json)), faultAt, wanted);

    [Fact]
    public void Every_fault_is_listed_with_the_value_seen()
    {
        var json = new (string Path, string? Json)[]
        {
            ("testPoints[0].casKt", "900"), ("testPoints[1].readings[0].deg", "400"), ("testPoints[3].load", "17"), ("groundChecks[0].deg", null), ("autopilot", "\"on\""),
        }.Aggregate(Examples.Request, (text, edit) => Examples.Edited(text, edit.Path, edit.Json));

        var faults = ContractReader.ReadRequest(json).Faults;

        Assert.Equal(
            [
                ("$.autopilot", "\"on\""), ("$.testPoints[0].casKt", "900"), ("$.testPoints[1].readings[0].deg", "400"), ("$.testPoints[3].load", "17"),
                ("$.groundChecks[0].deg", null),
            ],
            faults.Select(fault => (fault.Path, fault.Seen)));
    }

    [Fact]
    public void An_airframe_both_named_and_written_out_is_refused() =>
        RefusedOnce(ContractReader.ReadRequest(Examples.Edited(Examples.Request, "airframe", Examples.Airframe)), "$.airframe", "airframeId or airframe, not both");

    [Fact]
    public void An_airframe_inside_a_request_is_named_by_its_whole_path()
    {
        var json = Examples.Edited(Examples.Edited(Examples.Request, "airframeId", null), "airframe", Examples.Edited(Examples.Airframe, "wing.spanM", "-9"));

        RefusedOnce(ContractReader.ReadRequest(json), "$.airframe.wing.spanM", "a number from 3 to 40 m");
    }

    [Theory]
    [InlineData("\"casKt\": 75", "\"casKt\": 75, \"casKt\": 80", "$.testPoints[0].casKt", "this field once only")]
    [InlineData("\"casKt\": 75", "\"casKt\": 1e999", "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("\"casKt\": 75", "\"casKt\": -1e999", "$.testPoints[0].casKt", "a number from 20 to 400 kt")]
    [InlineData("\"casKt\": 75", "\"casKt\": NaN", "$", "JSON, nested at most 64 deep")]
    [InlineData("\"casKt\": 75", "\"casKt\": 75, \"\\uD800\": 1", "$.testPoints[0]", "field names in valid Unicode")]
    [InlineData("\"st2\"", "\"\\uD800\"", "$.airframeId", "a text of 1 to 60 characters")]
    [InlineData("\"left\": 77", "\"left\": 77, \"left\": 78", "$.testPoints[0].load.seatsKg.left", "this field once only")]
    public void Text_that_only_looks_like_the_form_is_refused(string from, string to, string faultAt, string wanted)
    {
        var at = Examples.Request.IndexOf(from, StringComparison.Ordinal);
        var json = Examples.Request[..at] + to + Examples.Request[(at + from.Length)..];

        RefusedOnce(ContractReader.ReadRequest(json), faultAt, wanted);
    }

    [Theory]
    [InlineData("")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("\uD800")]
    [InlineData("{} {}")]
    [InlineData("/* a note */ {}")]
    [InlineData("\"text\"")]
    public void What_is_no_object_is_refused_and_does_not_throw(string json)
    {
        Assert.NotEmpty(ContractReader.ReadRequest(json).Faults);
        Assert.NotEmpty(ContractReader.ReadAirframe(json).Faults);
    }

    [Fact]
    public void Nesting_without_end_is_refused_and_does_not_throw() =>
        RefusedOnce(ContractReader.ReadRequest(new string('[', 100_000)), "$", "JSON, nested at most 64 deep");

    [Fact]
    public void A_long_value_is_shown_shortened() =>
        Assert.Equal(61, Assert.Single(ContractReader.ReadAirframe(Examples.Edited(Examples.Airframe, "id", $"\"{new string('x', 100_000)}\"")).Faults).Seen!.Length);

    static void RefusedOnce<T>(ReadResult<T> read, string path, string wanted) where T : class
    {
        var fault = Assert.Single(read.Faults);
        Assert.Null(read.Value);
        Assert.Equal(path, fault.Path);
        Assert.Contains(wanted, fault.Wanted, StringComparison.Ordinal);
    }
}
