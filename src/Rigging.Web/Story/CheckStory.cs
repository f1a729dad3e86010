using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Look;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Story;

/// <summary>A ground check in words: what was measured, with what, or why it does not apply.</summary>
static class CheckStory
{
    const double NewtonsPerPoundForce = 4.4482216152605;   // exact by definition

    public static Told Of(GroundChecked check) => new(Gaps.Fill(Say.Checked, Subject(check.Check)), [.. Lines(check)]);

    static IEnumerable<Line> Lines(GroundChecked check)
    {
        if (check.NotApplicableReason is { } reason)
        {
            yield return Gaps.Fill(Say.NotApplicable, reason);
            yield break;
        }
        if (check.Clear is { } clear) yield return clear ? new(Say.Clear, Tone.Good) : new Line(Say.NotClear, Tone.Stop);
        if (check.Value is { } value) yield return $"{Words.Capital(Measured(check, value))}{GiveOrTake(check)}.";
        if (check.Tool is not null) yield return Gaps.Fill(Say.MeasuredWithCalibrationDue, check.ToolCode ?? Say.ToolWithoutCode, check.ToolCalibrationDue?.ToString("uuuu-MM-dd", null) ?? Say.NotOnFile);
        foreach (var line in Line.Quote(check.Finding)) yield return line;
        if (check is { Clear: null, Value: null, Finding: null }) yield return new(Say.RecordedWithoutValue, Tone.Missing);
    }

    static string Subject(Check check) => check switch
    {
        Check.FlapDifference => Say.FlapsAtUpStop,
        Check.PanelIncidenceDifference => Say.IncidenceOfWingPanels,
        Check.TipIncidenceDifference => Say.IncidenceOfTips,
        _ => Words.Of(check),
    };

    static string Measured(GroundChecked check, double value) => check.Check switch
    {
        Check.BallOffset => Gaps.Fill(Say.BallWithAirframeLevel, Ball(value)),
        Check.FlapDifference => Difference(value, "flap", "lower"),
        Check.AileronNeutralOffset => value == 0 ? Say.AileronsNeutralWithWheelCentred : Gaps.Fill(Say.AileronsWithWheelCentred, Aileron(value)),
        Check.AileronFloat => value == 0 ? Say.AileronsFloatInLine : Gaps.Fill(Say.AileronsFloat, Aileron(value)),
        Check.AileronTab => Gaps.Fill(Say.AileronTab, check.Side is { } side ? Words.Of(side) + " " : "", TrailingEdge(value)),
        Check.CableTension => $"{check.Cable ?? Say.Cable}: {Words.Number(value, 0)}{Space}N ({Words.Number(value / NewtonsPerPoundForce, 0)}{Space}lbf){(check.TemperatureC is { } c ? Gaps.Fill(Say.AtC, Words.Number(c, 0)) : "")}",
        Check.ControlFriction => Gaps.Fill(Say.NAtWheelRimToMove, Words.Number(value, 1)),
        Check.RudderTab => Gaps.Fill(Say.RudderTab, RudderTrailingEdge(value)),
        Check.PanelIncidenceDifference => Difference(value, "panel", "more incidence"),
        Check.TipIncidenceDifference => Difference(value, "tip", "more incidence"),
        _ => Words.Number(value),
    };

    static string Aileron(double deg) => Gaps.Fill(Say.TowardsWingDown, Words.Number(Math.Abs(deg)), deg > 0 ? Texts.RightInText : Texts.LeftInText);

    static string GiveOrTake(GroundChecked check) => check.Sd is not { } sd ? ""
        : Gaps.Fill(Say.GiveOrTake, Words.Number(sd), CheckUnits.Of(check.Check) switch { "°" => "°", { } unit => Space + unit, _ => "" });
}
