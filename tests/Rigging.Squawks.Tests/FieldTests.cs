using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Tests.School;

namespace Rigging.Squawks.Tests;

/// <summary>A bad field is named, with its value where it has one, and what was wanted; nothing else is blamed.</summary>
public class FieldTests
{
    sealed record Bad(Ledger Ledger, Person Who, Fact Fact, string Code, string Field, string Says = "");

    static IEnumerable<Bad> Reports()
    {
        foreach (var (report, field, says) in ((Reported, string, string)[])
        [
            (Report with { CasKt = 900 }, "casKt", "900"),
            (Report with { PressureAltitudeFt = 60_000 }, "pressureAltitudeFt", "60000"),
            (Report with { PowerPercent = -5 }, "powerPercent", "−5"),
            (Report with { FlapDeg = 90 }, "flapDeg", "90"),
            (Report with { BallWidths = -4 }, "ballWidths", "−4"),
            (Report with { BankDeg = 400, BankAfterS = 10 }, "bankDeg", "400"),
            (Report with { BankDeg = 10, BankAfterS = 0 }, "bankAfterS", "0"),
            (Report with { FuelLeftL = -1 }, "fuelLeftL", "−1"),
            (Report with { FuelRightL = 5000 }, "fuelRightL", "5000"),
            (Report with { SeatLeftKg = 500 }, "seatLeftKg", "500"),
            (Report with { SeatRightKg = -70 }, "seatRightKg", "−70"),
        ])
            yield return new(Empty, Pilot, report, "value-out-of-range", field, says);
        yield return new(Empty, Pilot, Report with { Words = "  " }, "text-missing", "words");
        yield return new(Empty, Pilot, Report with { BankDeg = 10, BankAfterS = null }, "bank-without-time", "bankAfterS");
        yield return new(Empty, Pilot, Report with { BankDeg = null, BankAfterS = 10 }, "bank-without-time", "bankDeg");
        yield return new(Empty, Pilot, Report with { FuelLeftL = null }, "fuel-missing", "fuelLeftL");
        yield return new(Empty, Pilot, Report with { FuelRightL = null }, "fuel-missing", "fuelRightL");
    }

    static IEnumerable<Bad> GroundChecks()
    {
        foreach (var (check, code, field, says) in ((GroundChecked, string, string, string)[])
        [
            (Measured(Check.FlapDifference, null), "value-missing", "value", "°"),
            (Measured(Check.FlapDifference, 16), "value-out-of-range", "value", "16"),
            (Measured(Check.BallOffset, -3.5), "value-out-of-range", "value", "−3.5"),
            (Measured(Check.RudderTab, 91), "value-out-of-range", "value", "91"),
            (Measured(Check.ControlFriction, 501), "value-out-of-range", "value", "501"),
            (Measured(Check.CableTension, 5001) with { Cable = "left", TemperatureC = 18, Tool = Tensiometer.Id }, "value-out-of-range", "value", "5001"),
            (Measured(Check.CableTension, 160) with { TemperatureC = 18, Tool = Tensiometer.Id }, "cable-missing", "cable", ""),
            (Tension("left aileron", 160) with { TemperatureC = null }, "temperature-missing", "temperatureC", "temperature"),
            (Tension("left aileron", 160, 61), "value-out-of-range", "temperatureC", "61"),
            (Tension("left aileron", 160) with { Tool = null }, "tool-missing", "tool", "tensiometer"),
            (Tension("left aileron", 160) with { Tool = Protractor.Id }, "tool-wrong-kind", "tool", "protractor"),
            (Tension("left aileron", 40), "tool-out-of-range", "value", "45 to 700 N"),
            (Measured(Check.FlapDifference, 0.1) with { Tool = Tensiometer.Id }, "tool-wrong-kind", "tool", "tensiometer"),
            (Measured(Check.ControlFriction, 12) with { Tool = Wrench.Id }, "tool-wrong-kind", "tool", "spring scale"),
            (Travel(Side.Left, 20, 95), "value-out-of-range", "downDeg", "95"),
            (Travel(Side.Left, 20, 15) with { Tool = null }, "tool-missing", "tool", "protractor"),
            (Travel(Side.Left, 20, 15) with { Travel = null }, "value-missing", "upDeg", ""),
            (Travel(Side.None, 20, 15), "side-missing", "surface", ""),
            (Measured(Check.AileronTab, 2), "side-missing", "side", ""),
            (Measured(Check.AileronTab, 2) with { Side = Side.None }, "side-missing", "side", ""),
            (Measured(Check.ContourSurvey, null), "value-missing", "clear", ""),
            (Measured(Check.DamageInspection, null) with { Finding = "Looked." }, "value-missing", "clear", ""),
            (Measured(Check.DamageInspection, null) with { Clear = true }, "text-missing", "finding", ""),
            (Measured(Check.ContourSurvey, null) with { Clear = false }, "text-missing", "finding", ""),
            (Checks[0] with { Finding = null }, "text-missing", "finding", ""),
            (Checks[0] with { Fuel = null, Finding = "Don't know." }, "fuel-not-measured", "fuel", "left, right"),
            (Checks[0] with { Fuel = [new("left", 25)] }, "fuel-not-measured", "fuel", "left, right"),
            (Checks[0] with { Fuel = [new("left", 25), new("right", 43)] }, "value-out-of-range", "fuel", "43"),
            (Checks[0] with { Fuel = [new("left", 25), new("right", 25), new("tip", 5)] }, "tank-unknown", "fuel", "tip"),
            (Measured(Check.FlapDifference, 0.1) with { Sd = 0 }, "value-out-of-range", "sd", "0"),
            (Measured(Check.FlapDifference, 0.1) with { Tool = new(Guid.NewGuid()) }, "tool-unknown", "tool", ""),
        ])
            yield return new(School.Called, Mechanic, check, code, field, says);
    }

    static IEnumerable<Bad> Work()
    {
        var move = HalfAFlat.Moves[0];
        yield return new(Checked, Mechanic, HalfAFlat with { Moves = [move with { ToDeg = null }] }, "value-missing", "moves");
        yield return new(Checked, Mechanic, HalfAFlat with { Moves = [move with { FromDeg = 270 }] }, "value-out-of-range", "moves", "270");
        yield return new(Checked, Mechanic, HalfAFlat with { Moves = [move with { Instruction = "" }] }, "text-missing", "moves");
        yield return new(Checked, Mechanic, HalfAFlat with { Reason = "" }, "text-missing", "reason");
        yield return new(InWork, Mechanic, new WorkHandedOver(" ", null), "text-missing", "state");
        yield return new(InWork, Mechanic, new WorkHandedOver("Bolt in.", " "), "text-missing", "loose");
        yield return new(InWork, Mechanic, Found with { Bushings = new(-15, -15, 200, 200) }, "value-out-of-range", "bushings", "200");
        foreach (var (torque, code, field, says) in ((TorqueApplied, string, string, string)[])
        [
            (Torque with { Fastener = "" }, "text-missing", "fastener", ""),
            (Torque with { TargetMinInLb = 0 }, "value-out-of-range", "targetMinInLb", "0"),
            (Torque with { TargetMaxInLb = 100 }, "value-out-of-range", "targetMinInLb", "100"),
            (Torque with { RunOnInLb = 200 }, "value-out-of-range", "runOnInLb", "200"),
            (Torque with { RunOnInLb = -1, NoRunOnBecause = "So it was." }, "value-out-of-range", "runOnInLb", "−1"),
            (Torque with { Nut = null }, "nut-not-said", "nut", "self-locking"),
            (Torque with { RunOnInLb = 0, FinalMinInLb = 160, FinalMaxInLb = 190 }, "no-run-on", "noRunOnBecause", "self-locking"),
            (Torque with { FigureFor = null }, "figure-part-not-said", "figureFor", "nut"),
            (Torque with { Turned = TurnedPart.BoltHead }, "other-part-turned", "otherPartBecause", "shank"),
            (Torque with { FigureFor = TurnedPart.BoltHead }, "turned-part-differs", "turned", "bolt head"),
            (Torque with { SettingInLb = 230, ReachedInLb = 230 }, "torque-above-limits", "outOfLimitsDone", "230"),
            (Torque with { OutOfLimitsDone = "Bolt replaced." }, "not-out-of-limits", "outOfLimitsDone", "190"),
            (Torque with { LeverIn = 0 }, "value-out-of-range", "leverIn", ""),
            (Torque with { ExtensionIn = 10 }, "value-out-of-range", "leverIn", ""),
            // 152 in·lb on a 12 in lever with 3 in straight on is 190 at the fastener; the register says the lever is 10 in.
            (Torque with { LeverIn = 12, ExtensionIn = 3, SettingInLb = 152 }, "lever-does-not-match", "leverIn", "10"),
        ])
            yield return new(InWork, Mechanic, torque, code, field, says);
        yield return new(Torqued, Mechanic, Done with { Description = "" }, "text-missing", "description");
        yield return new(Torqued, Mechanic, Done with { ManHours = 0 }, "value-out-of-range", "manHours", "0");
        yield return new(Torqued, Mechanic, Done with { TotalTimeH = -3 }, "value-out-of-range", "totalTimeH", "−3");
        yield return new(Torqued, Mechanic, Done with { AsLeft = new(15, 15, -190, -190), DiffersBecause = "So it was." }, "value-out-of-range", "asLeft", "−190");
        yield return new(Worked, Inspector, Inspection with { Findings = "" }, "text-missing", "findings");
    }

    static IEnumerable<Bad> Rest()
    {
        foreach (var hours in (double[])[0, -1, 13])
            yield return new(School.Approved, Pilot, Flight with { DurationH = hours }, "value-out-of-range", "durationH");
        yield return new(School.Approved, Pilot, Flight with { Remarks = "" }, "text-missing", "remarks");
        yield return new(School.Approved, Pilot, Flight with { FlownOn = Today.PlusDays(-1) }, "flown-before-the-work", "flownOn", "2026-03-01");
        yield return new(Judged, Inspector, new Closed(""), "text-missing", "statement");
        yield return new(Judged, Mechanic, new RoundOpened(""), "text-missing", "reason");
        yield return new(School.Called, Office, new Waiting(WaitingFor.Parts, ""), "text-missing", "reason");
        yield return new(School.Called.Do(Office, new Waiting(WaitingFor.Parts, "Nut.")), Office, new Resumed(""), "text-missing", "reason");
        yield return new(Agreed, Mechanic, new CorrectionWithdrawn(" "), "text-missing", "reason");
        yield return new(School.Called, Office, new Noted(" ", null), "text-missing", "text");
        yield return new(School.Called, Office, new Noted("Meant 95.", 0), "no-such-entry", "corrects", "0");
        yield return new(School.Called, Inspector, new NoFaultFound("", true), "text-missing", "evaluation");
        yield return new(School.Called, Inspector, new WithinLimits("", "School limit.", true), "text-missing", "evaluation");
        yield return new(School.Called, Mechanic, new HandedOver("", "Not rigging."), "text-missing", "to");
        yield return new(School.Called, Mechanic, new HandedOver("avionics shop", ""), "text-missing", "reason");
    }

    static readonly Bad[] All = [.. Reports(), .. GroundChecks(), .. Work(), .. Rest()];

    public static TheoryData<int, string> Cases => new(All.Select((bad, i) => (i, $"{bad.Fact.GetType().Name}: {bad.Code}, {bad.Field}")));

    [Theory, MemberData(nameof(Cases))]
    public void The_bad_field_is_named(int index, string name)
    {
        var bad = All[index];
        var refused = Assert.IsType<Decision.Refused>(Try(bad.Ledger, bad.Who, bad.Fact));

        Assert.All(refused.Broken, b => Assert.True(b.Code == bad.Code && b.Field == bad.Field, $"{name}: {b.Code}, {b.Field}, {b.Sentence}"));
        Assert.Contains(bad.Says, refused.Broken[0].Sentence, StringComparison.Ordinal);
    }
}
