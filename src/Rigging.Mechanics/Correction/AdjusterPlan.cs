using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Correction;

/// <summary>
/// Whole steps of a strut fork or a flap rod against the cause that it acts on: on the wing where it leaves the adjuster nearer to where
/// it began, the drawing's length for a rod and the middle of its thread for a fork.
/// </summary>
static class AdjusterPlan
{
    /// <summary>Against a panel or a twist that differs; null when the airframe has no such adjuster on file.</summary>
    public static CorrectionPlan? OfStrutForks(Cause against, Evidence evidence, Experience experience)
    {
        var aeroplane = evidence.Aeroplane;
        return aeroplane.Airframe is { StrutFork: { } onFile, Wing.Bracing: Bracing.StrutAtEachSpar }
            ? For(evidence, experience,
                wing => StrutFork.On(aeroplane, wing, onFile),
                (onFile.LeastTurns + onFile.GreatestTurns) / 2,
                TendencyUndone(against, evidence),
                byGeometry: false,
                [
                    "Wing supported as the manual says; the rear strut's fork turned in whole or half turns as its bolt hole allows, enough thread left in, the lock put back.",
                    "It twists the wing: the outer wing that is given incidence loses washout and stalls sooner, and drags more. Fly the stall against the one flown before.",
                    "Afterwards re-check cable tension, aileron and flap travel, and that wing's struts for load, and fly again before anything else is changed.",
                ])
            : null;
    }

    /// <summary>Null when the airframe has no such adjuster on file.</summary>
    public static CorrectionPlan? OfFlapRods(Evidence evidence, Experience experience) => evidence.Aeroplane.Airframe.FlapRod is { } onFile
        ? For(evidence, experience,
            wing => FlapRod.On(wing, onFile),
            0,
            // Flaps are put alike, whatever else rolls it and whatever a turn was seen to do to the roll.
            -evidence.Amplitude(Cause.FlapDifference).Mean,
            byGeometry: true,
            [
                "Both flaps against their up stops first: a rod is for what is left when they seat.",
                "A flap that hangs lower drags more and lets that wing stall later at the root; both alike, the stall is straight again. Fly it, with each flap setting.",
                "Afterwards re-check flap travel, symmetry and security at every setting, and fly again before anything else is changed.",
            ])
        : null;

    /// <summary>Degrees of tip incidence that take out the roll of the cause that was singled out.</summary>
    static double TendencyUndone(Cause against, Evidence evidence)
    {
        var perUnit = evidence.TendencyGains[ModelledCause.Of(Cause.TipIncidenceDifference).First];
        return perUnit == 0 ? 0 : -evidence.TendencyIf(against) / perUnit;
    }

    static CorrectionPlan For(
        Evidence evidence, Experience experience, Func<Side, Answer<Adjuster>> adjuster, double home, double wanted, bool byGeometry, IReadOnlyList<string> cautions)
    {
        List<Refusal> refusals = [];
        List<(Side Wing, ModelledCause On, AdjusterMove Move)> moves = [];
        foreach (var wing in (Side[])[Side.Left, Side.Right])
        {
            var on = adjuster(wing);
            if (!on.Ok)
                refusals.AddRange(on.Refusals);
            else if (evidence.Request.StandsAt(on.Value.Control) is not { } turns)
                refusals.Add(new("setting-not-recorded", $"How the {on.Value.Control.InWords()} stands is not on record: count its turns and record them as found."));
            else
            {
                var move = on.Value.For(turns, byGeometry ? wanted : wanted / experience.For(on.Value.Control, evidence.Practice.ModelError).SizingFactor);
                refusals.AddRange(move.Refusals);
                if (move.Ok && !DroopsAFlap(move.Value, wing, on.Value.Cause, home))
                    moves.Add((wing, ModelledCause.Of(on.Value.Cause), move.Value));
            }
        }
        // A fork or a rod beyond its stops is a matter of thread, whatever the other wing could do.
        if (moves.Count == 0 || refusals.Any(refusal => refusal.Code == "found-beyond-stops"))
            return CorrectionPlan.Refused([.. refusals.DistinctBy(refusal => refusal.Sentence)]);

        var heavy = evidence.Tendency().Mean < 0 ? Side.Left : Side.Right;
        var (chosenWing, cause, chosen) = moves.OrderBy(move => Math.Round(Math.Abs(move.Move.To - home), 6)).ThenByDescending(move => move.Wing == heavy).First();
        var tendency = evidence.TendencyAfter(chosen.AmplitudeChange * evidence.TendencyGains[cause.First], experience.For(chosen.Control, evidence.Practice.ModelError));
        // A difference counts right minus left: what is more on the left is less of it.
        var ownWing = chosen.AmplitudeChange * (chosenWing == Side.Right ? 1 : -1);
        return new(
            new(
                [new(chosen.Control, null, null, null, ownWing > 0 ? TrailingEdge.Down : TrailingEdge.Up, Turns(chosen), Outboard(evidence.Aeroplane.Airframe, cause.Cause, chosen), chosen.From, chosen.To)],
                tendency.Estimate("deg/s"),
                tendency.Within(evidence.Aeroplane.Airframe.Limits!.AcceptableRollTendencyDegPerS)),
            [], cautions);
    }

    /// <summary>Lowering a flap away from its stop to match one that hangs moves the fault to the other wing; back to the drawing it may go.</summary>
    static bool DroopsAFlap(AdjusterMove move, Side wing, Cause cause, double home) =>
        cause == Cause.FlapDifference && move.AmplitudeChange * (wing == Side.Right ? 1 : -1) > 0 && Math.Abs(move.To - home) >= Math.Abs(move.From - home);

    /// <summary>Of the wing at the strut and outboard of it, degrees leading edge up; null for a flap rod.</summary>
    static double? Outboard(Airframe airframe, Cause cause, AdjusterMove move) =>
        cause == Cause.TipIncidenceDifference && airframe.StrutFork is { } fork ? -StrutFork.TwistPerTurn(fork).Degrees * (move.To - move.From) : null;

    static string Turns(AdjusterMove move) => string.Create(CultureInfo.InvariantCulture,
        $"{Math.Abs(move.To - move.From):0.##} {(Math.Abs(move.To - move.From) == 1 ? "turn" : "turns")} {(move.To > move.From ? "out" : "in")}, from {move.From:0.##} to {move.To:0.##}");
}
