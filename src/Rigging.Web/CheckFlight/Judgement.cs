using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Mechanics.Verification;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Evidence;
using Rigging.Squawks.Rules;
using Rigging.Web.Desk;
using Rigging.Web.Look;

namespace Rigging.Web.CheckFlight;

/// <summary>The verdict on a check flight, computed from the ledger, in words.</summary>
/// <param name="Tendency">Null when nothing bears on it.</param>
/// <param name="LimitDegPerS">Null when none is on file.</param>
/// <param name="Lines">What it rests on, in order.</param>
/// <param name="Assumed">What the ledger did not say and had to be taken from somewhere.</param>
sealed record Judgement(VerdictWord Word, Estimate? Tendency, double? LimitDegPerS, IReadOnlyList<string> Lines, IReadOnlyList<string> Assumed, VerdictGiven Entry)
{
    /// <summary>Null before a check flight, and without airframe data on file.</summary>
    public static Judgement? Of(SquawkFile file)
    {
        if (file.State.CheckFlight is not { Fact: var flown } || file.Facts.Airframe is not { } onFile || LedgerVerdict.Of(file.Ledger, onFile, file.Facts.DamageElsewhere) is not { } verdict) return null;
        var airframe = onFile.Read();
        List<string> lines = [.. OfTendency(verdict.Computed, airframe), .. OfLoad(verdict.Computed, verdict.Request, airframe), verdict.Computed.Reasons[^1]];
        return new(verdict.Fact.Verdict, verdict.Computed.RollTendency, airframe.Limits?.AcceptableRollTendencyDegPerS, lines,
            EvidenceRequest.OfCheckFlights(file.Ledger, onFile, flown.FuelMeasured).Assumed, verdict.Fact with { Explanation = string.Join(' ', lines) });
    }

    static IEnumerable<string> OfTendency(CheckFlightVerdict verdict, Airframe airframe)
    {
        if (verdict.RollTendency is not { } found) yield break;
        yield return Gaps.Fill(Say.WithLoadItIsRiggedForLetGo, Directions.Expected(found.Mean, found.Low, found.High));
        if (airframe.Limits is { AcceptableRollTendencyDegPerS: var limit }) yield return Gaps.Fill(Say.LimitIsDegPerSEitherWay, Words.Number(limit));
        foreach (var sentence in new Equivalents(new Aeroplane(airframe)).Says(found)) yield return sentence;
    }

    static IEnumerable<string> OfLoad(CheckFlightVerdict verdict, AssessmentRequest request, Airframe airframe)
    {
        if (verdict.LoadContribution is not { Mean: var share } || request.TestPoints.Count == 0) yield break;
        var difference = LateralLoad.FuelDifferenceL(airframe, request.TestPoints[0].Load);
        var fuel = Math.Abs(difference) < 0.05 ? Say.EqualFuelOnBothSides : Gaps.Fill(Say.LMoreFuelOn, Words.Number(Math.Abs(difference), 1), difference > 0 ? Texts.RightInText : Texts.LeftInText);
        yield return Gaps.Fill(Say.DaysLoadAndWhoSat, fuel, Directions.RollRate(share));
    }
}
