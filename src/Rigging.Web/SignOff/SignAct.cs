using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using Rigging.Web.SignIn;

namespace Rigging.Web.SignOff;

/// <summary>What the signature page shows.</summary>
/// <param name="ActingAs">Under which of the person's parts in the school; null where the act has no place now.</param>
/// <param name="Step">The page on which the text was prepared: its address below the squawk's, whose last word names its draft.</param>
public sealed record SignView(SquawkFile File, Fact Fact, string Heading, string Me, string? ActingAs, string Step, TextToSign Text, IReadOnlyList<BrokenRule> Blocked)
{
    public string StepAddress => $"squawks/{File.Number}/{Step}";

    /// <summary>What was typed there.</summary>
    public string DraftKey => Fact is GroundChecked ? Drafts.CheckKey(File.Number, "damage-inspection") : Drafts.TypedKey(File.Number, Step.Split('/')[^1]);

    /// <summary>The text without its last line.</summary>
    public IReadOnlyList<string> Body => [.. Text.Shown.Split('\n')[..^1]];

    /// <summary>The last line: what signing it means, the signer's name and certificate.</summary>
    public string Intent => Text.Shown.Split('\n')[^1];
}

public sealed class SignForm
{
    public const string PasswordField = "Form.Password";

    public int LengthSeen { get; set; }
    public string? TextSha256 { get; set; }
    public string? ShownSha256 { get; set; }
    public string? Password { get; set; }

    /// <summary>The browser's answer with a passkey; empty when the password was typed.</summary>
    public string? Credential { get; set; }
}

/// <summary>The only way a signed entry comes about: the prepared text shown in full, the signer's own password or passkey, one entry.</summary>
public sealed class SignAct(SquawkDesk desk, Drafts drafts, Actor actor, Doorman doorman, IClock clock)
{
    static Dictionary<string, (string Heading, string Step)> Kinds => new()
    {
        ["ground-check"] = (Say.SignDamageInspection, "checks?check=damage-inspection"),
        ["work-done"] = (Say.SignWork, "work"),
        ["independent-inspection"] = (Say.SignIndependentInspection, "inspection"),
        ["approval"] = (Say.ApproveForReturnToService, "approval"),
        ["check-flight"] = (Say.SignCheckFlight, "check-flight"),
        ["closing"] = (Texts.CloseComplaint, "closing"),
        ["no-fault-found"] = (Say.SignNoFaultFound, "other/no-fault-found"),
        ["within-limits"] = (Say.SignWithinLimits, "other/within-limits"),
        ["note"] = (Say.SignCorrection, "other/note"),
    };

    /// <summary>Null when this person has prepared no such text for this squawk.</summary>
    public async Task<SignView?> Show(int number, string kind, CancellationToken ct = default)
    {
        if (!Kinds.TryGetValue(kind, out var words)) return null;
        var me = await actor.Me();
        if (await desk.Open(number, ct) is not { } file || await drafts.LoadFact(me, number, kind, ct) is not { } fact) return null;
        var actingAs = Correcting.By(fact, file.Ledger).Where(file.Facts.Who.May).Select(Words.Of).FirstOrDefault();
        return new(file, fact, words.Heading, file.Register.Name(me), actingAs, words.Step, SquawkDesk.TextFor(file, fact), file.WhatBlocks(fact.GetType()));
    }

    public async Task<Outcome> Run(SignView view, SignForm form, CancellationToken ct = default)
    {
        var me = await actor.Me();
        var byPasskey = !string.IsNullOrEmpty(form.Credential);
        if (!byPasskey && view.File.School.PasskeysOnly) return new Outcome.Refused("passkey-demanded", Say.OnlyAPasskeySigns, SignForm.PasswordField);
        if (!await (byPasskey ? doorman.ConfirmsByPasskey(me, form.Credential!) : doorman.Confirms(me, form.Password)))
            return byPasskey
                ? new Outcome.Refused("passkey-refused", Say.PasskeyWasNotAcceptedAndNothing, SignForm.PasswordField)
                : new Outcome.Refused("password-wrong", Say.PasswordWasNotAcceptedAndNothing, SignForm.PasswordField);
        // Names may have changed in the register since the page was shown: then what was read is no longer what would be recorded.
        if (form.LengthSeen == view.File.Ledger.Length && form.ShownSha256 != view.Text.ShownSha256)
            return new Outcome.Refused("text-changed", Say.TextHasChangedSince, "text");
        var outcome = await desk.Sign(view.File.Id, form.LengthSeen, view.Fact,
            new(byPasskey ? "passkey" : "password", clock.GetCurrentInstant(), form.TextSha256 ?? "", view.Text.ShownSha256), ct);
        if (outcome is Outcome.Appended)
        {
            await drafts.Drop(me, Drafts.SigningKey(view.File.Number, EntryCodec.KindOf(view.Fact)), ct);
            await drafts.Drop(me, view.DraftKey, ct);
        }
        return outcome;
    }
}
