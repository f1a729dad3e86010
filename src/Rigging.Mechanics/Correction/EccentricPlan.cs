using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Correction;

/// <summary>
/// Chooses the turn of one wing's eccentric, or of both, that leaves the least roll tendency: one wing before both, among turns about
/// equally good the one that leaves the least offset standing, then the smaller.
/// </summary>
static class EccentricPlan
{
    /// <summary>Tendencies left that differ by no more, in steps of the wrench, count as equal; taking out offset that is there already, instead of adding more, is worth more (judgement, no source).</summary>
    const double AboutEqual = 0.1, TakingOutIsWorth = 0.3;

    /// <summary>A chance to be inside the limit that nobody would touch the other wing for (judgement, no source).</summary>
    const double GoodAsCertain = 0.95;

    public static CorrectionPlan For(Evidence evidence, Experience experience)
    {
        var airframe = evidence.Aeroplane.Airframe;
        var eccentric = Eccentric.On(airframe);
        if (!eccentric.Ok)
            return CorrectionPlan.Refused(eccentric.Refusals);

        var left = Found(Side.Left, evidence.Request.Settings?.LeftEccentricDeg);
        var right = Found(Side.Right, evidence.Request.Settings?.RightEccentricDeg);
        var refused = left.Refusals.Concat(right.Refusals).ToArray();
        if (!left.Ok || !right.Ok)
            return CorrectionPlan.Refused(refused);

        var planner = new Planner(evidence, eccentric.Value, airframe.Limits!, experience);
        return planner.Choose(left.Value, right.Value);
    }

    static Answer<FoundSetting> Found(Side wing, BushingAngles? bushings) => bushings is null
        ? new Refusal("setting-not-recorded", $"How the {Wire.Word(wing)} eccentric stands is not on record: look at both bushings and record them as found.")
        : FoundSetting.From(wing, bushings);

    sealed class Planner(Evidence evidence, Eccentric eccentric, RiggingLimits limits, Experience experience)
    {
        readonly double perDeg = evidence.TendencyGains[ModelledCause.Of(Cause.PanelIncidenceDifference).First];
        readonly MeasuredEffect effect = experience.For(AdjustableControl.LeftEccentric, evidence.Practice.ModelError);
        readonly double before = evidence.TendencyIf(Cause.PanelIncidenceDifference);

        public CorrectionPlan Choose(FoundSetting left, FoundSetting right)
        {
            var (leftTurns, rightTurns) = (Turns(Side.Left, left), Turns(Side.Right, right));
            if (leftTurns.Count == 0 && rightTurns.Count == 0)
                return CorrectionPlan.Refused([new("at-stops", "Neither eccentric can be turned further that way. Put both back to neutral and survey incidence and twist; more turning is not the cure.")]);

            var one = Candidates(leftTurns, rightTurns, left, right);
            var standing = Standing(left.Angle, right.Angle);
            var chosen = Best(one, standing);
            if (!IsEnough(chosen))
                chosen = Best([.. one, .. leftTurns.SelectMany(l => rightTurns, (l, r) => Candidate([l, r], l.To, r.To))], standing);

            var limit = limits.AcceptableRollTendencyDegPerS;
            if (Math.Abs(chosen.LeftDegPerS) > limit)
                return CorrectionPlan.Refused([new("beyond-adjuster",
                    $"About {SignedRate.Of(before)} is more than the eccentrics can take out from where they stand; {SignedRate.Of(chosen.LeftDegPerS)} would be left. Look for damage, twist or another cause.")]);
            return Proposed(chosen, left, right);
        }

        CorrectionPlan Proposed(Option chosen, FoundSetting left, FoundSetting right)
        {
            List<string> cautions =
            [
                "Wing supported as the manual says, one wing at a time; bolt loosened, not withdrawn; front and rear bushing turned together.",
                "Prove the direction by a measurement that can see the move (dial indicator or scribe line at the root trailing edge), never by which side looks thick.",
                "Afterwards re-check cable tension, flap and aileron travel, and fly again before anything else is changed.",
            ];
            cautions.AddRange(chosen.Moves.Select(SideEffects));
            if (left.PastQuarterTurn || right.PastQuarterTurn)
                cautions.Add("An eccentric was found past a quarter turn: on its way back the trailing edge first goes the other way.");
            var within = chosen.Tendency.Within(limits.AcceptableRollTendencyDegPerS);
            if (within < 0.5)
                cautions.Add("One adjustment is more likely not enough than enough; interpolate after the check flight.");
            return new(
                new([.. chosen.Moves.Select(move => move.ToContract())], chosen.Tendency.Estimate("deg/s"), within),
                [], cautions);
        }

        /// <summary>What else a turn does: drag, stall, and the way along the span that moves cables and sweep.</summary>
        string SideEffects(EccentricMove move)
        {
            var along = EccentricSideEffects.Of(move, evidence.Aeroplane.Airframe.Wing);
            var (wing, deg) = (Wire.Word(move.Wing), move.IncidenceChange.Degrees);
            return string.Create(CultureInfo.InvariantCulture,
                $"With {Math.Abs(deg):0.00}° {(deg > 0 ? "more" : "less")} incidence the {wing} panel stalls that much {(deg > 0 ? "sooner and drags a little more" : "later and drags a little less")}: fly the stall, and each flap setting, against the ones flown before. Its rear spar moves {along.AlongSpan.Millimeters:0.0} mm along the span, which changes cable length and sweeps the tip by {along.TipMoves.Millimeters:0.0} mm.");
        }

        /// <summary>Every turn of one wing in whole steps that goes the right way and ends inside the stops.</summary>
        List<EccentricMove> Turns(Side wing, FoundSetting found)
        {
            var stepDeg = limits.IncidenceStepFlats * eccentric.PerFlat.Degrees;
            var steps = (int)Math.Ceiling(360 / stepDeg);
            List<EccentricMove> turns = [];
            for (var step = -steps; step <= steps; step++)
                if (EccentricMove.Plan(eccentric, wing, found.Angle, found.Angle + Angle.FromDegrees(step * stepDeg)) is { Ok: true } planned
                    && Change(planned.Value) * before < 0)
                    turns.Add(planned.Value);
            return turns;
        }

        /// <summary>What the model says a turn does to the roll tendency, °/s: the right panel's incidence counts up, the left one's down.</summary>
        double Change(EccentricMove move) => perDeg * move.IncidenceChange.Degrees * (move.Wing == Side.Right ? 1 : -1);

        Option[] Candidates(List<EccentricMove> leftTurns, List<EccentricMove> rightTurns, FoundSetting left, FoundSetting right) =>
        [
            .. leftTurns.Select(move => Candidate([move], move.To, right.Angle)),
            .. rightTurns.Select(move => Candidate([move], left.Angle, move.To)),
        ];

        Option Candidate(EccentricMove[] moves, Angle leftEnds, Angle rightEnds)
        {
            var change = moves.Sum(Change);
            return new(moves, before + change * effect.Factor, evidence.TendencyAfter(change, effect), Standing(leftEnds, rightEnds));
        }

        /// <summary>How far both stand from neutral height, in throws.</summary>
        static double Standing(Angle left, Angle right) => Math.Abs(Math.Sin(left.Radians)) + Math.Abs(Math.Sin(right.Radians));

        /// <summary>Within a quarter of what the wrench's step is worth, or as good as certain to be inside the limit: the other wing need not be touched.</summary>
        bool IsEnough(Option one) => Math.Abs(one.LeftDegPerS) <= StepDegPerS / 4 || one.Tendency.Within(limits.AcceptableRollTendencyDegPerS) >= GoodAsCertain;

        /// <summary>What the smallest turn is worth about neutral, °/s.</summary>
        double StepDegPerS => Math.Abs(perDeg * eccentric.IncidenceAt(Angle.FromDegrees(limits.IncidenceStepFlats * eccentric.PerFlat.Degrees)).Degrees);

        Option Best(IReadOnlyCollection<Option> options, double standingNow)
        {
            var least = options.Min(option => Math.Abs(option.LeftDegPerS));
            return options
                .Where(option => Math.Abs(option.LeftDegPerS) <= least + StepDegPerS * (option.OffsetLeft <= standingNow + 1e-9 ? TakingOutIsWorth : AboutEqual))
                .OrderBy(option => option.Moves.Length)
                .ThenBy(option => Math.Round(option.OffsetLeft, 6))
                .ThenBy(option => Math.Round(option.Moves.Sum(move => move.Flats), 6))
                // As the trade does: the heavy wing's trailing edge goes down first.
                .ThenByDescending(option => option.Moves.Where(move => move.TrailingEdge == TrailingEdge.Down).Sum(move => move.Flats))
                .First();
        }
    }

    /// <param name="LeftDegPerS">Roll tendency that it leaves if the panels differ, by which it is chosen.</param>
    /// <param name="Tendency">The same whatever the cause, which is what is foretold.</param>
    /// <param name="OffsetLeft">How far both eccentrics stand from neutral height afterwards, in throws.</param>
    sealed record Option(EccentricMove[] Moves, double LeftDegPerS, NormalMixture Tendency, double OffsetLeft);
}
