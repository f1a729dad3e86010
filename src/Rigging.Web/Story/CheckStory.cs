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
        if (check.Fuel is { } fuel) yield return $"{string.Join(", ", fuel.Select(tank => Gaps.Fill(Say.TankHolds, Words.Capital(tank.Tank), Words.Number(tank.Litres, 1))))}.";
        if (check.Travel is { } travel) yield return $"{Words.Capital(Words.Travel(travel))}.";
        if (check is { TipValue: { } tip, TipSd: { } tipSd }) yield return $"{Words.Capital(Difference(tip, "tip", "more incidence"))}{Gaps.Fill(Say.GiveOrTake, Words.Number(tipSd), "°")}.";
        foreach (var limit in check.Limits ?? []) yield return new(Words.Capital(Words.Against(limit)), limit.IsWithin() ? Tone.Good : Tone.Stop);
        if (check.NoLimitsBecause is { } because) yield return new(Gaps.Fill(Say.NotComparedWithLimits, because), Tone.Caution);
        foreach (var line in Survey(check)) yield return line;
        if (check.Tool is not null) yield return Gaps.Fill(Say.MeasuredWithCalibrationDue, check.ToolCode ?? Say.ToolWithoutCode, check.ToolCalibrationDue?.ToString("uuuu-MM-dd", null) ?? Say.NotOnFile);
        foreach (var line in Line.Quote(check.Finding)) yield return line;
        if (!check.HasItsValue()) yield return new(Say.RecordedWithoutValue, Tone.Missing);
    }

    static IEnumerable<Line> Survey(GroundChecked check)
    {
        if (check.Survey is not { } survey) yield break;
        yield return Gaps.Fill(Say.FromReadingsOfLevel, Words.Number(survey.StepDeg), Words.Number(survey.SeatingDeg));
        foreach (var reading in survey.Readings)
        {
            var wing = Words.Of(reading.Wing);
            var place = reading.OutM is { } metres ? Gaps.Fill(Say.WingAtStation, Words.Capital(wing), Words.Number(metres)) : Gaps.Fill(Say.DatumWithWing, wing);
            yield return Gaps.Fill(Say.PlaceAsLaidAndReversed, place, Words.Number(reading.AsLaidDeg), Words.Number(reading.ReversedDeg));
        }
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
