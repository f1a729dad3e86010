using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Squawks.Entries;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Words = Rigging.Squawks.Rules.Words;

namespace Rigging.Web.Assessment;

/// <summary>The agreed correction as typed: the proposed one, the mechanic's own plan, or a repair to data.</summary>
static class AgreeForm
{
    public const string Proposed = "proposed", Own = "own", Repair = "repair";

    public static IReadOnlyList<Choice> Plans(CorrectionProposal? proposal) =>
    [
        new(Proposed, "The proposed correction", proposal is null ? "Nothing is proposed on this evidence; the reasons stand above." : null, Disabled: proposal is null),
        new(Own, "My own plan", "One control, from where it stands to where it shall be."),
        new(Repair, "Repair or replace to data", "A thimble, a pulley, a hinge, a fairing, a surface: most real cures are not adjustments."),
    ];

    public static IReadOnlyList<Choice> OwnControls { get; } =
        [.. Enum.GetValues<Control>().Where(control => control != Control.RepairOrReplace).Select(control => new Choice(control.ToString(), Words.Capital(Words.Of(control))))];

    public static IReadOnlyList<Choice> Ways { get; } = [new("down", "trailing edge down"), new("up", "trailing edge up")];

    /// <summary>What whoever moves this control must not do with it (common practice, no source); null where the steps of the work say it.</summary>
    public static string? Mind(string? control) => Enum.TryParse<Control>(control, out var chosen) ? chosen switch
    {
        Control.LeftFlapRod or Control.RightFlapRod or Control.AileronNeutral =>
            "A flap or an aileron that is drooped to hide a heavy wing moves the trouble to another speed. Set it to its book value, and no further.",
        Control.AileronTab or Control.RudderTab =>
            "Bend a tab only as far as the manual says, and no trailing edge that is not a tab. A tab that is added or enlarged may be a major alteration: it bears on flutter.",
        _ => null,
    } : null;

    /// <summary>The manual on file, taken apart where it is written as “manual, section, revision X”; to be confirmed by whoever agrees.</summary>
    public static (string Manual, string Section, string Revision) DataOnFile(string? approvedData)
    {
        var parts = (approvedData ?? "").Split(',', StringSplitOptions.TrimEntries);
        var revision = Array.FindIndex(parts, part => part.StartsWith("revision ", StringComparison.OrdinalIgnoreCase));
        return parts.Length == 3 && revision == 2 ? (parts[0], parts[1], parts[2]["revision ".Length..]) : (approvedData ?? "", "", "");
    }

    /// <param name="what">For the prediction of an own plan; null where nothing can be predicted.</param>
    public static CorrectionAgreed Read(TypedFields fields, Typed typed, CorrectionProposal? proposal, WhatIf? what = null)
    {
        if (!fields.Ticked("confirmed"))
            typed.Wrong("data-not-confirmed", "Approved data: not confirmed. Look it up, correct it here if it differs, then tick that you have it before you.", "confirmed");
        var plan = fields["plan"];
        IReadOnlyList<PlannedMove> moves = plan switch
        {
            Proposed when proposal is not null => [.. proposal.Moves.Select(move => new PlannedMove(AssessmentWords.ControlOf(move), move.FromDeg, move.ToDeg, AssessmentWords.Instruction(move)))],
            Own => [OwnMove(fields, typed)],
            Repair => [new(Control.RepairOrReplace, null, null, fields["repair"] ?? "")],
            _ => [],
        };
        if (moves.Count == 0) typed.Wrong("not-a-choice", "What is to be done: nothing chosen. Choose one.", "plan");
        var predicted = plan == Proposed ? proposal?.PredictedRollTendency : typed.Ok && moves is [{ FromDeg: { } fromDeg, ToDeg: { } toDeg } move] ? what?.After(move.Control, fromDeg, toDeg)?.After : null;
        return new(moves, new(fields["manual"] ?? "", fields["section"] ?? "", fields["revision"] ?? ""), plan != Proposed, fields["reason"] ?? "",
            predicted?.Mean, predicted?.Low, predicted?.High);
    }

    /// <summary>What the model foresees of the own plan as typed so far; null as long as that is no eccentric and two angles.</summary>
    public static Foreseen? Foreseen(TypedFields fields, WhatIf? what)
    {
        var typed = new Typed();
        return Enum.TryParse<Control>(fields["control"], out var control)
            && Angle(fields, typed, "from", "From") is { } fromDeg && Angle(fields, typed, "to", "To") is { } toDeg && typed.Ok ? what?.After(control, fromDeg, toDeg) : null;
    }

    static PlannedMove OwnMove(TypedFields fields, Typed typed)
    {
        var control = typed.Choice<Control>(fields["control"], "control", "Control");
        if (!control.IsEccentric()) return new(control, null, null, fields["instruction"] ?? "");
        return new(control, Angle(fields, typed, "from", "From"), Angle(fields, typed, "to", "To"), fields["instruction"] ?? "");
    }

    static double? Angle(TypedFields fields, Typed typed, string field, string name)
    {
        var size = typed.Needed(fields[field], field, name, "degrees");
        if (size < 0)
            typed.Wrong("size-with-sign", $"{name}: “{fields[field]}” has a sign. Give the size alone and choose up or down.", field);
        else if (size > 0 && fields[field + "Way"] is not ("up" or "down"))
            typed.Wrong("side-missing", $"{name}: “{fields[field]}” given, not which way. Choose trailing edge up or down.", field + "Way");
        return fields[field + "Way"] == "up" && size != 0 ? -size : size;
    }

    /// <summary>Where this form asks for what a rule calls by another name.</summary>
    public static string FieldOf(string? field, string? plan) => (field, plan) switch
    {
        ("moves", Repair) => "repair",
        ("moves", Own) => "instruction",
        ("moves", _) => "plan",
        _ => field ?? "",
    };
}
