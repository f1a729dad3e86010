using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using RollStrength = Rigging.Squawks.Entries.RollStrength;
using Side = Rigging.Squawks.Entries.Side;

namespace Rigging.Squawks.Evidence;

/// <summary>The pilot's report as one test point. What it lacks is taken from the airframe's reference, and each such assumption is said.</summary>
static class ReportedPoint
{
    /// <summary>Null when the report holds nothing that a test point could carry.</summary>
    public static JsonObject? Of(Reported report, Airframe airframe, List<string> assumed)
    {
        var manoeuvre = ManoeuvreOf(report);
        var readings = Readings(report, manoeuvre, assumed);
        if (readings.Count == 0) return null;
        return new JsonObject
        {
            ["manoeuvre"] = manoeuvre,
            ["casKt"] = report.CasKt ?? Assume(airframe.Reference.CasKt, "airspeed", "kt", assumed),
            ["pressureAltitudeFt"] = report.PressureAltitudeFt ?? Assume(airframe.Reference.PressureAltitudeFt, "altitude", "ft", assumed),
            ["powerPercent"] = (report.PowerPercent is { } power ? Math.Min(power, 100) : null as double?) ?? Assume(airframe.Reference.PowerPercent, "power", "%", assumed),
            ["flapDeg"] = report.FlapDeg ?? 0,
            ["load"] = LoadOf(report, airframe, assumed),
            ["readings"] = readings,
        };
    }

    static string ManoeuvreOf(Reported report) => (report.Hands, report.Feet) switch
    {
        (Hands.HeldNeutral, _) => "hold-neutral",
        (Hands.HoldingLevel, Feet.BallCentred) => "hold-straight",
        (Hands.HoldingLevel, _) => "hold-level",
        (_, Feet.BallCentred or Feet.OnPedals) => "release-wheel",
        _ => "release-all",
    };

    static JsonArray Readings(Reported report, string manoeuvre, List<string> assumed)
    {
        var readings = new JsonArray();
        var rolls = manoeuvre is "release-all" or "release-wheel" or "hold-neutral";
        if (rolls && report is { BankDeg: { } bank, BankAfterS: { } seconds })
            readings.Add(new JsonObject { ["kind"] = "bank-after", ["seconds"] = seconds, ["deg"] = bank, ["method"] = "eye" });
        else if (rolls && report.RollsTo == Side.None)
            readings.Add(new JsonObject { ["kind"] = "rolls", ["side"] = "none" });
        else if (rolls && report.RollsTo is Side.Left or Side.Right)
        {
            if (report.Strength == RollStrength.NotRecorded) assumed.Add("How fast it rolls was not recorded: taken as slowly.");
            var strength = report.Strength == RollStrength.NotRecorded ? RollStrength.Slowly : report.Strength;
            readings.Add(new JsonObject { ["kind"] = "rolls", ["side"] = Wire.Word(report.RollsTo), ["strength"] = Wire.Word(strength) });
        }
        if (manoeuvre is "release-all" or "hold-level" && report.BallWidths is { } ball)
            readings.Add(new JsonObject { ["kind"] = "ball", ["widths"] = ball, ["method"] = "eye" });
        return readings;
    }

    static JsonObject LoadOf(Reported report, Airframe airframe, List<string> assumed)
    {
        var fuel = new JsonObject();
        foreach (var tank in airframe.Tanks)
            fuel[tank.Name] = (tank.ArmM < 0 ? report.FuelLeftL : report.FuelRightL) is { } litres ? InTheTank(litres, tank, assumed) : airframe.Reference.Load.FuelL.GetValueOrDefault(tank.Name);
        if (report.FuelLeftL is null || report.FuelRightL is null) assumed.Add("Fuel on each side was not reported: taken as at the airframe's reference.");
        else if (report.FuelMethod == FuelMethod.Gauge) assumed.Add("Fuel was read off the gauges, which are not quantities.");

        var seats = new JsonObject();
        foreach (var seat in airframe.Seats)
        {
            var front = Math.Abs(seat.ArmM) > 0 && seat.Name is "left" or "right" or "front-left" or "front-right";
            seats[seat.Name] = front
                ? (seat.ArmM < 0 ? report.SeatLeftKg : report.SeatRightKg) ?? NotWeighed(report.Aboard, seat.ArmM < 0 ? Side.Left : Side.Right) ?? airframe.Reference.Load.SeatsKg.GetValueOrDefault(seat.Name)
                : airframe.Reference.Load.SeatsKg.GetValueOrDefault(seat.Name);
        }
        if (report.SeatLeftKg is null || report.SeatRightKg is null)
            assumed.Add(report.Aboard is { } aboard
                ? FormattableString.Invariant($"Reported as {Words.Of(aboard)}, not weighed: taken as {Load.UsualPersonKg:0} kg a person.")
                : "Who sat where was not reported: taken as at the airframe's reference.");
        return new JsonObject { ["seatsKg"] = seats, ["fuelL"] = fuel };
    }

    static double? NotWeighed(Aboard? aboard, Side seat) => (aboard, seat) switch
    {
        (null, _) => null,
        (Aboard.AloneLeft, Side.Right) or (Aboard.AloneRight, Side.Left) => 0,
        _ => Load.UsualPersonKg,
    };

    static double InTheTank(double litres, Tank tank, List<string> assumed)
    {
        if (litres <= tank.CapacityL) return litres;
        assumed.Add(FormattableString.Invariant($"{litres:0.#} L was reported in the {tank.Name} tank, which holds {tank.CapacityL:0.#} L: taken as full."));
        return tank.CapacityL;
    }

    static double Assume(double value, string what, string unit, List<string> assumed)
    {
        assumed.Add($"The {what} was not reported: taken as {value:0} {unit}, the airframe's reference.");
        return value;
    }
}
