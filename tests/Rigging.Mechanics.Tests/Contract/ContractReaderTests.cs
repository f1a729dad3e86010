using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public sealed class ContractReaderTests
{
    [Fact]
    public void The_example_airframe_is_read()
    {
        var airframe = Accepted(ContractReader.ReadAirframe(Examples.Airframe));

        Assert.Equal(Bracing.SingleStrutAtFrontSpar, airframe.Wing.Bracing);
        Assert.Equal(4.82, airframe.Wing.Stations[2].YM);
        Assert.Equal(-0.5, airframe.Wing.Stations[2].IncidenceDeg);
        Assert.Equal(BushingIn.FuselageFitting, airframe.Eccentric!.BushingIn);
        Assert.Equal(new TorqueRange(160, 190), airframe.Eccentric.Fastener!.TorqueInLb);
        Assert.Equal(-0.45, airframe.Derivatives.CYBeta);
        Assert.Null(airframe.Derivatives.ClP);
        Assert.Equal(FuelSelector.LeftRightBoth, airframe.FuelSelector);
        Assert.Equal(25, airframe.Reference.Load.FuelL["left"]);
        Assert.Equal(0.72, airframe.Reference.Load.FuelKgPerL);
    }

    [Fact]
    public void The_example_request_is_read()
    {
        var request = Accepted(ContractReader.ReadRequest(Examples.Request));

        Assert.Equal("st2", request.AirframeId);
        Assert.Equal(new BushingAngles(-15), request.Settings!.LeftEccentricDeg);
        Assert.True(request.StraightBefore);
        Assert.Equal(new PastEvent(EventKind.WingRemoved), Assert.Single(request.Events));
        Assert.Equal(4, request.TestPoints.Count);
        Assert.Equal(new BankAfter(10, -6) { Method = ReadingMethod.StopwatchHorizon }, Assert.Single(request.TestPoints[1].Readings));
        Assert.Equal(new AngleCheck(GroundCheckKind.PanelIncidenceDifference, 0.08, 0.05), request.GroundChecks[1]);
        Assert.Equal(new ClearanceCheck(GroundCheckKind.DamageInspection, true), request.GroundChecks[2]);
    }

    [Fact]
    public void What_a_test_point_leaves_out_takes_the_usual_value()
    {
        const string json = """
            { "airframeId": "st2", "testPoints": [ { "manoeuvre": "hold-level", "casKt": 95, "pressureAltitudeFt": 5000,
              "load": { "seatsKg": {}, "fuelL": { "left": 20, "right": 20 } }, "readings": [ { "kind": "ball", "widths": 0.25 } ] } ] }
            """;

        var request = Accepted(ContractReader.ReadRequest(json));
        var point = Assert.Single(request.TestPoints);

        Assert.Equal(15 - 1.98 * 5, point.OatC, 12);
        Assert.Null(point.PowerPercent);
        Assert.Equal(0, point.FlapDeg);
        Assert.Equal(AirState.Smooth, point.Air);
        Assert.Equal(0.72, point.Load.FuelKgPerL);
        Assert.Equal(ReadingMethod.Eye, point.Readings[0].Method);
        Assert.Null(request.Settings);
        Assert.Null(request.StraightBefore);
        Assert.Equal(Autopilot.Unknown, request.Autopilot);
        Assert.Empty(request.Events);
        Assert.Empty(request.GroundChecks);
    }

    [Fact]
    public void Front_and_rear_bushing_may_stand_differently()
    {
        var json = Examples.Edited(Examples.Request, "settings.leftEccentricDeg", """{ "front": -15, "rear": 5.5 }""");

        Assert.Equal(new BushingAngles(-15, 5.5), Accepted(ContractReader.ReadRequest(json)).Settings!.LeftEccentricDeg);
    }

    [Fact]
    public void A_correction_without_effect_names_its_cause()
    {
        var json = Examples.Edited(Examples.Request, "events", """["repaint", "correction-without-effect:aileron-float"]""");

        Assert.Equal(
            [new PastEvent(EventKind.Repaint), new PastEvent(EventKind.CorrectionWithoutEffect, Cause.AileronFloat)],
            Accepted(ContractReader.ReadRequest(json)).Events);
    }

    [Theory]
    [InlineData("\"none\"", "none", "none")]
    [InlineData("""{ "roll": "none", "yaw": "a little left" }""", "none", "a little left")]
    [InlineData("""{ "roll": -2.5, "yaw": "none" }""", "-2.5", "none")]
    public void Trims_are_kept_as_they_were_read(string json, string roll, string yaw) =>
        Assert.Equal(new Trims(roll, yaw), Accepted(ContractReader.ReadRequest(Examples.Edited(Examples.Request, "trims", json))).Trims);

    [Fact]
    public void Every_kind_of_reading_is_read()
    {
        const string json = """
            [ { "kind": "time-to-bank", "deg": -30, "seconds": 12.5, "sd": 2 }, { "kind": "roll-rate", "degPerS": -0.4, "method": "flight-log" },
              { "kind": "heading-rate", "degPerS": 0.2 }, { "kind": "heading-change", "seconds": 20, "deg": 8 }, { "kind": "wheel-angle", "deg": 4 },
              { "kind": "wheel-force", "n": 6 }, { "kind": "fuel-difference", "l": -18 },
              { "kind": "rolls", "side": "left", "strength": "slowly" }, { "kind": "rolls", "side": "none" } ]
            """;

        var read = Accepted(ContractReader.ReadRequest(Examples.Edited(Examples.Request, "testPoints[0].readings", json))).TestPoints[0].Readings;

        Assert.Equal<Reading>(
            [
                new TimeToBank(-30, 12.5) { Sd = 2 }, new RollRate(-0.4) { Method = ReadingMethod.FlightLog }, new HeadingRate(0.2), new HeadingChange(20, 8),
                new WheelAngle(4), new WheelForce(6), new FuelDifference(-18), new Rolls(RollSide.Left, RollStrength.Slowly), new Rolls(RollSide.None, null),
            ],
            read);
    }

    [Fact]
    public void Every_kind_of_ground_check_is_read()
    {
        const string json = """
            [ { "kind": "tip-incidence-difference", "deg": 0.2, "sd": 0.1 }, { "kind": "aileron-float", "deg": 0.5 }, { "kind": "aileron-neutral-offset", "deg": -0.5, "sdDeg": 0.2 },
              { "kind": "aileron-tab", "side": "right", "deg": -3 }, { "kind": "rudder-tab", "deg": 2 },
              { "kind": "cable-tension", "cable": "left aileron", "n": 178, "degC": 21, "sd": 9 }, { "kind": "ball-offset", "widths": 0.1, "sd": 0.05 },
              { "kind": "control-friction", "n": 12 }, { "kind": "contour-survey", "clear": false } ]
            """;

        var read = Accepted(ContractReader.ReadRequest(Examples.Edited(Examples.Request, "groundChecks", json))).GroundChecks;

        Assert.Equal<GroundCheck>(
            [
                new AngleCheck(GroundCheckKind.TipIncidenceDifference, 0.2, 0.1), new AngleCheck(GroundCheckKind.AileronFloat, 0.5),
                new AngleCheck(GroundCheckKind.AileronNeutralOffset, -0.5, 0.2), new AileronTabCheck(Side.Right, -3), new AngleCheck(GroundCheckKind.RudderTab, 2),
                new CableTensionCheck("left aileron", 178, 21, 9), new BallOffsetCheck(0.1, 0.05), new ControlFrictionCheck(12),
                new ClearanceCheck(GroundCheckKind.ContourSurvey, false),
            ],
            read);
    }

    [Fact]
    public void An_airframe_may_be_written_out_instead_of_named()
    {
        var json = Examples.Edited(Examples.Edited(Examples.Request, "airframeId", null), "airframe", Examples.Airframe);

        Assert.Equal("ST-2 two-seat strut-braced trainer (invented)", Accepted(ContractReader.ReadRequest(json)).Airframe!.Name);
    }

    [Fact]
    public void What_nobody_has_entered_yet_may_be_missing_from_an_airframe()
    {
        var json = new[] { "approvedData", "eccentric", "rudder", "fuelSelector", "speedsKt", "limits", "ailerons.fixedTab" }
            .Aggregate(Examples.Airframe, (text, path) => Examples.Edited(text, path, null));

        var airframe = Accepted(ContractReader.ReadAirframe(json));

        Assert.Null(airframe.Eccentric);
        Assert.Null(airframe.Limits);
        Assert.Null(airframe.SpeedsKt);
    }

    [Fact]
    public void A_load_is_held_against_an_airframe_named_by_its_id()
    {
        var airframe = Accepted(ContractReader.ReadAirframe(Examples.Airframe));
        var request = Accepted(ContractReader.ReadRequest(Examples.Edited(Examples.Request, "testPoints[2].load", """{ "seatsKg": { "jump": 70 }, "fuelL": { "left": 43 } }""")));

        var faults = ContractReader.Check(request, airframe);

        Assert.Equal(
            ["$.testPoints[2].load.seatsKg.jump", "$.testPoints[2].load.fuelL.left", "$.testPoints[2].load.fuelL.right"],
            faults.Select(fault => fault.Path));
        Assert.Equal("at most the tank's 42 L", faults[1].Wanted);
    }

    static T Accepted<T>(ReadResult<T> read) where T : class
    {
        Assert.Equal([], read.Faults);
        return read.Value!;
    }
}
