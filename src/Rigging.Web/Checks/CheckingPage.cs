using Microsoft.AspNetCore.Components;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Checks;

/// <summary>A plain page that adds one entry, or leads on to its signature: what was typed stays on every refusal, and a page overtaken by another entry says what was added.</summary>
public abstract class CheckingPage : ComponentBase
{
    protected const string LengthField = "_length";

    [Inject] SquawkDesk Desk { get; set; } = null!;
    [Inject] Drafts Drafts { get; set; } = null!;
    [Inject] Actor Actor { get; set; } = null!;
    [Inject] NavigationManager Navigation { get; set; } = null!;

    [Parameter] public int Number { get; set; }
    [CascadingParameter] public HttpContext Context { get; set; } = null!;

    /// <summary>Null when there is no such squawk: then the answer is "not found".</summary>
    protected SquawkFile? File { get; private set; }

    protected TypedFields Fields { get; private set; } = TypedFields.Read(null);

    protected IReadOnlyList<FieldError> Errors { get; private set; } = [];

    /// <summary>What others added since the page was shown.</summary>
    protected IReadOnlyList<Entry> Meanwhile { get; private set; } = [];

    protected override async Task OnInitializedAsync()
    {
        File = await Desk.Open(Number, Context.RequestAborted);
        if (File is null) Navigation.NotFound();
        else if (Context.Request.HasFormContentType) Fields = TypedFields.Of(await Context.Request.ReadFormAsync(Context.RequestAborted));
        else if (DraftKey is { } key) Fields = TypedFields.Read(await Drafts.Load(await Actor.Me(), key, Context.RequestAborted));
    }

    /// <summary>Of the form that lies open; null when none does.</summary>
    protected abstract string? DraftKey { get; }

    protected string? ErrorAt(string field) => Errors.FirstOrDefault(error => error.Name == field)?.Message;

    /// <param name="fact">What was typed, if it could be read.</param>
    /// <param name="field">A rule's field as this form calls it; empty where the form has none.</param>
    /// <param name="then">Where to go when it is recorded.</param>
    protected async Task Record(Fact fact, Typed typed, string then, Func<BrokenRule, FieldError>? field = null)
    {
        if (!typed.Ok)
        {
            Errors = [.. typed.Errors.Select(AtItsField)];
            await KeepWhatWasTyped();
            return;
        }
        var seen = int.TryParse(Context.Request.Form[LengthField], out var length) ? length : 0;
        if (seen == File!.Ledger.Length && MoveTable.MustBeSigned(fact, File.State) && File.WhatSpeaksAgainst(fact).Count == 0)
        {
            await KeepWhatWasTyped();
            await Drafts.SaveFact(await Actor.Me(), Number, fact, Context.RequestAborted);
            Navigation.NavigateTo($"squawks/{Number}/sign/{EntryCodec.KindOf(fact)}");
            return;
        }
        switch (await Desk.Append(File.Id, seen, fact, Context.RequestAborted))
        {
            case Outcome.Appended:
                await Drafts.Drop(await Actor.Me(), DraftKey!, Context.RequestAborted);
                // The address tells the draft script to forget its copy.
                Navigation.NavigateTo($"{then}&done={DraftKey}");
                return;
            case Outcome.Refused refused:
                Errors = [.. refused.Broken.Select(field ?? AtItsField)];
                break;
            case Outcome.Stale stale:
                Meanwhile = stale.New;
                break;
        }
        await KeepWhatWasTyped();
        File = await Desk.Open(Number, Context.RequestAborted);
    }

    async Task KeepWhatWasTyped() => await Drafts.Save(await Actor.Me(), DraftKey!, Fields.ToJson(), Context.RequestAborted);

    static FieldError AtItsField(BrokenRule rule) => new(rule.Field ?? "", rule.Sentence);
}
