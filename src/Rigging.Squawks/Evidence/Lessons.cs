using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Evidence;

/// <summary>What a ledger teaches about an adjuster: flights before it was moved, the move, flights after it.</summary>
public static class Lessons
{
    /// <summary>What is known of the change no better than this teaches nothing worth having, °/s (judgement, no source).</summary>
    const double WorthHavingDegPerS = 1, LeastSdDegPerS = 0.02;

    /// <summary>A move that does less to the tendency, °/s, teaches nothing by it: a rudder tab does none with the ball centred.</summary>
    const double LeastEffectDegPerS = 0.01;

    const double SdsInAnInterval = 2 * 1.6449;

    /// <summary>
    /// One for each work that moved adjusters of one kind (both wings' are one), with a roll read as a number before and after it. What
    /// the flights before and after it say of the roll tendency, each of the aircraft as it stood then, is what the move did.
    /// </summary>
    /// <param name="sameAircraft">Whether it is the aircraft that they are for.</param>
    public static IReadOnlyList<EarlierCorrection> Of(Ledger ledger, AirframeOnFile onFile, bool sameAircraft) => Of(ledger, onFile, Solved(onFile), sameAircraft);

    static List<EarlierCorrection> Of(Ledger ledger, AirframeOnFile onFile, Lazy<Aeroplane> aeroplane, bool sameAircraft)
    {
        var works = new TurnedSince(ledger, aeroplane).Works;
        List<EarlierCorrection> lessons = [];
        for (var at = 0; at < works.Count; at++)
        {
            if (works[at].Moves is not { } all || all.Where(move => move.Change.Amplitude != 0).ToList() is not [var first, ..] moves || moves.Any(move => move.Change.Cause != first.Change.Cause)) continue;
            var modelled = moves.Sum(move => Experience.Modelled(move.Change, aeroplane.Value));
            if (Math.Abs(modelled) < LeastEffectDegPerS) continue;
            var (from, to) = (at > 0 ? works[at - 1].Sequence : 0, at + 1 < works.Count ? works[at + 1].Sequence : int.MaxValue);
            if (Tendency(from, works[at].Sequence) is { } before && Tendency(works[at].Sequence, to) is { } after
                && Math.Max(LeastSdDegPerS, Math.Sqrt(Square(Sd(before)) + Square(Sd(after)))) is var sd and < WorthHavingDegPerS)
                lessons.Add(new(first.Setting.Control, modelled, after.Mean - before.Mean, sd, sameAircraft));
        }
        return lessons;

        Estimate? Tendency(int after, int before)
        {
            var request = EvidenceRequest.Between(ledger, onFile, after, before).Read();
            // From the first entry on it was not adjusted yet.
            var practice = after > 0 ? Practice.Usual.AfterAdjusting() : Practice.Usual;
            return !request.NotLetGo.Any() && request.TestPoints.SelectMany(point => point.Readings).Any(reading => reading is BankAfter or TimeToBank or RollRate)
                ? Outlook.Of(request, aeroplane.Value.Airframe, practice)?.RollTendency(new(aeroplane.Value.Airframe.Reference.CasKt, aeroplane.Value.Airframe.Reference.Load))
                : null;
        }
    }

    /// <summary>
    /// From the ledgers of one type, oldest first. A wing that was replaced takes with it what was learned of the old one.
    /// </summary>
    public static IReadOnlyList<EarlierCorrection> Of(Ledger current, IEnumerable<Ledger> earlier, AirframeOnFile onFile)
    {
        List<EarlierCorrection> lessons = [];
        var aeroplane = Solved(onFile);
        foreach (var ledger in earlier)
        {
            var same = ledger.State.Report?.Aircraft == current.State.Report?.Aircraft;
            if (same && WingReplaced(ledger)) lessons.RemoveAll(lesson => lesson.SameAeroplane);
            lessons.AddRange(Of(ledger, onFile, aeroplane, same));
        }
        if (WingReplaced(current)) lessons.RemoveAll(lesson => lesson.SameAeroplane);
        return lessons;
    }

    // Most ledgers turned nothing: the wing is solved, once for all of them, for one that did.
    static Lazy<Aeroplane> Solved(AirframeOnFile onFile) => new(() => new Aeroplane(onFile.Read()));

    static bool WingReplaced(Ledger ledger) => ledger.State.Report?.Happened.Contains(Happening.WingReplaced) == true;

    static double Sd(Estimate estimate) => (estimate.High - estimate.Low) / SdsInAnInterval;

    static double Square(double value) => value * value;
}
