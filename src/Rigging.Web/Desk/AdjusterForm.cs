using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Web.Look;
using Words = Rigging.Squawks.Rules.Words;

namespace Rigging.Web.Desk;

/// <summary>How adjusters that are no eccentric stand, as typed: a size and a way; a strut fork is counted from fully in and has no way.</summary>
static class AdjusterForm
{
    /// <summary>Those whose turns are counted, as far as the airframe has them on file; a tab is a ground check.</summary>
    public static IReadOnlyList<Control> Counted(Airframe? airframe) =>
    [
        .. airframe?.StrutFork is null ? (Control[])[] : [Control.LeftStrutFork, Control.RightStrutFork],
        .. airframe?.FlapRod is null ? (Control[])[] : [Control.LeftFlapRod, Control.RightFlapRod],
    ];

    public static string Field(string part, Control control) => $"{part}adjuster{control}";

    public static string Label(Control control) => Words.Capital(Gaps.Fill(control.IsStrutFork() ? Say.TurnsOutFromFullyIn : control.IsTab() ? Say.DegreesFromStraight : Say.TurnsFromLengthOfDrawing, Words.Of(control)));

    /// <summary>The positive way first; empty where there is but one.</summary>
    public static IReadOnlyList<Choice> Ways(Control control) => control switch
    {
        Control.LeftEccentric or Control.RightEccentric => [new("plus", Say.TrailingEdgeDown), new("minus", Say.TrailingEdgeUp)],
        Control.AileronTab => [new("plus", Say.TrailingEdgeDown), new("minus", Say.TrailingEdgeUp)],
        Control.RudderTab => [new("plus", Say.TrailingEdgeLeft), new("minus", Say.TrailingEdgeRight)],
        Control.LeftFlapRod or Control.RightFlapRod => [new("plus", Say.TurnedOut), new("minus", Say.TurnedIn)],
        _ => [],
    };

    /// <summary>Null where nothing was entered.</summary>
    public static IReadOnlyList<AdjusterSetting>? Read(TypedFields fields, Typed typed, string part, IEnumerable<Control> controls)
    {
        List<AdjusterSetting> settings = [];
        foreach (var control in controls)
            if (Read(fields, typed, Field(part, control), Words.Capital(Words.Of(control)), control) is { } value) settings.Add(new(control, value));
        return settings.Count > 0 ? settings : null;
    }

    /// <summary>One setting, a size and a way; null where nothing was entered, or where it is wrong.</summary>
    public static double? Read(TypedFields fields, Typed typed, string field, string name, Control control)
    {
        if (typed.Number(fields[field], field, name, control.InTurns() ? Say.TurnsCounted : Say.DegreesOfTab) is not { } size) return null;
        var way = fields[field + "Way"];
        if (size < 0) typed.Wrong("size-with-sign", Gaps.Fill(Say.SizeWithSign, name, fields[field]), field);
        else if (size != 0 && Ways(control).Count > 0 && way is not ("plus" or "minus")) typed.Wrong("side-missing", Gaps.Fill(Say.GivenNotWhichWayChoose, name, fields[field]), field + "Way");
        else return way == "minus" && size != 0 ? -size : size;
        return null;
    }
}
