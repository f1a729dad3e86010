using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Work;

/// <summary>The measurement that proves a direction, as typed: a tool of the list, where it was read, how far and which way. It is read in the tool's own unit.</summary>
static class MovementForm
{
    public const string AtEdge = "edge";

    public static string Field(Control control, string what) => $"done.{DirectionRules.Field(control, what)}";

    /// <summary>The tools that can show a movement.</summary>
    public static IReadOnlyList<Choice> Tools(Facts facts) =>
    [
        .. facts.Tools.Values.Where(tool => tool.Scale is not null).OrderBy(tool => tool.Code, StringComparer.Ordinal).Select(tool =>
            new Choice(tool.Id.ToString(), Gaps.Fill(Say.MovementToolChoice, tool.Code, tool.Description, DirectionRules.Read(tool.Scale!.Step, tool.Scale.Unit)))),
    ];

    public static IReadOnlyList<Choice> Ways(Control control) =>
    [
        .. control == Control.RudderTab
            ? (Choice[])[new(nameof(Seen.Left), Say.TrailingEdgeLeft), new(nameof(Seen.Right), Say.TrailingEdgeRight)]
            : [new(nameof(Seen.Up), Say.TrailingEdgeUp), new(nameof(Seen.Down), Say.TrailingEdgeDown)],
        new(nameof(Seen.Still), Say.ItDidNotMove),
    ];

    public static IReadOnlyList<Choice> Places => [new("spar", Say.AtRearSpar), new(AtEdge, Say.AtTrailingEdge)];

    public static MovementUnit? UnitOf(TypedFields fields, Control control, Facts facts) => ToolOf(fields, control, facts)?.Scale?.Unit;

    /// <summary>A height behind the line about which it turns: asked for at an edge, and wherever no rear spar is moved.</summary>
    public static bool AsksHowFarBehind(TypedFields fields, Control control, Facts facts) =>
        UnitOf(fields, control, facts) is MovementUnit.Millimetre or MovementUnit.Inch && (!control.MovesIncidence() || fields[Field(control, "place")] == AtEdge);

    /// <summary>Null where nothing was typed, or not enough of it can be read.</summary>
    public static MovementMeasured? Read(TypedFields fields, Typed typed, Control control, Facts facts)
    {
        string At(string what) => Field(control, what);
        if (((string[])["tool", "amount", "way", "aft"]).All(what => fields.Text(At(what)) is null)) return null;
        var tool = ToolOf(fields, control, facts);
        var unit = tool?.Scale?.Unit ?? MovementUnit.Millimetre;
        if (tool is null) typed.Wrong("tool-missing", Say.MovementToolNothingChosen, At("tool"));
        var amount = typed.Needed(fields[At("amount")], At("amount"), Say.HowFarItMoved, Words.Of(unit));
        double? aft = AsksHowFarBehind(fields, control, facts) ? typed.Needed(fields[At("aft")], At("aft"), Say.HowFarBehind, Words.Of(unit)) : null;
        if (!Enum.TryParse<Seen>(fields[At("way")], out var way)) typed.Wrong("not-a-choice", Say.MovementWayNothingChosen, At("way"));
        return tool is null ? null : new(control, way, amount, unit, aft, tool.Id, OtherwiseBecause: fields.Text(At("otherwiseBecause")));
    }

    static Tool? ToolOf(TypedFields fields, Control control, Facts facts) =>
        Guid.TryParse(fields[Field(control, "tool")], out var id) ? facts.Tools.GetValueOrDefault(new ToolId(id)) : null;
}
