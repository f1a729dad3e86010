using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>A ground check in words: what was measured, with what, or why it does not apply.</summary>
static class CheckStory
{
    const double NewtonsPerPoundForce = 4.4482216152605;   // exact by definition

    public static Told Of(GroundChecked check) => new($"Checked: {Subject(check.Check)}", [.. Lines(check)]);

    static IEnumerable<Line> Lines(GroundChecked check)
    {
        if (check.NotApplicableReason is { } reason)
        {
            yield return $"Not applicable: {reason}";
            yield break;
        }
        if (check.Clear is { } clear) yield return clear ? new("Clear.", Tone.Good) : new Line("Not clear.", Tone.Stop);
        if (check.Value is { } value) yield return $"{Words.Capital(Measured(check, value))}{GiveOrTake(check)}.";
        if (check.Tool is not null) yield return $"Measured with {check.ToolCode ?? "a tool without a code"}, calibration due {check.ToolCalibrationDue?.ToString("uuuu-MM-dd", null) ?? "not on file"}.";
        foreach (var line in Line.Quote(check.Finding)) yield return line;
        if (check is { Clear: null, Value: null, Finding: null }) yield return new("Recorded without a value.", Tone.Missing);
    }

    static string Subject(Check check) => check switch
    {
        Check.FlapDifference => "flaps at the up stop",
        Check.PanelIncidenceDifference => "incidence of the wing panels",
        Check.TipIncidenceDifference => "incidence of the tips",
        _ => Words.Of(check),
    };

    static string Measured(GroundChecked check, double value) => check.Check switch
    {
        Check.BallOffset => $"ball {Ball(value)} with the airframe level",
        Check.FlapDifference => Difference(value, "flap", "lower"),
        Check.AileronNeutralOffset => value == 0 ? "ailerons neutral with the wheel centred" : $"ailerons {Aileron(value)} with the wheel centred",
        Check.AileronFloat => value == 0 ? "ailerons float in line" : $"ailerons float {Aileron(value)}",
        Check.AileronTab => $"{(check.Side is { } side ? Words.Of(side) + " " : "")}aileron tab {TrailingEdge(value)}",
        Check.CableTension => $"{check.Cable ?? "cable"}: {Words.Number(value, 0)}{Space}N ({Words.Number(value / NewtonsPerPoundForce, 0)}{Space}lbf){(check.TemperatureC is { } c ? $" at {Words.Number(c, 0)}{Space}°C" : "")}",
        Check.ControlFriction => $"{Words.Number(value, 1)}{Space}N at the wheel rim to move it through neutral",
        Check.RudderTab => $"rudder tab {RudderTrailingEdge(value)}",
        Check.PanelIncidenceDifference => Difference(value, "panel", "more incidence"),
        Check.TipIncidenceDifference => Difference(value, "tip", "more incidence"),
        _ => Words.Number(value),
    };

    static string Aileron(double deg) => $"{Words.Number(Math.Abs(deg))}° towards {(deg > 0 ? "right" : "left")} wing down";

    static string GiveOrTake(GroundChecked check) => check.Sd is not { } sd ? ""
        : $", give or take {Words.Number(sd)}{CheckUnits.Of(check.Check) switch { "°" => "°", { } unit => Space + unit, _ => "" }}";
}
