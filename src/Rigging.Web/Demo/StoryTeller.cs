using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using NodaTime;
using NodaTime.Text;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;
using Rigging.Storage;
using Rigging.Storage.Ledgers;
using Rigging.Web.Desk;

namespace Rigging.Web.Demo;

/// <summary>Tells the seeds' stories into ledgers, act by act in the order of time, through the same rules as everybody else.</summary>
sealed class StoryTeller(IDbContextFactory<RiggingDb> databases, SeedFolder seeds, ZonedDateTime loaded)
{
    /// <summary>Stands as the method of every signature in a story: what is true of it.</summary>
    public const string Method = "demo seed: no password was asked";

    static readonly LocalTimePattern TimeOfDay = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    readonly StoryClock clock = new();

    /// <exception cref="StartRefusedException">A rule refuses an act, or a story does not end where it says.</exception>
    public async Task TellAll(CancellationToken ct)
    {
        var store = new LedgerStore(databases, clock);
        var ledgers = new Dictionary<StorySeed, Ledger>();
        foreach (var (_, story) in seeds.Stories)
            ledgers[story] = await store.Load(new(story.Id), ct) ?? Ledger.Empty(new(story.Id));

        foreach (var told in InOrder())
            if (ledgers[told.Story] is { } ledger && ledger.Length > told.Index)
                CheckTold(told, ledger);
            else
                ledgers[told.Story] = await Tell(told, ledgers[told.Story], store, ct);

        foreach (var (file, story) in seeds.Stories)
            if (ledgers[story].State.Stage != story.EndsAt)
                throw new StartRefusedException($"{file}: the story ends elsewhere than at '{Words.Of(story.EndsAt)}'.");
    }

    sealed record Told(string File, StorySeed Story, int Index, Instant At)
    {
        public ActSeed Act => Story.Acts[Index];

        public StartRefusedException Refused(string why) => new($"{File}, act {Index + 1} ({Act.Kind} by {Act.Who}): {why}");
    }

    IEnumerable<Told> InOrder()
    {
        var all = seeds.Stories.SelectMany(seed => seed.Story.Acts.Select((act, index) => new Told(seed.File, seed.Story, index, MomentOf(seed.File, act)))).ToList();
        foreach (var (before, after) in all.Zip(all.Skip(1)))
            if (before.Story == after.Story && after.At <= before.At) throw after.Refused("it comes before the act before it.");
        if (all.Find(told => told.At >= loaded.ToInstant()) is { } future) throw future.Refused("it has not happened yet: a story lies before the day of loading.");
        return all.OrderBy(told => told.At);
    }

    Instant MomentOf(string file, ActSeed act) => TimeOfDay.Parse(act.At) is { Success: true, Value: var time }
        ? loaded.Date.PlusDays(-act.DaysAgo).At(time).InZoneLeniently(loaded.Zone).ToInstant()
        : throw new StartRefusedException($"{file}: '{act.At}' is no time of day; wanted hours and minutes, such as 09:40.");

    // Left over from a load that was cut off: it is ours if it is the same story.
    static void CheckTold(Told told, Ledger ledger)
    {
        if (EntryCodec.KindOf(ledger.Entries[told.Index].Fact) != told.Act.Kind || ledger.Entries[told.Index].At != told.At)
            throw told.Refused("an earlier load was cut off, and it told another story. Start again with an empty --data folder.");
    }

    async Task<Ledger> Tell(Told told, Ledger ledger, LedgerStore store, CancellationToken ct)
    {
        clock.Now = told.At;
        var who = new PersonId(seeds.Person(told.Act.Who)!.Id);
        var facts = ledger.Length == 0 ? null : (await store.Look(ledger.Id, who, ct))?.Facts;
        var fact = FactOf(told, ledger, facts);
        var outcome = fact is Reported report && ledger.Length == 0
            ? await store.File(who, ledger.Id, report, ct)
            : await store.Append(ledger.Id, ledger.Length, who, fact, await Affirm(fact, ledger, facts, ct), ct);
        return outcome switch
        {
            Outcome.Appended { Ledger: var grown } => grown,
            Outcome.Refused { Broken: var broken } => throw told.Refused(string.Join(" ", broken.Select(rule => $"{rule.Code}: {rule.Sentence}"))),
            _ => throw told.Refused("somebody else wrote into this squawk meanwhile. Start again with an empty --data folder."),
        };
    }

    Fact FactOf(Told told, Ledger ledger, Facts? facts)
    {
        try
        {
            return new StoryFact(seeds, told.Story).Of(told.Act, told.At.InZone(loaded.Zone).Date, ledger, facts?.Airframe);
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException)
        {
            throw told.Refused(wrong.Message);
        }
    }

    async Task<Affirmation?> Affirm(Fact fact, Ledger ledger, Facts? facts, CancellationToken ct)
    {
        if (facts is null || !MoveTable.MustBeSigned(fact, ledger.State)) return null;
        await using var db = await databases.CreateDbContextAsync(ct);
        var text = Squawk.TextToSign(ledger, fact, facts);
        var shown = (await Registers.Names(db, ct)).Render(text);
        return new(Method, clock.Now, SignedText.Sha256(text), SignedText.Sha256(shown));
    }
}
