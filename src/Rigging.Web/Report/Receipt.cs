using NodaTime;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using Side = Rigging.Mechanics.Contract.Side;

namespace Rigging.Web.Report;

/// <summary>What became of a report, for whoever sent it: no names, no signatures, what was found and what was done.</summary>
/// <param name="Found">In the words of whoever found it; null while nobody has.</param>
/// <param name="Done">Null while nothing was.</param>
/// <param name="Feel">How it flies now and at the common loads, in litres and people; empty before a check flight.</param>
public sealed record Receipt(
    int Number, string Registration, SchoolOnFile School, Instant At, string Words, bool RedFlagged, AircraftId Aircraft, bool Open, NextAct? Next,
    IReadOnlyList<ReceiptStep> Steps, string? Found, string? Done, IReadOnlyList<string> Feel, IReadOnlyList<Drawing> Drawings)
{
    /// <summary>Closed as cured: whoever reported it is the one to say so.</summary>
    public bool Cured { get; init; }

    static (Type Kind, string Words)[] Way =>
    [
        (typeof(Reported), Texts.Reported), (typeof(Called), Say.AirworthinessCallMade), (typeof(GroundChecked), Say.CheckedOnGround), (typeof(CorrectionAgreed), Say.CorrectionAgreed),
        (typeof(WorkDone), Say.WorkDoneAndSigned), (typeof(Inspected), Say.InspectedBySecondPerson), (typeof(Approved), Texts.ApprovedForReturnToService),
        (typeof(CheckFlown), Say.CheckFlightFlown), (typeof(Closed), Say.Closed),
    ];

    static readonly Type[] OnceForAllRounds = [typeof(Reported), typeof(Called), typeof(GroundChecked)];

    public static Receipt Of(Ledger ledger, Facts facts, string registration, SchoolOnFile school)
    {
        var state = ledger.State;
        var (report, open) = (state.Report!, state.Stage!.Value.IsOpen());
        var verdict = state.CheckFlight is not null && facts.Airframe is { } onFile ? LedgerVerdict.Of(ledger, onFile, facts.DamageElsewhere) : null;
        return new(report.Number, registration, school, ledger.Entries[0].At, GroundingQuestions.Complaint(report), state.RedFlagged, report.Aircraft, open, open ? NextAct.Of(state, facts) : null,
            [.. StepsOf(ledger, open)], FoundIn(state, ledger), DoneIn(state), [.. Feels(verdict, facts)], [.. Draw(state, verdict, facts)])
        { Cured = state.Stage == Stage.Closed };
    }

    static IEnumerable<ReceiptStep> StepsOf(Ledger ledger, bool open)
    {
        var round = ledger.FirstOfRound;
        foreach (var (kind, words) in Way)
        {
            var entry = ledger.Entries.LastOrDefault(entry => entry.Fact.GetType() == kind && (entry.Sequence >= round || OnceForAllRounds.Contains(kind)));
            // A squawk that ended another way never gets to the rest.
            if (entry is not null || open) yield return new(words, entry?.At);
        }
        if (ledger.Entries.LastOrDefault(entry => entry.Fact is NoFaultFound or WithinLimits or JoinedTo or HandedOver) is { } end)
            yield return new(Rigging.Squawks.Rules.Words.Capital(Rigging.Squawks.Rules.Words.Of(ledger.State.Stage!.Value)), end.At);
    }

    static string? FoundIn(SquawkState state, Ledger ledger) => ledger.Entries.LastOrDefault(entry => entry.Fact is NoFaultFound or WithinLimits or JoinedTo or HandedOver)?.Fact switch
    {
        NoFaultFound none => none.Evaluation,
        WithinLimits within => Gaps.Fill(Say.Limit, within.Evaluation, within.LimitAndSource),
        JoinedTo joined => Gaps.Fill(Say.SameComplaintAsS, joined.OtherNumber, joined.Reason),
        HandedOver handed => Gaps.Fill(Say.NotRiggingItWentTo, handed.Reason, handed.To),
        _ => state.Correction?.Reason,
    };

    static string? DoneIn(SquawkState state) => state.WorkDone?.Fact.Description;

    static IEnumerable<string> Feels(LedgerVerdict? verdict, Facts facts)
    {
        if (verdict?.Computed.RollTendency is not { } now || facts.Airframe is not { } onFile) yield break;
        var aeroplane = new Aeroplane(onFile.Read());
        var worth = new Equivalents(aeroplane);
        yield return Gaps.Fill(Say.LetGoAtKtWithLoad, Rigging.Squawks.Rules.Words.Number(aeroplane.Airframe.Reference.CasKt, 0), Directions.Expected(now.Mean, now.Low, now.High));
        if (worth.Of(now) is { } coins) yield return coins;
        foreach (var load in worth.AtCommonLoads(now)) yield return $"{Rigging.Squawks.Rules.Words.Capital(load.Name)}: {load.Feels}.";
    }

    static IEnumerable<Drawing> Draw(SquawkState state, LedgerVerdict? verdict, Facts facts)
    {
        var airframe = facts.Airframe?.Read();
        if (verdict?.Computed.RollTendency is { } now)
            yield return AeroplaneView.FromRate(now.Mean, now.Low, now.High, airframe?.Limits?.AcceptableRollTendencyDegPerS);
        else if (state.Report!.RollsTo is Squawks.Entries.Side.Left or Squawks.Entries.Side.Right)
            yield return AeroplaneView.FromWords(state.Report.RollsTo == Squawks.Entries.Side.Left ? Side.Left : Side.Right);
        if (airframe is not null && state is { AsFound.Bushings: { } found, WorkDone.Fact.AsLeft: { } left })
            foreach (var drawing in AdjusterDrawings.Draw(airframe, found, left)) yield return drawing;
    }
}

/// <param name="At">Null: not yet.</param>
public sealed record ReceiptStep(string Words, Instant? At);
