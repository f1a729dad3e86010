using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;

namespace Rigging.Squawks.Rules;

/// <summary>Which tool measures what, and when a reading of it counts: the same for every tool of the school's list.</summary>
public static class ToolRules
{
    /// <summary>The kinds of tool that a check can be made with; empty where it is made without one. Common practice, no source.</summary>
    public static IReadOnlyList<ToolKind> Fitting(Check check) => check switch
    {
        Check.CableTension => [ToolKind.Tensiometer],
        Check.ControlFriction => [ToolKind.SpringScale],
        Check.BallOffset => [ToolKind.Inclinometer],
        Check.FuelAndSeats => [],
        Check.DamageInspection or Check.ContourSurvey => [ToolKind.Inclinometer, ToolKind.Protractor, ToolKind.DialIndicator, ToolKind.Other],
        _ => [ToolKind.Inclinometer, ToolKind.Protractor],
    };

    /// <summary>Without a tool of the list nobody can say what such a reading was worth.</summary>
    public static bool NeedsATool(Check check) => check is Check.CableTension or Check.ControlTravel;

    internal static IEnumerable<BrokenRule> Of(GroundChecked check, Facts facts)
    {
        if (check.Tool is not { } id)
        {
            if (NeedsATool(check.Check) && check.NotApplicableReason is null)
                yield return new("tool-missing", $"Say which tool of the school's list measured it: {Kinds(check.Check)}.", "tool");
            yield break;
        }
        if (!facts.Tools.TryGetValue(id, out var tool))
        {
            yield return Unknown("tool");
            yield break;
        }
        if (!Fitting(check.Check).Contains(tool.Kind))
        {
            yield return new("tool-wrong-kind", Fitting(check.Check).Count == 0
                ? $"{tool.Code} is a {Words.Of(tool.Kind)}: no tool of the list is asked for here."
                : $"{tool.Code} is a {Words.Of(tool.Kind)}; for {Words.Of(check.Check)} wanted {Kinds(check.Check)}.", "tool");
            yield break;
        }
        if (Calibration(tool, facts.DayOf(check), "tool-out-of-calibration", "tool") is { } out_) yield return out_;
        foreach (var (reading, field) in Readings(check))
            if (OutOfRange(tool, reading, field) is { } rule) yield return rule;
    }

    internal static BrokenRule Unknown(string field) => new("tool-unknown", "That tool is not on the school's list.", field);

    /// <summary>Null while a reading of that day counts.</summary>
    internal static BrokenRule? Calibration(Tool tool, LocalDate day, string code, string field) => tool.InCalibrationOn(day) ? null
        : new(code, $"{tool.Code}: calibration was due {tool.CalibrationDue?.ToString("uuuu-MM-dd", null) ?? "(never calibrated)"}. Use a {Words.Of(tool.Kind)} in calibration.", field);

    static BrokenRule? OutOfRange(Tool tool, double reading, string field)
    {
        if (Tool.UnitOf(tool.Kind) is not { } unit) return null;
        // Any protractor shows the few degrees of a rigging check; what a spring or a tensiometer is good for only its papers say.
        if (tool is not { Low: { } low, High: { } high })
            return unit == "°" ? null : new("tool-range-missing", $"{tool.Code} has no range on file, so nobody knows whether it is good for {Words.Number(reading, 1)} {unit}. The maintenance office can enter its range.", "tool");
        // An angle is read either way from level.
        var size = Math.Abs(reading);
        return (unit == "°" ? size <= high : size >= low && size <= high) ? null
            : new("tool-out-of-range", $"{Words.Number(reading, 1)} {unit} is outside {tool.Code}'s range of {Words.Number(low)} to {Words.Number(high)} {unit}. Use another tool, or read again.", field);
    }

    static IEnumerable<(double Reading, string Field)> Readings(GroundChecked check)
    {
        if (check.Survey is { } survey)
            return survey.Readings.SelectMany(reading => new[] { reading.AsLaidDeg, reading.ReversedDeg }).Select(reading => (reading, "survey"));
        if (check.Travel is { } travel) return [(travel.UpDeg, "upDeg"), (travel.DownDeg, "downDeg")];
        return check.Value is { } value && check.Check != Check.BallOffset ? [(value, "value")] : [];
    }

    static string Kinds(Check check) => string.Join(" or ", Fitting(check).Select(kind => $"a{(kind == ToolKind.Inclinometer ? "n" : "")} {Words.Of(kind)}"));
}
