using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.SignIn;

namespace Rigging.Web.SignOff;

/// <summary>What the signature page shows.</summary>
/// <param name="StepAddress">The page on which the text was prepared.</param>
public sealed record SignView(SquawkFile File, Fact Fact, string Heading, string Me, string StepAddress, TextToSign Text, IReadOnlyList<BrokenRule> Blocked);

public sealed class SignForm
{
    public int LengthSeen { get; set; }
    public string? TextSha256 { get; set; }
    public string? ShownSha256 { get; set; }
    public string? Password { get; set; }
}

/// <summary>The only way a signed entry comes about: the prepared text shown in full, the signer's own password, one entry.</summary>
public sealed class SignAct(SquawkDesk desk, Drafts drafts, Actor actor, Doorman doorman, IClock clock)
{
    static readonly Dictionary<string, (string Heading, string Step)> Kinds = new()
    {
        ["work-done"] = ("Sign the work", "work"),
        ["independent-inspection"] = ("Sign the independent inspection", "inspection"),
        ["approval"] = ("Approve for return to service", "approval"),
        ["check-flight"] = ("Sign the check flight", "check-flight"),
        ["closing"] = ("Close the complaint", "closing"),
        ["no-fault-found"] = ("Sign: no fault found", "other"),
        ["within-limits"] = ("Sign: within limits", "other"),
    };

    /// <summary>Null when this person has prepared no such text for this squawk.</summary>
    public async Task<SignView?> Show(int number, string kind, CancellationToken ct = default)
    {
        if (!Kinds.TryGetValue(kind, out var words)) return null;
        var me = await actor.Me();
        if (await desk.Open(number, ct) is not { } file || await drafts.LoadFact(me, number, kind, ct) is not { } fact) return null;
        return new(file, fact, words.Heading, file.Register.Name(me), $"squawks/{number}/{words.Step}", SquawkDesk.TextFor(file, fact), file.WhatBlocks(fact.GetType()));
    }

    public async Task<Outcome> Run(SignView view, SignForm form, CancellationToken ct = default)
    {
        var me = await actor.Me();
        if (!await doorman.Confirms(me, form.Password))
            return new Outcome.Refused("password-wrong", "That is not your password. Nothing was signed. After five wrong tries an account rests for a few minutes.", "password");
        // Names may have changed in the register since the page was shown: then what was read is no longer what would be recorded.
        if (form.LengthSeen == view.File.Ledger.Length && form.ShownSha256 != view.Text.ShownSha256)
            return new Outcome.Refused("text-changed", "The text has changed since the page was shown. Read it again, then sign.", "text");
        var outcome = await desk.Sign(view.File.Id, form.LengthSeen, view.Fact,
            new("password", clock.GetCurrentInstant(), form.TextSha256 ?? "", view.Text.ShownSha256), ct);
        if (outcome is Outcome.Appended) await drafts.Drop(me, Drafts.SigningKey(view.File.Number, EntryCodec.KindOf(view.Fact)), ct);
        return outcome;
    }
}
