using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;

namespace Rigging.Web.Desk;

/// <summary>A page with one form for one kind of entry.</summary>
public abstract class StepPage<T> : EntryPage where T : Fact
{
    protected IReadOnlyList<BrokenRule> Blocked { get; private set; } = [];

    /// <summary>The page's last word in its address; also names its draft.</summary>
    protected abstract string Step { get; }

    /// <summary>Where the person goes once the entry is made.</summary>
    protected virtual string Afterwards => $"squawks/{Number}";

    protected override string DraftKey => Drafts.TypedKey(Number, Step);

    /// <summary>The act as typed. What cannot be read becomes an error of <paramref name="typed"/>.</summary>
    protected abstract T Read(Typed typed, SquawkFile file);

    protected override async Task OnInitializedAsync()
    {
        await base.OnInitializedAsync();
        Blocked = File?.WhatBlocks<T>() ?? [];
    }

    protected Task Submit()
    {
        if (File is null) return Task.CompletedTask;
        var typed = new Typed();
        return Enter(Read(typed, File), typed, Afterwards);
    }
}
