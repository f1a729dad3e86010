using Rigging.Mechanics;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Correction;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.Work;

/// <summary>One mechanic's place at one squawk: how it stands, what is typed, what came of the last attempt. Everything typed is kept as it is typed.</summary>
/// <param name="show">The page shows itself anew: what one part takes in decides which part is next.</param>
sealed class Bench(SquawkDesk desk, Drafts drafts, Actor actor, int number, Action show)
{
    const string Step = "work";

    bool keeping, changed;
    IReadOnlyList<EarlierCorrection>? lessons;   // from closed ledgers: the same for as long as the page is open
    Lazy<FlownEvidence?> flown = new(() => null);
    Lazy<Equivalents?> coins = new(() => null);

    /// <summary>Null until opened, and when there is no such squawk.</summary>
    public SquawkFile? File { get; private set; }

    public TypedFields Fields { get; private set; } = new();

    public IReadOnlyList<FieldError> Errors { get; private set; } = [];

    string attempted = "";

    /// <summary>What was wrong with the last attempt to record this part; empty for the others.</summary>
    public IReadOnlyList<FieldError> ErrorsIn(string part) => part == attempted ? Errors : [];

    /// <summary>What others added since the page was last in step.</summary>
    public IReadOnlyList<Entry> Meanwhile { get; private set; } = [];

    /// <summary>Said after something was recorded.</summary>
    public string? Said { get; private set; }

    /// <summary>Why the last attempt did not reach the database; null when it did. What is typed stays here meanwhile.</summary>
    public string? Away { get; private set; }

    public string? this[string field] => Fields[field];

    public string? ErrorAt(string field) => Errors.FirstOrDefault(error => error.Name == field)?.Message;

    public IReadOnlyList<BrokenRule> WhatBlocks<T>() where T : Fact => File!.WhatBlocks<T>();

    /// <summary>When this person last typed here, before this visit; null when never.</summary>
    public NodaTime.Instant? TypedBefore { get; private set; }

    /// <summary>Who else has something typed here that is not on record yet.</summary>
    public IReadOnlyList<(PersonId Person, NodaTime.Instant At)> Others { get; private set; } = [];

    public async Task Open()
    {
        await Look();
        var me = await actor.Me();
        var typed = await drafts.At(Drafts.TypedKey(number, Step));
        TypedBefore = typed.Where(draft => draft.Person == me).Select(draft => (NodaTime.Instant?)draft.At).FirstOrDefault();
        Others = [.. typed.Where(draft => draft.Person != me)];
        Fields = TypedFields.Read(await drafts.Load(await actor.Me(), Drafts.TypedKey(number, Step)));
    }

    /// <summary>Somebody added an entry: show it, keep what is typed.</summary>
    public Task Refresh() => Reach(Look);

    async Task Look()
    {
        File = await desk.Open(number);
        if (File is null) return;
        lessons ??= await desk.Lessons(File);
        coins = new(() => flown.Value is { } evidence ? new(new(evidence.Airframe)) : null);
        flown = new(() => File.Facts.Airframe is { } onFile ? FlownEvidence.Now(File.Ledger, onFile, lessons) : null);
    }

    /// <summary>What speaks against the measurement of a move as typed; empty when it is proved.</summary>
    public IReadOnlyList<BrokenRule> AgainstMovement(PlannedMove move)
    {
        var typed = new Typed();
        var measured = MovementForm.Read(Fields, typed, move.Control, File!.Facts);
        return DirectionRules.Of(move, typed.Ok ? measured : null, null, File.State, File.Facts);
    }

    /// <summary>Every move that was agreed on is proved by a measurement.</summary>
    public bool IsProved => DirectionRules.ToProve(File!.State).All(move => AgainstMovement(move).Count == 0);

    /// <summary>The roll tendency expected of the work as typed; null when nothing was flown, or nothing of the aircraft is on file.</summary>
    public Answer<Foreseen>? Expected(WorkDone done) => flown.Value is { } evidence ? AsLeft.Foreseen(evidence.Outlook, File!.State, done) : null;

    /// <summary>What a roll tendency is worth in litres, people and flats; null as in <see cref="Expected"/>.</summary>
    public Equivalents? Coins => coins.Value;

    // A page that lost its circuit would lose what is typed, so a database that is away is a thing to say, not an end.
    async Task Reach(Func<Task> act)
    {
        try
        {
            await act();
            Away = null;
        }
        catch (Exception error) when (DatabaseAway.Why(error) is { } why)
        {
            Away = why;
        }
    }

    /// <summary>Takes a field in. Letters that come while a save is on its way go with the next one.</summary>
    public async Task Type(string field, string? text)
    {
        Fields[field] = text;
        (Said, changed) = (null, true);
        show();
        if (keeping) return;
        keeping = true;
        try
        {
            while (changed)
            {
                changed = false;
                await Reach(async () => await drafts.Save(await actor.Me(), Drafts.TypedKey(number, Step), Fields.ToJson()));
            }
        }
        finally
        {
            keeping = false;
        }
    }

    /// <summary>Adds an entry made from one part of the form; that part is then empty again.</summary>
    /// <param name="part">The part's fields begin with it and a dot; the rules' field names follow.</param>
    public async Task Record(string part, Typed typed, Fact? fact, string said)
    {
        (attempted, Errors, Meanwhile, Said) = (part, [], [], null);
        if (!typed.Ok || fact is null)
        {
            Errors = Of(part, typed.Errors);
            return;
        }
        Outcome? outcome = null;
        await Reach(async () => outcome = await desk.Append(File!.Id, File.Ledger.Length, fact));
        switch (outcome)
        {
            case Outcome.Appended:
                Fields.Clear(part + ".");
                await Type(part, null);
                Said = said;
                break;
            case Outcome.Refused refused:
                Errors = Of(part, refused.Broken);
                break;
            case Outcome.Stale stale:
                Meanwhile = stale.New;
                break;
        }
        if (outcome is not null) await Refresh();
        show();
    }

    /// <summary>Puts the work before its author for signature; true when the signature page can show it.</summary>
    public async Task<bool> Prepare(Typed typed, WorkDone done)
    {
        (attempted, Meanwhile, Said) = ("done", [], null);
        Errors = Of("done", typed.Ok ? File!.WhatSpeaksAgainst(done) : typed.Errors);
        if (Errors.Count > 0) return false;
        await Reach(async () => await drafts.SaveFact(await actor.Me(), number, done));
        return Away is null;
    }

    static IReadOnlyList<FieldError> Of(string part, IReadOnlyList<BrokenRule> broken) =>
        [.. broken.Select(rule => new FieldError(rule.Field is null ? "" : rule.Field.StartsWith(part + ".", StringComparison.Ordinal) ? rule.Field : $"{part}.{rule.Field}", rule.Sentence))];
}
