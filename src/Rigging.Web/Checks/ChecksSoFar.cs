using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;

namespace Rigging.Web.Checks;

public enum CheckState { Missing, NotMeasured, Recorded, NotApplicable, NotClear, OutOfLimits, Overtaken }

/// <summary>What the ledger holds of each check: the latest word on it counts, for cables and tabs each by itself.</summary>
static class ChecksSoFar
{
    public static IReadOnlyList<(Entry Entry, GroundChecked Check)> Of(Ledger ledger, Check check)
    {
        var all = ledger.Entries.Where(entry => entry.Fact is GroundChecked done && done.Check == check).Select(entry => (entry, Fact: (GroundChecked)entry.Fact)).ToList();
        // A word on the whole check stands for all its cables, and is overtaken by a later measurement of one.
        return all.Count > 0 && all[^1].Fact.NotApplicableReason is not null ? [all[^1]]
            : [.. all.Where(done => done.Fact.NotApplicableReason is null).GroupBy(done => done.Fact.Part()).Select(same => same.Last())];
    }

    public static CheckState StateOf(Ledger ledger, CheckedSince since, Check check) => Of(ledger, check) switch
    {
        [] => CheckUnits.Serves(check) is null ? CheckState.NotMeasured : CheckState.Missing,
        var found when found.Any(done => done.Check.Clear == false) => CheckState.NotClear,
        [{ Check.NotApplicableReason: not null }] => CheckState.NotApplicable,
        // Said in words, and nothing measured.
        var found when !found.Any(done => done.Check.HasItsValue()) => CheckUnits.Serves(check) is null ? CheckState.NotMeasured : CheckState.Missing,
        var found when found.Any(done => done.Check.OutOfLimits().Any()) => CheckState.OutOfLimits,
        // What was measured before it was moved, nobody knows how far, no longer says how it stands.
        var found when found.All(done => since.IsOvertaken(done.Entry)) => CheckState.Overtaken,
        // One cable of two is measured.
        _ when CheckUnits.Serves(check) is { } served && !ledger.State.IsOnRecord(served) => CheckState.Missing,
        _ => CheckState.Recorded,
    };

    /// <summary>Forks, rods and tabs as they stand by the last word on record. A tab that was measured since is not among them: its check says how it stands.</summary>
    public static IEnumerable<AdjusterSetting> Standing(Ledger ledger) => ledger.State.Adjusters
        .Where(at => at.Key.InTurns() || ledger.Entries.Last(entry => Speaks(entry.Fact, at.Key)).Fact is not GroundChecked)
        .OrderBy(at => at.Key).Select(at => new AdjusterSetting(at.Key, at.Value));

    static bool Speaks(Fact fact, Control tab) => fact switch
    {
        AsFound found => found.Adjusters.Of(tab) is not null,
        WorkDone done => done.AdjustersAsLeft.Of(tab) is not null,
        GroundChecked { Value: not null } check => check.Check == (tab == Control.RudderTab ? Check.RudderTab : Check.AileronTab),
        _ => false,
    };
}
