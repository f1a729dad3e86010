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
        new(Proposed, Say.ProposedCorrection, proposal is null ? Say.NothingIsProposedOnThisEvidenceReasons : null, Disabled: proposal is null),
        new(Own, Say.MyOwnPlan, Say.OneControlFromWhere),
        new(Repair, Say.RepairOrReplaceToData, Say.ThimblePulleyHingeFairing),
    ];

    /// <summary>Those that this airframe has; flap rods, cables and the aileron neutral every aircraft has.</summary>
    public static IReadOnlyList<Choice> OwnControls(Airframe? airframe) =>
        [.. Enum.GetValues<Control>().Where(control => Has(airframe, control)).Select(control => new Choice(control.ToString(), Words.Capital(Words.Of(control))))];

    static bool Has(Airframe? airframe, Control control) => control switch
    {
        Control.RepairOrReplace => false,
        Control.LeftEccentric or Control.RightEccentric => airframe?.Eccentric is not null,
        Control.LeftStrutFork or Control.RightStrutFork => airframe?.Wing.Bracing == Bracing.StrutAtEachSpar,
        Control.AileronTab => airframe?.Ailerons.FixedTab is not null,
        Control.RudderTab => airframe?.Rudder is not null,
        _ => true,
    };

    /// <summary>What whoever moves this control must not do with it (common practice, no source); null where the steps of the work say it.</summary>
    public static string? Mind(string? control) => Enum.TryParse<Control>(control, out var chosen) ? chosen switch
    {
        Control.LeftFlapRod or Control.RightFlapRod or Control.AileronNeutral =>
            Say.FlapOrAileronThatIsDroopedToHide,
        Control.AileronTab or Control.RudderTab =>
            Say.BendTabOnlyAsFar,
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
            typed.Wrong("data-not-confirmed", Say.ApprovedDataNotConfirmed, "confirmed");
        var plan = fields["plan"];
        IReadOnlyList<PlannedMove> moves = plan switch
        {
            Proposed when proposal is not null => [.. proposal.Moves.Select(move => new PlannedMove(AssessmentWords.ControlOf(move), move.FromDeg, move.ToDeg, AssessmentWords.Instruction(move), move.FromTurns, move.ToTurns))],
            Own => [OwnMove(fields, typed)],
            Repair => [new(Control.RepairOrReplace, null, null, fields["repair"] ?? "")],
            _ => [],
        };
        if (moves.Count == 0) typed.Wrong("not-a-choice", Say.WhatIsToBeDoneNothingChosen, "plan");
        var predicted = plan == Proposed ? proposal?.PredictedRollTendency : typed.Ok && moves is [var move] ? what?.After(move)?.After : null;
        return new(moves, new(fields["manual"] ?? "", fields["section"] ?? "", fields["revision"] ?? ""), plan != Proposed, fields["reason"] ?? "",
            predicted?.Mean, predicted?.Low, predicted?.High);
    }

    /// <summary>What the model foresees of the own plan as typed so far; null as long as that is no control that stands at a number and two of them.</summary>
    public static Foreseen? Foreseen(TypedFields fields, WhatIf? what)
    {
        var typed = new Typed();
        return Enum.TryParse<Control>(fields["control"], out _) && OwnMove(fields, typed) is var move && typed.Ok ? what?.After(move) : null;
    }

    /// <summary>A setting as the form takes it: size and way; both null for none.</summary>
    public static (string? Size, string? Way) Typed(double? value) => value is { } stands
        ? (Math.Abs(stands).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture), stands == 0 ? null : stands > 0 ? "plus" : "minus")
        : (null, null);

    /// <summary>From and to can be given as numbers; of an eccentric they must be.</summary>
    public static bool InNumbers(Control control) => control.IsEccentric() || control.StandsAtANumber();

    /// <summary>What a strut fork's and a flap rod's turns are counted from, and a tab's degrees measured.</summary>
    public static string CountedFrom(Control control) => control.IsTab() ? Say.FromStraight : control.IsStrutFork() ? Say.OutFromFullyIn : Say.FromDrawing;

    /// <summary>Where it stands when it stands no way at all.</summary>
    public static string Home(Control control) => control.IsEccentric() ? Say.Neutral : control.IsTab() ? Say.Straight : Say.LengthOfDrawing;

    static PlannedMove OwnMove(TypedFields fields, Typed typed)
    {
        var control = typed.Choice<Control>(fields["control"], "control", Say.Control);
        var words = fields["instruction"] ?? "";
        if (!InNumbers(control)) return new(control, null, null, words);
        var (from, to) = (Setting("from", Texts.From), Setting("to", Say.To));
        // What is moved reads as the numbers do; what is typed beside them only adds to it.
        if (from is { } was && to is { } wanted) words = $"{AssessmentWords.NowThen(control, was, wanted)} {words}".TrimEnd();
        return control.InTurns() ? new(control, null, null, words, from, to) : new(control, from, to, words);

        double? Setting(string field, string name)
        {
            if (control.IsEccentric()) typed.Needed(fields[field], field, name, "degrees");
            return typed.Ok ? AdjusterForm.Read(fields, typed, field, name, control) : null;
        }
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
