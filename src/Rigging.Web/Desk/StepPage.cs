using Microsoft.AspNetCore.Components;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Storage.Ledgers;
using Rigging.Web.Look;

namespace Rigging.Web.Desk;

/// <summary>A plain page on which one person adds one entry to a squawk. It keeps what was typed, asks the rules, and says what changed meanwhile.</summary>
public abstract class StepPage<T> : ComponentBase where T : Fact
{
    /// <summary>Posted with every step's form, so that a page that fell behind is told.</summary>
    public const string LengthField = "lengthSeen";

    [Inject] protected SquawkDesk Squawks { get; set; } = null!;
    [Inject] protected Drafts Drafts { get; set; } = null!;
    [Inject] protected Actor Actor { get; set; } = null!;
    [Inject] protected NavigationManager Navigation { get; set; } = null!;
    [CascadingParameter] HttpContext? Context { get; set; }

    [Parameter] public int Number { get; set; }

    /// <summary>Null when the school has no such squawk.</summary>
    protected SquawkFile? File { get; private set; }

    protected TypedFields Fields { get; private set; } = new();

    protected IReadOnlyList<BrokenRule> Blocked { get; private set; } = [];

    protected IReadOnlyList<FieldError> Errors { get; private set; } = [];

    /// <summary>What was added to the squawk since the page was shown.</summary>
    protected IReadOnlyList<Entry> Meanwhile { get; private set; } = [];

    /// <summary>The page's last word in its address; also names its draft.</summary>
    protected abstract string Step { get; }

    /// <summary>Where the person goes once the entry is made.</summary>
    protected virtual string Afterwards => $"squawks/{Number}";

    protected string DraftKey => Drafts.TypedKey(Number, Step);

    /// <summary>The act as typed. What cannot be read becomes an error of <paramref name="typed"/>.</summary>
    protected abstract T Read(Typed typed, SquawkFile file);

    /// <summary>The refusals as this page says them, each at the form's field it speaks of.</summary>
    protected virtual IReadOnlyList<BrokenRule> InWords(IReadOnlyList<BrokenRule> broken) => broken;

    protected string? ErrorAt(string field) => Errors.FirstOrDefault(error => error.Name == field)?.Message;

    protected override async Task OnInitializedAsync()
    {
        File = await Squawks.Open(Number);
        if (File is null)
        {
            Navigation.NotFound();
            return;
        }
        Blocked = File.WhatBlocks<T>();
        Fields = Context is { Request.HasFormContentType: true }
            ? TypedFields.Of(await Context.Request.ReadFormAsync())
            : TypedFields.Read(await Drafts.Load(await Actor.Me(), DraftKey));
    }

    protected async Task Submit()
    {
        if (File is null) return;
        var me = await Actor.Me();
        _ = int.TryParse(Fields[LengthField], out var seen);
        Fields.Clear(LengthField);
        await Drafts.Save(me, DraftKey, Fields.ToJson());
        if (seen != File.Ledger.Length)
        {
            Meanwhile = [.. File.Ledger.Entries.Skip(seen)];
            return;
        }
        var typed = new Typed();
        var fact = Read(typed, File);
        if ((typed.Ok ? InWords(File.WhatSpeaksAgainst(fact)) : typed.Errors) is { Count: > 0 } broken)
        {
            Errors = [.. broken.Select(rule => new FieldError(rule.Field ?? "", rule.Sentence))];
            return;
        }
        await Take(fact, seen);
    }

    /// <summary>Nothing speaks against the entry any more.</summary>
    protected virtual async Task Take(T fact, int lengthSeen)
    {
        switch (await Squawks.Append(File!.Id, lengthSeen, fact))
        {
            case Outcome.Appended:
                await Drafts.Drop(await Actor.Me(), DraftKey);
                Navigation.NavigateTo(Afterwards);
                break;
            case Outcome.Refused refused:
                Errors = [.. InWords(refused.Broken).Select(rule => new FieldError(rule.Field ?? "", rule.Sentence))];
                break;
            case Outcome.Stale stale:
                Meanwhile = stale.New;
                break;
        }
    }
}
