using System.Text.Json.Nodes;
using Rigging.Simulation.Aeroplanes;

namespace Rigging.Simulation.Evidence;

/// <summary>One ground check as written down: which cause it measures, and its deviation with rounding.</summary>
public sealed record Measured(string Cause, double Value, double Deviation);

/// <summary>What a mechanic finds on the ground: truth with the contract's honest errors, rounded as a tool is read.</summary>
public sealed class Bench(Aeroplane aeroplane, Chance chance)
{
    /// <summary>Contour and fairings differ enough to be seen in a survey from here on, degrees of equivalent panel incidence.</summary>
    public const double SeenInSurveyDeg = 0.08;

    readonly JsonArray checks = [];
    readonly List<Measured> measured = [];

    public JsonArray Checks => checks;

    public IReadOnlyList<Measured> Measured => measured;

    /// <summary>Null where no contour survey was made.</summary>
    public bool? ContourClear { get; private set; }

    public bool? DamageClear { get; private set; }

    /// <summary>The incidence survey: the contract's 0.1°, or 0.04° where the aeroplane was levelled and the mean of several taken, which the sheet then says.</summary>
    public void Incidence(bool levelled)
    {
        Honesty honesty = levelled ? new(0.04, 0, 0.02) : new(0.1, 0, 0.05);
        Degrees(Faults.Panel, aeroplane.Faults[Faults.Panel] + aeroplane.Faults[Faults.Damage], honesty, levelled);
        Degrees(Faults.Tip, aeroplane.Faults[Faults.Tip], honesty, levelled);
    }

    public void Flaps() => Degrees(Faults.Flap, aeroplane.Faults[Faults.Flap], new(0.2, 0, 0.1));

    public void AileronFloat() => Degrees(Faults.Float, aeroplane.Faults[Faults.Float], new(0.2, 0, 0.1));

    public void AileronNeutral() => Degrees(Faults.Neutral, aeroplane.Faults[Faults.Neutral], new(0.2, 0, 0.1));

    /// <summary>The ball beside a level laid across the airframe.</summary>
    public void Ball()
    {
        var value = Write(Faults.Ball, aeroplane.Faults[Faults.Ball], new(0.05, 0, 0.05));
        checks.Add(new JsonObject { ["kind"] = "ball-offset", ["widths"] = value });
    }

    /// <summary>A spring balance at the wheel: two newtons are nothing, a dragging pulley is more. Good to a newton.</summary>
    public void Friction()
    {
        var value = Math.Max(0, new Honesty(1, 0, 0.5).Read(Slack + Math.Abs(aeroplane.Faults[Faults.Friction]), 1, chance));
        checks.Add(new JsonObject { ["kind"] = "control-friction", ["n"] = value });
    }

    const double Slack = 2;

    public void ContourSurvey()
    {
        ContourClear = Math.Abs(aeroplane.Faults[Faults.Contour]) < SeenInSurveyDeg;
        checks.Add(new JsonObject { ["kind"] = "contour-survey", ["clear"] = ContourClear });
    }

    /// <summary>An inspection finds damage that is there, and none that is not.</summary>
    public void DamageInspection()
    {
        DamageClear = aeroplane.Faults[Faults.Damage] == 0;
        checks.Add(new JsonObject { ["kind"] = "damage-inspection", ["clear"] = DamageClear });
    }

    void Degrees(string kind, double truth, Honesty honesty, bool stated = false)
    {
        var check = new JsonObject { ["kind"] = kind, ["deg"] = Write(kind, truth, honesty) };
        if (stated)
            check["sdDeg"] = honesty.Floor;
        checks.Add(check);
    }

    double Write(string cause, double truth, Honesty honesty)
    {
        var value = honesty.Read(truth, 1, chance);
        measured.Add(new(cause, value, honesty.WithRounding(truth, 1)));
        return value;
    }
}
