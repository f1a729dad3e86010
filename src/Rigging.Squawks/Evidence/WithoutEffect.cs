using System.Text.Json.Nodes;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;

namespace Rigging.Squawks.Evidence;

/// <summary>
/// Corrections that were flown and changed next to nothing: strong evidence against the cause they were meant for. Those of which it is on record
/// how far what was moved are not among them: their flights before and after both count, the move said beside the earlier.
/// </summary>
static class WithoutEffect
{
    /// <summary>Less than this part of what was expected is no effect; a change smaller than the other could not have been seen, °/s (judgement, no source).</summary>
    const double PartOfExpected = 0.25, LeastExpectedDegPerS = 0.3;

    public static IEnumerable<Cause> Of(Ledger ledger, TurnedSince turned)
    {
        (double? before, double? was, CorrectionAgreed? tried, var countsItself) = (null, null, null, false);
        foreach (var entry in ledger.Entries)
        {
            if (entry.Fact is Assessed assessed) before = Tendency(assessed.Response);
            if (entry.Fact is CorrectionAgreed agreed) (tried, was) = (agreed, before);
            if (entry.Fact is WorkDone) countsItself = turned.Works.Single(work => work.Sequence == entry.Sequence).Moves is not null;
            if (entry.Fact is not VerdictGiven { TendencyDegPerS: { } now }) continue;
            if (!countsItself && tried is { PredictedDegPerS: { } expected } && was is { } then && Math.Abs(expected - then) >= LeastExpectedDegPerS
                && (now - then) / (expected - then) < PartOfExpected && MeantFor(tried) is { } cause)
                yield return cause;
            before = now;
        }
    }

    /// <summary>What was tried before it came here, as the reporter says.</summary>
    public static Cause MeantFor(Tried tried) => tried switch
    {
        Tried.Incidence => Cause.PanelIncidenceDifference,
        Tried.Flaps => Cause.FlapDifference,
        Tried.Ailerons => Cause.AileronNeutralOffset,
        Tried.AileronTab => Cause.AileronFloat,
        Tried.RudderTab => Cause.RudderOrFinOffset,
        _ => throw new ArgumentOutOfRangeException(nameof(tried), tried, "meant for no cause"),
    };

    // Two remedies at once: which of them did nothing, nobody can say.
    static Cause? MeantFor(CorrectionAgreed correction) =>
        correction.Moves.Select(move => MeantFor(move.Control)).Distinct().ToList() is [{ } cause] ? cause : null;

    static Cause? MeantFor(Control control) => control switch
    {
        Control.LeftFlapRod or Control.RightFlapRod => Cause.FlapDifference,
        Control.AileronNeutral => Cause.AileronNeutralOffset,
        Control.AileronTab => Cause.AileronFloat,
        Control.RudderTab => Cause.RudderOrFinOffset,
        _ => null,
    };

    /// <summary>Of an assessment on record, °/s.</summary>
    internal static double? Tendency(string response) => (double?)JsonNode.Parse(response)?["rollTendency"]?["mean"];
}
