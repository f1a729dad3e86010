using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Correction;

/// <summary>One adjuster set from here to there: degrees for an eccentric or a tab, turns for a strut fork or a flap rod.</summary>
public sealed record SetTo(AdjustableControl Control, double From, double To);

/// <summary>
/// What a mechanic's own plan would do, or what was done where it was left otherwise than planned: the roll tendency foreseen with what is
/// known now. It judges nothing; that is for whoever has the authority.
/// </summary>
/// <param name="Before">Roll tendency at the reference as it stands, right wing down positive.</param>
/// <param name="After">The same after the moves, with its 90 % interval.</param>
/// <param name="ProbabilityWithinLimit">Null when no limit is on file.</param>
/// <param name="Cautions">What a person should know of these settings.</param>
public sealed record Foreseen(Estimate Before, Estimate After, double? ProbabilityWithinLimit, IReadOnlyList<string> Cautions)
{
    internal static Answer<Foreseen> Of(Evidence evidence, Experience experience, IReadOnlyList<SetTo> moves)
    {
        if (moves.Count == 0 || moves.DistinctBy(move => move.Control).Count() < moves.Count || moves.Any(move => !double.IsFinite(move.From) || !double.IsFinite(move.To)))
            return new Refusal("plan-not-clear", "Name each adjuster once, with where it stands and where it is to stand.");

        List<Refusal> refusals = [];
        var (change, variance, cautions) = (0.0, 0.0, new List<string>());
        foreach (var move in moves)
        {
            var modelled = Modelled(move, evidence, cautions);
            if (!modelled.Ok)
            {
                refusals.AddRange(modelled.Refusals);
                continue;
            }
            var effect = experience.For(move.Control, evidence.Practice.ModelError);
            change += modelled.Value.DegPerS * effect.Factor;
            variance += Math.Pow(modelled.Value.DegPerS * effect.Sd, 2);
        }
        if (refusals.Count > 0)
            return refusals;
        if (moves.Count > 1)
            cautions.Add("More than one thing is changed at once: the check flight will not tell which of them did what.");
        var after = evidence.TendencyAfter(1, new(change, Math.Sqrt(variance), 0));
        var limit = evidence.Aeroplane.Airframe.Limits?.AcceptableRollTendencyDegPerS;
        if (limit is { } acceptable && Math.Abs(after.Mean) > Math.Abs(evidence.Tendency().Mean) && Math.Abs(after.Mean) > acceptable)
            cautions.Add("Foreseen to roll more than it does now.");
        return new Foreseen(evidence.Tendency().Estimate("deg/s"), after.Estimate("deg/s"), limit is { } within ? after.Within(within) : null, cautions);
    }

    sealed record Effect(double DegPerS);

    static Answer<Effect> Modelled(SetTo move, Evidence evidence, List<string> cautions)
    {
        var airframe = evidence.Aeroplane.Airframe;
        double Gain(Cause cause) => evidence.TendencyGains[ModelledCause.Of(cause).First];
        switch (move.Control)
        {
            case AdjustableControl.LeftEccentric or AdjustableControl.RightEccentric:
                var eccentric = Eccentric.On(airframe);
                if (!eccentric.Ok)
                    return eccentric.Refusals.ToList();
                if (Math.Abs(move.To) > eccentric.Value.MaxAngle.Degrees)
                    cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The {Named(move)} would stand at {move.To:0.#}°, beyond its stop at {eccentric.Value.MaxAngle.Degrees:0.#}°."));
                var change = eccentric.Value.IncidenceChange(Angle.FromDegrees(move.From), Angle.FromDegrees(move.To)).Degrees;
                return new Effect(Gain(Cause.PanelIncidenceDifference) * change * (move.Control == AdjustableControl.RightEccentric ? 1 : -1));
            case AdjustableControl.AileronNeutral:
                return new Effect(0);
            default:
                var adjuster = Adjuster.On(move.Control, evidence.Aeroplane);
                if (!adjuster.Ok)
                    return adjuster.Refusals.ToList();
                if (move.To < adjuster.Value.Least || move.To > adjuster.Value.Greatest)
                    cautions.Add(string.Create(CultureInfo.InvariantCulture, $"The {Named(move)} would stand at {move.To:0.##}, outside {adjuster.Value.Least:0.##} to {adjuster.Value.Greatest:0.##}."));
                return new Effect(Gain(adjuster.Value.Cause) * adjuster.Value.AmplitudeChange(move.From, move.To));
        }
    }

    static string Named(SetTo move) => Wire.Word(move.Control).Replace('-', ' ');
}
