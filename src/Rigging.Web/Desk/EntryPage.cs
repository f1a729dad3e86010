using Microsoft.AspNetCore.Components;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>A plain page that adds one entry to a squawk, or leads on to its signature. What was typed stays on every refusal, and a page overtaken by another entry says what was added.</summary>
public abstract class EntryPage : ComponentBase
{
    /// <summary>Posted with every form, so that a page that fell behind is told. The line in front keeps it out of what was typed.</summary>
    public const string LengthField = "_length";

    [Inject] SquawkDesk Desk { get; set; } = null!;
    [Inject] Drafts Drafts { get; set; } = null!;
    [Inject] Actor Actor { get; set; } = null!;
    [Inject] NavigationManager Navigation { get; set; } = null!;

    [CascadingParameter] public HttpContext Context { get; set; } = null!;

    [Parameter] public int Number { get; set; }

    /// <summary>Null when the school has no such squawk: then the answer is "not found".</summary>
    protected SquawkFile? File { get; private set; }

    protected TypedFields Fields { get; private set; } = new();

    protected IReadOnlyList<FieldError> Errors { get; private set; } = [];

    /// <summary>What others added since the page was shown.</summary>
    protected IReadOnlyList<Entry> Meanwhile { get; private set; } = [];

    /// <summary>Of the form that lies open; null when none does.</summary>
    protected abstract string? DraftKey { get; }

    /// <summary>The refusals as this page says them, each at the form's field it speaks of; at none where the form has none.</summary>
    protected virtual IEnumerable<FieldError> InWords(IReadOnlyList<BrokenRule> broken) => broken.Select(AtItsField);

    protected string? ErrorAt(string field) => Errors.FirstOrDefault(error => error.Name == field)?.Message;

    protected override async Task OnInitializedAsync()
    {
        File = await Desk.Open(Number, Context.RequestAborted);
        if (File is null) Navigation.NotFound();
        else if (Context.Request.HasFormContentType) Fields = TypedFields.Of(await Context.Request.ReadFormAsync(Context.RequestAborted));
        else if (DraftKey is { } key) Fields = TypedFields.Read(await Drafts.Load(await Actor.Me(), key, Context.RequestAborted));
    }

    /// <param name="fact">What was typed, as far as it could be read.</param>
    /// <param name="then">Where to go when it is recorded.</param>
    protected async Task Enter(Fact fact, Typed typed, string then)
    {
        var (me, ct) = (await Actor.Me(), Context.RequestAborted);
        await Drafts.Save(me, DraftKey!, Fields.ToJson(), ct);
        _ = int.TryParse(Context.Request.Form[LengthField], out var seen);
        if (seen != File!.Ledger.Length)
        {
            Meanwhile = [.. File.Ledger.Entries.Skip(seen)];
            return;
        }
        Errors = typed.Ok ? [.. InWords(File.WhatSpeaksAgainst(fact))] : [.. typed.Errors.Select(AtItsField)];
        if (Errors.Count > 0) return;
        if (MoveTable.MustBeSigned(fact, File.State))
        {
            await Drafts.SaveFact(me, Number, fact, ct);
            Navigation.NavigateTo($"squawks/{Number}/sign/{EntryCodec.KindOf(fact)}");
            return;
        }
        switch (await Desk.Append(File.Id, seen, fact, ct))
        {
            case Outcome.Appended:
                await Drafts.Drop(me, DraftKey!, ct);
                // The address tells the draft script to forget its copy.
                Navigation.NavigateTo($"{then}{(then.Contains('?', StringComparison.Ordinal) ? '&' : '?')}done={DraftKey}");
                break;
            case Outcome.Refused refused:
                Errors = [.. InWords(refused.Broken)];
                break;
            case Outcome.Stale stale:
                Meanwhile = stale.New;
                break;
        }
    }

    protected static FieldError AtItsField(BrokenRule rule) => new(rule.Field ?? "", rule.Sentence);
}
