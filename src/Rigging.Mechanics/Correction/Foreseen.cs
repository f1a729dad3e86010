using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Correction;

/// <summary>
/// What a mechanic's own plan would do, or what was done where it was left otherwise than planned: the roll tendency foreseen with what is
/// known now. It judges nothing; that is for whoever has the authority.
/// </summary>
/// <param name="Before">Roll tendency at the reference as it stands, right wing down positive.</param>
/// <param name="After">The same after the moves, with its 90 % interval.</param>
/// <param name="ProbabilityWithinLimit">Null when no limit is on file.</param>
/// <param name="Cautions">What a person should know of these settings.</param>
/// <param name="Ball">Where the rudder tab is moved, which the roll with the ball centred does not show: the ball feet off, wings held level; null otherwise.</param>
public sealed record Foreseen(Estimate Before, Estimate After, double? ProbabilityWithinLimit, IReadOnlyList<string> Cautions, BallFeetOff? Ball = null)
{
    internal static Answer<Foreseen> Of(Evidence evidence, Experience experience, IReadOnlyList<SetTo> moves)
    {
        if (moves.Count == 0 || moves.DistinctBy(move => move.Control).Count() < moves.Count || moves.Any(move => !double.IsFinite(move.From) || !double.IsFinite(move.To)))
            return new Refusal("plan-not-clear", "Name each adjuster once, with where it stands and where it is to stand.");

        var changes = moves.Select(move => (move.Control, Change: move.On(evidence.Aeroplane))).ToList();
        if (changes.SelectMany(one => one.Change.Refusals).ToList() is { Count: > 0 } refusals)
            return refusals;

        var (change, sd) = experience.Effect(changes.Select(one => (one.Control, one.Change.Value!)), evidence.TendencyGains, evidence.Practice.ModelError);
        var after = evidence.Tendency(change, sd);
        var limit = evidence.Aeroplane.Airframe.Limits?.AcceptableRollTendencyDegPerS;
        List<string> cautions = [.. moves.SelectMany(move => PastTheStop(move, evidence.Aeroplane))];
        if (moves.Count > 1)
            cautions.Add("More than one thing is changed at once: the check flight will not tell which of them did what.");
        cautions.AddRange(moves.Where(move => !HasStopOnFile(move.Control, evidence.Aeroplane.Airframe)).Select(move => $"How far the {move.Control.InWords()} may be bent is not on file: the approved data say."));
        cautions.AddRange(moves.Select(move => NotInTheTendency(move.Control)).OfType<string>());
        if (limit is { } acceptable && Math.Abs(after.Mean) > Math.Abs(evidence.Tendency().Mean) && Math.Abs(after.Mean) > acceptable)
            cautions.Add("Foreseen to roll more than it does now.");
        return new Foreseen(evidence.Tendency().Estimate("deg/s"), after.Estimate("deg/s"), limit is { } within ? after.Within(within) : null, cautions, OfBall(evidence, changes.Select(one => one.Change.Value!)));
    }

    static BallFeetOff? OfBall(Evidence evidence, IEnumerable<KnownChange> changes)
    {
        if (!changes.Any(change => change.Cause == Cause.RudderOrFinOffset)) return null;
        var point = FeetOff(evidence.Aeroplane.Airframe.Reference);
        if (evidence.Observe(point, evidence.Aeroplane.At(point), new BallReading(0)) is not { } seen) return null;
        var moved = changes.Sum(change => change.Amplitude * seen.Gains[ModelledCause.Of(change.Cause).First]);
        Estimate With(double widths) => evidence.Left.Predict(seen.Known + widths, seen.Gains,
            (explanation, mean) => evidence.ModelVariance(seen, explanation, mean) + Math.Pow(evidence.Practice.ModelError * widths, 2)).Estimate("widths");
        return new(With(0), With(moved));
    }

    /// <summary>Wings held level at the reference, feet off: the ball shows what the rudder does.</summary>
    internal static TestPoint FeetOff(ReferencePoint reference) => new(Manoeuvre.HoldLevel, reference.CasKt, reference.PressureAltitudeFt, TestPoint.StandardOatC(reference.PressureAltitudeFt),
        reference.PowerPercent, 0, reference.Load, AirState.Smooth, null, null, []);

    /// <summary>What a move changes that a roll with hands off and the ball centred does not show; null for what it shows.</summary>
    internal static string? NotInTheTendency(AdjustableControl control) => control switch
    {
        AdjustableControl.RudderTab => "With the ball centred a rudder tab does nothing to the roll: what it changes shows feet off, in the ball and the heading.",
        AdjustableControl.AileronNeutral => "Hands off it rolls as before: what it changes shows with the wheel held at neutral.",
        _ => null,
    };

    static bool HasStopOnFile(AdjustableControl control, Airframe airframe) => control switch
    {
        AdjustableControl.RudderTab => airframe.Rudder?.FixedTabBend is not null,
        AdjustableControl.AileronTab => airframe.Ailerons.FixedTab?.Bend is not null,
        _ => true,
    };

    static IEnumerable<string> PastTheStop(SetTo move, Aeroplane aeroplane)
    {
        var name = move.Control.InWords();
        if (move.IsEccentric)
        {
            if (Eccentric.On(aeroplane.Airframe).Value is { MaxAngle.Degrees: var stop } && Math.Abs(move.To) > stop)
                yield return string.Create(CultureInfo.InvariantCulture, $"The {name} would stand at {move.To:0.#}°, beyond its stop at {stop:0.#}°.");
        }
        else if (Adjuster.On(move.Control, aeroplane).Value is { } adjuster && (move.To < adjuster.Least || move.To > adjuster.Greatest))
            yield return string.Create(CultureInfo.InvariantCulture, $"The {name} would stand at {move.To:0.##}, outside {adjuster.Least:0.##} to {adjuster.Greatest:0.##}.");
    }
}

/// <param name="Before">Widths, right positive.</param>
public sealed record BallFeetOff(Estimate Before, Estimate After);
